/** The menu before the program behind it is there. */
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../src/source/problem.ts';
import type { AppBegin } from '../../../src/ui/app.tsx';
import { Entrance, type Program } from '../../../src/ui/entrance.tsx';
import { Words } from '../../../src/ui/parts/safe-words.tsx';
import { openTestScreen } from '../in-process.ts';
import { CTRL_C, DOWN, ENTER } from './keys.ts';

const PRACTICE = { words: 'Practice', about: 'On a hidden fault.' };

/** An entrance whose program comes when the test says so. */
async function entrance() {
  const begins: AppBegin[] = [];
  const left: number[] = [];
  let loads = 0;
  let came: (program: Program | Problem) => void = () => {};
  let failed: (error: unknown) => void = () => {};
  const program: Program = (begin) => {
    begins.push(begin);
    return <Words>the program</Words>;
  };
  const screen = await openTestScreen(
    <Entrance
      sessions={[
        {
          path: 's/b.jsonl',
          words: 'Marrow Dray',
          when: '2031-05-06',
          status: 'open',
          simulated: false,
          begun: true,
        },
      ]}
      count={12}
      more={[PRACTICE]}
      load={() => {
        loads += 1;
        return new Promise((done, fail) => {
          came = done;
          failed = fail;
        });
      }}
      onLeave={(code) => void left.push(code)}
    />,
  );
  return {
    screen,
    begins,
    left,
    loads: () => loads,
    comes: async (is: Program | Problem = program) => {
      came(is);
      await screen.text();
    },
    fails: async (error: unknown) => {
      failed(error);
      await screen.text();
    },
  };
}

describe('the entrance', () => {
  it('shows the whole menu before the program is there, and asks for it once', async () => {
    const { screen, loads } = await entrance();
    const text = await screen.text();
    for (const words of ['New session', 'Marrow Dray', 'All sessions (12)', 'Practice'])
      expect(text).toContain(words);
    await screen.send(DOWN);
    expect(loads()).toBe(1);
  });

  it('waits in words when a line is taken early, then goes where it leads', async () => {
    const { screen, begins, comes } = await entrance();
    await screen.send('3');
    expect(await screen.text()).toContain('One moment: reading the procedures.');
    expect(begins).toEqual([]);
    await comes();
    expect(await screen.text()).toContain('the program');
    expect(begins[0]).toEqual({
      screen: 'start',
      choice: { kind: 'resume', path: 's/b.jsonl' },
    });
  });

  it('keeps the marked line when the program comes while the person reads', async () => {
    const { screen, begins, comes } = await entrance();
    await screen.send(DOWN);
    await comes();
    expect(begins).toEqual([]);
    await screen.send(ENTER);
    expect(begins[0]).toEqual({ screen: 'start', choice: { kind: 'simulated' } });
  });

  it.each([
    ['q', 0],
    [CTRL_C, 130],
  ])('is left by %j before anything is loaded', async (key, code) => {
    const { screen, left } = await entrance();
    await screen.send(key);
    expect(left).toEqual([code]);
  });

  it('is left by Ctrl+C while it waits', async () => {
    const { screen, left } = await entrance();
    await screen.send('1');
    await screen.send(CTRL_C);
    expect(left).toEqual([130]);
  });

  it('says why the program cannot be had, and then leaves', async () => {
    const { screen, left, comes } = await entrance();
    await screen.send('1');
    await comes({ problem: 'the folder is gone', fix: 'install again' });
    expect(await screen.text()).toContain('the folder is gone');
    await screen.send(ENTER);
    expect(left).toEqual([1]);
  });

  it('hands a fault of ours to the guard that restores the terminal', async () => {
    const { screen, fails } = await entrance();
    await fails(new Error('ours'));
    expect(screen.crashes).toHaveLength(1);
  });
});
