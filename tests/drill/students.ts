/** Students made of code: one who does what the program would propose and proves it, one who changes parts, and their bench. */
import { createHash } from 'node:crypto';
import { type Circuit, sensorOf } from '../../src/circuit/circuit.ts';
import { type DrillCommand, decideDrill, pendingFor } from '../../src/drill/decide-drill.ts';
import { type Drill, evolveDrill, openDrill } from '../../src/drill/drill.ts';
import { DRILL_FORMAT, type DrillOpened } from '../../src/drill/drill-events.ts';
import { AND } from '../../src/drill/drill-mind.ts';
import type { DrillTest } from '../../src/drill/drill-test.ts';
import { createWorld, type DrillWorld, type MindStore } from '../../src/drill/drill-world.ts';
import { hideFault } from '../../src/drill/hidden-fault.ts';
import { type LevelName, levelNamed } from '../../src/drill/levels.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';

export const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
export const library = loadLibrary('procedures');
const store: MindStore = new Map();

/** A drill at its first event. */
export function newDrill(
  seed: number,
  ask: { circuit?: string; level?: LevelName; more?: Partial<DrillOpened> } = {},
): { drill: Drill; world: DrillWorld } {
  const circuit: Circuit = library.circuits.get(ask.circuit ?? 'hall-module-fed')!;
  const level = ask.level ?? 'unnamed';
  const hidden = hideFault(circuit, levelNamed(level), seed, hash)!;
  const opened: DrillOpened = {
    type: 'drill-opened',
    format: DRILL_FORMAT,
    program: 'ohmward test',
    id: `drill-${seed}`,
    student: 'Ada Example',
    level,
    seed,
    commitment: hidden.commitment,
    complaint: 'no signal',
    earlierRepair: hidden.earlierRepair,
    circuit,
    procedure: null,
    meter: STANDARD_SETTINGS.meter,
    assignment: null,
    ...when(0),
    ...ask.more,
  };
  const world = createWorld(opened, hash, library.cautions, store)!;
  return { drill: openDrill(opened), world };
}

/** Ten seconds a step. */
export function when(step: number): { at: string; elapsed: number } {
  const at = new Date(Date.UTC(2031, 4, 6, 9, 0, 0) + step * 10_000).toISOString();
  return { at, elapsed: step * 10_000 };
}

/** The drill after a command; the refusal, if any, is returned too. */
export function doIt(
  drill: Drill,
  command: DrillCommand,
  world: DrillWorld,
): { drill: Drill; refused: string | null } {
  const { events, refused } = decideDrill(drill, command, when(drill.events.length), world);
  return { drill: events.reduce(evolveDrill, drill), refused: refused?.words ?? null };
}

/** Reads cautions, then measures. */
export function measure(drill: Drill, test: DrillTest, world: DrillWorld): Drill {
  const ready =
    pendingFor(drill, test, world).length > 0
      ? doIt(drill, { type: 'acknowledge', test }, world).drill
      : drill;
  return doIt(ready, { type: 'measure', test }, world).drill;
}

/** Leads to the end: the proposed test while in doubt, then what would prove the leader. */
export function perfectStudent(start: Drill, world: DrillWorld): Drill {
  let drill = start;
  const { earlierRepair } = drill.opened;
  for (;;) {
    const mind = world.mind(drill.readings);
    const readings = mind.readingsOf(drill.readings);
    const ranking = mind.rank(readings, earlierRepair);
    const [leader] = ranking.repairs;
    const now = drill.situation;
    const doubt = leader!.chance < 0.95 || !ranking.explained;
    const proposed = doubt
      ? mind.propose(readings, ranking, now).best.find(({ bits }) => bits >= 0.01)?.test
      : undefined;
    const weighed = mind.weigh({ repair: leader!.repair, readings, ranking, now, earlierRepair });
    const test = proposed ?? (weighed.proven ? undefined : weighed.offers[0]?.test);
    if (test === undefined || drill.readings.length >= 30)
      return doIt(drill, { type: 'diagnose', repairs: leader!.repair.split(AND) }, world).drill;
    drill = measure(drill, mind.tests[test]!.test, world);
  }
}

/** Looks at the live data, then names the sensor, as it is always the sensor. */
export function partsChanger(start: Drill, world: DrillWorld): Drill {
  const mind = world.mind([]);
  const counts = mind.tests.find(({ test }) => test.probe.kind === 'counts')!;
  const drill = measure(start, counts.test, world);
  const sensor = sensorOf(drill.opened.circuit).name;
  const { repair } = drill.opened.circuit.faults.find((one) =>
    one.repair.startsWith(`${sensor}.`),
  )!;
  return doIt(drill, { type: 'diagnose', repairs: [repair] }, world).drill;
}
