/** The bench arranged by words. */
import { expect, test } from 'vitest';
import { ARRANGEMENT, arrangedBy } from '../../src/circuit/arrange-test.ts';
import { library } from '../drill/students.ts';

const circuit = library.circuits.get('hall-module-fed')!;

/** The connectors that are off after the lines, or what is said to the first line that does not fit. */
function after(...lines: string[]): readonly string[] | string {
  let arrangement = ARRANGEMENT;
  for (const line of lines) {
    const arranged = arrangedBy(arrangement, line, circuit)!;
    if ('words' in arranged) return arranged.words;
    arrangement = arranged.arrangement;
  }
  return arrangement.setup.unplugged;
}

test.each<[string[], readonly string[] | string]>([
  [['unplug sensor module'], ['module', 'sensor']],
  [['unplug sensor module', 'plug sensor'], ['module']],
  [['unplug sensor module', 'plug'], []],
  [['plug'], []],
  [['unplug snsor'], '"snsor" has no connector; did you mean "sensor"?'],
  [['unplug sensor', 'plug snsor'], '"snsor" is not unplugged'],
  [['plug sensor'], '"sensor" is not unplugged'],
])('after %o', (lines, expected) => {
  expect(after(...lines)).toEqual(expected);
});
