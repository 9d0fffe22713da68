/** The field of the job sheet for trouble codes, each with how the module keeps it. No React. */
import { describeCode } from '../../identify/describe-code.ts';
import { readCode } from '../../identify/trouble-code.ts';
import { CODE_STATES, type CodeState, type Job } from '../../procedure/job.ts';

/** `P0365 stored, P0369 pending` as codes in their normal form, and how the module keeps each where that is said. */
export function codesSaid(text: string): Pick<Job, 'codes' | 'codeStates'> {
  const codes: string[] = [];
  const states: Record<string, CodeState> = {};
  for (const word of codeWords(text)) {
    const state = codeState(word);
    const last = codes.at(-1);
    if (state !== null && last !== undefined) states[last] = state;
    else if (state === null) codes.push(normalCode(word));
  }
  return { codes, ...(Object.keys(states).length > 0 && { codeStates: states }) };
}

/** The codes of a field that are typed, without what is said of them. */
export function codesTyped(text: string): string[] {
  return codeWords(text).filter((word) => codeState(word) === null);
}

/** As a sheet shows them: `P0365 stored, P0369 pending`. */
export function codesText({ codes, codeStates }: Pick<Job, 'codes' | 'codeStates'>): string {
  if (!codeStates) return codes.join(' ');
  return codes.map((code) => `${code} ${codeStates[code] ?? ''}`.trim()).join(', ');
}

/** What the last two codes of the field mean, each with how it is kept. */
export function codesRemark(text: string): string {
  const { codeStates = {} } = codesSaid(text);
  return codesTyped(text)
    .map((typed) => {
      const read = readCode(typed);
      if (read.status === 'refused') return `${typed}: ${read.words}`;
      const state = codeStates[read.code];
      const kept = state === undefined ? '' : `, ${state}`;
      return `${read.code}${kept}: ${describeCode(typed)?.words ?? 'a code of its own'}`;
    })
    .slice(-2)
    .join('. ');
}

function codeWords(text: string): string[] {
  return text
    .split(/[\s,;()]+/)
    .filter((word) => word !== '' && !/^(?:is|are|and|code|codes)$/i.test(word));
}

const LIKE_STATE: Readonly<Record<string, CodeState>> = {
  current: 'stored',
  active: 'stored',
  present: 'stored',
  confirmed: 'stored',
  old: 'history',
  historic: 'history',
  past: 'history',
};

function codeState(word: string): CodeState | null {
  const small = word.toLowerCase();
  return CODE_STATES.find((one) => one === small) ?? LIKE_STATE[small] ?? null;
}

function normalCode(typed: string): string {
  const read = readCode(typed);
  return read.status === 'read' ? read.code : typed.toUpperCase();
}
