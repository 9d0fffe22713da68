/**
 * What the terminal may be sent: a screen or plain lines, colour or none, ASCII or line drawing. Decided
 * from the environment before Ink is loaded, because Ink's own guesses (chalk, is-in-ci) ignore NO_COLOR and
 * leave a screen blank under CI.
 */
import chalk from 'chalk';

/** Environment variables, as the process has them. */
export type Environment = Readonly<Record<string, string | undefined>>;

/** `--color`; `auto` when not given. */
export type ColourWish = 'auto' | 'always' | 'never';

/** How things are drawn: with colour or not, with line drawing or `+-|`. */
export interface DrawingStyle {
  readonly colour: boolean;
  readonly ascii: boolean;
}

/** `--color` over NO_COLOR (not empty) over FORCE_COLOR over TERM=dumb over whether it is a terminal. */
export function decideColour(env: Environment, isTTY: boolean, wish: ColourWish = 'auto'): boolean {
  if (wish !== 'auto') return wish === 'always';
  if (env.NO_COLOR) return false;
  if (env.FORCE_COLOR !== undefined) return !['0', 'false'].includes(env.FORCE_COLOR);
  return env.TERM !== 'dumb' && isTTY;
}

/** ASCII when asked for (`--ascii`, OHMWARD_ASCII) or when the locale cannot be trusted with more. */
export function decideAscii(
  env: Environment,
  flags: { readonly ascii?: boolean } = {},
  platform: string = process.platform,
): boolean {
  if (flags.ascii !== undefined) return flags.ascii;
  if (env.OHMWARD_ASCII) return env.OHMWARD_ASCII !== '0';
  if (platform === 'win32') return false; // no locale variables there; its terminals draw lines
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  return !/utf-?8/i.test(locale);
}

/**
 * Bold, underline and inverse carry meaning (the cursor, the selection) and are not colour, so they stay
 * under NO_COLOR; colour itself is left out by `Words`. Call before the first frame.
 */
export function allowAttributes(): void {
  chalk.level = 1;
}

/** What the flags of a command say of screen and lines. */
export interface FrontEndFlags {
  /** `--plain`: lines, whatever the terminal can do. */
  readonly plain?: boolean;
  /** A screen was asked for by name: CI does not speak against it. */
  readonly screen?: boolean;
}

/** A screen needs a terminal at both ends that obeys cursor movements; everything else gets plain lines. */
export function decideFrontEnd(
  env: Environment,
  stdin: { readonly isTTY?: boolean },
  stdout: { readonly isTTY?: boolean },
  flags: FrontEndFlags = {},
): 'screen' | 'plain' {
  if (flags.plain || !stdin.isTTY || !stdout.isTTY || env.TERM === 'dumb') return 'plain';
  return underCi(env) && !flags.screen ? 'plain' : 'screen';
}

/** The same reading of CI and CONTINUOUS_INTEGRATION that Ink's is-in-ci has: set, even empty, but not 0 or false. */
function underCi(env: Environment): boolean {
  return [env.CI, env.CONTINUOUS_INTEGRATION].some(
    (value) => value !== undefined && value !== '0' && value !== 'false',
  );
}
