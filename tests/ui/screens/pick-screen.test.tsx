/** A list of ten thousand: only what is in view is worked out, for each may be a file that has to be read. */
import { expect, it } from 'vitest';
import { PickScreen } from '../../../src/ui/screens/pick-screen.tsx';
import { openTestScreen } from '../in-process.ts';
import { DOWN } from './keys.ts';

const MANY = 10_000;
/** Those in view, and those that the height of the list is measured by. */
const LOOKED_AT_MAX = 150;

it('reads of many sessions those in view, and all of them only for a search', async () => {
  const read = new Set<number>();
  const items = Array.from({ length: MANY }, (_, place) => ({
    get text() {
      read.add(place);
      return `session ${place} of a day on which many were begun, cut where all of them are still the same`;
    },
    get about() {
      read.add(place);
      return `${place}.jsonl`;
    },
  }));
  const screen = await openTestScreen(
    <PickScreen title="Which?" items={items} empty="" onPick={() => {}} onClose={() => {}} />,
    { columns: 60, rows: 20 },
  );
  await screen.send(DOWN);
  expect(await screen.text()).toContain(`2/${MANY}`);
  expect(read.size).toBeLessThan(LOOKED_AT_MAX);
  await screen.send('9999');
  expect(await screen.text()).toContain('session 9999');
  expect(read.size).toBe(MANY);
});
