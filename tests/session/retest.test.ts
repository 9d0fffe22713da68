/** The tests after the repair: which they are, when one passes, and what they say together. */
import { describe, expect, test } from 'vitest';
import type { Look, Test } from '../../src/circuit/test.ts';
import type {
  AskStep,
  LookStep,
  MeasureStep,
  Procedure,
  Step,
} from '../../src/procedure/procedure.ts';
import { stepOf } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import type { RepairVerdict } from '../../src/session/events.ts';
import {
  againCommand,
  closeCommand,
  isRepeatable,
  passes,
  passingWords,
  retestLines,
  retestVerdict,
  VERDICT_WORDS,
} from '../../src/session/retest.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import {
  ACK,
  again,
  CLOSE,
  CONCLUDE,
  CONCLUDED,
  cannot,
  DONE,
  END,
  LOOK,
  PAUSE,
  RESUME,
  said,
  sees,
  volts,
  withStep,
} from './shorthand.ts';

const idsOf = (commands: readonly Command[], tree?: Procedure) =>
  retestLines(sessionAfter(commands, tree)).map(({ step }) => step.id);

describe('after the repair', () => {
  const none: readonly Command[] = [...CONCLUDED, PAUSE, RESUME];
  const look = (seen: string | null, outcome: string) => again('pattern', { look: seen, outcome });
  const ready = (step: string): Command => ({ type: 'acknowledge-cautions', step });

  test('what may be tested again', () => {
    const session = sessionAfter(none);
    expect(said(session, again('prepare', {}))).toBe('wrong-kind');
    expect(said(session, look('full', 'full'))).toBe('caution-first');
    expect(said(sessionAfter(END), look('full', 'full'))).toBe('not-concluded');
  });

  test('a retest in another vehicle state asks for its cautions, once after the repair', () => {
    const feed = again('feed', { value: 5 });
    const once = [...none, ready('feed'), feed];
    expect(said(sessionAfter(once), feed)).toBe('retest-recorded');
    expect(said(sessionAfter(once), look('full', 'full'))).toBe('caution-first');
    const cranked = sessionAfter([...once, ready('pattern'), look('full', 'full')]);
    expect(said(cranked, feed)).toBe('retest-recorded');
    expect(said(cranked, look('full', 'full'))).toBe('retest-recorded');
  });

  test.each<[string, object, boolean]>([
    // the healthy feed is 4.75 to 5.25 V, ends included
    ['feed', { value: 5 }, true],
    ['feed', { value: 4.75 }, true],
    ['feed', { value: 5.25 }, true],
    ['feed', { value: 4.74 }, false],
    ['feed', { value: 5.26 }, false],
    ['feed', { value: null }, false],
    ['pattern', { look: 'full' }, true],
    ['pattern', { look: 'weak' }, false],
    ['pattern', { look: null }, false],
  ])('%s with %o passes: %s', (step, part, passed) => {
    const session = sessionAfter([...none, ready(step), again(step, part)]);
    expect(session.retests[0]).toMatchObject({ step, passed });
  });

  test('one that cannot be made wants a reason, no caution, and a conclusion', () => {
    const session = sessionAfter(none);
    expect(said(session, cannot('pattern'))).toBe('retest-impossible');
    expect(said(session, { ...cannot('pattern'), reason: ' ' })).toBe('empty-text');
    expect(said(session, cannot('prepare'))).toBe('wrong-kind');
    expect(said(sessionAfter(END), cannot('pattern'))).toBe('not-concluded');
    expect(said(sessionAfter([...none, CLOSE]), cannot('pattern'))).toBe('not-open');
    const [line] = retestLines(sessionAfter([...none, cannot('pattern')]));
    expect(line?.after).toMatchObject({ type: 'retest-impossible', reason: 'no way in' });
  });

  test('a test that was done by another name of it is asked by that name, once', () => {
    const twin = { ...TREE.steps['pattern'], id: 'twin', title: 'The same again' } as Step;
    const broken = { ...TREE.steps['broken'], retest: ['twin'] } as Step;
    const tree = { ...TREE, steps: { ...TREE.steps, twin, broken } };
    const [line, ...others] = retestLines(sessionAfter(none, tree));
    expect([line?.step.id, line?.before?.type, others]).toEqual(['pattern', 'look-recorded', []]);
    const other = { ...twin, probe: { kind: 'counts', input: 'module.signal' } } as Step;
    const apart = { ...tree, steps: { ...tree.steps, twin: other } };
    expect(retestLines(sessionAfter(none, apart)).map(({ step }) => step.id)).toEqual([
      'pattern',
      'twin',
    ]);
  });

  test("a conclusion of one's own asks for what failed only", () => {
    const own = { words: 'Mine', faults: [] };
    const at = (conclude: Command) =>
      retestLines(
        sessionAfter([...LOOK, sees('full'), conclude], withStep('fine', { retest: ['feed'] })),
      );
    expect(at(CONCLUDE).map(({ step }) => step.id)).toEqual(['feed']);
    expect(at({ ...CONCLUDE, own } as Command)).toEqual([]);
  });

  test('what failed in a test that no step asked for is repeated by the step that asks for the same', () => {
    const step = stepOf(TREE, 'pattern') as LookStep;
    const test: Test = { setup: step.setup, probe: step.probe! };
    const found = (look: Look): Command => ({
      type: 'record-test',
      ...{ test, typed: '', shown: { kind: 'look', look } },
      expected: { kind: 'look', looks: ['full'] },
    });
    const own: Command = { ...CONCLUDE, own: { words: 'Mine', faults: [] } } as Command;
    expect(idsOf([found('weak'), own])).toEqual(['pattern']);
    expect(idsOf([found('full'), own])).toEqual([]);
    expect(idsOf([found('weak'), found('full'), own])).toEqual([]);
  });

  test('where nothing is expected nothing passes', () => {
    const open = withStep('feed', { expected: null });
    const session = sessionAfter([...none, ready('feed'), again('feed', { value: 5 })], open);
    expect(session.retests[0]).toMatchObject({ step: 'feed', passed: false });
  });

  test('what read wrong before has to be tested too, in the order of the tree', () => {
    const low = [DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE];
    expect(retestLines(sessionAfter(low)).map(({ step }) => step.id)).toEqual(['feed', 'pattern']);
    expect(retestLines(sessionAfter(CONCLUDED)).map(({ step }) => step.id)).toEqual(['pattern']);
    const high = [DONE, ACK, volts(9), CONCLUDE];
    const [line, ...others] = retestLines(sessionAfter(high));
    expect(line).toMatchObject({ before: { type: 'reading-recorded', typed: '9 V' }, after: null });
    expect(others).toEqual([]);
    const seen = withStep('broken', { retest: [] });
    expect(retestLines(sessionAfter(CONCLUDED, seen)).map(({ step }) => step.id)).toEqual([
      'pattern',
    ]);
  });

  test('what passed after a repair that was taken back has to pass again after the next', () => {
    const once = [...none, ready('pattern'), look('full', 'full')];
    const other = [...once, { type: 'go-back' } as const, ACK, sees('none')];
    const session = sessionAfter([...other, CONCLUDE]);
    expect(retestLines(session).map(({ after }) => after)).toEqual([null]);
    expect(retestVerdict(session)).toBeNull();
  });

  test('a file that proved an earlier repair proves none after it', () => {
    const measures = { kind: 'switched', unit: 'V', samples: 9, seconds: 1, low: 0, high: 5 };
    const capture = {
      name: 'pattern.csv',
      sha256: 'a'.repeat(64),
      from: 'file',
      measures: { ...measures, hertz: null, duty: null, rpm: null },
      words: [],
      channels: [],
    };
    const taken = again('pattern', { look: 'full', capture });
    const once = [...none, ready('pattern'), taken];
    expect(said(sessionAfter([...once, ready('pattern')]), taken)).toBe('retest-recorded');
    const back = [...once, { type: 'go-back' } as const, ACK, sees('none')];
    const other = [...back, CONCLUDE, ready('pattern')];
    expect(said(sessionAfter(other), taken)).toBe('old-capture');
  });

  test('an answer that was taken back counts no more', () => {
    const low = [DONE, ACK, volts(4), { type: 'go-back' } as const];
    const session = sessionAfter([...low, volts(5), ACK, sees('none'), CONCLUDE]);
    expect(retestLines(session).map(({ step }) => step.id)).toEqual(['pattern']);
  });

  test.each<[string, readonly Command[], string | null]>([
    ['nothing to test', [...LOOK, sees('full'), CONCLUDE], 'no-retest'],
    ['not yet tested', none, null],
    ['passed', [...none, ready('pattern'), look('full', 'full')], 'cured'],
    ['as before', [...none, ready('pattern'), look('weak', 'none')], 'not-cured'],
    [
      'otherwise',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, ready('feed')],
        again('feed', { typed: '6', value: 6, outcome: 'high' }),
        ...[ready('pattern'), look('full', 'full')],
      ],
      'changed',
    ],
    [
      'the last try counts',
      [
        ...[...none, ready('pattern'), look('weak', 'none')],
        ...[ready('pattern'), look('full', 'full')],
      ],
      'cured',
    ],
    ['not possible, and nothing else to test', [...none, cannot('pattern')], 'no-retest'],
    [
      'one of two was not possible, the other passes',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, cannot('feed')],
        ...[ready('pattern'), look('full', 'full')],
      ],
      'not-shown',
    ],
    [
      'one of two was not possible, the other fails',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, cannot('feed')],
        ...[ready('pattern'), look('weak', 'none')],
      ],
      'not-cured',
    ],
    [
      'what was not possible was possible after all',
      [...none, cannot('pattern'), ready('pattern'), look('full', 'full')],
      'cured',
    ],
    [
      'one of two fails as before',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, PAUSE, RESUME],
        ready('feed'),
        again('feed', { value: 5, outcome: 'good' }),
        ready('pattern'),
        look('weak', 'none'),
      ],
      'not-cured',
    ],
    [
      'one of two is not yet tested',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, ready('feed')],
        again('feed', { value: 5 }),
      ],
      null,
    ],
    [
      'one of two fails as before, the other otherwise',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, ready('feed')],
        again('feed', { typed: '6', value: 6, outcome: 'high' }),
        ...[ready('pattern'), look('weak', 'none')],
      ],
      'changed',
    ],
    [
      'a test that was never made before cannot have changed',
      [
        ...[DONE, { type: 'cannot-do', reason: 'no room' } as const, ACK, sees('none'), CONCLUDE],
        ...[PAUSE, RESUME, ready('pattern')],
        look('weak', 'none'),
      ],
      'not-cured',
    ],
  ])('%s: %s', (_, commands, verdict) => {
    expect(retestVerdict(sessionAfter(commands))).toBe(verdict);
  });

  test.each<[string, readonly Command[]]>([
    ['on the way', [DONE, { type: 'cannot-do', reason: 'no room' }, ACK, sees('none'), CONCLUDE]],
    ['because the way led round it', [DONE, ACK, sees('none'), CONCLUDE]],
  ])('a test that was not made before, %s, and fails now has not changed', (way, commands) => {
    const start =
      way === 'on the way' ? {} : { prepare: { ...TREE.steps['prepare'], go: 'pattern' } };
    const broken = { ...TREE.steps['broken'], retest: ['feed'] };
    const tree = { ...TREE, steps: { ...TREE.steps, ...start, broken } as Procedure['steps'] };
    const failing = [ready('feed'), again('feed', { value: 4, outcome: 'low' })];
    const rest = [ready('pattern'), look('full', 'full')];
    expect(retestVerdict(sessionAfter([...commands, ...failing, ...rest], tree))).toBe('not-cured');
  });

  test('follows the order the tests were done in, whatever the order in the file', () => {
    const session = sessionAfter([DONE, ACK, volts(4.2), ACK, sees('none'), CONCLUDE]);
    const procedure = session.opened.procedure!;
    const steps = Object.fromEntries(Object.entries(procedure.steps).reverse());
    const turned = {
      ...session,
      opened: { ...session.opened, procedure: { ...procedure, steps } },
    };
    for (const one of [session, turned])
      expect(retestLines(one).map(({ step }) => step.id)).toEqual(['feed', 'pattern']);
  });

  test('the cautions of the step are asked again, since the repair lies between', () => {
    expect(said(sessionAfter(CONCLUDED), look('full', 'full'))).toBe('caution-first');
    expect(said(sessionAfter(none), look('full', 'full'))).toBe('caution-first');
  });

  test('closing says what they said, and nothing while one is missing', () => {
    const words = (commands: readonly Command[]) => closeCommand(sessionAfter(commands));
    const close = (verdict: RepairVerdict) => ({
      type: 'close',
      verdict,
    });
    expect(words(none)).toEqual(close('no-retest'));
    expect(words([...none, ready('pattern'), look('full', 'full')])).toEqual(close('cured'));
    expect(words([...none, ready('pattern'), look('weak', 'none')])).toEqual(close('not-cured'));
    expect(new Set(Object.values(VERDICT_WORDS)).size).toBe(5);
    const closed = sessionAfter([...none, words(none)]);
    expect(closed).toMatchObject({ status: 'closed', closed: { verdict: 'no-retest' } });
  });
});

