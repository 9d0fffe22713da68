/** What readings of the open signal wire prove, rule out and leave to ask: `corroborate` on volts and looks as they are read. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { corroborate } from '../../src/suspects/corroborate.ts';
import type { CorroborationAsk } from '../../src/suspects/corroboration-ask.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { atOnce } from '../../src/suspects/slices.ts';
import { ALL_MEANS, COSTS, type Situation } from '../../src/suspects/test-cost.ts';
import {
  FAULTS,
  openWire,
  openWireOutcomes,
  placeOf,
  readingsOf,
  repairOf,
  TEST_IDS,
  type TestId,
  testAt,
} from './open-wire.ts';
import { look, matrixTable } from './tables.ts';

const weighed = (...of: Parameters<typeof corroborate>) => atOnce(corroborate(...of));

const WIRE = 'wire.signal.open';
const KEY_ON: Situation = { state: 'key-on', unplugged: [], reached: [] };

/** What the readings are worth for the open wire, or for another conclusion. */
function weigh(
  readings: readonly Reading[],
  { chances, ...more }: Partial<CorroborationAsk> & { readonly chances?: readonly number[] } = {},
) {
  const prior = chances && Float64Array.from(chances);
  return weighed(openWire, {
    concluded: [WIRE],
    readings,
    ranking: rankSuspects(openWire, readings, prior),
    ...(prior && { prior }),
    outcomes: openWireOutcomes,
    now: KEY_ON,
    means: ALL_MEANS,
    ...more,
  });
}
/** What these tests show with the signal wire open. */
const wireOpen = (...ids: TestId[]) => readingsOf(WIRE, ...ids);
const reading = (id: TestId, shown: Shown): Reading => ({ test: placeOf(id), shown });
const volts = (value: number): Shown => ({ kind: 'number', value, unit: 'V' });
const offered = ({ offers }: ReturnType<typeof weigh>) => offers.map((one) => testAt(one.test));
const ruledOut = (found: ReturnType<typeof weigh>) => found.ruledOut.map(({ repair }) => repair);

describe('what proves the wire', () => {
  test('is nothing, where nothing was measured', () => {
    expect(weigh([])).toMatchObject({ proven: false, missing: 3, evidence: [] });
  });

  test('is no single reading: two pieces are missing, of the three that are needed', () => {
    const found = weigh(wireOpen('pull-up at the sensor'));
    expect(found.evidence).toMatchObject([{ reading: 0, against: repairOf('sensor.dead') }]);
    expect(found).toMatchObject({ proven: false, missing: 2 });
  });

  test('is three kinds of test', () => {
    const found = weigh(wireOpen('pull-up at the sensor', 'pull-up at the module', 'injection'));
    expect(found.proven).toBe(true);
    expect(found.chance).toBeGreaterThan(0.9);
    expect(found.evidence.map((piece) => piece.reading).sort()).toEqual([0, 1, 2]);
    for (const { ratio } of found.evidence) expect(ratio).toBeGreaterThanOrEqual(3);
  });

  test('does not depend on the order of the readings', () => {
    const ids: TestId[] = ['injection', 'wheel', 'bypass', 'pull-up at the sensor'];
    const one = weigh(wireOpen(...ids));
    const other = weigh(wireOpen(...ids.toReversed()));
    const pieces = ({ evidence }: typeof one) => evidence.map((each) => [each.test, each.against]);
    expect(pieces(other)).toEqual(pieces(one));
    expect(other.proven).toBe(one.proven);
  });

  test('is one piece where the same test was made twice', () => {
    const once = weigh(wireOpen('bypass', 'pull-up at the module'));
    const twice = weigh(wireOpen('bypass', 'bypass', 'pull-up at the module'));
    expect(twice.missing).toBe(once.missing);
    expect(twice.evidence).toHaveLength(once.evidence.length);
  });

  test('is needed no more where everything else is impossible', () => {
    expect(weigh([], { chances: [1, 0, 0, 0] })).toMatchObject({
      proven: true,
      missing: 0,
      rival: null,
      offers: [],
    });
  });

  test('proves no other fault', () => {
    const readings = wireOpen(...TEST_IDS);
    expect(weigh(readings)).toMatchObject({ proven: true, offers: [] });
    for (const other of FAULTS.filter((fault) => fault !== WIRE))
      expect(weigh(readings, { concluded: [other] }).proven, other).toBe(false);
  });

  test('a fault that is not in the circuit is a mistake of the caller', () => {
    expect(() => weigh([], { concluded: ['nothing'] })).toThrow('no such fault');
  });
});

describe('a reading is no evidence', () => {
  test('that contradicts the conclusion, and it stops the proof', () => {
    const three = wireOpen('pull-up at the sensor', 'pull-up at the module', 'injection');
    const found = weigh([...three, reading('bypass', look(0))]); // lit with the wire open
    expect(found.evidence.map((piece) => piece.reading)).not.toContain(3);
    expect(found.proven).toBe(false);
  });

  test('that the conclusion explains badly, though the rival explains it worse', () => {
    // 5.31 V is three standard deviations above what the module's pull-up gives; a dead module gives 0 V.
    const odd = reading('pull-up at the module', volts(5.31));
    const found = weigh([odd], { chances: [0.5, 0, 0.5, 0] });
    expect(found.chance).toBeGreaterThan(0.75);
    expect(found.evidence).toEqual([]);
  });
});

