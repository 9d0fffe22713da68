/** A relay closes by its coil: feed, module and wire have to bring it its volts, and once closed it holds with less. */
import { describe, expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Setup } from '../../src/circuit/test.ts';
import { setupOf } from './setup.ts';
import { METER, modelOf, number, shipped, textOf, volts } from './shipped.ts';

const RELAY = shipped('hall-relay-fed');
const model = modelOf('hall-relay-fed', 64);
/** Volts behind the relay in the middle of all cars. */
const behind = (fault: string, part: Partial<Setup> = {}) =>
  number(model, fault, volts('relay.87', 'battery.negative', part));

describe('the contact is closed', () => {
  it('with the key on, and open with it off or with the module unplugged', () => {
    expect(behind('healthy')).toBeGreaterThan(13);
    expect(behind('healthy', { state: 'key-off' })).toBeLessThan(0.1);
    expect(behind('healthy', { unplugged: ['module'] })).toBeLessThan(0.1);
  });

  it.each([
    'wire.relay-coil.open',
    'wire.relay-control.open',
    'contact.relay.85.open',
    'contact.relay.86.open',
    'contact.module.relay.open',
    'module.relay.driver-dead',
    'relay.coil-open',
  ])('not with %s', (fault) => {
    expect(behind(fault)).toBeLessThan(0.1);
  });

  it('by leads at its own coil pins, whatever the key says', () => {
    const { test } = shippedTest('relay.alone');
    // by hand: contact 5 to 50 mohm
    expect(number(model, 'healthy', test)).toBeLessThan(0.1);
    expect(number(model, 'relay.coil-open', test)).toBe(Number.POSITIVE_INFINITY);
  });
});

it('a relay without a coil in its file closes with the key, whatever is unplugged', () => {
  const text = textOf('hall-relay-fed')
    .replace(/ {4}coil: .*\n/, '')
    .replace(/ {4}pulls-in: .*\n/, '')
    .replace(/ {2}relay-(coil|control): .*\n/g, '');
  const { value, issues } = loadCircuit(text, 'plain.yaml');
  expect(issues).toEqual([]);
  const plain = createModel(value!, { samples: 4, seed: 1, meter: METER });
  const at87 = volts('relay.87', 'battery.negative', { unplugged: ['module'] });
  expect(number(plain, 'healthy', at87)).toBeGreaterThan(13);
  expect(value!.faults.map(({ id }) => id).filter((id) => id.startsWith('relay.'))).toEqual([
    'relay.contact-open',
    'relay.contact-resistive',
  ]);
});

it('one test tells the relay’s own contact from its socket in every car', () => {
  const { test } = shippedTest('relay.alone');
  const ohms = (fault: string) =>
    Array.from({ length: 64 }, (_, sample) => number(model, fault, test, sample));
  for (const { id } of RELAY.faults.filter((fault) => fault.repair === 'relay.replace'))
    expect(Math.min(...ohms(id)), id).toBeGreaterThan(2);
  for (const { id } of RELAY.faults.filter((fault) => fault.repair === 'connector.relay'))
    expect(Math.max(...ohms(id)), id).toBeLessThan(2);
});

it('the volts at the coil tell what switches it from relay and socket in every car', () => {
  const coil = volts('relay.86', 'relay.85', setupOf());
  const shown = (fault: string) =>
    Array.from({ length: 64 }, (_, sample) => number(model, fault, coil, sample));
  for (const id of ['wire.relay-coil.resistive', 'wire.relay-control.resistive'])
    expect(Math.max(...shown(id)), id).toBeLessThan(8.5);
  for (const id of ['relay.contact-resistive', 'contact.relay.87.open', 'relay.coil-open'])
    expect(Math.min(...shown(id)), id).toBeGreaterThan(8.5);
});

function shippedTest(id: string) {
  return standardTests(RELAY).find((one) => one.id === id)!;
}
