import { beforeAll, expect, test } from 'vitest';
import type { Debrief } from '../../src/drill/debrief.ts';
import { debriefLines, repairChoices, scoreLine } from '../../src/drill/drill-words.ts';
import { LEVELS } from '../../src/drill/levels.ts';
import { pointsOf, type ScoreFacts, scoreDrill, scoreWords } from '../../src/drill/score.ts';
import { LONG } from '../campaign.ts';
import { KEY_ON } from '../circuit/setup.ts';
import {
  type DrillInTest,
  knowing,
  measure,
  newDrill,
  partsChanger,
  perfectStudent,
  testIn,
} from './students.ts';

const GOOD: ScoreFacts = {
  right: true,
  hits: 1,
  needed: 1,
  named: 1,
  evidence: 3,
  minutes: 20,
  yardstickMinutes: 20,
  late: false,
  readings: 6,
  stopped: 0,
  passedOver: 0,
};

// Diagnosis 40, evidence 25, time 20, safety 15; each row by hand from docs/drills.md.
test.each<[string, Partial<ScoreFacts>, readonly number[]]>([
  ['all as it should be', {}, [40, 25, 20, 15]],
  ['half as long again as the best plan is still full', { minutes: 30 }, [40, 25, 20, 15]],
  ['three times the minutes: (4 - 3) / 2.5 of 20', { minutes: 60 }, [40, 25, 8, 15]],
  ['four times and more', { minutes: 90 }, [40, 25, 0, 15]],
  ['two proofs of three: 25 and 20 times 2/3', { evidence: 2 }, [40, 17, 13, 15]],
  ['a lucky guess after one reading', { evidence: 0, readings: 1, minutes: 4 }, [40, 0, 0, 15]],
  ['a lucky guess without any', { evidence: 0, readings: 0, minutes: 0 }, [40, 0, 0, 0]],
  ['wrong, quick and safe', { right: false, hits: 0, minutes: 4 }, [0, 0, 0, 15]],
  ['given up', { right: false, hits: 0, named: 0 }, [0, 0, 0, 15]],
  ['one of two faults', { right: false, hits: 1, needed: 2, named: 2 }, [20, 0, 0, 15]],
  ['over the time limit', { late: true }, [40, 25, 0, 15]],
  ['one dangerous test: 50 at most', { stopped: 1 }, [40, 25, 20, 7, -42]],
  ['three dangerous tests', { stopped: 3 }, [40, 25, 20, 0, -35]],
  [
    'a dangerous test and little right has nothing to lose',
    { stopped: 1, evidence: 0 },
    [40, 0, 0, 7],
  ],
  ['slow and sloppy, and safe', { minutes: 90, evidence: 2 }, [40, 17, 0, 15]],
  ['a caution passed over', { passedOver: 1 }, [40, 25, 20, 12]],
])('score: %s', (_name, change, points) => {
  const facts = { ...GOOD, ...change };
  const parts = scoreDrill(facts);
  expect(parts.map((part) => part.points)).toEqual(points);
  expect(pointsOf(parts)).toBe(points.reduce((a, b) => a + b, 0));
  for (const part of parts) expect(scoreWords(part, facts).length).toBeGreaterThan(5);
});

test('safe and sloppy is worth more than quick and dangerous', () => {
  const sloppy = { ...GOOD, minutes: 90, evidence: 2 };
  const points = (facts: ScoreFacts) => pointsOf(scoreDrill(facts));
  for (const stopped of [1, 2, 3]) {
    expect(points({ ...GOOD, stopped })).toBe(50);
    expect(points(sloppy)).toBeGreaterThan(points({ ...GOOD, stopped }));
  }
  const danger = scoreDrill({ ...GOOD, stopped: 1 }).at(-1)!;
  expect(scoreLine(danger, GOOD)).toBe(
    '  danger    -42        a test that would have hurt someone or the vehicle: 50 points at most',
  );
});

