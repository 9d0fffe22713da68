/** What hangs on the sensor's circuit over battery negative alone changes nothing at the leads, and is not computed there. */
import { expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { NearLeads } from '../../src/circuit/near-leads.ts';
import { PLAIN_SETUP } from '../../src/circuit/plain-setup.ts';
import { planNetlist } from '../../src/circuit/plan-netlist.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { manyParts } from '../hostile/many-parts.ts';
import { METER, shipped } from './shipped.ts';

const alone = shipped('hall-module-fed');
const crowded = loadCircuit(manyParts(13, 'own'), 'crowded.yaml').value!;
const joined = loadCircuit(manyParts(13, 'joined'), 'joined.yaml').value!;

function around(circuit: typeof alone, terminal: string) {
  const plan = planNetlist(circuit, { ...PLAIN_SETUP, state: 'key-on' }, []);
  const near = new NearLeads(plan);
  return near.around([plan.find(terminal)!, plan.find('battery.negative')!]).length;
}

it('neighbours on supplies and grounds of their own are left out at the sensor', () => {
  expect(around(crowded, 'sensor.signal')).toBe(around(alone, 'sensor.signal'));
  // One neighbour with its wires, contacts, supply and ground, and nothing of the sensor.
  const own = around(crowded, 'n3.feed');
  expect(own).toBeGreaterThan(4);
  expect(own).toBeLessThan(around(alone, 'sensor.signal'));
});

it('neighbours on the supply of the sensor are not', () => {
  expect(around(joined, 'sensor.signal')).toBeGreaterThan(around(alone, 'sensor.signal') + 10 * 4);
  expect(around(joined, 'n3.feed')).toBe(around(joined, 'sensor.signal'));
});

it('battery negative by itself is joined to nothing', () => {
  expect(around(crowded, 'battery.negative')).toBe(0);
});

it('the sensor reads what it reads without them', () => {
  const of = (circuit: typeof alone) => createModel(circuit, { samples: 1, seed: 1, meter: METER });
  const [one, other] = [of(alone), of(crowded)];
  const tests = standardTests(alone).map(({ test }) => test);
  expect(tests.length).toBeGreaterThan(10);
  for (const test of tests)
    for (const fault of ['healthy', 'wire.signal.open'])
      expect(other.shows(fault, test, -1)).toEqual(one.shows(fault, test, -1));
});
