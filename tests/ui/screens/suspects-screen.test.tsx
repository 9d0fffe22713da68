/** However much there is to say above the list of suspects, on the smallest screen it stays off the keys. */
import { expect, it } from 'vitest';
import { SuspectsScreen } from '../../../src/ui/screens/suspects-screen.tsx';
import { openTestScreen } from '../in-process.ts';

const SIZE = { columns: 60, rows: 16 };

it.each([
  ['a short text'],
  ['語'.repeat(200)],
  ['ㄱㅏㅁ'.repeat(70)],
  ['many plain words '.repeat(20)],
])('%s', async (text) => {
  const rows = [0, 1, 2].map((place) => ({
    repair: `repair-${place}`,
    words: `suspect ${place}: ${text}`,
    chance: 0.5 / (place + 1),
    faults: [{ id: 'one', words: text, chance: 0.2 }],
  }));
  const view = {
    rows,
    changed: text,
    intermittent: true,
    unexplained: text,
    unexplainedBy: null,
    group: text,
    groupRepairs: [],
  };
  const car = { withSources: text, short: text, misfit: null };
  const nothing = () => {};
  const screen = await openTestScreen(
    <SuspectsScreen
      {...{ view, car, onClose: nothing, onConclude: nothing, onOwnWords: nothing }}
      onValues={nothing}
      isTold={false}
    />,
    SIZE,
  );
  const lines = (await screen.text()).split('\n').map((line) => line.replace(/^│ | +│$/g, ''));
  const keys = lines.slice(lines.findIndex((line) => line.startsWith('├')) + 1, -1);
  expect(keys.filter((line) => line !== '' && !line.startsWith('└'))).toEqual([
    '[Enter] close  [Up/Down] look closer',
    '[c] conclude with this one  [w] in my own words',
    '[v] set a value of this car',
  ]);
  expect(lines.some((line) => line.startsWith('>  50 %'))).toBe(true);
  expect(lines.some((line) => line.startsWith('Last reading:'))).toBe(true);
  expect(lines.some((line) => line.startsWith('suspect 0:'))).toBe(true);
});