test.each<[string, Partial<ScoreFacts>, Record<string, string>]>([
  [
    'right and proven',
    {},
    { diagnosis: 'the right repair', safety: 'no dangerous test, every caution acknowledged' },
  ],
  ['given up', { right: false, hits: 0, named: 0 }, { diagnosis: 'given up: no repair was named' }],
  [
    'wrong',
    { right: false, hits: 0 },
    { diagnosis: 'the wrong repair', time: 'a wrong diagnosis scores no time' },
  ],
  ['half right', { right: false, needed: 2 }, { diagnosis: '1 of 2 repairs right' }],
  ['a guess', { evidence: 0 }, { time: 'a guess scores no time' }],
  ['late', { late: true }, { time: 'over the time limit of the assignment' }],
  ['nothing measured', { readings: 0 }, { safety: 'nothing was measured, so no safety points' }],
])('the words of a score: %s', (_, change, words) => {
  const facts = { ...GOOD, ...change };
  const found = Object.fromEntries(
    scoreDrill(facts).map((part) => [part.name, scoreWords(part, facts)]),
  );
  expect(found).toMatchObject(words);
});

/** The debrief of a drill that a student has led to its end. */
function debriefAfter(student: (begun: DrillInTest) => void, begun: DrillInTest): Debrief {
  student(begun);
  return debriefIn(begun);
}
function debriefIn({ drill }: DrillInTest): Debrief {
  const debrief = drill.debrief();
  if (!debrief) throw new Error('the drill has not ended');
  return debrief;
}

/** Drills that several tests look at, by vehicle. */
const played = new Map<number, DrillInTest>();
function playedBy(seed: number): DrillInTest {
  const known = played.get(seed);
  if (known) return known;
  const begun = newDrill(seed);
  perfectStudent(begun);
  played.set(seed, begun);
  return begun;
}
let perfect: DrillInTest;
beforeAll(() => {
  perfect = playedBy(11);
});

test('the debrief names what proved it, what told nothing, and both ways with their minutes', () => {
  const debrief = debriefIn(perfect);
  expect(debrief.right).toBe(true);
  expect(debrief.evidence.length).toBeGreaterThan(0);
  for (const { ratio } of debrief.evidence) expect(ratio).toBeGreaterThanOrEqual(3);
  expect(debrief.minutes).toBeCloseTo(
    debrief.readings.reduce((sum, { minutes }) => sum + minutes, 0),
    6,
  );
  const text = debriefLines(debrief).join('\n');
  expect(text).toContain('RIGHT.');
  expect(text).toContain('The best plan on this vehicle');
  expect(text).toContain('Next: ');
});

test('the debrief counts the same evidence as the conclusion of the session', () => {
  const begun = perfect;
  const session = begun.driver.session();
  const { faults } = session.concluded!;
  const weighed = begun.advisor!.weigh(session, faults);
  const { readings, facts } = debriefIn(begun);
  const events = readings.filter(({ proves }) => proves).map(({ event }) => event);
  const pieces = weighed.evidence.flatMap((line) =>
    'reading' in line && line.counted ? [line.reading] : [],
  );
  expect([...pieces].sort()).toEqual([...events].sort());
  expect(facts.evidence).toBe(pieces.length);
});

// Vehicles where the strongest rival changes on the way, so that order and rivals matter.
test.each(LONG ? [1, 2, 3] : [2])(
  'what proved it stands in order and says the same as the list, vehicle %i',
  (seed) => {
    const debrief = debriefIn(playedBy(seed));
    const ratios = debrief.evidence.map(({ ratio }) => ratio);
    expect(ratios.length).toBeGreaterThan(1);
    expect(ratios).toEqual([...ratios].sort((a, b) => b - a));
    for (const { reading, ratio, against } of debrief.evidence)
      expect(debrief.readings[reading]).toMatchObject({ proves: true, ratio, against });
    expect(debrief.readings.filter(({ proves }) => proves)).toHaveLength(ratios.length);
    // A strong reading that is no proof is explained.
    const strong = debrief.readings.some(({ proves, ratio }) => !proves && ratio >= 3);
    expect(debriefLines(debrief).join('\n').includes('one of each kind and place counts')).toBe(
      strong,
    );
    for (const [at, line] of debriefLines(debrief)
      .filter((one) => /^ ?\d+\. /.test(one))
      .slice(0, debrief.readings.length)
      .entries()) {
      const { proves, against } = debrief.readings[at]!;
      expect(line.includes('a proof')).toBe(proves);
      if (/likelier/.test(line)) expect(line).toContain(against);
    }
  },
);

