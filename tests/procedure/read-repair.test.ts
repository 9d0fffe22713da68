import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { atPlaceOf } from '../../src/procedure/place-sensor.ts';
import { readRepair, repairsRemark, replaceablesOf } from '../../src/procedure/read-repair.ts';

function partsOf(name: string, position?: string) {
  const path = `procedures/circuits/${name}.yaml`;
  const circuit = loadCircuit(readFileSync(path, 'utf8'), path).value!;
  const job = { ...emptyJob(''), ...(position === undefined ? {} : { position }) };
  return replaceablesOf(atPlaceOf(job, { circuit, procedure: null }).circuit);
}
const hall = partsOf('hall-module-fed'); // crankshaft, with a throttle position sensor beside it
const cam = partsOf('hall-relay-fed');
const exhaust = partsOf('hall-relay-fed', 'exhaust camshaft');
const wheel = partsOf('current-two-wire'); // left front wheel speed sensor

describe('an earlier repair in a person’s words', () => {
  it.each([
    ['Crank sensor replaced last week', hall, 'sensor'],
    ['crankshaft position sensor replaced', hall, 'sensor'],
    ['replaced the sensor twice', hall, 'sensor'],
    ['new branded sensor fitted by the last shop', hall, 'sensor'],
    ['sensor is new', hall, 'sensor'],
    ['Sensor changed in March, fault came back', hall, 'sensor'],
    ['throttle sensor replaced', hall, 'throttle-position'],
    ['ECU replaced', hall, 'module'],
    ['new engine control module', hall, 'module'],
    ['sensor connector replaced', hall, 'connector.sensor'],
    ['connector of the crank sensor replaced', hall, 'connector.sensor'],
    ['module plug cleaned', hall, 'connector.module'],
    ['signal wire repaired', hall, 'wire.signal'],
    ['tone wheel replaced', hall, 'target'],
    ['reluctor ring new', hall, 'target'],
    ['main relay replaced', cam, 'relay'],
    ['new fuse', cam, 'fuse'],
    ['cam sensor replaced', cam, 'sensor'],
    ['exhaust cam sensor replaced', cam, 'sensor'],
    ['Camshaft sensor exhaust side replaced', cam, 'sensor'],
    ['exhaust cam sensor replaced', exhaust, 'sensor'],
    ['sensor replaced twice no change', hall, 'sensor'],
    ['crank sensor replaced, did not help', hall, 'sensor'],
    ['new crank sensor made no difference', hall, 'sensor'],
    ['wheel speed sensor replaced', wheel, 'sensor'],
    ['left front wheel sensor new', wheel, 'sensor'],
    // Among what was done a bare name is one that was made new.
    ['exhaust cam sensor', cam, 'sensor'],
    ['cam sensor x2', cam, 'sensor'],
    ['sensor twice', hall, 'sensor'],
    ['2 sensors, no change', hall, 'sensor'],
    ['both sensors replaced', hall, 'sensor'],
    ['ECU', hall, 'module'],
    // By its name and a colon.
    ['sensor: new last week', hall, 'sensor'],
    ['connector.sensor: two terminals new', hall, 'connector.sensor'],
    // Something else, or not done: a note.
    ['cam sensor replaced', hall, null],
    ['intake cam sensor replaced', exhaust, null],
    ['exhaust cam sensor replaced', hall, null],
    ['right rear wheel speed sensor replaced', wheel, null],
    ['oil pressure sensor replaced', hall, null],
    ['battery replaced', hall, null],
    ['clutch and flywheel replaced in our own workshop last month', hall, null],
    ['harness taped', hall, null],
    ['sensor not replaced', hall, null],
    ["sensor wasn't replaced", hall, null],
    ['sensor should be replaced', hall, null],
    ['sensor replaced?', hall, null],
    ['new noise from the sensor', hall, null],
    ['sensor signal changed', hall, null],
    ['sensor and connector replaced', hall, null],
    ['sensor wire repaired', hall, null],
    ['sensor cleaned', hall, null],
    ['signal wire', hall, null],
    ['sensor connector', hall, null],
    ['oil pressure sensor', hall, null],
    ['', hall, null],
  ])('%s', (text, parts, part) => expect(readRepair(text, parts).part).toBe(part));

  it('keeps the words as they were written', () => {
    const text = 'Crank sensor replaced last week';
    expect(readRepair(text, hall)).toEqual({ words: text, part: 'sensor' });
    expect(readRepair('sensor: new last week', hall).words).toBe('new last week');
  });

  it.each([
    ['sensor replaced twice no change', { changed: 'nothing' }],
    ['new sensor, still the same fault', { changed: 'nothing' }],
    ['sensor replaced in vain', { changed: 'nothing' }],
    ['sensor changed, ok for a while', { changed: 'for-a-while' }],
    ['Sensor changed in March, fault came back', { changed: 'for-a-while' }],
    ['sensor replaced, fixed it then', { changed: 'cured' }],
    ['second-hand sensor fitted, no difference', { fitted: 'second-hand', changed: 'nothing' }],
    ['aftermarket sensor fitted', { fitted: 'other-make' }],
    ['genuine sensor fitted, did not help', { fitted: 'new', changed: 'nothing' }],
  ])('what went in and what it changed: %s', (text, said) =>
    expect(readRepair(text, hall)).toEqual({ words: text, part: 'sensor', ...said }),
  );

  it('is told back', () => {
    expect(repairsRemark([readRepair('crank sensor replaced twice no change', hall)], hall)).toBe(
      'Understood: the crankshaft position sensor was replaced, which changed nothing.',
    );
    const repairs = ['Crank sensor replaced', 'harness taped'].map((one) => readRepair(one, hall));
    expect(repairsRemark(repairs, hall)).toBe(
      'Understood: the crankshaft position sensor was replaced. Kept as a note only: "harness taped" names no part of this circuit as replaced.',
    );
    expect(repairsRemark([readRepair('sensor and ECU swapped', hall)], hall)).toBe(
      'Kept as a note only: "sensor and ECU swapped" names more than one thing. Write each by itself, with ; between.',
    );
  });
});
