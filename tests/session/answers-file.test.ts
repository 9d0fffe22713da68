/** An answers file against the step that is asked; the steps are those of `sample-tree.ts`. */
import { describe, expect, it, test } from 'vitest';
import type { Better, Proposal } from '../../src/session/advisor.ts';
import {
  type AnswerContext,
  type AnswersFile,
  commandFor,
  loadAnswers,
} from '../../src/session/answers-file.ts';
import type { Command } from '../../src/session/command.ts';
import type { Session } from '../../src/session/session.ts';
import { vehicleCommand } from '../../src/session/vehicle-command.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';
import { library } from '../library/shipped.ts';
import { sessionAfter, TREE } from './sample-tree.ts';

function loaded(...lines: string[]): AnswersFile {
  const { value, issues } = loadAnswers(['answers:', ...lines].join('\n'), 'a.yaml');
  expect(issues).toEqual([]);
  return value!;
}

const ACCEPT: Better = { kind: 'accept' };
const ACK: Command = { type: 'acknowledge-cautions' };
const START = sessionAfter([]);
const FEED = sessionAfter([{ type: 'mark-done' }, ACK]);
const TO_LOOK: readonly Command[] = [
  { type: 'mark-done' },
  ACK,
  { type: 'record-reading', typed: '5', value: 5 },
  ACK,
];
const LOOK = sessionAfter([...TO_LOOK]);
const END = sessionAfter([...TO_LOOK, { type: 'choose-outcome', outcome: 'none' }]);
const nothing = { weigh: () => undefined, model: null };

describe('the file', () => {
  test('names its procedure, or leaves it to the command line', () => {
    const named = loadAnswers('procedure: sample\nanswers:\n  - done: true\n', 'a.yaml');
    expect(named.value?.procedure).toBe('sample');
    expect(loaded('  - done: true').procedure).toBeNull();
  });
  test.each([
    ['no YAML', 'answers: [\n'],
    ['not of the schema', 'answers:\n  - dome: true\n'],
    ['without answers', 'procedure: sample\n'],
    ['whose list comes twice', 'answers:\n  - done: true\nanswers:\n  - back: true\n'],
  ])('%s is refused with its place', (_, text) => {
    const { value, issues } = loadAnswers(text, 'a.yaml');
    expect(value).toBeNull();
    expect(issues.length).toBeGreaterThan(0);
    for (const issue of issues) expect(issue.at.file).toBe('a.yaml');
  });
});

