/** What is better than a conclusion that the readings do not bear out: a test first, or another repair instead. */
import { beforeAll, expect, it } from 'vitest';
import type { Look, Test } from '../../src/circuit/test.ts';
import { concludedOn, isHeldUp } from '../../src/session/advisor.ts';
import type { Session } from '../../src/session/session.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { after, beginWith, done, type Shop, shopFor } from './walk-library.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

const WIRE = 'wire.signal.open';
/** The wire with all that is before it, as the plug sees it. */
const SEVERAL = [
  WIRE,
  'contact.module.signal.open',
  'contact.module.signal.resistive',
  'module.signal.pull-missing',
];
const volts = (plus: string, minus: string, setup = KEY_ON): Test => ({
  setup,
  probe: { kind: 'volts', plus, minus },
});
const PULLED = setupOf({
  unplugged: ['sensor'],
  bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: { ohms: 330 } }],
});

/** What a broken signal wire shows at the battery, the feed, both ends of the wire; those at `places`, in that order. */
function wireRead(session: Session, places: readonly number[] = [0, 1, 2, 3]): Session {
  const readings: [Test, number][] = [
    [volts('battery.positive', 'battery.negative'), 13],
    [volts('sensor.feed', 'sensor.ground'), 4.92],
    [volts('sensor.signal', 'battery.negative', PULLED), 0],
    [volts('module.signal', 'sensor.signal', PULLED), 4.93],
  ];
  return places.reduce((now, place) => {
    const [test, value] = readings[place]!;
    return after(now, {
      ...{ type: 'record-test', test, typed: `${value} V`, expected: null },
      shown: { kind: 'number', value, unit: 'V' },
    });
  }, session);
}

it('is the test that tells most, before anything was read', () => {
  const { advisor, begun } = shop;
  const weighed = advisor.weigh(begun, [WIRE]);
  expect(weighed.chance).toBeLessThan(0.5);
  // It rests on no reading: there is none.
  expect(weighed.hangsOn).toBeNull();
  const [first] = advisor.nextTests(begun);
  expect(weighed.better).toEqual({ kind: 'first', proposal: first });
  // What is said to come first stands first in the list that is shown below it, and once.
  const listed = weighed.wouldProve.map(({ id }) => id);
  expect(listed.indexOf(first!.id)).toBe(0);
  expect(new Set(listed).size).toBe(listed.length);
});

it('is the other repair where no test is left, and nothing for that repair itself', () => {
  const { advisor, linked } = shop;
  // Nothing at hand but eyes: what they can see is looked at, as long as it tells anything.
  let session = wireRead(beginWith(linked, undefined, []));
  for (let looks = 0; looks < 8 && advisor.nextTests(session).length > 0; looks += 1)
    session = done(shop, session, WIRE, advisor.nextTests(session)[0]!);
  expect(advisor.nextTests(session)).toEqual([]);
  const wrong = advisor.weigh(session, ['sensor.dead']);
  expect(wrong.chance).toBeLessThan(0.1);
  expect(wrong.hangsOn).toBeNull();
  const [leader] = advisor.suspects(session).rows;
  expect(wrong.better).toEqual({ kind: 'instead', row: leader });
  expect(leader!.faults.map(({ id }) => id)).toContain(WIRE);
  const right = advisor.weigh(session, [WIRE]);
  expect(right.chance).toBeGreaterThan(0.9);
  expect(isHeldUp(right)).toBe(false);
});

it('is the other repair before any test, where the readings bear that one out', () => {
  const { advisor, begun } = shop;
  const session = wireRead(begun);
  expect(advisor.nextTests(session)).not.toEqual([]);
  const [leader] = advisor.suspects(session).rows;
  expect(leader!.chance).toBeGreaterThan(0.8);
  expect(advisor.weigh(session, ['sensor.dead'])).toMatchObject({
    better: { kind: 'instead', row: leader },
  });
});

it('is a test, and no proof, where a conclusion leaves more than three repairs', () => {
  const { advisor, begun, model } = shop;
  const everything = model.circuit.faults.map(({ id }) => id);
  const wide = advisor.weigh(begun, everything);
  expect(wide.chance).toBeGreaterThan(0.9);
  expect(wide).toMatchObject({ support: 'too-many', proven: false });
  expect(wide.better).toEqual({ kind: 'first', proposal: advisor.nextTests(begun)[0] });
  const read = advisor.weigh(wireRead(begun), everything);
  expect(read.support).toBe('borne-out');
  const [leader] = advisor.suspects(wireRead(begun)).rows;
  expect(read.better).toEqual({ kind: 'instead', row: leader });
});

it('is a test that may leave fewer repairs, and holds nothing up, where a conclusion stands and leaves several', () => {
  const { advisor, begun } = shop;
  // No pull-up arrives at the plug, read twice: the wire, or what stands before it.
  const session = wireRead(begun, [0, 1, 2, 2]);
  const several = advisor.weigh(session, SEVERAL);
  expect(several.support).toBe('borne-out');
  expect(several.hangsOn).toBeNull();
  expect(several.better).toEqual({ kind: 'narrow', proposal: advisor.nextTests(session)[0] });
  expect(isHeldUp(several)).toBe(false);
  // One repair is as few as can be.
  const one = advisor.weigh(wireRead(begun), [WIRE]);
  expect(one.better.kind).not.toBe('narrow');
});

it('is the test that tells most, and no reading once more, where hardly more than half speaks for a conclusion', () => {
  const { advisor, begun } = shop;
  // With so little it hangs on nearly every reading: each would be asked for again.
  const session = wireRead(begun, [1, 2]);
  const wire = advisor.weigh(session, [WIRE]);
  expect(wire.support).toBe('unlikely');
  expect(wire.hangsOn).not.toBeNull();
  expect(wire.better).toEqual({ kind: 'first', proposal: advisor.nextTests(session)[0] });
  // The same reading, where the conclusion stands but for it, is the one to repeat.
  const both = advisor.weigh(session, [WIRE, 'contact.module.signal.open']);
  expect(both.hangsOn).toBe(wire.hangsOn);
  expect(both.better.kind).toBe('repeat');
});

