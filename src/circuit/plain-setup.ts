/** The vehicle as it stands when nothing has been done to it. */
import type { Setup } from './test.ts';

/** Key on, everything plugged in, nothing clipped, nothing moving. */
export const PLAIN_SETUP: Setup = {
  state: 'key-on',
  unplugged: [],
  bridges: [],
  sensor: 'fitted',
  target: 'still',
};

/** The same vehicle state with everything plugged in, nothing clipped, and the target moving: a signal to compare with. */
export function plainSetup({ state }: Setup): Setup {
  return { ...PLAIN_SETUP, state, target: 'moving' };
}
