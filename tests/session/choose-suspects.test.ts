import { isDeepStrictEqual } from 'node:util';
/** Which suspects a session is about, how likely each is at first, and what two of them show together. */
import { describe, expect, it } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import { UnsolvedCircuit } from '../../src/circuit/sample-solver.ts';
import type { Shown, Test } from '../../src/circuit/test.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { chooseSuspects, judgingSuspects } from '../../src/session/choose-suspects.ts';
import type { DrillVehicle, LevelName } from '../../src/session/events.ts';
import { faultPairs } from '../../src/session/fault-pairs.ts';
import type { Session } from '../../src/session/session.ts';
import type { SuspectSpace } from '../../src/session/suspect-space.ts';
import { testTable } from '../../src/session/test-table.ts';
import { drawn } from '../../src/suspects/cloud.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { setupOf } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';
import { WAKING } from './waking-tree.ts';

const model = modelOf('hall-module-fed', 8);
const { faults } = model.circuit;
const begun = sessionAfter([], WAKING);

/** A session of this job; SAE J2012 names P0339 intermittent, P0335 circuit and P0337 low. */
function sessionOf(job: Job): Session {
  return { ...begun, opened: { ...begun.opened, job } };
}
function jobOf(codes: string[], replaced: (string | null)[] = []): Job {
  const earlierRepairs = replaced.map((part) => ({ words: 'a repair', part }));
  return { ...emptyJob('stalls'), codes, earlierRepairs };
}
function spaceOf(job: Job, of: Model = model): SuspectSpace {
  const session = sessionOf(job);
  return chooseSuspects(of, session.opened)(session);
}
const idsOf = ({ table }: SuspectSpace) => table.candidates.map(({ id }) => id);
const priorOf = ({ table, prior }: SuspectSpace, id: string) =>
  prior[table.candidates.findIndex((candidate) => candidate.id === id)]!;

/** With the sensor unplugged where the wheel stands changes nothing. */
const AT_PLUG: Test = {
  setup: setupOf({ unplugged: ['sensor'] }),
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};

const STAYING = spaceOf(jobOf([]));
const FLEETING = spaceOf(jobOf(['P0339']));

describe('the suspects', () => {
  it('are the faults that stay and the healthy circuit, where nobody speaks of others', () => {
    expect(idsOf(STAYING)).toEqual([...faults.map(({ id }) => id), 'healthy']);
    expect(idsOf(spaceOf(jobOf(['P0335'])))).toEqual(idsOf(STAYING));
  });

  it('are those that come and go as well, where somebody does', () => {
    const others = idsOf(FLEETING).filter((id) => !idsOf(STAYING).includes(id));
    const can = faults.filter((fault) => fault.class !== 'target');
    expect(others).toEqual(can.flatMap(({ id }) => [`${id}~`, `${id}~~`]));
    expect(can.length).toBeLessThan(faults.length);
  });

  it('are made once for each of the two, and kept', () => {
    const choose = chooseSuspects(model, begun.opened);
    const [plain, speaking] = [jobOf([]), jobOf(['P0339'])].map(sessionOf);
    const spaces = [plain, speaking, plain, speaking].map((session) => choose(session!));
    expect(spaces[2]).toBe(spaces[0]);
    expect(spaces[3]).toBe(spaces[1]);
    expect(spaces[1]).not.toBe(spaces[0]);
  });

  it('are shared with every session of the same job over the same model, and with no other', () => {
    expect(spaceOf(jobOf(['P0335']))).toBe(spaceOf(jobOf(['P0335'])));
    expect(spaceOf(jobOf(['P0335']))).not.toBe(spaceOf(jobOf(['P0337'])));
    expect(spaceOf(jobOf([], ['sensor']))).not.toBe(spaceOf(jobOf([])));
    expect(spaceOf(jobOf([]), { ...model })).not.toBe(spaceOf(jobOf([])));
  });
});

