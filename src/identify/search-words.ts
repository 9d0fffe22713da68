/** Words that a person looks for a trouble code by: the place of its sensor, and the side of the engine. */
import { describeCode, knownCodes } from './describe-code.ts';
import { readCode } from './trouble-code.ts';

/**
 * Which shaft A and B are. The standard has only the letters; that A is the intake's and B the exhaust's where a bank has
 * two is common practice, no source.
 */
const SIDES: Readonly<Record<string, string>> = { A: 'intake', B: 'exhaust' };
/** Other names of the same sensor. */
const ALSO: Readonly<Record<string, string>> = {
  crankshaft: 'crank ckp',
  camshaft: 'cam cmp',
  wheel: 'abs',
  pedal: 'accelerator',
  throttle: 'tps',
};

/**
 * What a procedure for these codes is found by: the codes, others that the standard has for the same kind of sensor, and
 * words of each: `camshaft`, `exhaust`, `bank 2`, `left front`.
 */
export function searchWords(codes: readonly string[]): string[] {
  const roles = new Set(codes.map((code) => describeCode(code)?.sensorRole ?? null));
  const neighbours = knownCodes().filter((code) => roles.has(describeCode(code)!.sensorRole));
  return [...new Set([...codes, ...neighbours, ...codes.flatMap(wordsOf)])];
}

function wordsOf(code: string): string[] {
  const found = describeCode(code);
  if (!found?.sensorRole) return [];
  const { sensorRole, which } = found;
  const [letter = '', ...more] = which.split(' ');
  const side = sensorRole === 'camshaft' ? SIDES[letter] : undefined;
  return [
    `${sensorRole} ${which}`.trim(),
    ...(ALSO[sensorRole] === undefined ? [] : [ALSO[sensorRole]]),
    ...(side === undefined ? [] : [`${side} camshaft`, [side, ...more].join(' ')]),
  ];
}

/** Trouble codes among the words that a procedure was looked for by, in their normal form: nobody types them twice. */
export function codesAmong(search: string): string[] {
  return search.split(/[\s,;]+/).flatMap((word) => {
    const read = readCode(word);
    return read.status === 'read' ? [read.code] : [];
  });
}
