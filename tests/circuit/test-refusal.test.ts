/** A refused test in words: what is wrong, at which place, and the way out where there is one. */
import { expect, test } from 'vitest';
import { type TestRefusal, testRefusalWords } from '../../src/circuit/test-refusal.ts';

const terminal = 'module.signal';

test.each<[TestRefusal, string]>([
  [
    { code: 'no-connector', name: 'senser', near: 'sensor' },
    'there is no connector "senser" to unplug; did you mean "sensor"?',
  ],
  [{ code: 'no-connector', name: 'xyzzy', near: null }, 'there is no connector "xyzzy" to unplug'],
  [
    { code: 'no-terminal', terminal: 'sensor.fed', near: 'sensor.feed' },
    'there is no terminal "sensor.fed"; did you mean "sensor.feed"?',
  ],
  [
    { code: 'nothing-to-inspect', of: 'targt', near: 'target' },
    'there is no "targt" to look at; did you mean "target"?',
  ],
  [{ code: 'no-input', terminal }, '"module.signal" is not an input of the module'],
  [{ code: 'nothing-turns' }, 'nothing turns here, so there is no position to compare'],
  [
    { code: 'inside-connector', terminal: 'sensor.feed.pin', part: 'sensor' },
    '"sensor.feed.pin" is inside the connector and is only reached with "sensor" unplugged',
  ],
  [
    { code: 'module-pin', terminal },
    '"module.signal" is a pin of an unpowered module; there is nothing to measure there',
  ],
  [{ code: 'same-terminal', terminal }, 'both leads are at the same terminal, "module.signal"'],
  [{ code: 'spare-unplugged' }, 'a spare sensor that is not plugged in shows nothing'],
  [
    { code: 'wheel-turns', at: 'camshaft', state: 'cranking' },
    'the wheel at the camshaft cannot stand still with the engine cranking',
  ],
  [{ code: 'target-still' }, 'nothing is moving past the sensor, so there is no pattern to see'],
  [{ code: 'module-unplugged' }, 'the module has no supply with its connector off'],
  [{ code: 'module-off' }, 'the module shows no data with the key off'],
  [{ code: 'bridge-same-terminal', terminal }, 'both ends of the bridge are at "module.signal"'],
  [
    { code: 'lamp-on-module', terminal },
    'a filament lamp draws too much for "module.signal" of the module; use the LED light',
  ],
  [
    { code: 'few-ohms-on-module', terminal, ohms: 10, leastOhms: 100 },
    '10 ohm may draw too much for "module.signal" of the module; use 100 ohm or more',
  ],
  [
    { code: 'battery-on-module', terminal, is: 'input' },
    'battery voltage must not reach "module.signal", an input of the module',
  ],
  [
    { code: 'battery-on-module', terminal: 'module.reference', is: 'reference' },
    'battery voltage must not reach "module.reference", a reference of the module',
  ],
  [
    { code: 'module-to-ground', terminal },
    '"module.signal" may only be pulled to ground through an LED light or a resistor',
  ],
  [
    { code: 'pins-joined', terminals: ['module.reference', 'module.signal'] },
    'a plain jumper must not connect "module.reference" and "module.signal"',
  ],
  [{ code: 'short-circuit' }, 'a plain jumper from battery positive to ground is a dead short'],
  [{ code: 'ohms-with-key', state: 'key-on' }, 'resistance is only measured with the key off'],
  [
    { code: 'ohms-on-battery', terminal: 'relay.30' },
    '"relay.30" carries battery voltage even with the key off',
  ],
  [
    { code: 'ohms-on-electronics', terminal, part: 'sensor' },
    'unplug "sensor" first: resistance is measured with nothing electronic in the circuit',
  ],
])('%j', (refusal, words) => {
  expect(testRefusalWords(refusal)).toBe(words);
});
