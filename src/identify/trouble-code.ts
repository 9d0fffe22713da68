/**
 * The structure of diagnostic trouble codes (SAE J2012, ISO 15031-6): a letter for the system, a digit for who defined
 * it, three hexadecimal digits; two bytes on the wire.
 */

export const CODE_SYSTEMS = ['powertrain', 'chassis', 'body', 'network'] as const;

/** The part of the vehicle that a code's letter names. */
export type CodeSystem = (typeof CODE_SYSTEMS)[number];
const LETTERS = 'PCBU';

/** A code taken apart into what its digits say. */
export interface TroubleCode {
  /** Normal form, `P0335`. */
  readonly code: string;
  readonly system: CodeSystem;
  /** Whether the standard or the vehicle's maker gave this number its meaning. */
  readonly definedBy: 'standard' | 'maker' | 'reserved';
  /** As transmitted: the letter in the upper two bits, then two bits of the first digit, then three hex digits. */
  readonly twoByte: number;
  /** Third byte of three-byte codes (`P0335-13`): the failure type, or null. */
  readonly failureType: number | null;
}

/** A code, or why the text is none and what to write instead. */
export type CodeRead =
  | ({ readonly status: 'read' } & TroubleCode)
  | { readonly status: 'refused'; readonly words: string; readonly fix: string };

/** Reads `P0335`, `p 0335`, `P0335-13` or the raw bytes `0x0335`. */
export function readCode(typed: string): CodeRead {
  const text = typed.slice(0, 40).normalize('NFKC').toUpperCase().replace(/[\s_]/g, '');
  const raw = /^0X([0-9A-F]{4})([0-9A-F]{2})?$/.exec(text);
  if (raw) return codeOfBytes(Number.parseInt(raw[1]!, 16), raw[2]);
  const match = /^([PCBU])([0-3])([0-9A-F]{3})(?:[-:]?([0-9A-F]{2}))?$/.exec(text);
  if (!match) return refused(text);
  const upper = (LETTERS.indexOf(match[1]!) << 2) | Number(match[2]);
  return codeOfBytes((upper << 12) | Number.parseInt(match[3]!, 16), match[4]);
}

/** Codes for reading: `P0335-P0349 C0031 C0034`, with runs of three or more as their ends. */
export function codeSpans(codes: readonly string[]): string {
  const runs: string[][] = [];
  for (const code of codes) {
    const run = runs.at(-1);
    if (run && follows(run.at(-1)!, code)) run.push(code);
    else runs.push([code]);
  }
  return runs.flatMap((run) => (run.length > 2 ? [`${run[0]}-${run.at(-1)}`] : run)).join(' ');
}

/** By the next number, read in tens as people do or in sixteens. */
function follows(code: string, next: string): boolean {
  const [a, b] = [code.slice(1), next.slice(1)];
  if (code[0] !== next[0]) return false;
  if (Number.parseInt(b, 16) === Number.parseInt(a, 16) + 1) return true;
  return /^\d+$/.test(a + b) && Number(b) === Number(a) + 1;
}

/** `P0335` of 0x0335. `twoByte` is 0 to 0xFFFF; 0 stands for "no code" on the wire. */
export function formatCode(twoByte: number): string {
  const letter = LETTERS[(twoByte >> 14) & 3]!;
  const digit = (twoByte >> 12) & 3;
  return `${letter}${digit}${(twoByte & 0xfff).toString(16).toUpperCase().padStart(3, '0')}`;
}

function codeOfBytes(twoByte: number, failure: string | undefined): CodeRead {
  const code = formatCode(twoByte);
  if (twoByte === 0)
    return { status: 'refused', words: 'two zero bytes mean that no code is stored', fix: '' };
  return {
    status: 'read',
    code,
    system: CODE_SYSTEMS[(twoByte >> 14) & 3]!,
    definedBy: definer(code),
    twoByte,
    failureType: failure === undefined ? null : Number.parseInt(failure, 16),
  };
}

/** Groups of the second sign; of P3 the blocks P34xx to P39xx belong to the standard. */
function definer(code: string): TroubleCode['definedBy'] {
  const group = code.slice(0, 2);
  if (['P0', 'P2', 'C0', 'B0', 'U0', 'U3'].includes(group) || /^P3[4-9]/.test(code))
    return 'standard';
  if (['C3', 'B3'].includes(group)) return 'reserved';
  return 'maker';
}

function refused(text: string): CodeRead {
  const words =
    'a trouble code is P, C, B or U, a digit 0 to 3 and three more characters 0 to 9 or A to F';
  if (/^[PCBU]?[0-9A-FOIL]{4}$/.test(text) && /[OIL]/.test(text))
    return { status: 'refused', words, fix: 'write zero and one as digits, not as O, I or L' };
  if (/^[0-9A-F]{4}$/.test(text))
    return { status: 'refused', words, fix: `write P${text} or, for raw bytes, 0x${text}` };
  return { status: 'refused', words, fix: 'for example P0335' };
}
