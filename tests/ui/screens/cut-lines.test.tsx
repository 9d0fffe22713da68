/** Where a list cuts a line, the marked one stands in full. */
import { expect, it } from 'vitest';
import { Frame } from '../../../src/ui/parts/frame.tsx';
import { PickScreen } from '../../../src/ui/screens/pick-screen.tsx';
import { PromptView } from '../../../src/ui/screens/prompt-view.tsx';
import { StartScreen } from '../../../src/ui/screens/start-screen.tsx';
import { openTestScreen } from '../in-process.ts';
import { DOWN } from './keys.ts';

/** The frame as running text. */
async function textOf(screen: Awaited<ReturnType<typeof openTestScreen>>): Promise<string> {
  return (await screen.text()).replace(/[│\s]+/g, ' ');
}

const LONG =
  'Three-wire Hall sensor fed with 12 V through relay and fuse, no signal (P0340 P0341 P0342 P0343)';
const SIZES = [
  { columns: 80, rows: 24 },
  { columns: 60, rows: 20 },
];

it.each(SIZES)('of a list to pick from, and all that is said of it: %o', async (size) => {
  const about = `${'Have ready: a meter and pins. '.repeat(6)}Work order: look, feed, signal.`;
  const items = [
    { text: 'A short one', about: '' },
    { text: LONG, about },
  ];
  const screen = await openTestScreen(
    <PickScreen title="Which?" items={items} empty="" onPick={() => {}} onClose={() => {}} />,
    size,
  );
  expect(await textOf(screen)).not.toContain('P0343');
  await screen.send(DOWN);
  const text = await textOf(screen);
  expect(text).toContain(LONG);
  expect(text).toContain(about);
});

it.each(SIZES)('of the start menu: %o', async (size) => {
  const session = {
    path: 'a.jsonl',
    words: LONG,
    when: '2031-05-06 14:20',
    status: 'paused' as const,
    simulated: true,
    begun: true,
  };
  const screen = await openTestScreen(
    <StartScreen sessions={[session]} count={1} more={[]} onChoose={() => {}} />,
    size,
  );
  await screen.send(DOWN);
  await screen.send(DOWN);
  expect(await textOf(screen)).toContain(`simulated, ${LONG}`);
});

it.each(SIZES)('of the answers to a step: %o', async (size) => {
  const choices = [LONG, 'another'].map((words) => ({ words, outcome: words, look: null }));
  const asked = {
    kind: 'choice' as const,
    offered: null,
    standing: null,
    marked: 0,
    choices,
    offeredChoice: null,
  };
  const screen = await openTestScreen(
    <Frame title="Step" keys={[]}>
      <PromptView asked={asked} message={null} bind={(text) => text} />
    </Frame>,
    size,
  );
  expect(await textOf(screen)).toContain(LONG);
});
