/**
 * The table of tests: what could be done on a circuit, in whose words, in how many minutes and with what at hand. It is
 * made of the steps of the procedure, with their author's minutes, and of the standard tests of the circuit. Advice,
 * drills, the proof and the comparison of costs all take it from here, so a test costs the same whoever asks.
 *
 * An author's minutes have all handling included; `test-cost.ts` adds getting there by itself. So they are split: what
 * the cost model adds for this test at the start of a job is taken off, and the reading keeps the rest.
 */
import { type Circuit, moduleOf, partName } from '../circuit/circuit.ts';
import { instrumentOf } from '../circuit/instruments.ts';
import { functionOf } from '../circuit/meter-units.ts';
import { leads, refuseTest } from '../circuit/refuse-test.ts';
import { unitShownBy } from '../circuit/shown-by.ts';
import { standardTests } from '../circuit/standard-tests.ts';
import type { Meter, Probe, Setup, Test } from '../circuit/test.ts';
import { arrangementKey, testKey } from '../circuit/test-key.ts';
import { isTask, type Procedure } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import { AT_THE_START } from './optimum.ts';
import type { TableTest } from './prediction-table.ts';
import { COSTS, testCost } from './test-cost.ts';

/** A test as the table knows it, and as the person does it. */
export interface TestEntry extends TableTest {
  /** Equal for equal tests and for no others. */
  readonly key: string;
  readonly test: Test;
  /** With the `{places}` of a step's title still to be filled from the job. */
  readonly words: string;
  /** The step of the procedure that asks for it; null for a standard test and for one of the person's own. */
  readonly step: string | null;
}

/** Moving harness and connectors while reading; common practice, no source. */
export const WIGGLE_MINUTES = 0.5;
/** Plugging in a spare sensor, and laying a temporary wire: as the standard tests count them. */
const SPARE_MINUTES = 5;
const LEAD_MINUTES = 4;
/** Of a step whose author gives no minutes: no reading is taken in none. Ours. */
const LEAST_MINUTES = 0.5;

/** The tests of a procedure, if there is one, and the standard tests of the circuit, each once; none that is refused. */
export function testEntries(
  circuit: Circuit,
  procedure: Procedure | null,
  meter: Meter,
): TestEntry[] {
  const known = new Map<string, TestEntry>();
  // In the order in which a session file keeps them, so that what is read back is weighed alike.
  const steps = Object.entries(procedure?.steps ?? {}).sort(([a], [b]) => (a < b ? -1 : 1));
  for (const [, step] of steps) {
    const test = testOf(step);
    if (!test || !isTask(step) || refuseTest(circuit, test) !== null) continue;
    const { id, title, family } = step;
    const entry = entryOf(circuit, test, meter, {
      ...{ id, words: title, family, step: id },
      minutes: readingMinutes(circuit, test, step.minutes),
    });
    const twin = known.get(entry.key);
    // For two steps of one test the larger holds: both authors have to be able to do it.
    const minutes = Math.max(entry.minutes, twin?.minutes ?? 0);
    known.set(entry.key, { ...(twin ?? entry), minutes });
  }
  for (const { test, id, words, family, minutes } of standardTests(circuit)) {
    const entry = entryOf(circuit, test, meter, { id, words, family, minutes, step: null });
    // A step that makes it with the harness moved shows all that it shows at rest.
    const isMade = known.has(entry.key) || known.has(testKey({ ...test, wiggle: true }));
    if (!isMade) known.set(entry.key, entry);
  }
  return [...known.values()];
}

/**
 * A test that is not in the table: one of the person's own, with the usual minutes of its instrument; or, where `known`
 * is what it is without moving the harness, that one with the harness moved.
 */
export function ownEntry(
  circuit: Circuit,
  test: Test,
  meter: Meter,
  known: TestEntry | null,
): TestEntry {
  if (!known)
    return entryOf(circuit, test, meter, {
      id: testKey(test),
      words: moving(test, instrumentOf(test.probe).words.line(test.probe)),
      family: test.probe.kind,
      minutes: usualMinutes(test),
      step: null,
    });
  return {
    ...known,
    key: testKey(test),
    test,
    id: `${known.id}, moved`,
    words: moving(test, known.words),
    minutes: known.minutes + WIGGLE_MINUTES,
  };
}