describe('which tests', () => {
  const feed = TREE.steps['feed'] as MeasureStep;

  test('not what is only done, though the conclusion names it', () => {
    expect(idsOf(CONCLUDED, withStep('broken', { retest: ['prepare', 'pattern'] }))).toEqual([
      'pattern',
    ]);
  });

  test('the named one of two that were done, though the other is the same test', () => {
    const twin = { ...feed, id: 'twin', outcomes: toPattern(feed) };
    const steps = { ...TREE.steps, twin, feed: { ...feed, outcomes: to(feed, 'twin') } };
    const done = [DONE, ACK, volts(5), volts(5), ACK, sees('none'), CONCLUDE];
    const naming = (retest: string[]) => ({
      ...TREE,
      steps: { ...steps, broken: { ...TREE.steps['broken'], retest } as Step },
    });
    expect(idsOf(done, naming(['feed']))).toEqual(['feed', 'pattern']);
    expect(idsOf(done, naming(['twin']))).toEqual(['twin', 'pattern']);
  });

  test('the one that was done instead of a named one that is the same test', () => {
    const twin = { ...feed, id: 'twin' };
    const broken = { ...TREE.steps['broken'], retest: ['twin'] } as Step;
    const tree = { ...TREE, steps: { ...TREE.steps, twin, broken } };
    expect(idsOf(CONCLUDED, tree)).toEqual(['feed', 'pattern']);
  });

  test('of steps that no instrument of the circuit reads none is the same test as another', () => {
    const plain = { probe: null, unit: 'Hz' };
    const twin = { ...feed, ...plain, id: 'twin' } as Step;
    const broken = { ...TREE.steps['broken'], retest: ['twin'] } as Step;
    const tree = withStep('feed', plain);
    expect(idsOf(CONCLUDED, { ...tree, steps: { ...tree.steps, twin, broken } })).toEqual([
      'pattern',
      'twin',
    ]);
  });

  test.each<[string, object, number, readonly string[]]>([
    ['a frequency outside the range', { unit: 'Hz', probe: null }, 4, ['feed', 'pattern']],
    ['a frequency within it', { unit: 'Hz', probe: null }, 5, ['pattern']],
    [
      'a frequency where none is expected',
      { unit: 'Hz', probe: null, expected: null },
      4,
      ['pattern'],
    ],
    ['volts above the range', { outcomes: toPattern(feed) }, 9, ['feed', 'pattern']],
    ['volts within what the meter may be off', {}, 4.7499, ['pattern']],
    ['volts where none are expected', { expected: null }, 4, ['pattern']],
  ])('%s', (_, part, value, ids) => {
    const commands = [DONE, ACK, volts(value), ACK, sees('none'), CONCLUDE];
    expect(idsOf(commands, withStep('feed', part))).toEqual(ids);
  });

  test('a look that is as in a sound circuit is not repeated, a question of the tree never', () => {
    const asked = withStep('pattern', { kind: 'ask', family: 'story', probe: undefined });
    expect(idsOf([...LOOK, sees('full'), CONCLUDE])).toEqual([]);
    expect(idsOf(CONCLUDED, asked)).toEqual([]);
    expect(isRepeatable(asked, stepOf(asked, 'pattern'))).toBe(false);
    expect(isRepeatable(TREE, stepOf(TREE, 'prepare'))).toBe(false);
    expect(isRepeatable(TREE, feed)).toBe(true);
  });
});