describe('one strong reading does not stand for two: each rival is contradicted in its turn', () => {
  const SENSOR = 'sensor.dead';
  const readings = readingsOf(SENSOR, 'pull-up at the sensor', 'spare sensor', 'injection');
  const chances = [4 / 7.8, 3 / 7.8, 0.5 / 7.8, 0.3 / 7.8];

  test('the wire falls twice before the wheel is the strongest rival', () => {
    const found = weigh(readings, { concluded: [SENSOR], chances });
    expect(found.evidence.map(({ against }) => against)).toEqual([
      repairOf(WIRE),
      repairOf(WIRE),
      repairOf('wheel.damaged'),
    ]);
    expect(found.proven).toBe(true);
  });

  test('the same three pieces prove nothing while the wheel still stands', () => {
    const wheelLikely = Float64Array.from([0.005, 0.01, 0.005, 0.98]);
    const ranking = rankSuspects(openWire, readings, wheelLikely);
    expect(weigh(readings, { concluded: [SENSOR], chances, ranking })).toMatchObject({
      proven: false,
      missing: 1,
      rival: { repair: repairOf('wheel.damaged'), chance: ranking.chances[3] },
    });
  });
});

describe('a repair is ruled out', () => {
  test('by nothing, where nothing was measured', () => {
    expect(ruledOut(weigh([]))).toEqual([]);
  });

  test('by the reading that spoke most against it, when it is all but impossible', () => {
    const found = weigh(wireOpen('pull-up at the sensor', 'pull-up at the module'));
    expect(found.ruledOut.length).toBeGreaterThan(0);
    expect(ruledOut(found)).not.toContain(repairOf(WIRE));
    for (const { repair, chance, readings } of found.ruledOut) {
      expect(chance).toBeLessThan(0.02);
      // sensor and wheel leave 5 V at both ends, a dead module 0 V at both
      expect(readings).toEqual([repair === repairOf('module.dead') ? 1 : 0]);
    }
  });

  test('by its own reading, also where another one came later', () => {
    const found = weigh(wireOpen('pull-up at the sensor', 'pull-up at the module', 'injection'));
    expect(found.ruledOut).toContainEqual(
      expect.objectContaining({ repair: repairOf('module.dead'), readings: [1] }),
    );
  });

  test('not by being hardly thinkable before: the reading must say something of it', () => {
    const wheelUnlikely = { chances: [0.5, 0.25, 0.249, 0.001] };
    // 5 V at the module whether the wire is open or the wheel damaged; at the sensor only with the wheel
    const atModule = weigh(wireOpen('pull-up at the module'), wheelUnlikely);
    expect(ruledOut(atModule)).toEqual([repairOf('module.dead')]);
    const atSensor = weigh(wireOpen('pull-up at the sensor'), wheelUnlikely);
    expect(ruledOut(atSensor)).toContain(repairOf('wheel.damaged'));
  });

  test('not where the repair touches it anyway', () => {
    const fault = (id: string, subject: string[] = []) => ({ id, repair: id, weight: 1, subject });
    const tests = Array.from({ length: 6 }, (_, at) => at);
    const table = matrixTable(
      [fault('both-wires', ['one', 'other']), fault('other'), fault('far')],
      [0, 1, 1].map((shown) => tests.map(() => shown)),
    );
    const readings = tests.map((one) => ({ test: one, shown: look(0) }));
    const found = weighed(table, {
      concluded: ['both-wires'],
      readings,
      ranking: rankSuspects(table, readings),
      outcomes: outcomesOf(table),
      now: KEY_ON,
      means: ALL_MEANS,
    });
    expect(ruledOut(found)).toEqual(['far']);
  });
});

describe('what is offered', () => {
  const AT_SENSOR = wireOpen('pull-up at the sensor');

  test('speaks against the rival that still stands, the cheapest first', () => {
    const found = weigh(AT_SENSOR);
    // A dead module shows 0 V there too; of what is left, only these two tell it from the wire.
    expect(found.rival!.repair).toBe(repairOf('module.dead'));
    expect(offered(found)).toEqual(['pull-up at the module', 'bypass']);
    expect(found.offers[0]!.minutes).toBe(4 + COSTS.accessMinutes);
  });

  test('is cheapest from where one stands', () => {
    const found = weigh(AT_SENSOR, { now: { ...KEY_ON, reached: ['module', 'sensor'] } });
    // all is reached already: 3 minutes for the bypass, 4 for the pull-up at the module
    expect(offered(found)).toEqual(['bypass', 'pull-up at the module']);
    for (const { chance } of found.offers) expect(chance).toBeCloseTo(1, 9);
  });

  test('is no test that was done', () => {
    const found = weigh([...AT_SENSOR, ...wireOpen('wheel')]);
    expect(offered(found)).not.toContain('wheel');
    expect(offered(found)).not.toContain('pull-up at the sensor');
  });

  test('is no test that was done and told nothing', () => {
    // 2.5 V is neither what the wire nor what the module gives
    const found = weigh([...AT_SENSOR, reading('pull-up at the module', volts(2.5))]);
    expect(offered(found)).toEqual(['bypass']);
  });

  test('is no test that cannot be done', () => {
    const found = weigh(AT_SENSOR, { means: { has: ['meter'], helper: false, without: [] } });
    expect(offered(found)).toEqual(['pull-up at the module']);
  });
});
