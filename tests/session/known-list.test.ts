/** The list of what can be known of a car. */
import { expect, test } from 'vitest';
import type { CarView } from '../../src/session/car-view.ts';
import { openSession } from '../../src/session/evolve.ts';
import { knownLines, knownWords, quantityNamed, typedIs } from '../../src/session/known-list.ts';
import { readSaid } from '../../src/session/read-known.ts';
import { shipped } from '../circuit/shipped.ts';
import { opened } from './sample-tree.ts';

const circuit = shipped('hall-module-fed');
const battery = readSaid(circuit, { what: 'battery at rest', is: '12 V', from: 'measured' });
if (!('quantity' in battery)) throw new Error(battery.words);
const session = openSession(opened(null, { circuit, known: [battery] }));

const CAR: CarView = {
  values: [
    {
      ...{ quantity: 'module.signal.pull', words: '', shown: 'about 4.7 kΩ' },
      ...{ low: 4500, high: 4900, unit: 'ohm', by: 3 },
    },
  ],
  misfit: {
    chance: 0.8,
    value: {
      ...{ quantity: 'module.reference.volts', words: '', described: '4.75 to 5.25 V' },
      ...{ shown: 'about 8 V', by: 4 },
    },
  },
};

test('what disagrees stands first, then what is known, then the rest in the order of the file', () => {
  const lines = knownLines(session, CAR);
  expect(lines.slice(0, 3).map(({ quantity }) => quantity)).toEqual([
    'module.reference.volts',
    'battery.rest',
    'battery.cranking',
  ]);
  expect(lines.slice(0, 2).map(knownWords)).toEqual([
    '! 4.75 to 5.25 V, but the readings show about 8 V',
    '11.8 to 12.2 V (measured)',
  ]);
  const pull = lines.find(({ quantity }) => quantity === 'module.signal.pull');
  expect(pull && knownWords(pull)).toBe('about 4.7 kΩ, as the readings show');
  const quiet = knownLines(session, null);
  expect(quiet.some(({ disagrees }) => disagrees)).toBe(false);
  expect(quiet[0]?.quantity).toBe('battery.rest');
});

test('without a circuit, and on a drill, there is none', () => {
  expect(knownLines(openSession(opened(null)), null)).toEqual([]);
});

test('what is being typed is told as it is understood', () => {
  const one = quantityNamed(session, 'module.signal.pull-to');
  if (!one) throw new Error('the circuit has a pull-up');
  expect(typedIs(one, 'reference')).toMatchObject({
    ok: true,
    words: expect.stringMatching(/: reference$/),
  });
  expect(typedIs(one, '8')).toMatchObject({
    ok: true,
    words: expect.stringMatching(/7\.84 to 8\.16 V$/),
  });
  expect(typedIs(one, '8 o')).toMatchObject({ ok: false });
  expect(typedIs(one, '')).toMatchObject({
    ok: false,
    words: expect.stringMatching(/no value is given/),
  });
});
