/** What an instrument without digits shows, in the words of the person looking at it. */
import type { Look } from '../../circuit/test.ts';

export const LOOK_WORDS: Readonly<Record<Look, string>> = {
  lit: 'bright',
  dim: 'dim',
  dark: 'dark',
  full: 'switches fully, evenly',
  weak: 'switches, but not to its full height',
  uneven: 'uneven: pulses missing or misshapen',
  'flat-high': 'flat line, high',
  'flat-middle': 'flat line, in the middle',
  'flat-low': 'flat line, low',
  follows: 'follows the sensor',
  still: 'does not move',
  'in-step': 'in step',
  shifted: 'shifted',
  'no-signal': 'no signal to compare',
  sound: 'sound',
  faulty: 'damaged, loose or corroded',
};

/** Words of a look; a name we do not know stands for itself. */
export function lookWords(look: string): string {
  return (LOOK_WORDS as Readonly<Record<string, string>>)[look] ?? look;
}
