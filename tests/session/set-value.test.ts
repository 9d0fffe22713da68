/** Values of the car that a person sets: what is kept, what is computed with, what is taken back. */
import { describe, expect, test } from 'vitest';
import { quantitiesOf } from '../../src/circuit/car-quantities.ts';
import { checkEvents } from '../../src/log/check-events.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionOpened, SetValue } from '../../src/session/events.ts';
import { evolve, openSession, replay } from '../../src/session/evolve.ts';
import { followAdvisor } from '../../src/session/follow-advisor.ts';
import { checkHistory } from '../../src/session/history.ts';
import {
  circuitAtStart,
  circuitOf,
  circuitThen,
  knownNow,
} from '../../src/session/known-circuit.ts';
import { readSaid } from '../../src/session/read-known.ts';
import { presentStep, type Session } from '../../src/session/session.ts';
import { modelFor } from '../../src/session/session-model.ts';
import { testToDo } from '../../src/session/session-tests.ts';
import { modelHere, stepThen } from '../../src/session/step-here.ts';
import { METER, volts as readsVolts, shipped } from '../circuit/shipped.ts';
import { opened, TREE, when } from './sample-tree.ts';
import { ACK, CONCLUDE, DONE, EXTRA, PAUSE, RESUME, sees, volts } from './shorthand.ts';

const CIRCUIT = shipped('hall-module-fed');
const FEED = readsVolts('sensor.feed');

/** The sample tree with the feed's range as the circuit computes it. */
function tree(): Procedure {
  const feed = TREE.steps['feed'];
  if (feed?.kind !== 'measure') throw new Error('the sample tree measures its feed');
  const expected = { low: 4.7, nominal: 5, high: 5.3, from: 'circuit' } as const;
  const limits = { low: [null, 4.7], good: [4.7, 5.3], high: [5.3, null] } as const;
  const outcomes = feed.outcomes.map((one) => {
    const [from, to] = limits[one.name as keyof typeof limits];
    return { ...one, from, to };
  });
  return { ...TREE, steps: { ...TREE.steps, feed: { ...feed, expected, outcomes } } };
}

function begin(part: Partial<SessionOpened> = {}, procedure: Procedure | null = tree()): Session {
  return openSession(opened(procedure, { circuit: CIRCUIT, meter: METER, ...part }));
}

function perform(session: Session, command: Command): Session {
  const decision = decide(session, command, when(session.events.length));
  if (!decision.ok) throw new Error(decision.refusal.code);
  return decision.events.reduce(evolve, session);
}

function said(what: string, is: string, from = 'label'): SetValue {
  const read = readSaid(CIRCUIT, { what, is, from });
  if (!('quantity' in read)) throw new Error(read.words);
  return read;
}

function sets(what: string, is: string, from?: string): Command {
  return { type: 'set-value', ...said(what, is, from) };
}

function sessionWith(...commands: readonly Command[]): Session {
  return commands.reduce(perform, begin());
}

/** What the file would be believed to hold. */
function reread(session: Session): Session | null {
  const stored = session.events.map((event, at) => ({
    ...event,
    seq: at + 1,
    prev: at === 0 ? null : '0'.repeat(64),
  }));
  const { events, flaw } = checkEvents(JSON.parse(JSON.stringify(stored)));
  expect(flaw).toBeNull();
  const history = checkHistory(events);
  expect(history.flaw).toBeNull();
  return replay(events);
}

const EIGHT = sets("voltage of the module's reference", '8 V +/- 3 %');

