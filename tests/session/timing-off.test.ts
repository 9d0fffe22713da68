/** With the timing off, or not looked at, nothing is proposed that turns the engine, and what a person wants all the same says so first. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Look, Test } from '../../src/circuit/test.ts';
import { decide } from '../../src/session/decide.ts';
import { RULES, SESSION_FORMAT } from '../../src/session/events.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { pendingCautions, pendingTestCautions } from '../../src/session/pending-cautions.ts';
import { presentStep, type Session } from '../../src/session/session.ts';
import { isTimingOff } from '../../src/session/timing-off.ts';
import { setupOf } from '../circuit/setup.ts';
import { LIBRARY_CAUTIONS } from './library-cautions.ts';
import { when } from './sample-tree.ts';
import { after, type Shop, shopFor, walkOn } from './walk-library.ts';

let shop: Shop;
let begun: Session;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
  begun = openSession({ ...shop.begun.opened, cautionRules: LIBRARY_CAUTIONS });
});

const MARKS: Test = {
  setup: setupOf({ state: 'key-off' }),
  probe: { kind: 'inspect', of: 'target.marks' },
};
const COUNTS: Test = {
  setup: setupOf({ state: 'cranking', target: 'moving' }),
  probe: { kind: 'counts', input: 'module.signal' },
};
const POSITION: Test = {
  setup: setupOf({ state: 'cranking', target: 'moving' }),
  probe: { kind: 'timing', plus: 'module.signal', minus: 'battery.negative' },
};
const AT_REST: Test = {
  setup: setupOf({}),
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};

function read(session: Session, test: Test): Session {
  return pendingTestCautions(session, test).length === 0
    ? session
    : after(session, { type: 'acknowledge-cautions', test });
}

function record(session: Session, test: Test, look: Look): Session {
  const shown = { kind: 'look', look } as const;
  return after(read(session, test), {
    ...{ type: 'record-test', test, typed: '', expected: null, shown },
  });
}

const marks = (session: Session, look: 'faulty' | 'sound') => record(session, MARKS, look);
const position = (session: Session, look: 'in-step' | 'shifted' | 'no-signal') =>
  record(session, POSITION, look);
const answered = (moved: number | string) =>
  walkOn(shop, begun, 'target.displaced', { 'timing/signs': 'some', 'timing/marks': moved });

describe('the timing is off', () => {
  it.each<[string, () => Session, boolean]>([
    ['as nothing was said of it', () => begun, false],
    ['as the marks were off', () => marks(begun, 'faulty'), true],
    ['no more once they were found right', () => marks(marks(begun, 'faulty'), 'sound'), false],
    ['again once they were off after that', () => marks(marks(begun, 'sound'), 'faulty'), true],
    ['as an answer of the tree says so', () => answered('moved'), true],
    [
      'as far as anybody knows, where the tree asks to look and nobody can',
      () => answered('cannot'),
      true,
    ],
    [
      'no more once somebody could look all the same',
      () => marks(answered('cannot'), 'sound'),
      false,
    ],
    ['as the signal was shifted', () => position(begun, 'shifted'), true],
    [
      'no more once the marks were found right after that',
      () => marks(position(begun, 'shifted'), 'sound'),
      false,
    ],
    [
      'not where the marks had been found right: then it is the wheel of the sensor alone',
      () => position(marks(begun, 'sound'), 'shifted'),
      false,
    ],
    [
      'no more once the signal was in step again',
      () => position(position(begun, 'shifted'), 'in-step'),
      false,
    ],
    [
      'still, where there was no signal then',
      () => position(position(begun, 'shifted'), 'no-signal'),
      true,
    ],
    [
      'still, where marks were off and the signal looked in step',
      () => position(marks(begun, 'faulty'), 'in-step'),
      true,
    ],
    [
      'where nothing points to it',
      () => walkOn(shop, begun, 'wire.signal.open', { 'timing/signs': 'none' }),
      false,
    ],
  ])('%s', (_, session, isOff) => {
    expect(isTimingOff(session())).toBe(isOff);
  });
});

it("a shift holds nothing back in a file of earlier rules, until today's go on with it", () => {
  const earlier = openSession({ ...begun.opened, rules: 15 });
  const shifted = position(earlier, 'shifted');
  expect(isTimingOff(shifted)).toBe(false);
  const resumed = evolve(shifted, {
    ...{ type: 'session-resumed', format: SESSION_FORMAT, rules: RULES },
    ...{ program: 'ohmward test', by: 'person' },
    ...when(9),
  });
  expect(isTimingOff(resumed)).toBe(true);
});

describe('with the timing off', () => {
  const turning = (session: Session) => {
    const { nextTests, furtherTests } = shop.advisor.diagnosis(session);
    const { wouldProve } = shop.advisor.weigh(session, ['target.displaced']);
    return [...nextTests, ...furtherTests, ...wouldProve].filter(
      ({ test }) => test.setup.state === 'cranking' || test.setup.state === 'running',
    );
  };

  it('no test is proposed that turns the engine, until the marks were found right', () => {
    const off = marks(begun, 'faulty');
    expect(turning(begun)).not.toEqual([]);
    expect(turning(off)).toEqual([]);
    expect(turning(marks(off, 'sound'))).not.toEqual([]);
  });

  it('no more where an answer of the tree says so, or that nobody could look', () => {
    expect(presentStep(answered('moved'))!.id).toBe('wheel-displaced');
    expect(turning(answered('moved'))).toEqual([]);
    expect(presentStep(answered('cannot'))!.id).toBe('timing-unseen');
    expect(turning(answered('cannot'))).toEqual([]);
  });

  it('what a person wants all the same says what can break before it takes an answer', () => {
    const ids = (session: Session, test: Test) =>
      pendingTestCautions(session, test).map(({ id }) => id);
    expect(ids(begun, COUNTS)).not.toContain('timing-off');
    const off = marks(begun, 'faulty');
    expect(ids(off, COUNTS)).toContain('timing-off');
    expect(ids(off, AT_REST)).not.toContain('timing-off');
    const shown = { kind: 'look', look: 'follows' } as const;
    const said = decide(
      off,
      { type: 'record-test', test: COUNTS, typed: '', expected: null, shown },
      when(1),
    );
    expect(said.ok ? null : said.refusal.code).toBe('caution-first');
    // Other cautions of cranking were read before, at an earlier cranking.
    const later = marks(record(begun, COUNTS, 'follows'), 'faulty');
    expect(ids(later, COUNTS)).toEqual(['timing-off']);
    const texts = read(later, COUNTS)
      .acknowledgements.at(-1)!
      .cautions.map(({ text }) => text);
    expect(texts).toEqual([expect.stringContaining('valves hit pistons')]);
  });

  it('a step of the tree that cranks says so too', () => {
    const cranks = Object.values(shop.linked.procedure.steps).find(
      (step) => step.kind !== 'conclude' && step.setup.state === 'cranking',
    )!;
    const ids = (session: Session) => pendingCautions(session, cranks).map(({ id }) => id);
    expect(ids(begun)).not.toContain('timing-off');
    expect(ids(marks(begun, 'faulty'))).toContain('timing-off');
  });
});

describe('an answer of the tree that marks are off', () => {
  it('counts as the look at the marks does', () => {
    const chanceOf = (session: Session) =>
      shop.advisor
        .suspects(session)
        .rows.flatMap(({ faults }) => faults)
        .find(({ id }) => id === 'target.displaced')!.chance;
    const before = chanceOf(begun);
    const said = chanceOf(answered('moved'));
    expect(said).toBeGreaterThan(8 * before);
    expect(said).toBeCloseTo(chanceOf(marks(begun, 'faulty')), 1);
  });
});
