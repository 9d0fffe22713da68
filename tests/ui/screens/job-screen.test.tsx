/** What is doubtful on the job sheet is asked about before the session begins. */
import { expect, it } from 'vitest';
import { emptyJob, type Job } from '../../../src/procedure/job.ts';
import { JobScreen } from '../../../src/ui/screens/job-screen.tsx';
import { openTestScreen } from '../in-process.ts';
import { CTRL_S, ENTER, ESC } from './keys.ts';

async function sheet(codes: readonly string[]) {
  const taken: Job[] = [];
  let now = 0;
  let closed = 0;
  const screen = await openTestScreen(
    <JobScreen
      job={{ ...emptyJob('no start'), codes }}
      procedure="Three-wire sensor"
      terminals={[]}
      parts={[]}
      circuit={null}
      clock={() => {
        now += 10_000;
        return now;
      }}
      onTake={(job) => void taken.push(job)}
      onClose={() => {
        closed += 1;
      }}
    />,
  );
  return { screen, taken, closed: () => closed };
}

it('a sheet without doubts begins at once', async () => {
  const { screen, taken } = await sheet(['P0335']);
  await screen.send(CTRL_S);
  expect(taken.map(({ codes }) => codes)).toEqual([['P0335']]);
});

it('a doubtful one is shown first; Enter begins all the same, once', async () => {
  const { screen, taken } = await sheet(['P0335', 'X9']);
  await screen.send(CTRL_S);
  expect(taken).toEqual([]);
  expect(await screen.text()).toContain('Before the session begins: is this right?');
  expect(await screen.text()).toContain('X9');
  // A key of the sheet does nothing here.
  await screen.send(CTRL_S);
  expect(taken).toEqual([]);
  await screen.send(ENTER);
  expect(taken.map(({ codes }) => codes)).toEqual([['P0335', 'X9']]);
});

it('Esc goes back to the sheet, at the doubtful field', async () => {
  const { screen, taken, closed } = await sheet(['X9']);
  await screen.send(CTRL_S);
  await screen.send(ESC);
  expect(taken).toEqual([]);
  expect(closed()).toBe(0);
  const text = await screen.text();
  expect(text).not.toContain('is this right?');
  expect(text).toMatch(/> Trouble codes/);
});