describe('a value that is set', () => {
  test('is kept with what was typed and from where, and the circuit is computed with it', () => {
    const session = sessionWith(EIGHT);
    expect(session.events.at(-1)).toMatchObject({
      type: 'value-set',
      quantity: 'module.reference.volts',
      is: { value: { nominal: 8, low: 7.76, high: 8.24 } },
      typed: '8 V +/- 3 %',
      from: { kind: 'label', words: '' },
    });
    const circuit = circuitOf(session);
    const value = circuit && quantitiesOf(circuit).find(({ key }) => key.endsWith('.volts'));
    expect(value?.value).toMatchObject({ nominal: 8 });
    expect(circuitOf(session)).toBe(circuit);
    expect(reread(session)).toEqual(session);
  });

  test('moves what is good at later steps and tests, and the way through the tree', () => {
    const reads = [DONE, ACK, volts(7.98)];
    const as = (session: Session) =>
      session.events.findLast(({ type }) => type === 'reading-recorded');
    expect(as(sessionWith(...reads))).toMatchObject({
      outcome: 'high',
      judgement: { verdict: 'high' },
    });
    const known = sessionWith(EIGHT, ...reads);
    expect(as(known)).toMatchObject({ outcome: 'good', judgement: { verdict: 'good' } });
    expect(reread(known)).toEqual(known);
    const model = modelFor(CIRCUIT, METER);
    const toDo = testToDo(sessionWith(EIGHT), model, FEED);
    expect('expected' in toDo && toDo.expected).toMatchObject({ low: expect.closeTo(7.6, 0) });
  });

  test('leaves what was read before as it was judged then', () => {
    const session = sessionWith(DONE, ACK, volts(7.98), EIGHT);
    const reading = session.events.find(({ type }) => type === 'reading-recorded')!;
    expect(reading).toMatchObject({ judgement: { verdict: 'high' } });
    expect(circuitThen(session, reading)).toBe(CIRCUIT);
    const step = session.opened.procedure!.steps['feed']!;
    expect(stepThen(session, step, reading)).toBe(step);
    expect(reread(session)).toEqual(session);
  });

  test('is taken back by going back, while it is what was done last', () => {
    const session = sessionWith(DONE, ACK, volts(5), EIGHT, sets('battery at rest', '12.4 V'));
    const once = perform(session, { type: 'go-back' });
    expect(once.events.at(-1)).toMatchObject({ type: 'value-taken-back', set: 6 });
    expect(knownNow(once).map(({ quantity }) => quantity)).toEqual(['module.reference.volts']);
    const twice = perform(once, { type: 'go-back' });
    expect(circuitOf(twice)).toBe(CIRCUIT);
    const thrice = perform(twice, { type: 'go-back' });
    expect(thrice.events.at(-1)).toMatchObject({ type: 'step-reopened', step: 'feed' });
    expect(reread(thrice)).toEqual(thrice);
  });

  test('gives way to a later word on the same thing, and to "unknown"', () => {
    const five = sessionWith(EIGHT, sets('module.reference.feed', '5 V'));
    expect(knownNow(five)).toMatchObject([{ typed: '5 V' }]);
    const none = perform(five, sets('module.reference.volts', 'unknown'));
    expect(circuitOf(none)).toBe(CIRCUIT);
    expect(knownNow(perform(none, { type: 'go-back' }))).toMatchObject([{ typed: '5 V' }]);
  });

  test('stands through a pause', () => {
    const session = sessionWith(EIGHT, PAUSE, RESUME);
    expect(knownNow(session)).toHaveLength(1);
    expect(reread(session)).toEqual(session);
  });

  test.each([
    ['on a drill', begin({ vehicle: DRILL() }), EIGHT, 'as-described'],
    ['without a circuit', begin({ circuit: null }), EIGHT, 'no-values'],
    [
      'of what the circuit does not have',
      begin(),
      { ...EIGHT, quantity: 'wire.feed' } as Command,
      'bad-value',
    ],
    [
      'in another unit',
      begin(),
      { ...EIGHT, is: { value: { nominal: 8, low: 8, high: 8, unit: 'ohm' } } } as Command,
      'bad-value',
    ],
  ])('is refused %s', (_, session, command, code) => {
    expect(() => perform(session, command)).toThrow(code);
  });

  test('is refused after the conclusion, and going back reopens', () => {
    const concluded = sessionWith(DONE, ACK, volts(5), ACK, sees('full'), EIGHT, CONCLUDE);
    expect(concluded.status).toBe('concluded');
    expect(() => perform(concluded, EIGHT)).toThrow('not-open');
    const back = perform(concluded, { type: 'go-back' });
    expect(back).toMatchObject({ status: 'open', concluded: null });
    expect(knownNow(back)).toEqual([]);
    expect(reread(back)).toEqual(back);
  });

  test('weighs every reading anew', () => {
    const fed = {
      ...EXTRA,
      test: FEED,
      typed: '7.98 V',
      shown: { kind: 'number', value: 7.98, unit: 'V' },
    } as Command;
    const session = perform(begin({}, null), fed);
    const model = modelFor(CIRCUIT, METER);
    const advisor = followAdvisor((now) => modelHere(now, model), session.opened);
    const before = advisor.diagnosis(session).car;
    const known = perform(session, EIGHT);
    const after = advisor.diagnosis(known).car;
    expect(after?.misfit.chance).toBeLessThan(before?.misfit.chance ?? 0);
    expect(advisor.suspects(known).rows).not.toEqual(advisor.suspects(session).rows);
    expect(advisor.diagnosis(known)).toBe(advisor.diagnosis(known));
    // Not set after all: the same object of the same state of knowledge.
    const undone = perform(known, { type: 'go-back' });
    expect(advisor.diagnosis(undone).suspects).toEqual(advisor.diagnosis(session).suspects);
  });
});

describe('what the job sheet knows', () => {
  const KNOWN = [said('battery at rest', '12.4 V', 'measured')];

  test('is in the circuit from the start, and the session can say otherwise', () => {
    const session = begin({ known: KNOWN, job: { ...emptyJob('x') } });
    expect(circuitOf(session)?.battery.rest.nominal).toBe(12.4);
    expect(circuitOf(session)).toBe(circuitAtStart(session.opened));
    const other = perform(session, sets('battery.rest', '11.9 V'));
    expect(circuitOf(other)?.battery.rest.nominal).toBe(11.9);
    expect(circuitAtStart(other.opened)?.battery.rest.nominal).toBe(12.4);
    expect(reread(other)).toEqual(other);
  });

  test('a step computed from the circuit is asked for this car', () => {
    const step = presentStep(
      perform(begin({ known: [said('module.reference.volts', '8 V')] }), DONE),
    );
    expect(step?.kind === 'measure' && step.expected?.low).toBeGreaterThan(7);
  });

  test('a forged one is told', () => {
    const session = begin({ known: [{ ...KNOWN[0]!, quantity: 'battery.colour' }] });
    expect(checkHistory(session.events).flaw?.words).toMatch(/battery\.colour/);
  });
});

function DRILL() {
  return {
    kind: 'drill',
    level: 'named',
    seed: 1,
    commitment: '0'.repeat(64),
    earlierRepair: null,
    assignment: null,
  } as const;
}

test('a value that nobody set cannot have been taken back', () => {
  const session = sessionWith(DONE);
  const forged = { type: 'value-taken-back', set: 2, at: session.opened.at, elapsed: 9 } as const;
  expect(checkHistory([...session.events, forged]).flaw?.seq).toBe(3);
});
