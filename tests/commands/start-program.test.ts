import { afterEach, expect, it, vi } from 'vitest';
import { startProgram } from '../../src/commands/start-program.ts';
import { Unworkable } from '../../src/source/unworkable.ts';

afterEach(() => {
  vi.restoreAllMocks();
  process.exitCode = undefined;
});

async function thrown(error: unknown) {
  const told: string[] = [];
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => told.push(String(text)) > 0);
  await startProgram(async () => {
    throw error;
  });
  return { told: told.join(''), code: process.exitCode };
}

it('what was given and cannot be worked with is told with the way out, and is no fault of the program', async () => {
  const { told, code } = await thrown(
    new Unworkable('it cannot be computed\u001b[2J', 'look again'),
  );
  expect(told).toMatch(/^ohmward: it cannot be computed.*; look again\n$/);
  expect(told).not.toContain('\u001b');
  expect(code).toBe(1);
});

it('anything else is a fault of the program', async () => {
  const { told, code } = await thrown(new Error('of ours'));
  expect(told).toMatch(/bug in Ohmward, not your mistake\nError: of ours/);
  expect(code).toBe(70);
});
