/**
 * Words on the screen: the only place that uses Ink's Text. Everything shown passes `safeText` here, is
 * spelled in ASCII where needed, and is wrapped by us; Ink gets text that fits.
 */
import { Box, Text } from 'ink';
import { useContext } from 'react';
import { shownText, useLook } from '../term/use-look.ts';
import { BodyContext } from './body-size.ts';
import { columnsOf, cutWords, wrapWords } from './wrap-words.ts';

/**
 * The two that are read on a white background and on a black one. Yellow, cyan and green are too pale on white, blue is
 * too dark on black: what matters most has no colour but the terminal's own, and stands out in bold.
 */
export type Colour = 'red' | 'magenta';

type WordPiece = string | number;

/** What is said, and how it looks where the terminal can show that. */
export interface WordsProps {
  readonly children: WordPiece | readonly WordPiece[];
  readonly bold?: boolean;
  readonly inverse?: boolean;
  readonly underline?: boolean;
  /** Never the only carrier of a meaning; left out where the terminal has no colour. */
  readonly colour?: Colour | undefined;
  /** Columns to wrap at; the frame's inside when not given. */
  readonly width?: number;
  /** `cut` keeps each line on one row and marks what is missing. */
  readonly wrap?: 'wrap' | 'cut';
  /** Extra indent of continued lines. */
  readonly hang?: number;
}

/** A block of text. Side by side in a row: give each a width, or be sure that they fit together. */
export function Words(props: WordsProps) {
  const look = useLook();
  const body = useContext(BodyContext);
  const width = Math.max(1, props.width ?? body?.columns ?? Number.POSITIVE_INFINITY);
  const text = Array.isArray(props.children) ? props.children.join('') : String(props.children);
  const shown = shownText(text, look, { lines: true });
  const lines =
    props.wrap === 'cut'
      ? shown.split('\n').map((line) => cutWords(line, width, look.ascii ? '...' : '…'))
      : wrapWords(shown, width, { hang: props.hang ?? 0 });
  const widest = Math.max(1, ...lines.map(columnsOf));
  // A box of just this size: Ink finds nothing to wrap or to cut.
  return (
    <Box width={widest} height={lines.length} flexShrink={0}>
      <Text
        wrap="truncate"
        bold={props.bold ?? false}
        inverse={props.inverse ?? false}
        underline={props.underline ?? false}
        {...(look.colour && props.colour ? { color: props.colour } : {})}
      >
        {lines.join('\n')}
      </Text>
    </Box>
  );
}