it('is nothing wrong in words, since that names no fault', () => {
  const row = { repair: 'healthy', words: 'Nothing is wrong.', chance: 0.9 };
  const faults = [{ id: 'healthy', words: 'nothing is wrong', chance: 0.9 }];
  expect(concludedOn({ ...row, faults })).toEqual({ words: row.words, faults: [] });
  const broken = [{ id: WIRE, words: 'the wire is broken', chance: 0.9 }];
  expect(concludedOn({ ...row, faults: broken })).toEqual({ words: null, faults: [WIRE] });
});

/** After every test that tells anything about a dead sensor with these instruments. */
function toldAll(instruments: readonly string[]): Session {
  const { advisor, linked } = shop;
  let session = beginWith(linked, undefined, instruments);
  for (let made = 0; made < 12 && advisor.nextTests(session).length > 0; made += 1)
    session = done(shop, session, 'sensor.dead', advisor.nextTests(session)[0]!);
  expect(advisor.nextTests(session)).toEqual([]);
  return session;
}

it('is the few that lead together where no test is left to tell them apart', () => {
  const { advisor } = shop;
  const session = toldAll(['meter']);
  const { rows } = advisor.suspects(session);
  const { better } = advisor.weigh(session, [WIRE]);
  const instead = better.kind === 'instead' ? better.row : null;
  expect(rows[0]!.chance).toBeLessThan(0.8);
  const group = rows.filter(({ faults }) => instead?.faults.includes(faults[0]!));
  expect(group.length).toBeGreaterThan(1);
  expect(group).toEqual(rows.slice(0, group.length));
  expect(instead?.words).toBe(group.map(({ words }) => words).join(' Or: '));
  expect(instead?.chance).toBeCloseTo(group.reduce((sum, { chance }) => sum + chance, 0));
  expect(instead?.chance).toBeGreaterThan(0.8);
  // Nobody can say which: then one in ten is not left out for brevity.
  const isEnough =
    instead!.chance >= 0.95 || group.length === 3 || rows[group.length]!.chance < 0.02;
  expect(isEnough, group.map(({ repair, chance }) => `${repair} ${chance}`).join()).toBe(true);
});

it('is nothing where three repairs together are not likely enough', () => {
  const session = toldAll([]);
  expect(isHeldUp(shop.advisor.weigh(session, [WIRE]))).toBe(false);
});

it('is the reading that it rests on once, and not among the others again', () => {
  const { advisor, begun } = shop;
  const once = advisor.weigh(wireRead(begun, [0, 1, 2]), SEVERAL);
  expect(once.hangsOn).not.toBeNull();
  expect(once.better).toEqual({
    ...{ kind: 'repeat', proposal: once.wouldProve[0] },
    ...{ reading: once.hangsOn, isOdd: false },
  });
  const words = once.wouldProve.map((one) => one.words);
  expect(new Set(words).size).toBe(words.length);
});

it('is a cheaper test that would show the same, where the reading that it rests on takes long', () => {
  const { advisor, begun } = shop;
  const setup = setupOf({ state: 'cranking', target: 'moving' });
  const probe = { kind: 'timing', plus: 'module.signal', minus: 'battery.negative' } as const;
  const shifted = after(begun, {
    ...{ type: 'record-test', test: { setup, probe }, typed: '', expected: null },
    shown: { kind: 'look', look: 'shifted' },
  });
  const { hangsOn, better, wouldProve } = advisor.weigh(shifted, ['target.displaced']);
  expect(hangsOn).not.toBeNull();
  expect(better).toMatchObject({ kind: 'first', proposal: { id: wouldProve[0]!.id } });
  const again = wouldProve.find(({ test }) => test.probe.kind === 'timing');
  expect(wouldProve[0]).not.toBe(again);
  expect(new Set(wouldProve.map(({ id }) => id)).size).toBe(wouldProve.length);
});

it('is the one reading that does not fit what leads, once more', () => {
  const { advisor, begun } = shop;
  const CRANKING = setupOf({ state: 'cranking', target: 'moving' });
  const scope = (setup: Test['setup']): Test => ({
    setup,
    probe: { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' },
  });
  const live = (setup: Test['setup']): Test => ({
    setup,
    probe: { kind: 'counts', input: 'module.signal' },
  });
  const spare = { ...CRANKING, sensor: 'spare' } as const;
  const looks: readonly (readonly [Test, Look])[] = [
    [scope(CRANKING), 'flat-low'],
    [scope(spare), 'full'],
    [live(spare), 'still'],
    [{ setup: setupOf({}), probe: { kind: 'inspect', of: 'connector.sensor' } }, 'sound'],
  ];
  const session = looks.reduce(
    (now, [test, look]) =>
      after(now, {
        ...{ type: 'record-test', test, typed: '', expected: null },
        shown: { kind: 'look', look },
      }),
    wireRead(begun, [0, 1]),
  );
  const { better } = advisor.weigh(session, ['sensor.stuck-low']);
  expect(better).toMatchObject({ kind: 'repeat', isOdd: true });
  expect(better.kind === 'repeat' && better.proposal.test).toEqual(live(spare));
  const again = after(session, {
    ...{ type: 'record-test', test: live(spare), typed: '', expected: null },
    shown: { kind: 'look', look: 'follows' },
  });
  expect(advisor.weigh(again, ['sensor.stuck-low']).better).not.toMatchObject({ isOdd: true });
});
