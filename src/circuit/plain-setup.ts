/** How a signal is looked at for comparison. */
import type { Setup } from './test.ts';

/** The same vehicle state with everything plugged in, nothing clipped, and the target moving. */
export function plainSetup(setup: Setup): Setup {
  return { ...setup, unplugged: [], bridges: [], sensor: 'fitted', target: 'moving' };
}
