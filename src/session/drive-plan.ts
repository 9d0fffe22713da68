/**
 * A plan to record a fault on a drive, for one that nothing wakes in the workshop: what is recorded where, who drives,
 * when it happens by the job sheet, and what becomes of the recording. Common practice, no source. The cautions of a road
 * test stand before it.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { PLAIN_SETUP } from '../circuit/plain-setup.ts';
import type { Probe, Test } from '../circuit/test.ts';
import type { Happens, Job } from '../procedure/job.ts';
import { type AskStep, type Caution, type Step, WAKING } from '../procedure/procedure.ts';
import { leadWords } from '../procedure/test-words.ts';
import { canWake } from './intermittent.ts';
import { statesOut } from './out-of-reach.ts';
import { testCautions } from './pending-cautions.ts';
import { presentStep, type Session } from './session.ts';

/** The plan to print and to take along. */
export interface DrivePlan {
  /** Of a road test, whole; they come before anything else. */
  readonly cautions: readonly Caution[];
  /** One thing to do each, in their order. */
  readonly lines: readonly string[];
}

/** How the vehicle is driven so that it happens. */
const DRIVEN: Readonly<Record<Happens, string>> = {
  always: 'It is there all the time: a few minutes in all gears are enough.',
  cold: 'It happens cold: leave it overnight with the leads connected, and start recording before the first start.',
  hot: 'It happens hot: drive until fully warm, let it heat-soak for ten minutes, restart and drive again.',
  wet: 'It happens in the wet: drive in rain or on wet roads, and keep recording while it dries.',
  bumps:
    'It happens over bumps: the same rough road several times, at the speed at which it was noticed.',
  cranking:
    'It happens while cranking: several starts, cold and hot, each recorded from before the key is turned.',
};
const UNTOLD =
  'Nobody said when it happens: ask first. Drive the way the customer does when it happens, cold and warm, on smooth and rough roads.';

/** The plan; null where the tree watches nothing that can be recorded while driving, where the engine must not run, and on a drill. */
export function drivePlan(session: Session): DrivePlan | null {
  const { procedure, job, circuit, vehicle } = session.opened;
  if (!procedure || vehicle.kind === 'drill' || statesOut(session).includes('driving')) return null;
  const steps = Object.values(procedure.steps);
  const isRecorded = (step: Step | null): step is AskStep =>
    step?.kind === 'ask' &&
    WAKING.includes(step.family) &&
    canWake(procedure, step) &&
    step.setup.unplugged.length === 0 &&
    step.setup.bridges.length === 0 &&
    (step.watched ?? []).some(({ kind }) => kind !== 'ohms');
  const present = presentStep(session);
  const step = isRecorded(present) ? present : steps.find(isRecorded);
  if (!step) return null;
  const probes = (step.watched ?? []).filter(({ kind }) => kind !== 'ohms');
  const test: Test = { setup: { ...PLAIN_SETUP, state: 'driving' }, probe: probes[0]! };
  return {
    cautions: testCautions(session, test),
    lines: [
      ...probes.map((probe) => recorded(probe, job, circuit)),
      'Everything plugged in. Back-probe, never pierce; fuse each lead that goes to a feed. Tie the leads clear of belts, exhaust, wheels and pedals, then turn the steering lock to lock and check that nothing catches.',
      session.instruments.includes('helper')
        ? 'One person drives; a second one watches, does not distract the driver in traffic, and marks the moment.'
        : 'Alone: start the recording before you set off, and look at it only when parked. Note the clock time when it happened, once you have stopped.',
      ...drivenWords(job),
      'Stop once it has happened, save, and read the codes and freeze-frame data before anything is cleared.',
      'If it does not happen: half an hour under those conditions is enough for one try. A fault that does not show on the drive is not ruled out.',
      `Afterwards measure the recording at "${step.title}": the drop-outs, the shortest and the longest, are then in the record.`,
    ],
  };
}

/** The plan as one text, for the record. */
export function planNote({ lines }: DrivePlan): string {
  return `Plan for a recording on a drive. ${lines.join(' ')}`;
}

function recorded(probe: Probe, job: Job, circuit: Circuit | null): string {
  const where = leadWords(probe, job, circuit);
  if (probe.kind === 'counts') return `Log the live data as well: ${where}`;
  const how =
    probe.kind === 'volts'
      ? 'A recorder, or a scope in roll mode, is better than min/max, which does not say when.'
      : 'Roll mode, slow enough to hold minutes, keeping every sample.';
  return `Record: ${where} ${how}`;
}

function drivenWords({ circumstances }: Job): string[] {
  const happens = circumstances?.happens ?? [];
  return happens.length === 0 ? [UNTOLD] : happens.map((one) => DRIVEN[one]);
}
