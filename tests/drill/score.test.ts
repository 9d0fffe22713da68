import { expect, test } from 'vitest';
import { debriefOf } from '../../src/drill/debrief.ts';
import { debriefLines, repairChoices } from '../../src/drill/drill-words.ts';
import { LEVELS } from '../../src/drill/levels.ts';
import { pointsOf, type ScoreFacts, scoreDrill } from '../../src/drill/score.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { doIt, measure, newDrill, partsChanger, perfectStudent } from './students.ts';

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
test.each<[string, Partial<ScoreFacts>, [number, number, number, number]]>([
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
  ['one dangerous test', { stopped: 1 }, [40, 25, 20, 7]],
  ['two dangerous tests', { stopped: 2 }, [40, 25, 20, 0]],
  ['a caution passed over', { passedOver: 1 }, [40, 25, 20, 12]],
])('score: %s', (_name, change, points) => {
  const parts = scoreDrill({ ...GOOD, ...change });
  expect(parts.map((part) => part.points)).toEqual(points);
  expect(pointsOf(parts)).toBe(points.reduce((a, b) => a + b, 0));
  for (const part of parts) expect(part.why.length).toBeGreaterThan(5);
});

test('the debrief names what proved it, what told nothing, and both ways with their minutes', () => {
  const { drill, world } = newDrill(11);
  const first = perfectStudent(drill, world);
  const debrief = debriefOf(first, world);
  expect(debrief.right).toBe(true);
  expect(debrief.evidence.length).toBeGreaterThan(0);
  for (const { ratio } of debrief.evidence) expect(ratio).toBeGreaterThanOrEqual(3);
  expect(debrief.minutes).toBeCloseTo(
    first.readings.reduce((sum, { minutes }) => sum + minutes, 0),
    6,
  );
  const text = debriefLines(debrief).join('\n');
  expect(text).toContain('RIGHT.');
  expect(text).toContain('The best plan on this vehicle');
  expect(text).toContain('Next: ');
});

// Vehicles where the strongest rival changes on the way, so that order and rivals matter.
test.each([1, 2, 3])(
  'what proved it stands in order and says the same as the list, vehicle %i',
  (seed) => {
    const { drill, world } = newDrill(seed);
    const debrief = debriefOf(perfectStudent(drill, world), world);
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
  const { drill, world } = newDrill(1, { level: 'double' });
  const mind = world.mind([]);
  const look = mind.tests.find(
    ({ test }) => test.probe.kind === 'inspect' && test.probe.of === 'connector.module',
  )!;
  const ended = doIt(
    measure(drill, look.test, world),
    { type: 'diagnose', repairs: [...world.vehicle.hidden.answer.repairs] },
    world,
  ).drill;
  const debrief = debriefOf(ended, world);
  expect(debrief.right).toBe(true);
  const text = debriefLines(debrief).join('\n');
  expect(text).toContain(
    'Repair: Clean, refit or replace the terminals at the connector of the engine control module, and replace the crankshaft position sensor.',
  );
  expect(text).not.toMatch(/\w\. (Clean|Replace|Repair|Seat)/);
  expect(debrief.left).not.toBeNull();
  expect(text).toContain(
    `No reading spoke clearly against the strongest rival left: ${debrief.left}`,
  );
});

test('where the best plan ends in doubt, the debrief says that no test tells more', () => {
  const { drill, world } = newDrill(11);
  const debrief = debriefOf(perfectStudent(drill, world), world);
  const last = (chance: number) =>
    debriefLines({ ...debrief, yardstick: { ...debrief.yardstick, chance } }).find((line) =>
      line.includes('suspicion'),
    );
  expect(last(0.97)).toBe('    and then the suspicion was 97 % sure.');
  expect(last(0.76)).toBe(
    '    and then no test told enough more: the strongest suspicion had 76 %.',
  );
});

test('given up has its own words, and a wrong diagnosis no proof', () => {
  const { drill, world } = newDrill(11);
  const mind = world.mind([]);
  const volts = mind.tests.find(({ id }) => id === 'sensor.feed.volts')!.test;
  const measured = measure(drill, volts, world);
  const text = (repairs: string[]) =>
    debriefLines(debriefOf(doIt(measured, { type: 'diagnose', repairs }, world).drill, world)).join(
      '\n',
    );
  const given = text([]);
  expect(given).toContain('given up');
  expect(given).not.toContain('wrong diagnosis');
  const wrong = repairChoices(measured).find(
    ({ repair }) => !world.vehicle.hidden.answer.repairs.includes(repair),
  )!;
  for (const one of [given, text([wrong.repair])]) {
    expect(one).not.toContain('proved');
    expect(one).toMatch(/No reading spoke clearly for|What spoke for/);
  }
});

test('a reading taken twice told nothing new the second time', () => {
  const { drill, world } = newDrill(11);
  const mind = world.mind([]);
  const volts = mind.tests.find(({ id }) => id === 'sensor.feed.volts')!.test;
  const twice = [volts, volts].reduce((now, test) => {
    const ready = doIt(now, { type: 'acknowledge', test }, world).drill;
    return doIt(ready, { type: 'measure', test }, world).drill;
  }, drill);
  const ended = doIt(twice, { type: 'diagnose', repairs: ['wire.feed'] }, world).drill;
  expect(debriefOf(ended, world).readings[1]!.toldNothing).toBe(true);
});

test('the advice fits the weakness: danger first, then the wrong fault, then the next level', () => {
  const { drill, world } = newDrill(11);
  const second = newDrill(2);
  const wrong = partsChanger(second.drill, second.world);
  expect(wrong.revealed!.right).toBe(false);
  expect(debriefOf(wrong, second.world).next).toMatch(/^Practise neighbours on a shared feed: /);
  const danger = doIt(
    drill,
    {
      type: 'measure',
      test: {
        setup: KEY_ON,
        probe: { kind: 'ohms', plus: 'sensor.feed', minus: 'battery.negative' },
        wiggle: false,
      },
    },
    world,
  ).drill;
  const given = doIt(danger, { type: 'diagnose', repairs: [] }, world).drill;
  expect(debriefOf(given, world).next).toContain('Safety first');
  const best = perfectStudent(newDrill(11).drill, world);
  expect(best.revealed!.points).toBe(100);
  expect(debriefOf(best, world).next).toContain(`level ${LEVELS[2]!.number}`);
});

test('over the time limit of an assignment nothing is left of the points for time', () => {
  const limit = (limitMinutes: number) => {
    const assignment = { name: 'week-3', part: 1, limitMinutes };
    const { drill, world } = newDrill(11, { more: { assignment } });
    return perfectStudent(drill, world).revealed!;
  };
  // Ten seconds between events: some two minutes in all.
  expect(limit(30)).toMatchObject({ late: false });
  const late = limit(0.5);
  expect(late.late).toBe(true);
  expect(late.score.find(({ name }) => name === 'time')!.points).toBe(0);
  const forTime = limit(30).score.find(({ name }) => name === 'time')!.points;
  expect(forTime).toBeGreaterThan(0);
  expect(limit(30).points - late.points).toBe(forTime);
});
