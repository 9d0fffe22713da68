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
  always: 'It happens always: a few minutes in all gears are enough.',
  cold: 'It happens cold: let it stand overnight with the leads on, and begin to record before the first start.',
  hot: 'It happens hot: drive until it is as warm as it gets, let it stand for ten minutes, start and drive again.',
  wet: 'It happens in the wet: drive in rain or over wet roads, and let the recording run while it dries.',
  bumps:
    'It happens over bumps: the same rough road again and again, at the speed at which it was felt.',
  cranking:
    'It happens while cranking: several starts, cold and hot, each recorded from before the key is turned.',
};
const UNTOLD =
  'Nobody said when it happens: ask first. Drive as the customer does when it is felt, cold and warm, smooth and rough.';

/** The plan; null where the tree watches nothing that can be recorded while driving, and on a drill. */
export function drivePlan(session: Session): DrivePlan | null {
  const { procedure, job, circuit, vehicle } = session.opened;
  if (!procedure || vehicle.kind === 'drill') return null;
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
      'Everything plugged in. Back-probe, never pierce; fuse each lead that goes to a feed. Tie the leads off clear of belts, exhaust, wheels and pedals, then turn the steering lock to lock and see that nothing catches.',
      session.instruments.includes('helper')
        ? 'One drives, and a second person watches, says nothing to the driver while it is busy on the road, and marks the moment.'
        : 'Alone: the recording runs by itself from before the start, and is looked at when the vehicle stands. Note the time by the clock when it is felt, once you have stopped.',
      ...drivenWords(job),
      'Stop where it happened, save, and read the codes with what the module kept of the moment before anything is cleared.',
      'If it does not come: half an hour under what was told is enough for one try. What never came on the drive is not ruled out by it.',
      `Afterwards measure the recording at "${step.title}": the drops, the shortest and the longest are then in the record.`,
    ],
  };
}

/** The plan as one text, for the record. */
export function planNote({ lines }: DrivePlan): string {
  return `Plan to record on a drive. ${lines.join(' ')}`;
}

function recorded(probe: Probe, job: Job, circuit: Circuit | null): string {
  const where = leadWords(probe, job, circuit);
  if (probe.kind === 'counts') return `Record in the live data as well: ${where}`;
  const how =
    probe.kind === 'volts'
      ? 'A recorder or a scope that rolls is better than minimum and maximum, which do not say when.'
      : 'Let it roll, slow enough for minutes and with every sample kept.';
  return `Record: ${where} ${how}`;
}

function drivenWords({ circumstances }: Job): string[] {
  const happens = circumstances?.happens ?? [];
  return happens.length === 0 ? [UNTOLD] : happens.map((one) => DRIVEN[one]);
}