describe('the tests', () => {
  const { entries } = testTable(model.circuit, WAKING, model.meter);
  const ids = entries.map(({ id }) => id);
  const tests = ({ table }: SuspectSpace) => table.tests.map(({ id }) => id);
  it('are those of the procedure and the circuit', () => {
    expect(ids).toContain('feed');
    expect(ids.length).toBeGreaterThan(10);
    expect(tests(STAYING)).toEqual(ids);
    expect(STAYING.placeOfWaking('wiggle: plug')).toBe(null);
  });

  it('are made with the harness moved, and the places that are moved or warmed as well, for faults that come and go', () => {
    // Eyes see them so, nobody reaches into the engine while it is cranked, and the battery's posts have no harness.
    const moved = entries.map(({ id, test: { probe, setup }, reads }) =>
      probe.kind === 'inspect' || setup.state === 'cranking' || reads?.length === 0
        ? id
        : `${id}, moved`,
    );
    expect(moved.filter((id, at) => id !== ids[at]).length).toBeGreaterThan(10);
    expect(tests(FLEETING)).toEqual([...moved, 'wiggle: plug', 'wiggle: harness', 'heat: drops']);
    expect(FLEETING.placeOfWaking('wiggle: plug')).toBe(ids.length);
  });

  it('are planned over 32 cars, however many samples the model has', () => {
    const samples = (count: number, codes: string[]) =>
      spaceOf(jobOf(codes), { ...model, samples: count }).table.samples;
    for (const codes of [[], ['P0339']])
      expect([8, 32, 64].map((count) => samples(count, codes))).toEqual([32, 32, 32]);
  });

  it('show what the model shows in its cars; of a fault that comes and goes mostly what is healthy', () => {
    const OPEN = 'wire.feed.open';
    const shown = (space: SuspectSpace, id: string) =>
      space.table.shown(space.placeOf(AT_PLUG)!, idsOf(space).indexOf(id));
    // Of 96 cars 32 stand for them, evenly drawn, or of a suspect below 2 % eight, four times each.
    const values = (space: SuspectSpace, candidate: string, id: string) => {
      const each = priorOf(space, candidate) < 0.02 ? 4 : 1;
      const cars = drawn(new Float64Array(96).fill(1 / 96), 32 / each, 0.5);
      return Array.from({ length: 32 }, (_, at) =>
        model.showsAt(id, AT_PLUG, model.pointOf(cars[Math.floor(at / each)]!, OPEN)),
      );
    };
    expect(shown(STAYING, OPEN)).toEqual(values(STAYING, OPEN, OPEN));
    expect(shown(FLEETING, OPEN)).toEqual(values(FLEETING, OPEN, OPEN));
    // Of the sound circuit's 96 cars 32 are lent, evenly drawn, and of those a suspect below 2 % has eight as above.
    const even = (from: number, count: number) =>
      drawn(new Float64Array(from).fill(1 / from), count, 0.5);
    const lent = even(96, 32);
    const onLent = (id: string) =>
      Array.from({ length: 32 }, (_, at) =>
        model.showsAt(id, AT_PLUG, model.pointOf(lent[even(32, 8)[Math.floor(at / 4)]!]!, HEALTHY)),
      );
    const now = shown(FLEETING, `${OPEN}~`);
    const there = onLent(OPEN);
    const sound = onLent(HEALTHY);
    const isThere = now.map((one, at) => isDeepStrictEqual(one, there[at]));
    expect(now).toEqual(now.map((_, at) => (isThere[at] ? there[at] : sound[at])));
    // One in five in the mean.
    const share = isThere.filter(Boolean).length / now.length;
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.4);
    expect(values(STAYING, OPEN, HEALTHY)).not.toEqual(values(STAYING, OPEN, OPEN));
  });
});

const rise = (before: SuspectSpace, after: SuspectSpace, id: string, against: string) =>
  priorOf(after, id) / priorOf(after, against) / (priorOf(before, id) / priorOf(before, against));

