/** What the rest of a procedure will take, held against what it then took. */
import { expect, it } from 'vitest';
import type { SuspectRow } from '../../src/session/advisor.ts';
import type { Command } from '../../src/session/command.ts';
import { minutesLeft } from '../../src/session/minutes-left.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { modelOf } from '../circuit/shipped.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import { ACK, DONE, sees, volts } from './shorthand.ts';

const model = modelOf('hall-module-fed', 1);
const after = (commands: readonly Command[]) =>
  sessionAfter(commands, TREE, { circuit: model.circuit });
const suspects = (...faults: readonly (readonly [id: string, chance: number])[]): SuspectRow[] =>
  faults.map(([id, chance]) => ({
    repair: id,
    words: id,
    chance,
    faults: [{ id, words: id, chance }],
  }));
const leftAt = (commands: readonly Command[], rows: readonly SuspectRow[]) =>
  minutesLeft(after(commands), model, rows);

// A broken feed wire reads nothing at the sensor, and the signal stays up; a shorted reference ends at once.
const BROKEN: Command[] = [DONE, ACK, volts(0), ACK, sees('none')];
const OPEN = suspects(['wire.feed.open', 1]);

it('is what the way of the suspect then takes, less at each step', () => {
  const whole = spentMinutes(after(BROKEN));
  for (const many of [0, 1, 3]) {
    const done = BROKEN.slice(0, many);
    expect(leftAt(done, OPEN)).toBeCloseTo(whole - spentMinutes(after(done)), 9);
  }
  expect(leftAt(BROKEN, OPEN)).toBe(0);
});

it('is the mean over suspects by their chances, the unlikely left out', () => {
  const high = suspects(['wire.feed.short-to-battery', 1]);
  const [long, short] = [leftAt([DONE], OPEN)!, leftAt([DONE], high)!];
  expect(short).toBeLessThan(long);
  const both = suspects(['wire.feed.open', 0.6], ['wire.feed.short-to-battery', 0.4]);
  expect(leftAt([DONE], both)).toBeCloseTo(0.6 * long + 0.4 * short, 9);
  // nine tenths of the chances are enough
  const rare = suspects(['wire.feed.open', 0.9], ['wire.feed.short-to-battery', 0.1]);
  expect(leftAt([DONE], rare)).toBeCloseTo(long, 9);
});

it('is not known without a circuit or a suspect', () => {
  expect(minutesLeft(sessionAfter([], TREE), model, OPEN)).toBeNull();
  expect(leftAt([], [])).toBeNull();
});