test('two repairs are one sentence, and what is left standing is named', () => {
  const begun = newDrill(1, { level: 'double', circuit: 'reluctor-two-wire' });
  measure(begun, testIn(begun, 'connector.module.inspection'));
  begun.drill.act({ type: 'diagnose', repairs: begun.world.vehicle.hidden.answer.repairs });
  const debrief = debriefIn(begun);
  expect(debrief.right).toBe(true);
  const text = debriefLines(debrief).join('\n');
  expect(text).toContain(
    'Repair: Clean, refit or replace the terminals at the connector of the engine control module, and replace the crankshaft position sensor.',
  );
  expect(text).not.toMatch(/\w\. (Clean|Replace|Repair|Seat)/);
  expect(debrief.left).not.toBeNull();
  expect(text).toContain(
    `No reading pointed clearly away from the strongest rival left: ${debrief.left}`,
  );
});

test('where the best plan ends in doubt, the debrief says that no test tells more', () => {
  const debrief = debriefIn(perfect);
  const last = (chance: number) =>
    debriefLines({ ...debrief, yardstick: { ...debrief.yardstick, chance } }).find((line) =>
      line.startsWith('    and then'),
    );
  expect(last(0.97)).toBe('    and then the diagnosis was 97 % certain.');
  expect(last(0.76)).toBe(
    '    and then no test was worth its minutes: the leading suspect stood at 76 %.',
  );
});

test('given up has its own words, and a wrong diagnosis no proof', () => {
  const text = (repairsIn: (begun: DrillInTest) => readonly string[]) => {
    const begun = newDrill(11);
    measure(begun, testIn(begun, 'sensor.feed.volts'));
    begun.drill.act({ type: 'diagnose', repairs: repairsIn(begun) });
    return debriefLines(debriefIn(begun)).join('\n');
  };
  const given = text(() => []);
  expect(given).toContain('given up');
  expect(given).not.toContain('wrong diagnosis');
  const wrong = text(({ driver, world }) => {
    const choices = repairChoices(driver.session().opened.circuit!);
    const { answer } = world.vehicle.hidden;
    return [choices.find(({ repair }) => !answer.repairs.includes(repair))!.repair];
  });
  for (const one of [given, wrong]) {
    expect(one).not.toContain('proved');
    expect(one).toMatch(/No reading pointed clearly to|What pointed to/);
  }
});

test('a reading taken twice told nothing new the second time', () => {
  const begun = newDrill(11);
  const volts = testIn(begun, 'sensor.feed.volts');
  for (const test of [volts, volts]) measure(begun, test);
  begun.drill.act({ type: 'diagnose', repairs: ['wire.feed'] });
  expect(debriefIn(begun).readings[1]!.toldNothing).toBe(true);
});

test('the advice fits the weakness: danger first, then the wrong fault, then the next level', () => {
  const wrong = debriefAfter(partsChanger, newDrill(2));
  expect(wrong.right).toBe(false);
  expect(wrong.next).toMatch(/^Practise neighbours on a shared feed: /);
  const danger = newDrill(11);
  measure(danger, {
    setup: KEY_ON,
    probe: { kind: 'ohms', plus: 'sensor.feed', minus: 'battery.negative' },
  });
  danger.drill.act({ type: 'diagnose', repairs: [] });
  expect(debriefIn(danger).next).toContain('Safety first');
  const best = debriefIn(playedBy(2));
  expect(best.points).toBe(100);
  expect(best.next).toContain(`level ${LEVELS[2]!.number}`);
});

test('over the time limit of an assignment nothing is left of the points for time', () => {
  const limit = (limitMinutes: number) => {
    const begun = newDrill(11, { assignment: { name: 'week-3', part: 1, limitMinutes } });
    knowing(begun);
    return begun.driver.session().revealed!;
  };
  const inTime = limit(30);
  // Ten seconds between events: more than half a minute in all.
  expect(inTime).toMatchObject({ late: false });
  const late = limit(0.5);
  expect(late.late).toBe(true);
  expect(late.score.find(({ name }) => name === 'time')!.points).toBe(0);
  const forTime = inTime.score.find(({ name }) => name === 'time')!.points;
  expect(forTime).toBeGreaterThan(0);
  expect(inTime.points - late.points).toBe(forTime);
});
