/** The battery's volts on the job sheet, where a step reads the same in the same state: nobody measures them twice. */
import type { VehicleState } from '../circuit/test.ts';
import type { Step } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { TakenReading } from './driver.ts';
import type { Session } from './session.ts';

/** What the job sheet calls the battery in a state in which it can be read. */
export const BATTERY_CALLED = {
  'key-on': 'battery at rest',
  cranking: 'battery while cranking',
  running: 'battery with the engine running',
} as const satisfies Partial<Record<VehicleState, string>>;
const CALLED: Readonly<Partial<Record<VehicleState, string>>> = BATTERY_CALLED;
/** What the job sheet says of a value that somebody has read. */
export const MEASURED = 'measured';
const VOLTS = /^\d+(?:\.\d+)? V$/;

/** What was measured and stands on the job sheet for `step`; null where nothing does, where a simulated vehicle answers, and after the repair. */
export function sheetReading(step: Step, { opened, status }: Session): TakenReading | null {
  const test = testOf(step);
  const isAsked = status === 'open' && opened.vehicle.kind === 'real';
  if (step.kind !== 'measure' || !test || !isAsked) return null;
  const { probe, setup } = test;
  const isBattery =
    probe.kind === 'volts' &&
    probe.plus === 'battery.positive' &&
    probe.minus === 'battery.negative';
  const { known = [] } = opened.job;
  const said = known.find(
    ({ what, is, from }) => what === CALLED[setup.state] && from === MEASURED && VOLTS.test(is),
  );
  return isBattery && said ? { typed: said.is, value: Number.parseFloat(said.is) } : null;
}