describe('the chances before any reading', () => {
  it('sink tenfold for a part that was replaced; a repair without a part says nothing', () => {
    const replaced = spaceOf(jobOf([], ['sensor', null]));
    const sensor = faults.find(({ repair }) => repair === 'sensor.replace')!.id;
    expect(rise(STAYING, replaced, sensor, 'wire.signal.open')).toBeCloseTo(0.1, 9);
    const none = spaceOf(jobOf([], [null]));
    expect(rise(STAYING, none, sensor, 'wire.signal.open')).toBeCloseTo(1, 9);
  });

  it('follow the kind of the code by what the module sees of each fault', () => {
    // by hand: 0.05 + 0.95 · 0.8 for a line that lies low, 0.05 + 0.95 · 0.05 for one that lies high
    const low = spaceOf(jobOf(['P0337']));
    expect(rise(STAYING, low, 'wire.signal.short-to-ground', 'wire.signal.open')).toBeCloseTo(
      0.81 / 0.0975,
      6,
    );
  });

  it('of a fault that comes and goes follow that the module calls it intermittent', () => {
    // by hand: weights 0.8 and 0.2; 0.05 + 0.95 · 0.8 against 0.05 + 0.95 · 0.2 for a flat line that stays
    const id = 'wire.signal.open';
    const [woken, asleep] = [`${id}~`, `${id}~~`].map((one) => priorOf(FLEETING, one));
    expect((woken! + asleep!) / priorOf(FLEETING, id)).toBeCloseTo((0.8 * 0.81) / (0.2 * 0.24), 6);
    expect(woken! / asleep!).toBeCloseTo(0.6 / 0.4, 6);
  });
});

describe('on a drill', () => {
  const drillOf = (level: LevelName, earlierRepair: string | null = null): Session => {
    const vehicle: DrillVehicle = {
      ...{ kind: 'drill', level, seed: 1, commitment: '', assignment: null },
      earlierRepair,
    };
    return { ...begun, opened: { ...begun.opened, vehicle } };
  };
  const drillSpace = (...ask: Parameters<typeof drillOf>) => {
    const session = drillOf(...ask);
    return chooseSuspects(model, session.opened)(session);
  };

  it.each(['named', 'unnamed', 'blind', 'misled'] as const)(
    'of the level "%s" are those of any session',
    (level) => {
      const of = drillSpace(level);
      expect(idsOf(of)).toEqual(idsOf(STAYING));
      expect([...of.prior]).toEqual([...STAYING.prior]);
      expect(of.table.tests).toEqual(STAYING.table.tests);
    },
  );

  it('are less likely where the work order has their repair, by the name of the repair', () => {
    const of = drillSpace('misled', 'wire.signal');
    expect(rise(STAYING, of, 'wire.signal.open', 'wire.feed.open')).toBeCloseTo(0.1, 9);
    // the part of a job sheet, named beside it, is the same repair and no second one
    const session = drillOf('misled', 'sensor.replace');
    const job = jobOf([], ['sensor']);
    const both = chooseSuspects(model, { ...session.opened, job })(session);
    const sensor = faults.find(({ repair }) => repair === 'sensor.replace')!.id;
    expect(rise(STAYING, both, sensor, 'wire.signal.open')).toBeCloseTo(0.1, 9);
  });

  it('with a fault that comes and goes all that can are such, and tests are done with the harness moved', () => {
    const of = drillSpace('intermittent');
    const can = faults.filter((fault) => fault.class !== 'target');
    const stays = faults.filter((fault) => fault.class === 'target');
    expect(new Set(idsOf(of))).toEqual(
      new Set([...can.map(({ id }) => `${id}~`), ...stays.map(({ id }) => id), 'healthy']),
    );
    const moved = of.offered().map((place) => of.testAt(place).test!);
    expect(moved.length).toBeGreaterThan(10);
    for (const { probe, wiggle } of moved) expect(wiggle === true).toBe(probe.kind !== 'inspect');
  });

  it('such a fault is there in half of the readings, and in all with the harness moved', () => {
    const of = drillSpace('intermittent');
    const plain = of.placeOf(AT_PLUG)!;
    const moved = of.placeOf({ ...AT_PLUG, wiggle: true })!;
    const open = idsOf(of).indexOf('wire.feed.open~');
    const differs = (place: number) => {
      const healthy = of.table.shown(place, idsOf(of).indexOf('healthy'));
      return of.table.shown(place, open).filter((one, at) => !isSame(one, healthy[at]!)).length;
    };
    const isSame = (one: Shown, other: Shown) => JSON.stringify(one) === JSON.stringify(other);
    expect(differs(moved)).toBe(32);
    // by python: so many of the first 32 multiples of the golden ratio's fraction lie below a half
    expect(differs(plain)).toBe(15);
  });

  it('with two faults are pairs, each with both repairs', () => {
    const of = drillSpace('double');
    const [first] = of.table.candidates;
    expect(of.faultsOf(first!.id)).toHaveLength(2);
    expect(first!.repair.split(' + ')).toHaveLength(2);
    expect(idsOf(of)).not.toContain('healthy');
    expect(of.table.samples).toBe(8);
  });

  it('the pair that is there is among those that it is judged by, however unlikely', () => {
    const { opened } = drillOf('double');
    const common = judgingSuspects(model, opened, []);
    const pairs = faultPairs(model.circuit);
    const known = new Set(idsOf(common));
    const rare = pairs.find(({ id }) => !known.has(id))!;
    const judging = judgingSuspects(model, opened, [rare.first.id, rare.second.id]);
    expect(idsOf(judging)).toContain(rare.id);
    expect(idsOf(judging)).toHaveLength(known.size);
    const [likely] = pairs.filter(({ id }) => known.has(id));
    expect(judgingSuspects(model, opened, [likely!.first.id, likely!.second.id])).toBe(common);
  });
});

