/** Which tests are proposed, in which order, and why: on the open signal wire, and on tables of a few looks by hand. */
import { describe, expect, test } from 'vitest';
import { LOOK_WORDS } from '../../src/circuit/look-words.ts';
import {
  expectedDrop,
  type ProposalAsk,
  proposeTests,
  showsFault,
} from '../../src/suspects/next-test.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, HEALTHY, type TableTest } from '../../src/suspects/prediction-table.ts';
import { entropyBits, rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { ALL_MEANS, type Situation } from '../../src/suspects/test-cost.ts';
import { openWire, openWireOutcomes, placeOf, type TestId, testAt } from './open-wire.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

const KEY_ON: Situation = { state: 'key-on', unplugged: [], reached: [] };

/** What is proposed for the open wire, before any reading; with other chances than its own where they are given. */
function proposedForWire(more: Partial<ProposalAsk> = {}, chances?: readonly number[]) {
  const ranking = rankSuspects(openWire, [], chances && Float64Array.from(chances));
  const ask = { now: KEY_ON, means: ALL_MEANS, outcomes: openWireOutcomes, ...more };
  return proposeTests(openWire, ranking, ask);
}

const DARK = 0;
const LIT = 1;
const DIM = 2;

interface Suspect {
  readonly id: string;
  readonly weight: number;
  readonly repair: string;
  readonly words: string;
  /** What each test shows of it. */
  readonly shows: readonly number[];
}

/** A suspect with a repair of its own where none is named. */
function suspect(id: string, weight: number, shows: readonly number[], repair = id): Suspect {
  return { id, weight, repair, words: `words of ${id}`, shows };
}

/** What is proposed before any reading, with everything at hand, for tests by name and minutes. */
function proposed(
  minutes: Readonly<Record<string, number>>,
  suspects: readonly Suspect[],
  { reaches = [], ...ask }: Partial<ProposalAsk> & Pick<Partial<TableTest>, 'reaches'> = {},
) {
  const names = Object.keys(minutes);
  const table = matrixTable(
    suspects,
    suspects.map(({ shows }) => shows),
    names.map((name) => simpleTest(name, { minutes: minutes[name]!, reaches })),
  );
  const { all, best } = proposeTests(table, rankSuspects(table, []), {
    now: KEY_ON,
    means: ALL_MEANS,
    outcomes: outcomesOf(table),
    ...ask,
  });
  return {
    all,
    best,
    /** All tests, those first that tell most per minute. */
    byWorth: all.map(({ test: place }) => names[place]!),
    /** The proposals with the minutes until the repair is known. */
    minutesToRepair: best.map((one): [string, number] => [names[one.test]!, one.minutesToRepair]),
  };
}

describe('on the open wire', () => {
  test('three tests are proposed, the one first after which the job is done soonest', () => {
    const { best } = proposedForWire();
    expect(best).toHaveLength(3);
    const minutes = best.map(({ minutesToRepair }) => minutesToRepair);
    expect(minutes).toEqual([...minutes].sort((a, b) => a - b));
    expect(openWire.tests[best[0]!.test]!.reaches).toEqual(['sensor']);
  });

  test('the first one tells what the leaders would show, and why it is proposed', () => {
    const [{ shows, why } = { shows: [], why: '' }] = proposedForWire().best;
    expect(shows.map(({ id }) => id).slice(0, 2)).toEqual(['wire.signal.open', 'sensor.dead']);
    expect(why).toMatch(
      /^if the wire of fault 0: (about 0.*V|the light stays dark); if the sensor of fault 1: (about 5 V|the light is bright); takes 4 min, 3 of them to get there$/,
    );
  });

  test('what is not at hand, not safe or already done is not proposed', () => {
    const { all } = proposedForWire({
      means: { has: ['meter', 'lead', 'eyes'], helper: false, without: ['key-off'] },
      without: [placeOf('bypass')],
    });
    // no test light and no spare sensor; the wheel is looked at with the key off
    const left: TestId[] = ['pull-up at the module', 'pull-up at the sensor'];
    expect(all.map(({ test: place }) => testAt(place)).sort()).toEqual(left);
  });

  test('at the module the module is measured first', () => {
    const now = { ...KEY_ON, reached: ['module'] };
    const { best } = proposedForWire({ now }, [0.3, 0.1, 0.5, 0.1]);
    expect(testAt(best[0]!.test)).toBe('pull-up at the module');
  });

  test('nothing is proposed when one repair is left', () => {
    expect(proposedForWire({}, [1, 0, 0, 0]).best).toEqual([]);
  });
});

describe('all tests that can be done are listed', () => {
  test('with their bits, their minutes, and the one by the other', () => {
    const six = ['a', 'b', 'c', 'd', 'e', 'f'].map((id, index) => {
      const half = index % 2 === 0 ? DARK : LIT;
      return suspect(id, 1, [half, half]);
    });
    const { all } = proposed({ quick: 2, slow: 4 }, six);
    expect(all.map(({ cost }) => cost.minutes)).toEqual([2, 4]);
    for (const { bits, bitsPerMinute, cost } of all) {
      expect(bits).toBeCloseTo(1, 12); // halves of six alike
      expect(bitsPerMinute).toBeCloseTo(bits / cost.minutes, 12);
    }
  });

  test('by bits per minute, of equals in the order of the table', () => {
    const alike = [suspect('a', 1, Array(4).fill(DARK)), suspect('b', 1, Array(4).fill(LIT))];
    const { byWorth } = proposed({ slow: 4, first: 1, middle: 2, second: 1 }, alike);
    expect(byWorth).toEqual(['first', 'second', 'middle', 'slow']);
  });
});

describe('the best', () => {
  test('is the one after which the job is done soonest, not the one that tells most per minute', () => {
    const { byWorth, minutesToRepair } = proposed({ quick: 2, even: 3, dear: 8 }, [
      suspect('a', 1, [LIT, DARK, LIT]),
      suspect('b', 1, [DARK, DARK, LIT]),
      suspect('c', 2, [DARK, LIT, DARK]),
    ]);
    // by hand: 0.81 bits in 2 minutes, 1 bit in 3, 1 bit in 8
    expect(byWorth).toEqual(['quick', 'even', 'dear']);
    // by hand: then half of the quick one's 2 minutes, or three quarters of the even one's 3
    expect(minutesToRepair).toEqual([
      ['even', expect.closeTo(3 + 0.5 * 2, 9)],
      ['quick', expect.closeTo(2 + 0.75 * 3, 9)],
      ['dear', expect.closeTo(8 + 0.5 * 2, 9)],
    ]);
  });

  test('are the cheapest, where the job is done after any of them', () => {
    const alike = [suspect('a', 1, Array(4).fill(DARK)), suspect('b', 1, Array(4).fill(LIT))];
    const { minutesToRepair } = proposed({ slow: 4, first: 1, middle: 2, second: 1 }, alike);
    expect(minutesToRepair).toEqual([
      ['first', 1],
      ['second', 1],
      ['middle', 2],
    ]);
  });

  test('are among the eight that tell most per minute: a ninth is not followed', () => {
    const nine = Object.fromEntries(Array.from({ length: 9 }, (_, at) => [`t${at}`, 9 - at]));
    const alike = [suspect('a', 1, Array(9).fill(DARK)), suspect('b', 1, Array(9).fill(LIT))];
    const minutesOf = (more: Partial<ProposalAsk>) =>
      proposed(nine, alike, more).minutesToRepair.map(([, minutes]) => minutes);
    expect(minutesOf({})).toEqual([1, 2, 3]);
    expect(minutesOf({ most: 9 })).toEqual([1, 2, 3, 4, 5, 6, 7, 8, Infinity]);
    // the dearest is followed once there are no more than eight
    expect(minutesOf({ without: [3, 4, 5, 6, 7, 8] })).toEqual([7, 8, 9]);
  });
});

describe('minutes to the repair', () => {
  test('leave the unlikeliest out where that is asked for', () => {
    const suspects = [
      suspect('likely', 6, [DARK, DARK]),
      suspect('second', 3, [LIT, DARK]),
      suspect('unlikely', 1, [LIT, LIT]),
    ];
    const ofFirst = (more: Partial<ProposalAsk>) =>
      new Map(proposed({ first: 5, other: 2 }, suspects, more).minutesToRepair).get('first');
    // by hand: in four of ten the other has to tell the last two apart
    expect(ofFirst({})).toBeCloseTo(5 + 0.4 * 2, 9);
    // without the last there is nothing left to tell
    expect(ofFirst({ massKept: 0.85 })).toBeCloseTo(5, 9);
  });

  test('are per unit of the chance that is looked at', () => {
    const suspects = [
      suspect('likely', 6, [DARK]),
      suspect('second', 3, [LIT]),
      suspect('unlikely', 1, [DIM]),
    ];
    for (const more of [{}, { massKept: 0.85 }])
      expect(proposed({ only: 5 }, suspects, more).minutesToRepair).toEqual([
        ['only', expect.closeTo(5, 9)],
      ]);
  });
});

test('of four suspects at most it is told what they would show', () => {
  const six = ['a', 'b', 'c', 'd', 'e', 'f'].map((id, index) => suspect(id, 1, [index % 2]));
  expect(proposed({ only: 2 }, six).best[0]!.shows).toHaveLength(4);
});

describe('why a test is proposed', () => {
  const { dark, lit } = LOOK_WORDS;
  const why = (...asked: Parameters<typeof proposed>) => proposed(...asked).best[0]?.why;

  test('sets the leader against the first suspect of another repair that would show something else', () => {
    const suspects = [
      suspect('leader', 3, [DARK], 'A'),
      suspect('same repair', 2, [LIT], 'A'),
      suspect('same look', 2, [DARK], 'B'),
      suspect('other', 1, [LIT], 'C'),
    ];
    expect(why({ only: 1 }, suspects)).toBe(
      `if words of leader: ${dark}; if words of other: ${lit}; takes 1 min`,
    );
  });

  test('names the healthy circuit in words of its own, as leader and as rival', () => {
    const healthyLeads = [suspect(HEALTHY, 3, [DARK]), suspect('b', 2, [LIT])];
    expect(why({ only: 1 }, healthyLeads)).toBe(
      `if the circuit is healthy: ${dark}; if words of b: ${lit}; takes 1 min`,
    );
    const faultLeads = [suspect('b', 3, [DARK]), suspect(HEALTHY, 2, [LIT])];
    expect(why({ only: 1 }, faultLeads)).toBe(
      `if words of b: ${dark}; if the circuit is healthy: ${lit}; takes 1 min`,
    );
  });

  test('says the minutes to a tenth, and how many of them are the way', () => {
    const two = [suspect('a', 3, [DARK]), suspect('b', 2, [LIT])];
    expect(why({ only: 1 }, two, { reaches: ['far'] })).toMatch(
      /takes 4 min, 3 of them to get there$/,
    );
    expect(why({ only: 1.26 }, two)).toMatch(/takes 1\.3 min$/);
  });

  test('is the less likely suspects, where only a fault with the repair of the leader would show something else', () => {
    const suspects = [
      suspect('leader', 3, [DARK], 'A'),
      suspect('same repair', 2, [LIT], 'A'),
      suspect('same look', 2, [DARK], 'B'),
    ];
    expect(why({ only: 1 }, suspects)).toBe('tells the less likely suspects apart; 1 min');
  });
});

test('the expected drop is what is unknown now less what each outcome leaves', () => {
  // Repair A has one fault, which shows dark; of the two of repair B one shows dark in half of its samples.
  const faults = buildTable(
    [
      { id: 'a', repair: 'A', weight: 2 },
      { id: 'b1', repair: 'B', weight: 1 },
      { id: 'b2', repair: 'B', weight: 1 },
    ],
    [simpleTest('only')],
    (id, _, sample) => look(id === 'a' || (id === 'b1' && sample === 0) ? DARK : LIT),
    2,
  );
  const found = expectedDrop(faults, rankSuspects(faults, []), outcomesOf(faults)(0));
  // by hand: dark are a half by A and an eighth by B, lit are three eighths by B, which leave nothing to ask
  const unknownNow = 1;
  const left = (5 / 8) * entropyBits([4 / 5, 1 / 5]);
  expect(found).toBeCloseTo(unknownNow - left, 12);
});

test('a test shows a fault as often as it shows what leaves the sound circuit less than a tenth of its chance', () => {
  // Of four samples the sound circuit shows lit in all, A dark in all, and B dark in one.
  const faults = buildTable(
    [
      { id: HEALTHY, repair: HEALTHY, weight: 5 },
      { id: 'a', repair: 'A', weight: 1 },
      { id: 'b', repair: 'B', weight: 4 },
    ],
    [simpleTest('only')],
    (id, _, sample) => look(id === 'a' || (id === 'b' && sample === 0) ? DARK : LIT),
    4,
  );
  // by hand: a tenth by A and a quarter of four tenths by B are dark; lit leaves the sound one more than it had
  const found = showsFault(faults, rankSuspects(faults, []), outcomesOf(faults)(0));
  expect(found).toBeCloseTo(0.2, 12);
});
