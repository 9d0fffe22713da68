/** Looks in the words of a person looking; those of a scope fit pulses, waves and the slope of a potentiometer. */
import type { Look } from './test.ts';

export const LOOK_WORDS: Readonly<Record<Look, string>> = {
  lit: 'the light is bright',
  dim: 'the light is dim',
  dark: 'the light stays off',
  full: 'full and even',
  weak: 'even, but too small',
  uneven: 'uneven, pulses missing or jumping',
  'flat-high': 'a flat line, high',
  'flat-middle': 'a flat line in the middle',
  'flat-low': 'a flat line, low',
  follows: 'the live data follows',
  still: 'the live data does not change',
  'in-step': 'in step with the known-good one',
  shifted: 'shifted from the known-good one',
  'no-signal': 'there is no signal to compare',
  sound: 'nothing wrong to be seen or felt',
  faulty: 'something is wrong there',
};

/** Words of a look; a name that is none stands for itself. */
export function lookWords(look: string): string {
  return (LOOK_WORDS as Readonly<Record<string, string>>)[look] ?? look;
}