describe('two faults at once', () => {
  const FEED = 'wire.feed.open';
  const SIGNAL = 'wire.signal.open';
  const SHORT = 'wire.signal.short-to-ground';
  /** What the space shows for two faults in a test, of a model that tells what it was asked for. */
  function together(ids: readonly [string, string], failing: (asked: string) => void = () => {}) {
    const showsAt = (asked: string) => {
      failing(asked);
      return asked;
    };
    const space = spaceOf(jobOf([]), { ...model, showsAt } as unknown as Model);
    return space.rank([]).showsPair!(ids[0], ids[1], 0);
  }
  const each = (id: string) => Array<string>(32).fill(id);
  const failWith = (error: Error) => (asked: string) => {
    if (asked.includes('+')) throw error;
  };

  it('are shown together, in every car', () => {
    expect(together([SIGNAL, FEED])).toEqual(each(`${FEED}+${SIGNAL}`));
  });

  it('in the same thing are no pair: the first is shown alone', () => {
    expect(together([SIGNAL, SHORT])).toEqual(each(SIGNAL));
    expect(together([SHORT, SIGNAL])).toEqual(each(SHORT));
  });

  it('of which one is the healthy circuit are the first alone', () => {
    expect(together([SIGNAL, 'healthy'])).toEqual(each(SIGNAL));
    expect(together(['healthy', SIGNAL])).toEqual(each('healthy'));
  });

  it('that the solver finds no rest for are shown as the first by name alone', () => {
    const failing = failWith(new UnsolvedCircuit('no rest'));
    expect(together([SIGNAL, FEED], failing)).toEqual(each(FEED));
  });

  it('that fail in another way are our mistake, and are not hidden', () => {
    const failing = failWith(new Error('a mistake'));
    expect(() => together([SIGNAL, FEED], failing)).toThrow('a mistake');
  });

  it('are not thought of where faults come and go', () => {
    expect(FLEETING.rank([]).showsPair).toBeUndefined();
    expect(STAYING.rank([]).showsPair).toBeDefined();
  });
});