function entryOf(
  circuit: Circuit,
  test: Test,
  meter: Meter,
  rest: Pick<TestEntry, 'id' | 'words' | 'family' | 'minutes' | 'step'>,
): TestEntry {
  const { setup, probe } = test;
  const unit = unitShownBy(probe);
  const accuracy = unit && functionOf(meter, unit);
  return {
    ...rest,
    key: testKey(test),
    test,
    state: setup.state,
    unplugged: setup.unplugged,
    ...reachesOf(circuit, test),
    parts: partsOf(leads(probe)),
    reads: readsOf(probe),
    needs: needsOf(test),
    arrangement: arrangementOf(setup),
    ...(accuracy
      ? { standardUncertainty: (value: number) => meterUncertainty(accuracy, value).standard }
      : {}),
  };
}

/**
 * Minutes of the reading itself in a step whose author gives `minutes` for all of it: less what the cost model adds for
 * a vehicle at the start of a job, but not less than the reading usually takes, or the author gives, by itself.
 */
function readingMinutes(circuit: Circuit, test: Test, minutes: number): number {
  const { setup } = test;
  const bare = {
    ...{ id: '', family: '', minutes: 0, needs: [] },
    ...{ state: setup.state, unplugged: setup.unplugged, ...reachesOf(circuit, test) },
    arrangement: arrangementOf(setup),
  };
  const added = testCost(bare, AT_THE_START, COSTS, false).minutes;
  const least = Math.min(minutes, usualMinutes(test));
  return Math.max(minutes - added, least) || LEAST_MINUTES;
}

function usualMinutes({ setup, probe, wiggle }: Test): number {
  const leadsLaid = setup.bridges.filter(({ through }) => through === 'lead').length;
  const spare = setup.sensor === 'spare' ? SPARE_MINUTES : 0;
  return (
    instrumentOf(probe).minutes + spare + LEAD_MINUTES * leadsLaid + (wiggle ? WIGGLE_MINUTES : 0)
  );
}

/** What has to be at hand; eyes everybody has. */
export function needsOf({ setup, probe }: Test): string[] {
  const needs = new Set<string>();
  const { need } = instrumentOf(probe);
  if (need !== 'eyes') needs.add(need);
  for (const { through } of setup.bridges)
    needs.add(typeof through === 'object' ? 'resistor' : through);
  if (setup.sensor === 'spare') needs.add('spare-sensor');
  return [...needs];
}

/** Parts that must be got at for leads and bridges. A battery post costs nothing to reach. */
function reachesOf(
  circuit: Circuit,
  { setup, probe }: Test,
): Pick<TestEntry, 'reaches' | 'module' | 'access'> {
  const clips = setup.bridges.flatMap(({ from, to }) => [from, to]);
  // Live data are read at the connector of the tester, not at the module's input.
  const touched = partsOf([...(probe.kind === 'counts' ? [] : leads(probe)), ...clips]);
  const joints = circuit.parts.flatMap((part) => (part.kind === 'joint' ? [part] : []));
  // A connector somewhere in the harness has to be found before it is taken apart.
  const opened = joints.flatMap(({ name }) =>
    setup.unplugged.includes(name) || isOf(probe, name) ? [name] : [],
  );
  const reaches = [...new Set([...touched, ...opened])].sort();
  const module = moduleOf(circuit).name;
  const access = Object.fromEntries(
    joints.flatMap(({ name, minutes }) =>
      minutes !== null && reaches.includes(name) ? [[name, minutes]] : [],
    ),
  );
  return {
    reaches,
    ...(reaches.includes(module) && { module }),
    ...(Object.keys(access).length > 0 && { access }),
  };
}

function partsOf(terminals: readonly string[]): string[] {
  return [...new Set(terminals.map(partName))].filter((part) => part !== 'battery').sort();
}

/** Where a mistake about the place would show again: the terminals under the leads, or what is looked at. */
function readsOf(probe: Probe): string[] {
  if (probe.kind === 'inspect') return [`look ${probe.of}`];
  if (probe.kind === 'counts') return [`live data ${probe.input}`];
  return leads(probe)
    .filter((terminal) => partName(terminal) !== 'battery')
    .sort();
}

/** What else must be set up by hand: clips, a spare sensor, a target moved without the engine. Nothing is the empty text. */
function arrangementOf(setup: Setup): string {
  const { state, target } = setup;
  const byHand = target === 'moving' && (state === 'key-off' || state === 'key-on');
  return byHand ? `${arrangementKey(setup)} by hand` : arrangementKey(setup);
}

function isOf(probe: Probe, joint: string): boolean {
  return probe.kind === 'inspect' && probe.of === `connector.${joint}`;
}

function moving({ wiggle }: Test, words: string): string {
  return wiggle ? `${words}, moving the harness` : words;
}
