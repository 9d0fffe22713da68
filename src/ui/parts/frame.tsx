/** The layout of every screen: title in the top border, the body, the keys below, all within the terminal. */
import { Box } from 'ink';
import type { ReactNode } from 'react';
import { shownText, useLook } from '../term/use-look.ts';
import { type Size, useSize } from '../term/use-size.ts';
import { BodyContext } from './body-size.ts';
import { type KeyBinding, KeyHints, keyHintLines } from './key-hints.tsx';
import { Words } from './safe-words.tsx';
import { columnsOf, cutWords } from './wrap-words.ts';

export interface FrameProps {
  readonly title: string;
  /** At the right end of the title line: where we are, what is saved. */
  readonly aside?: string;
  /** The footer. */
  readonly keys: readonly KeyBinding[];
  readonly children: ReactNode;
}

const LINES = {
  across: '─',
  down: '│',
  corners: ['┌', '┐', '└', '┘'],
  joints: ['├', '┤'],
} as const;
const ASCII = {
  across: '-',
  down: '|',
  corners: ['+', '+', '+', '+'],
  joints: ['+', '+'],
} as const;

/** Border and one blank column on either side. */
const SIDES = 4;

/** The room inside a frame with this footer. */
export function bodySize(screen: Size, keys: readonly KeyBinding[]): Size {
  const columns = screen.columns - SIDES;
  const hints = keyHintLines(keys, columns).length;
  return { columns, rows: Math.max(1, screen.rows - 2 - (hints > 0 ? hints + 1 : 0)) };
}

/** A whole screen. Its children learn their room from `useBody`; what is too much is clipped, not scrolled. */
export function Frame({ title, aside, keys, children }: FrameProps) {
  const screen = useSize();
  const look = useLook();
  const body = bodySize(screen, keys);
  const draw = look.ascii ? ASCII : LINES;
  const hintRows = screen.rows - 2 - body.rows - 1;
  const rule = (left: string, right: string) =>
    `${left}${draw.across.repeat(screen.columns - 2)}${right}`;
  const wall = (rows: number) => Array.from({ length: rows }, () => draw.down).join('\n');
  const walled = (rows: number, inside: ReactNode) => (
    <Box height={rows} flexShrink={0}>
      <Words>{wall(rows)}</Words>
      <Box width={body.columns + 2} height={rows} flexShrink={0} paddingX={1} overflowY="hidden">
        {inside}
      </Box>
      <Words>{wall(rows)}</Words>
    </Box>
  );
  const titleLine = titled(
    rule(draw.corners[0], draw.corners[1]),
    shownText(title, look),
    shownText(aside ?? '', look),
    look.ascii ? '...' : '…',
  );
  return (
    <Box flexDirection="column" width={screen.columns} height={screen.rows} overflowY="hidden">
      <BodyContext value={null}>
        <Box flexShrink={0}>
          <Words>{titleLine.before}</Words>
          <Words bold>{titleLine.title}</Words>
          <Words>{titleLine.after}</Words>
        </Box>
      </BodyContext>
      {walled(
        body.rows,
        <BodyContext value={body}>
          <Box flexDirection="column" width={body.columns} height={body.rows} overflowY="hidden">
            {children}
          </Box>
        </BodyContext>,
      )}
      {hintRows > 0 ? <Words>{rule(draw.joints[0], draw.joints[1])}</Words> : null}
      {hintRows > 0 ? walled(hintRows, <KeyHints table={keys} width={body.columns} />) : null}
      <Words>{rule(draw.corners[2], draw.corners[3])}</Words>
    </Box>
  );
}

/** The top border with title and aside let into it; the aside gives way first. */
function titled(rule: string, title: string, aside: string, mark: string) {
  const room = columnsOf(rule) - 6;
  const shown = cutWords(title, room, mark);
  const left = room - columnsOf(shown) - 3;
  const beside = aside !== '' && left >= 8 ? ` ${cutWords(aside, left, mark)} ` : '';
  const signs = [...rule];
  const before = `${signs.slice(0, 2).join('')} `;
  const used = columnsOf(before) + columnsOf(shown) + 1;
  const tail = signs.slice(used);
  const kept = tail.length - columnsOf(beside) - 2;
  const after = ` ${tail.slice(0, kept).join('')}${beside}${tail.slice(-2).join('')}`;
  return { before, title: shown, after };
}
