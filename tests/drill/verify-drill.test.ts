import { describe, expect, test } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import type { Drill } from '../../src/drill/drill.ts';
import type { DrillEvent, DrillMeasured } from '../../src/drill/drill-events.ts';
import type { MindStore } from '../../src/drill/drill-world.ts';
import { verifyDrill } from '../../src/drill/verify-drill.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import { drillText } from './drill-files.ts';
import { doIt, hash, library, newDrill, perfectStudent } from './students.ts';

const store: MindStore = new Map();
const done = (() => {
  const { drill, world } = newDrill(21);
  return perfectStudent(drill, world);
})();

/** The events as they come back from a file. */
function fromFile(drill: Pick<Drill, 'events'>): DrillEvent[] {
  const log = readSessionLog(Buffer.from(drillText(drill)));
  expect(log.verdict).toBe('whole');
  return log.events as unknown as DrillEvent[];
}

function changed(change: (events: DrillEvent[]) => void): readonly string[] {
  const events = structuredClone(fromFile(done)) as DrillEvent[];
  change(events);
  return verifyDrill(events, hash, store).problems;
}
type Change = (event: Record<string, unknown>) => void;
const edit = (type: DrillEvent['type'], change: Change) => (events: DrillEvent[]) =>
  change(events.find((event) => event.type === type) as unknown as Record<string, unknown>);

describe('a drill as it was written', () => {
  test('is true from its file', () => {
    expect(verifyDrill(fromFile(done), hash, store)).toEqual({ verdict: 'true', problems: [] });
  });
  test('is open while it goes on', () => {
    const events = fromFile({ events: done.events.slice(0, -2) });
    expect(verifyDrill(events, hash, store)).toEqual({ verdict: 'open', problems: [] });
  });
});

// The chain of hashes would name the changed line too; these are edits by someone who computed it anew.
test.each<[string, (events: DrillEvent[]) => void, string]>([
  [
    'another seed',
    edit('drill-opened', (event) => {
      event['seed'] = 22;
    }),
    'commitment is not that of the seed',
  ],
  [
    'another commitment',
    edit('drill-opened', (event) => {
      event['commitment'] = '0'.repeat(64);
    }),
    'commitment',
  ],
  [
    'a nicer reading',
    edit('drill-measured', (event) => {
      event['found'] = '5.000 V';
    }),
    'shows something else',
  ],
  [
    'fewer minutes',
    edit('drill-measured', (event) => {
      event['minutes'] = 0.5;
    }),
    'other minutes',
  ],
  [
    'another answer',
    edit('drill-revealed', (event) => {
      event['faults'] = ['wire.nothing'];
    }),
    'does not match the commitment',
  ],
  [
    'another salt',
    edit('drill-revealed', (event) => {
      event['salt'] = '00';
    }),
    'does not match the commitment',
  ],
  [
    'more points',
    edit('drill-revealed', (event) => {
      event['points'] = 1000;
    }),
    'score is not what the readings earn',
  ],
  [
    'another diagnosis',
    edit('drill-diagnosed', (event) => {
      event['repairs'] = ['target.gap'];
    }),
    'score is not what the readings earn',
  ],
  [
    'a reading left out',
    (events) => {
      events.splice(
        events.findIndex(({ type }) => type === 'drill-measured'),
        1,
      );
    },
    'the minutes are not those of the readings',
  ],
  [
    'a test stopped that was fine',
    (events) => {
      const measured = events.find((event) => event.type === 'drill-measured')!;
      events.splice(2, 0, {
        type: 'drill-test-stopped',
        test: (measured as DrillMeasured).test,
        hazard: 'clipped-in',
        reason: '',
        would: '',
        at: measured.at,
        elapsed: measured.elapsed,
      });
    },
    'would not have stopped',
  ],
  [
    'something after the reveal',
    (events) => {
      events.push(structuredClone(events[1]!));
    },
    'after the reveal',
  ],
])('%s is found out', (_name, change, words) => {
  const problems = changed(change);
  expect(problems.length).toBeGreaterThan(0);
  expect(problems.join('\n')).toContain(words);
});

describe('a step of the procedure that was followed', () => {
  const { value } = linkProcedure(library.procedures.get('hall-no-signal')!, library, {
    drive: 'combustion',
    modelOf: (circuit) =>
      createModel(circuit, { samples: 16, seed: 1, meter: STANDARD_SETTINGS.meter }),
  });
  const { drill, world } = newDrill(21, { more: { procedure: value!.procedure } });
  const once = doIt(drill, { type: 'follow' }, world).drill;
  const problemsWith = (change: Change) => {
    const events = structuredClone(once.events) as DrillEvent[];
    change(events[1] as unknown as Record<string, unknown>);
    return verifyDrill(events, hash, store).problems;
  };

  test('is true as it was written', () => {
    expect(once.events[1]?.type).toBe('drill-step-followed');
    expect(problemsWith(() => {})).toEqual([]);
  });
  test.each([
    ['minutes', -50],
    ['step', 'another'],
    ['go', 'another'],
  ])('is found out with other %s', (key, other) => {
    const problems = problemsWith((event) => {
      event[key] = other;
    });
    expect(problems).toEqual(['event 2: the procedure does not go on like this']);
  });
  test('is found out where no procedure is followed', () => {
    const events = structuredClone(done.events) as DrillEvent[];
    events.splice(1, 0, once.events[1]!);
    const { problems } = verifyDrill(events, hash, store);
    expect(problems[0]).toBe('event 2: the procedure does not go on like this');
  });
});

test('what is no drill is called so', () => {
  expect(verifyDrill([], hash).verdict).toBe('false');
  expect(verifyDrill(done.events.slice(1), hash).verdict).toBe('false');
});
