/** What is said of a step beside its prompt. */
import { expect, test } from 'vitest';
import { nextLine } from '../../../src/ui/screens/step-words.ts';

test.each([
  ['Feed at the sensor', 'Next: Feed at the sensor. Vehicle: key off.'],
  ['Do the two wires touch?', 'Next: Do the two wires touch? Vehicle: key off.'],
  ['Stop!', 'Next: Stop! Vehicle: key off.'],
])('what comes next is a sentence of its own: %s', (title, line) => {
  expect(nextLine(title, { state: 'key-off' })).toBe(line);
});