describe('a step that moves the harness', () => {
  const MOVED = {
    kind: 'ask',
    family: 'wiggle',
    probe: undefined,
    outcomes: [
      { name: 'drops', words: 'it drops out', go: 'broken' },
      { name: 'nothing', words: 'nothing changes', go: 'fine' },
      { name: 'unsure', words: 'hard to tell', go: 'fine' },
    ],
  };
  const tree = withStep('pattern', MOVED);
  const step = tree.steps['pattern'] as AskStep;
  const bent: Procedure = {
    ...tree,
    steps: { ...tree.steps, broken: { ...tree.steps['broken'], retest: [] } as Step },
  };

  test('is repeated when it woke the fault, and not when it did not', () => {
    expect(idsOf([...LOOK, sees('drops'), CONCLUDE], bent)).toEqual(['pattern']);
    expect(idsOf([...LOOK, sees('nothing'), CONCLUDE], bent)).toEqual([]);
  });

  test('passes when it wakes none', () => {
    const came = (outcome: string) => passes(tree, step, { value: null, look: null, outcome });
    expect([came('drops'), came('nothing'), came('unsure')]).toEqual([false, true, true]);
    expect(passingWords(tree, step)).toBe('nothing changes, or hard to tell');
  });

  test('is answered by its outcome, without a look', () => {
    expect(againCommand(step, { type: 'choose-outcome', outcome: 'nothing' })).toEqual({
      ...again('pattern', {}),
      outcome: 'nothing',
    });
  });
});