describe('an answer is the command a person would give', () => {
  test.each<[string, Session, object]>([
    ['done: true', START, { type: 'mark-done' }],
    ['note: a remark', START, { type: 'add-note', text: 'a remark' }],
    ['back: true', START, { type: 'go-back' }],
    ['pause: true', START, { type: 'pause' }],
    ['cannot: no room', START, { type: 'cannot-do', reason: 'no room' }],
    ['acknowledge: true', START, { type: 'acknowledge-cautions' }],
    ['reading: 4.98 V', FEED, { type: 'record-reading', typed: '4.98 V', value: 4.98 }],
    ['reading: 5', FEED, { type: 'record-reading', typed: '5', value: 5 }],
    ['choose: none', LOOK, { type: 'choose-outcome', outcome: 'none' }],
    ['choose: weak', LOOK, { type: 'choose-outcome', outcome: 'none', look: 'weak' }],
    ['choose: full', LOOK, { type: 'choose-outcome', outcome: 'full', look: 'full' }],
    ['choose: weak', FEED, { type: 'choose-outcome', outcome: 'weak' }],
    ['conclude: true', END, { type: 'conclude' }],
    ['conclude: true', FEED, { type: 'conclude' }],
    ['{ step: prepare, done: true }', START, { type: 'mark-done' }],
  ])('%s', (line, session, command) => {
    expect(commandFor(loaded(`  - ${line}`), 0, session, nothing)).toEqual(command);
  });

  test('a conclusion is weighed with the faults it names', () => {
    const weighed = { evidence: [], ruledOut: [], proven: true, better: ACCEPT };
    const asked: unknown[] = [];
    const weigh: AnswerContext['weigh'] = (_, faults) => {
      asked.push(faults);
      return weighed;
    };
    const context = { weigh, model: null };
    const command = commandFor(loaded('  - conclude: true'), 0, END, context);
    expect(command).toEqual({ type: 'conclude', weighed });
    expect(asked).toEqual([['wire.signal.open']]);
    expect(commandFor(loaded('  - conclude: true'), 0, FEED, context)).toEqual({
      type: 'conclude',
    });
    const own = commandFor(loaded('  - faults: [wire.feed.open]'), 0, FEED, context);
    expect(own).toEqual({
      type: 'conclude',
      own: { words: null, faults: ['wire.feed.open'] },
      weighed,
    });
    expect(asked.at(-1)).toEqual(['wire.feed.open']);
  });

  describe('a conclusion that rests on one reading', () => {
    const model = modelOf('hall-module-fed');
    const test = {
      setup: { ...KEY_ON, unplugged: ['sensor'] },
      probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    } as const;
    const first: Proposal = {
      ...{ id: 'feed', words: 'Feed', test, step: null, minutes: 1, needs: [], shows: [] },
      ...{ why: '', bits: null, healthy: '', expected: { kind: 'number', low: 4.8, high: 5.2 } },
      ...{ kind: 'number', unit: 'V', looks: [], likely: null },
    };
    const weighed = { evidence: [], ruledOut: [], proven: false, hangsOn: 4, better: ACCEPT };
    const repeat = (proposal: Proposal): Better => ({
      kind: 'repeat',
      proposal,
      reading: 4,
      isOdd: false,
    });
    const context = { weigh: () => ({ ...weighed, better: repeat(first) }), model };
    const given = (line: string) => commandFor(loaded(`  - ${line}`), 0, END, context);

    it.each(['conclude: true', 'faults: [wire.feed.open]'])('%s asks for it again', (line) => {
      expect(given(line)).toMatchObject({
        code: 'rests-on-one-reading',
        severity: 'error',
        at: { file: 'a.yaml' },
        fix: expect.stringContaining('"accept: true"'),
      });
    });
    it('is accepted all the same where the file says so', () => {
      expect(given('{ conclude: true, accept: true }')).toMatchObject({
        type: 'conclude',
        weighed: { hangsOn: 4 },
      });
    });
    it('has the cautions of a test made again acknowledged with it', () => {
      const picture = {
        setup: { ...KEY_ON, state: 'cranking', target: 'moving' },
        probe: { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' },
      } as const;
      const look: Proposal = { ...first, test: picture, kind: 'look', looks: ['full'] };
      const turns = { ...context, weigh: () => ({ ...weighed, better: repeat(look) }) };
      const end = sessionAfter([...TO_LOOK, { type: 'choose-outcome', outcome: 'none' }], TREE, {
        cautionRules: library.cautions,
      });
      const told = (line: string) => commandFor(loaded(`  - ${line}`), 0, end, turns);
      expect(told('again: full')).toMatchObject({
        code: 'caution-first',
        fix: 'add "acknowledge: true" to this answer',
      });
      expect(told('{ again: full, acknowledge: true }')).toMatchObject({
        type: 'acknowledge-cautions',
        test: picture,
      });
    });
    it('has its reading made again, as any test is', () => {
      expect(given('again: 4.98 V')).toMatchObject({
        ...{ type: 'record-test', test, typed: '4.98 V' },
        shown: { kind: 'number', value: 4.98, unit: 'V' },
      });
      expect(given('again: five')).toMatchObject({ code: 'bad-reading' });
      expect(commandFor(loaded('  - again: 5 V'), 0, END, { ...context, weigh: () => weighed })) //
        .toMatchObject({ code: 'nothing-to-make-again' });
    });
  });

  describe('a conclusion that the readings do not bear out', () => {
    const row = (id: string) => ({ id, words: id, chance: 0.4 });
    const faults = [row('wire.feed.open'), row('wire.feed.resistive'), row(HEALTHY)];
    const weighed = { evidence: [], ruledOut: [], proven: false, hangsOn: null };
    const instead = { repair: 'wire.feed', words: 'Mend the feed wire.', chance: 0.8, faults };
    const first: Proposal = {
      ...{ id: 'ground', words: 'Ground', step: null, minutes: 1, needs: [], shows: [] },
      test: {
        setup: KEY_ON,
        probe: { kind: 'volts', plus: 'sensor.ground', minus: 'battery.negative' },
      },
      ...{ why: '', bits: 0.8, healthy: '', expected: { kind: 'number', low: 0, high: 0.1 } },
      ...{ kind: 'number', unit: 'V', looks: [], likely: null },
    };
    const FIRST: Better = { kind: 'first', proposal: first };
    const INSTEAD: Better = { kind: 'instead', row: instead };
    const given = (line: string, better: Better) =>
      commandFor(loaded(`  - ${line}`), 0, END, {
        weigh: () => ({ ...weighed, better }),
        model: modelOf('hall-module-fed'),
      });

    it.each([
      ['conclude: true', FIRST, 'again: READING'],
      ['faults: [wire.signal.open]', FIRST, 'again: READING'],
      // the faults of the other repair, and not that nothing is wrong
      ['conclude: true', INSTEAD, 'faults: [wire.feed.open, wire.feed.resistive]'],
    ])('%s is refused, and what is better is told', (line, better, told) => {
      const refused = given(line, better);
      expect(refused).toMatchObject({ code: 'not-borne-out', severity: 'error' });
      expect(refused).toMatchObject({ fix: expect.stringContaining(`"${told}"`) });
      expect(refused).toMatchObject({ fix: expect.stringContaining('"accept: true"') });
    });
    it('is accepted all the same where the file says so', () => {
      for (const better of [FIRST, INSTEAD])
        expect(given('{ conclude: true, accept: true }', better)).toMatchObject({
          type: 'conclude',
        });
    });
    it('is accepted where nothing is better, or only a proof is missing', () => {
      for (const better of [ACCEPT, { kind: 'prove', proposal: first } as const])
        expect(given('conclude: true', better)).toMatchObject({ type: 'conclude' });
    });
    it('has the test that tells most made by "again", where there is one', () => {
      expect(given('again: 20 mV', FIRST)).toMatchObject({
        ...{ type: 'record-test', test: first.test },
        shown: { kind: 'number', value: 0.02, unit: 'V' },
      });
      expect(given('again: 20 mV', INSTEAD)).toMatchObject({
        code: 'nothing-to-make-again',
      });
    });
  });

  describe('a test that no step asks for', () => {
    const model = modelOf('hall-module-fed');
    const context = { ...nothing, model };
    const given = (line: string, session = FEED) =>
      commandFor(loaded(`  - ${line}`), 0, session, context);
    const VOLTS = 'measure: volts sensor.feed battery.negative';

    test('is recorded with what it showed and what is good', () => {
      expect(given(`{ ${VOLTS}, reading: 4.98 V }`)).toMatchObject({
        type: 'record-test',
        test: { setup: { state: 'key-on' }, probe: { kind: 'volts', plus: 'sensor.feed' } },
        typed: '4.98 V',
        shown: { kind: 'number', value: 4.98, unit: 'V' },
        expected: { kind: 'number' },
      });
      const unplugged = given(`{ ${VOLTS}, unplug: [sensor], reading: OL }`);
      expect(unplugged).toMatchObject({
        shown: { value: null },
        test: { setup: { unplugged: ['sensor'] } },
      });
    });

    test('may have been made already, or be set aside', () => {
      const made = given(`{ ${VOLTS}, reading: 5 V, made: "14:05", note: on the charger }`);
      expect(made).toMatchObject({ type: 'record-test', made: '14:05', note: 'on the charger' });
      expect(given(`{ ${VOLTS}, aside: true }`)).toMatchObject({
        ...{ type: 'set-test-aside', aside: true },
        test: { probe: { plus: 'sensor.feed' } },
      });
    });

    test('all that needs a connector may be set aside', () => {
      expect(given('{ connector: sensor }')).toMatchObject({
        ...{ type: 'set-connector-aside', part: 'sensor', aside: true },
        reason: expect.stringMatching(/could not be reached$/),
      });
      expect(given('{ connector: sensor, cannot: behind the starter }')).toMatchObject({
        reason: 'behind the starter',
      });
      expect(given('{ connector: sensor, aside: false }')).toMatchObject({
        ...{ aside: false, reason: '' },
      });
    });

    test('all that needs a vehicle state may be set aside', () => {
      expect(given('{ no-state: cranking }')).toEqual({
        ...{ type: 'set-state-aside', state: 'cranking', aside: true },
        reason: 'the engine could not be cranked',
      });
      expect(given('{ no-state: running, cannot: no coolant }')).toMatchObject({
        ...{ state: 'running', reason: 'no coolant' },
      });
      expect(given('{ no-state: cranking, aside: false }')).toMatchObject({
        ...{ type: 'set-state-aside', aside: false, reason: '' },
      });
    });

    test('may be a look, or a standard test by its name', () => {
      const light = 'measure: light sensor.feed battery.negative';
      expect(given(`{ ${light}, choose: lit }`)).toMatchObject({
        shown: { kind: 'look', look: 'lit' },
        typed: '',
      });
      expect(given('{ test: sensor.feed.volts, reading: 5 V }')).toMatchObject({
        type: 'record-test',
      });
    });

    test.each([
      [`{ ${VOLTS} }`, 'empty-answer'],
      [`{ ${VOLTS}, reading: five }`, 'bad-reading'],
      ['{ measure: light sensor.feed battery.negative, choose: full }', 'empty-answer'],
      ['{ measure: ohms sensor.feed battery.negative, reading: 5 ohm }', 'refused-test'],
      ['{ measure: volts sensor.fed battery.negative, reading: 5 V }', 'refused-test'],
      ['{ test: nonsense, reading: 5 V }', 'unknown-test'],
      ['{ measure: nonsense, reading: 5 V }', 'bad-test'],
    ])('%s is told: %s', (line, code) => {
      expect(given(line)).toMatchObject({ code, severity: 'error' });
    });

    test('needs a circuit', () => {
      expect(commandFor(loaded(`  - { ${VOLTS}, reading: 5 V }`), 0, FEED, nothing)).toMatchObject({
        code: 'no-circuit',
      });
    });
  });
});

describe('an answer that does not fit is told at its line', () => {
  const CAUTION = sessionAfter([{ type: 'mark-done' }]);
  const TURNS = sessionAfter(TO_LOOK.slice(0, -1));
  const FIRST = 'put an answer "acknowledge: true" before this one';
  test.each<[string, Session, string, string, string | null]>([
    // answer, session, code, words, way out
    [
      '{ step: feed, done: true }',
      START,
      'other-step',
      'this answers step "feed", but "prepare" is asked',
      'put the answers in session order',
    ],
    [
      'reading: 5 V',
      CAUTION,
      'caution-first',
      'step "feed" has cautions to acknowledge: live',
      FIRST,
    ],
    [
      'customer: maybe',
      TURNS,
      'not-understood',
      'it does not begin with "authorised" or "declined"',
      'write who said it and how: authorised by R. Example, by telephone, up to 240 EUR',
    ],
    [
      'choose: full',
      TURNS,
      'caution-first',
      'step "pattern" has cautions to acknowledge: turns, live',
      FIRST,
    ],
    [
      'step: feed',
      FEED,
      'empty-answer',
      'this answers nothing',
      'give one of: reading, choose, captured, watched, measure, test, connector, no-state, again, done, cannot, acknowledge, known, place, note, customer, back, pause, conclude, faults, words',
    ],
    ['reading: 5 V', LOOK, 'wrong-kind', 'step "pattern" asks for no reading', null],
    [
      'reading: five',
      FEED,
      'bad-reading',
      '"five" is not a reading',
      'enter volts, for example 4.97 V or 18 mV',
    ],
    ['reading: "4."', FEED, 'bad-reading', 'this reading is empty or incomplete', null],
  ])('%s', (line, session, code, words, fix) => {
    const issue = commandFor(loaded('  - note: before', `  - ${line}`), 1, session, nothing);
    expect(issue).toEqual({
      code,
      severity: 'error',
      words,
      at: expect.objectContaining({ file: 'a.yaml', line: 3 }),
      ...(fix === null ? {} : { fix }),
    });
  });
  test('what needs no reading of cautions may come before them', () => {
    const file = loaded('  - note: still here');
    expect(commandFor(file, 0, CAUTION, nothing)).toMatchObject({ type: 'add-note' });
  });
});

describe('what a simulated vehicle answers', () => {
  const feed = TREE.steps['feed']!;
  const pattern = TREE.steps['pattern']!;
  test.each<[string, Parameters<typeof vehicleCommand>, object | null]>([
    [
      'done',
      [TREE.steps['prepare']!, { words: '', answer: { kind: 'done' } }],
      { type: 'mark-done' },
    ],
    [
      'a look',
      [pattern, { words: '', answer: { kind: 'outcome', outcome: 'none', look: 'weak' } }],
      { type: 'choose-outcome', outcome: 'none', look: 'weak' },
    ],
    [
      'an answer without a look',
      [pattern, { words: '', answer: { kind: 'outcome', outcome: 'none', look: null } }],
      { type: 'choose-outcome', outcome: 'none' },
    ],
    [
      'a reading',
      [feed, { words: '', answer: { kind: 'reading', typed: '4.98 V', value: 4.98 } }],
      { type: 'record-reading', typed: '4.98 V', value: 4.98 },
    ],
    [
      'a reading where none is asked',
      [pattern, { words: '', answer: { kind: 'reading', typed: '4.98 V', value: 4.98 } }],
      null,
    ],
  ])('%s', (_, [step, shown], command) => {
    expect(vehicleCommand(step, shown)).toEqual(command);
  });
});

const issuesOf = (text: string) =>
  loadAnswers(text, 'test.yaml').issues.map(
    ({ code, at, words }) => `${code} ${at.line}:${at.column} ${words}`,
  );
const withNote = (length: number) =>
  `answers:\n  - { done: true }\n  - note: ${'a'.repeat(length)}\n`;

describe('an answers file', () => {
  it('holds notes of 2,000 letters', () => {
    expect(issuesOf(withNote(2000))).toEqual([]);
  });

  it('tells the place of a longer one', () => {
    expect(issuesOf(withNote(2001))).toEqual([
      'out-of-bounds 3:11 "answers.1.note" must have at most 2000 letters',
    ]);
  });

  it('holds no endless reason for what cannot be done', () => {
    expect(issuesOf(`answers:\n  - cannot: ${'a'.repeat(2001)}\n`)).toEqual([
      'out-of-bounds 2:13 "answers.0.cannot" must have at most 2000 letters',
    ]);
  });
});

describe('a value of the car', () => {
  const HALL = sessionAfter([], TREE, { circuit: modelOf('hall-module-fed').circuit });
  const entry = (what: string, is: string, from: string) =>
    loaded('  - known:', `      what: ${what}`, `      is: ${is}`, `      from: ${from}`);

  test('is set as a person would set it', () => {
    const file = entry('battery at rest', '12.4 V', 'measured at the post');
    expect(commandFor(file, 0, HALL, nothing)).toMatchObject({
      type: 'set-value',
      quantity: 'battery.rest',
      is: { value: { nominal: 12.4 } },
      from: { kind: 'measured', words: 'at the post' },
    });
  });

  test.each([
    ['battery at rst', '12.4 V', 'measured', 'unknown-quantity', 3],
    ['battery at rest', '12.4 ohm', 'measured', 'bad-value', 4],
    ['battery at rest', '1200 V', 'measured', 'out-of-reason', 4],
    ['battery at rest', '12.4 V', 'a guess', 'unknown-source', 5],
  ])('%s, %s from %s is told at its line', (what, is, from, code, line) => {
    const found = commandFor(entry(what, is, from), 0, HALL, nothing);
    expect(found).toMatchObject({ code, at: { line }, fix: expect.stringMatching(/./) });
  });

  test('is not asked for where there is no circuit', () => {
    const found = commandFor(entry('battery at rest', '12.4 V', 'label'), 0, START, nothing);
    expect(found).toMatchObject({ code: 'no-circuit' });
  });
});
