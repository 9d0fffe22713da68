/** Students made of code: one who does what the program would propose and proves it, one who changes parts, and their bench. */
import { createHash } from 'node:crypto';
import { type Circuit, sensorOf } from '../../src/circuit/circuit.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Test } from '../../src/circuit/test.ts';
import { type Desk, openDesk } from '../../src/commands/session/open-desk.ts';
import { openNew } from '../../src/commands/session/open-session.ts';
import type { DrillDesk } from '../../src/drill/drill-desk.ts';
import { createWorld, type DrillWorld } from '../../src/drill/drill-world.ts';
import { hideFault } from '../../src/drill/hidden-fault.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { memoryDisk } from '../../src/log/memory-disk.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import type { SuspectRow } from '../../src/session/advisor.ts';
import type { AssignmentNote, LevelName } from '../../src/session/events.ts';
import { pendingCautions, pendingTestCautions } from '../../src/session/pending-cautions.ts';
import { presentStep } from '../../src/session/session.ts';
import { isProblem } from '../../src/source/problem.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import type { OpenedSession } from '../../src/ui/app-services.ts';

export const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
export const library = loadLibrary('procedures');

const opened = await openDesk(
  { out: () => {}, err: () => {}, env: {}, cwd: process.cwd() },
  'ohmward test',
  { preview: true },
);
if (isProblem(opened)) throw new Error(opened.problem);
const shared: Desk = opened;

/** What a drill of the tests may differ in. */
export interface DrillAsk {
  readonly circuit?: string;
  readonly level?: LevelName;
  readonly procedure?: Procedure;
  readonly student?: string;
  readonly assignment?: AssignmentNote;
}

/** A session that surely is a drill, and what is hidden in it. */
export interface DrillInTest extends OpenedSession {
  readonly drill: DrillDesk;
  readonly world: DrillWorld;
}

/** A drill at its first event, in memory, ten seconds an event. */
export function newDrill(seed: number, ask: DrillAsk = {}): DrillInTest {
  const circuit = library.circuits.get(ask.circuit ?? 'hall-module-fed')!;
  const level = ask.level ?? 'unnamed';
  const { commitment, earlierRepair } = hideFault(circuit, levelNamed(level), seed, hash)!;
  let events = 0;
  const now = () => {
    events += 1;
    return when(events - 1);
  };
  const drill = openNew(
    { ...shared, disk: memoryDisk(), now },
    {
      procedure: ask.procedure ?? null,
      circuit,
      job: emptyJob('no signal'),
      by: 'person',
      vehicle: {
        kind: 'drill',
        level,
        seed,
        commitment,
        earlierRepair,
        assignment: ask.assignment ?? null,
      },
      person: ask.student ?? 'Ada Example',
      folder: 'drills',
      fileWords: `drill ${seed}`,
    },
  );
  if (isProblem(drill)) throw new Error(drill.problem);
  const world = createWorld(drill.driver.session().opened, hash);
  if (!drill.drill || !world) throw new Error('this is not a drill');
  return { ...drill, drill: drill.drill, world };
}

/** Ten seconds a step. */
export function when(step: number): { at: string; elapsed: number } {
  const at = new Date(Date.UTC(2031, 4, 6, 9, 0, 0) + step * 10_000).toISOString();
  return { at, elapsed: step * 10_000 };
}

/** A standard test of the drill's circuit, by its id. */
export function testIn({ driver }: DrillInTest, id: string): Test {
  const found = standardTests(driver.session().opened.circuit!).find((one) => one.id === id);
  if (!found) throw new Error(`no test ${id}`);
  return found.test;
}

/** Reads the cautions of a test, then makes it; the refusal, if any. */
export function measure({ driver, drill }: DrillInTest, test: Test): string | null {
  if (pendingTestCautions(driver.session(), test).length > 0)
    driver.perform({ type: 'acknowledge-cautions', test });
  return drill.act({ type: 'make-test', test }).refused?.words ?? null;
}

/** Reads the cautions of the present step, then does it; the refusal, if any. */
export function follow({ driver, drill }: DrillInTest): string | null {
  const session = driver.session();
  if (presentStep(session) && pendingCautions(session).length > 0)
    driver.perform({ type: 'acknowledge-cautions' });
  return drill.act({ type: 'do-step' }).refused?.words ?? null;
}

/** Surer than this, the leader is proven and not looked for any more. */
const SURE = 0.95;
const READINGS_MAX = 30;

/** Leads to the end: the proposed test while in doubt, then what would prove the leader. */
export function perfectStudent(begun: DrillInTest): void {
  const { driver, drill, advisor } = begun;
  if (!advisor) throw new Error('a drill has a circuit');
  for (;;) {
    const session = driver.session();
    const { rows, unexplained } = advisor.suspects(session);
    // In a drill something is wrong, however healthy it reads.
    const leader = rows.find(({ repair }) => repair !== HEALTHY)!;
    const isInDoubt = leader.chance < SURE || unexplained !== null;
    const proposed = isInDoubt ? advisor.nextTests(session)[0]?.test : undefined;
    const test = proposed ?? wouldProve(begun, leader);
    if (test === undefined || session.tests.length >= READINGS_MAX) {
      drill.act({ type: 'diagnose', repairs: leader.repair.split(' + ') });
      return;
    }
    measure(begun, test);
  }
}

/** The test that would prove the suspect, once no test tells more; none where it is proven. */
function wouldProve({ driver, advisor }: DrillInTest, { faults }: SuspectRow): Test | undefined {
  const weighed = advisor!.weigh(
    driver.session(),
    faults.map(({ id }) => id),
  );
  return weighed.proven ? undefined : weighed.wouldProve[0]?.test;
}

/** Reads what a student would read first, then names what is hidden, as one who knows it: a whole drill for little. */
export function knowing(begun: DrillInTest): void {
  for (const id of ['sensor.feed.volts', 'sensor.ground.drop', 'module.signal.counts'])
    measure(begun, testIn(begun, id));
  begun.drill.act({ type: 'diagnose', repairs: begun.world.vehicle.hidden.answer.repairs });
}

/** Looks at the live data, then names the sensor, as it is always the sensor. */
export function partsChanger(begun: DrillInTest): void {
  const { circuit } = begun.driver.session().opened;
  if (!circuit) throw new Error('a drill has a circuit');
  const counts = standardTests(circuit).find(({ test }) => test.probe.kind === 'counts')!;
  measure(begun, counts.test);
  begun.drill.act({ type: 'diagnose', repairs: [sensorRepair(circuit)] });
}

/** What a parts-changer names: the sensor itself. */
export function sensorRepair(circuit: Circuit): string {
  const sensor = sensorOf(circuit).name;
  return circuit.faults.find(({ repair }) => repair.startsWith(`${sensor}.`))!.repair;
}
