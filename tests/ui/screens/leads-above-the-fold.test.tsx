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
  ['silent-crankshaft', 'wire.signal.open'],
  ['silent-crankshaft', 'sensor.dead'],
  ['quarrelling-pedal', 'wire.signal-1.short-to-signal-2'],
  ['slipped-wheel', 'target.displaced'],
  ['starved-throttle', 'pressure-sensor.shorted'],
])('%s, %s', { timeout: 120_000 }, async (job, fault) => {
  const opened = begin(job, fault);
  const below: string[] = [];
  for (let step = stepOf(opened); step && step.kind !== 'conclude'; step = stepOf(opened)) {
    if (pendingCautions(opened.driver.session()).length > 0)
      opened.driver.perform({ type: 'acknowledge-cautions' });
    if (step.kind === 'measure' || step.kind === 'look')
      for (const size of SIZES)
        below.push(...(await lacking(opened, step, size)).map((text) => `${step.id}: ${text}`));
    const answer = opened.driver.vehicleShows();
    const command = answer && vehicleCommand(step, answer);
    if (!command || !opened.driver.perform(command).ok) break;
  }
  expect(below).toEqual([]);
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

/** What of leads and limit is not seen; the vehicle is shown as a real one, which offers no answer. */
async function lacking(
  opened: OpenedSession,
  step: Extract<Step, { kind: 'measure' | 'look' }>,
  size: (typeof SIZES)[number],
): Promise<string[]> {
  const real = { ...opened, driver: { ...opened.driver, vehicleShows: () => null } };
  const screen = await openTestScreen(
    <SessionScreen opened={real} clock={() => 0} onHome={() => {}} />,
    size,
  );
  const frame = await screen.text();
  await screen.unmount();
  const seen = frame.replace(/[│\s]+/g, ' ');
  const { circuit } = opened.driver.session().opened;
  const leads = opened.bind(setupSay(step.setup, step.probe, circuit));
  const range =
    step.kind === 'measure' && step.expected ? expectedRangeWords(step.expected, step.unit) : '';
  return [leads, range]
    .filter((words) => !seen.includes(words))
    .map((words) => `${words}\n${frame}`);
}