describe('an answer of the step, as the answer after the repair', () => {
  const feed = TREE.steps['feed'] as MeasureStep;
  const typed = (value: number): Command => ({ type: 'record-reading', typed: `${value}`, value });

  test('is the reading with the outcome it falls into', () => {
    expect(againCommand(feed, typed(4.2))).toEqual(
      again('feed', { typed: '4.2', value: 4.2, outcome: 'low' }),
    );
    expect(againCommand(feed, typed(Number.POSITIVE_INFINITY))).toMatchObject({
      value: null,
      outcome: 'high',
    });
    expect(againCommand(feed, typed(Number.NaN))).toBeNull();
  });

  test('is the look that was seen', () => {
    const pattern = TREE.steps['pattern'] as Step & { kind: 'look' };
    const seen: Command = { type: 'choose-outcome', outcome: 'none', look: 'weak' };
    expect(againCommand(pattern, seen)).toEqual(
      again('pattern', { look: 'weak', outcome: 'none' }),
    );
    expect(againCommand(pattern, typed(5))).toBeNull();
    expect(againCommand(pattern, PAUSE)).toBeNull();
  });

  test('brings its capture along', () => {
    const capture = { name: 'a.csv' } as never;
    expect(againCommand(feed, { ...typed(5), capture } as Command)).toHaveProperty(
      'capture',
      capture,
    );
    expect(againCommand(feed, typed(5))).not.toHaveProperty('capture');
  });
});

function to({ outcomes }: MeasureStep, go: string): MeasureStep['outcomes'] {
  return outcomes.map((outcome) => ({ ...outcome, go }));
}

function toPattern(step: MeasureStep): MeasureStep['outcomes'] {
  return to(step, 'pattern');
}
