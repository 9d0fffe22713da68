/** Looks in the words of a person looking. */
import type { Look } from './test.ts';

export const LOOK_WORDS: Readonly<Record<Look, string>> = {
  lit: 'the light is bright',
  dim: 'the light is dim',
  dark: 'the light stays dark',
  full: 'it toggles fully, tooth for tooth',
  weak: 'it toggles, but too little',
  uneven: 'it toggles, but the teeth are not even',
  'flat-high': 'a flat line, high',
  'flat-middle': 'a flat line in the middle',
  'flat-low': 'a flat line, low',
  follows: 'the live data follows',
  still: 'the live data stays still',
  'in-step': 'in step with the known-good one',
  shifted: 'shifted against the known-good one',
  'no-signal': 'there is no signal to compare',
  sound: 'nothing wrong to be seen or felt',
  faulty: 'something is wrong there',
};
