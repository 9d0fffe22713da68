/** A test as a student does it, and as the cost model and the ranking know it. */
import { type Circuit, partName } from '../circuit/circuit.ts';
import { leads } from '../circuit/refuse-test.ts';
import { standardTests } from '../circuit/standard-tests.ts';
import type { Meter, MeterFunction, Probe, Setup, Test } from '../circuit/test.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import type { TableTest } from '../suspects/prediction-table.ts';

/** One reading that was asked for. */
export interface DrillTest extends Test {
  /** Harness and connectors are moved while the instrument is watched. */
  readonly wiggle: boolean;
}

/** Moving the harness while reading; common practice, no source. */
const WIGGLE_MINUTES = 0.5;

/** Minutes of the reading itself by instrument, as the standard tests have them; common practice, no source. */
const MINUTES: Readonly<Record<Probe['kind'], number>> = {
  volts: 1,
  ohms: 2,
  light: 1.5,
  lamp: 1.5,
  pattern: 3,
  counts: 1,
  timing: 5,
  inspect: 3,
};

/** A test of the table that is also a test at the vehicle. */
export interface KnownTest extends TableTest {
  readonly words: string;
  readonly test: DrillTest;
}

/** Plugging in a spare sensor, and laying a temporary wire: as the standard tests count them. */
const SPARE_MINUTES = 5;
const LEAD_MINUTES = 4;

/** What a standard test knows better than the rules here. */
export interface Known {
  readonly id: string;
  readonly words: string;
  readonly minutes: number;
  readonly family: string;
}

const knownOf = new WeakMap<Circuit, ReadonlyMap<string, Known>>();

/** The standard test of a circuit that this is, moved harness or not; null for one of the student's own. */
export function standardOf(circuit: Circuit, test: DrillTest): Known | null {
  let known = knownOf.get(circuit);
  if (!known) {
    known = new Map(
      standardTests(circuit).map((one) => [testKey({ ...one.test, wiggle: false }), one]),
    );
    knownOf.set(circuit, known);
  }
  return known.get(testKey({ ...test, wiggle: false })) ?? null;
}

/** The same text for the same test, whoever made it. */
export function testKey(test: DrillTest): string {
  return JSON.stringify(inOrder(test));
}

/** The same test with its keys and connectors in one order: a file keeps keys in another one, and noise goes by the text. */
export function inOrder({ setup, probe, wiggle }: DrillTest): DrillTest {
  const { state, unplugged, bridges, sensor, target } = setup;
  const ordered = {
    state,
    unplugged: [...new Set(unplugged)].sort(),
    bridges: bridges.map(({ from, to, through }) => ({ from, to, through })),
    sensor,
    target,
  };
  return { setup: ordered, probe: probeInOrder(probe), wiggle };
}

function probeInOrder(probe: Probe): Probe {
  if (probe.kind === 'inspect') return { kind: 'inspect', of: probe.of };
  if (probe.kind === 'counts') return { kind: 'counts', input: probe.input };
  return { kind: probe.kind, plus: probe.plus, minus: probe.minus };
}

/** The test for the cost model. */
export function knownTest(test: DrillTest, meter: Meter, known: Known | null): KnownTest {
  const { setup, probe, wiggle } = test;
  const accuracy = meterOf(meter, probe);
  const base = known ?? {
    id: testKey(test),
    words: probeWords(probe),
    minutes: ownMinutes(test),
    family: probe.kind,
  };
  return {
    ...base,
    words: wiggle ? `${base.words}, moving the harness` : base.words,
    minutes: base.minutes + (wiggle ? WIGGLE_MINUTES : 0),
    test,
    state: setup.state,
    unplugged: setup.unplugged,
    reaches: reachesOf(test),
    needs: [],
    arrangement: arrangementOf(setup),
    ...(accuracy
      ? { standardUncertainty: (value: number) => meterUncertainty(accuracy, value).standard }
      : {}),
  };
}

/** What else must be set up by hand: clips, a spare sensor, a target moved without the engine. Nothing is the empty text. */
function arrangementOf({ state, bridges, sensor, target }: Setup): string {
  const byHand = target === 'moving' && (state === 'key-off' || state === 'key-on');
  const plain = bridges.length === 0 && sensor === 'fitted' && !byHand;
  return plain ? '' : JSON.stringify([bridges, sensor, byHand]);
}

function ownMinutes({ setup, probe }: DrillTest): number {
  const leadsLaid = setup.bridges.filter(({ through }) => through === 'lead').length;
  const spare = setup.sensor === 'spare' ? SPARE_MINUTES : 0;
  return MINUTES[probe.kind] + spare + LEAD_MINUTES * leadsLaid;
}

/** Parts that must be got at for leads and bridges. A battery post costs nothing to reach. */
function reachesOf({ setup, probe }: DrillTest): string[] {
  const ends = [...leads(probe), ...setup.bridges.flatMap(({ from, to }) => [from, to])];
  // Live data are read at the plug of the tester, not at the module's input.
  const reached = probe.kind === 'counts' ? ends.slice(1) : ends;
  return [...new Set(reached.map(partName))].filter((part) => part !== 'battery').sort();
}

function meterOf(meter: Meter, probe: Probe): MeterFunction | null {
  if (probe.kind === 'volts') return meter.volts;
  return probe.kind === 'ohms' ? meter.ohms : null;
}

/** Where the leads go, in a line: `volts, red at sensor.feed, black at battery.negative`. */
function probeWords(probe: Probe): string {
  if (probe.kind === 'inspect') return `look at ${probe.of}`;
  if (probe.kind === 'counts') return `live data: does the module follow ${probe.input}`;
  return `${INSTRUMENTS[probe.kind]}, red at ${probe.plus}, black at ${probe.minus}`;
}

const INSTRUMENTS = {
  volts: 'volts',
  ohms: 'ohms',
  light: 'LED light',
  lamp: 'filament lamp',
  pattern: 'scope',
  timing: 'scope beside a good signal',
} as const;
