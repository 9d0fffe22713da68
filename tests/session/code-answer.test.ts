/** The question what the trouble code says, answered by the codes on the job sheet. */
import { describe, expect, it } from 'vitest';
import { emptyJob, type Happens } from '../../src/procedure/job.ts';
import type { AskOutcome, AskStep } from '../../src/procedure/procedure.ts';
import { codeAnswer, codeKindsOf, sheetAnswer } from '../../src/session/code-answer.ts';
import { shipped } from '../library/shipped.ts';
import { TREE } from './sample-tree.ts';

const OUTCOMES: AskOutcome[] = [
  { name: 'none', words: 'circuit, or no code', codeKinds: ['circuit', 'low'], go: 'feed' },
  { name: 'now-and-then', words: 'intermittent', codeKinds: ['intermittent'], go: 'pattern' },
  { name: 'other', words: 'something else', go: 'fine' },
];
const QUESTION: AskStep = {
  kind: 'ask',
  id: 'code',
  title: 'What does the code say?',
  family: 'interview',
  setup: { state: 'key-off', unplugged: [], bridges: [], sensor: 'fitted', target: 'still' },
  say: 'Which?',
  why: '',
  minutes: 1,
  cautions: [],
  cannot: null,
  usual: 'none',
  outcomes: OUTCOMES,
};

describe('the question what the code says', () => {
  // Kinds of the codes: SAE J2012 names P0335 circuit, P0337 low, P0338 high and P0339 intermittent.
  it.each<[string, string[], string | null, string | null]>([
    ['by the kind of the code', ['P0339'], 'now-and-then', 'P0339'],
    ['by the first code that answers it', ['P0338', 'P0337', 'P0339'], 'none', 'P0337'],
    ['as it was typed', ['p0335-11'], 'none', 'p0335-11'],
    ['not by a code for no sensor', ['P0300'], null, null],
    ['not by what is no code', ['the lamp was on'], null, null],
    ['not without a code', [], null, null],
  ])('is answered %s', (_, codes, outcome, code) => {
    const found = codeAnswer(QUESTION, { ...emptyJob('stalls'), codes });
    expect([found?.outcome.name ?? null, found?.code ?? null]).toEqual([outcome, code]);
  });

  it('is answered by when it happens before any code, and not where it is always there', () => {
    const answered = (happens: readonly Happens[]) => {
      const job = { ...emptyJob('cuts out'), codes: ['P0335'], circumstances: { happens } };
      const found = codeAnswer(QUESTION, job);
      return [found?.outcome.name, found?.code];
    };
    expect(answered(['bumps', 'wet'])).toEqual(['now-and-then', '"bumps", "wet"']);
    expect(answered(['always'])).toEqual(['none', 'P0335']);
    expect(answered(['cranking'])).toEqual(['none', 'P0335']);
  });

  it('that names no kinds is left to the person, as is every measurement', () => {
    const job = { ...emptyJob('stalls'), codes: ['P0335'] };
    const plain = { ...QUESTION, outcomes: OUTCOMES.map(({ codeKinds: _, ...rest }) => rest) };
    expect(codeAnswer(plain, job)).toBe(null);
    expect(codeAnswer(TREE.steps['feed']!, job)).toBe(null);
    expect(codeAnswer(TREE.steps['prepare']!, job)).toBe(null);
  });
});

it('what codes say of their circuits is read from those for a position sensor, in their order', () => {
  // SAE J2012: P0339 intermittent, P0016 crankshaft against camshaft, P0300 a misfire, P0337 low
  const codes = ['P0339', 'P0300', 'the lamp was on', 'P0016', 'p0337-11'];
  expect(codeKindsOf({ ...emptyJob('stalls'), codes })).toEqual([
    'intermittent',
    'correlation',
    'low',
  ]);
  expect(codeKindsOf(emptyJob('stalls'))).toEqual([]);
});

describe('the question whether the timing can have moved', () => {
  const { procedure } = shipped('hall-no-signal').linked;
  const signs = Object.values(procedure.steps).find(({ id }) => id.endsWith('/signs'))!;
  it.each<[string, string | undefined]>([
    ['timing belt replaced last week', 'some'],
    ['clutch', 'some'],
    ['wheel bearing', undefined],
    ['no work on the timing belt', undefined],
    ['', undefined],
  ])('after "%s" has the answer %s marked', (recentWork, outcome) => {
    const job = { ...emptyJob('no start'), circumstances: { recentWork } };
    const said = sheetAnswer(signs, job);
    expect(said?.outcome.name).toBe(outcome);
    if (said) expect(said.code).toBe(`recent work ("${recentWork}")`);
    // A simulated vehicle is asked itself.
    expect(codeAnswer(signs, job)).toBeNull();
  });
  it('is answered by a code first, and recent work answers no question about codes', () => {
    const job = {
      ...emptyJob('no start'),
      codes: ['P0016'],
      circumstances: { recentWork: 'timing belt' },
    };
    // SAE J2012: P0016 is a correlation code
    expect(sheetAnswer(signs, job)?.code).toBe('P0016');
    expect(sheetAnswer(QUESTION, { ...job, codes: [] })).toBeNull();
  });
});
