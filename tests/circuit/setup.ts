/** How the vehicle stands for a test. */
import type { Setup } from '../../src/circuit/test.ts';

export const KEY_ON: Setup = {
  state: 'key-on',
  unplugged: [],
  bridges: [],
  sensor: 'fitted',
  target: 'still',
};

export function setupOf(part: Partial<Setup> = {}): Setup {
  return { ...KEY_ON, ...part };
}
