/**
 * Where the leads go, what is good and the prompt stand on the screen without a key, on the way of a technician through
 * shipped trees: with the pins of the car, instruments that are not ticked, and cautions that were read before.
 */

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { startable } from '../../../src/commands/session/open-desk.ts';
import { beginSession } from '../../../src/commands/session/open-session.ts';
import { loadJob } from '../../../src/procedure/load-job.ts';
import type { Step } from '../../../src/procedure/procedure.ts';
import { setupSay } from '../../../src/procedure/setup-say.ts';
import { expectedRangeWords } from '../../../src/procedure/test-words.ts';
import { pendingCautions } from '../../../src/session/pending-cautions.ts';
import { presentStep } from '../../../src/session/session.ts';
import { untouchedSetup } from '../../../src/session/standing-setup.ts';
import { vehicleCommand } from '../../../src/session/vehicle-command.ts';
import { isProblem } from '../../../src/source/problem.ts';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import { SessionScreen } from '../../../src/ui/screens/session-screen.tsx';
import { libraryDesk } from '../../library-desk.ts';
import { openTestScreen } from '../in-process.ts';

const table = await libraryDesk();

const SIZES = [
  { columns: 60, rows: 20 },
  { columns: 80, rows: 24 },
];

it.each([
  ['silent-crankshaft', 'wire.signal.open', ['battery/battery', 'feed/across']],
  ['silent-crankshaft', 'sensor.dead', ['battery/battery', 'feed/across']],
  ['quarrelling-pedal', 'wire.signal-1.short-to-signal-2', []],
  ['slipped-wheel', 'target.displaced', ['battery/battery', 'rest', 'rest-minus']],
  [
    'starved-throttle',
    'pressure-sensor.shorted',
    ['battery/battery', 'levels/across', 'levels/to-battery', 'feed-lost/along-wire', 'at-twin'],
  ],
])('%s, %s', { timeout: 120_000 }, async (job, fault, sketched) => {
  const opened = begin(job, fault);
  const below: string[] = [];
  const drawn: string[] = [];
  for (let step = stepOf(opened); step && step.kind !== 'conclude'; step = stepOf(opened)) {
    if (pendingCautions(opened.driver.session()).length > 0)
      opened.driver.perform({ type: 'acknowledge-cautions' });
    if (step.kind === 'measure' || step.kind === 'look')
      for (const size of SIZES) {
        const frame = await frameOf(opened, size);
        below.push(...lacking(opened, step, frame).map((text) => `${step.id}: ${text}`));
        if (size.rows === 24 && step.kind === 'measure' && isDrawn(frame)) drawn.push(step.id);
      }
    const answer = opened.driver.vehicleShows();
    const command = answer && vehicleCommand(step, answer);
    if (!command || !opened.driver.perform(command).ok) break;
  }
  expect(below).toEqual([]);
  // A lead finds its terminal on the sketch, whatever text has to go below the fold for it; no room beside a resistor's words,
  // nor for a pedal's six wires.
  expect(drawn).toEqual(sketched);
});

function stepOf({ driver }: OpenedSession): Step | null {
  return presentStep(driver.session());
}

function begin(name: string, fault: string): OpenedSession {
  const file = `procedures/jobs/${name}.yaml`;
  const { value } = loadJob(readFileSync(file, 'utf8'), file);
  const procedure = startable(table).find(({ draft }) => draft.procedure === value?.procedure);
  const opened = beginSession(table, {
    subject: { kind: 'procedure', procedure: procedure! },
    job: value!.job,
    bench: { fault, seed: 1 },
  });
  if (isProblem(opened)) throw new Error(opened.problem);
  return { ...opened, advisor: null };
}

/** The screen of the present step; the vehicle is shown as a real one, which offers no answer. */
async function frameOf(opened: OpenedSession, size: (typeof SIZES)[number]): Promise<string> {
  const real = { ...opened, driver: { ...opened.driver, vehicleShows: () => null } };
  const screen = await openTestScreen(
    <SessionScreen opened={real} clock={() => 0} onHome={() => {}} />,
    size,
  );
  const frame = await screen.text();
  await screen.unmount();
  return frame;
}

/** The wiring from the module to the sensor, both with their whole frames. */
function isDrawn(frame: string): boolean {
  return /┌─ .*module ─+┐.*┌─ .*─┐/.test(frame);
}

/** What of leads and limit is not seen. */
function lacking(
  opened: OpenedSession,
  step: Extract<Step, { kind: 'measure' | 'look' }>,
  frame: string,
): string[] {
  const seen = frame.replace(/[│\s]+/g, ' ');
  const session = opened.driver.session();
  const { circuit } = session.opened;
  // What stands of the test before is not said again.
  const say = setupSay(step.setup, step.probe, circuit, untouchedSetup(session));
  const leads = opened.bind(say);
  const range =
    step.kind === 'measure' && step.expected ? expectedRangeWords(step.expected, step.unit) : '';
  return [leads, range]
    .filter((words) => !seen.includes(words))
    .map((words) => `${words}\n${frame}`);
}
