/** What is good on this car names the reading that told it, whatever else stands in the session. */
import { expect, it } from 'vitest';
import { keptOf } from '../../src/circuit/shown-of.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { createBench } from '../../src/drill/bench.ts';
import { after, shopFor } from './walk-library.ts';

it('is narrowed by the reading that says where a value of the car lies, and by no other', () => {
  const { model, advisor, begun } = shopFor('reluctor-no-signal');
  const bench = createBench(model, 'healthy', 1);
  const named = (id: string) => standardTests(model.circuit).find((one) => one.id === id)!.test;
  const from = () => ({
    // Both inputs are biased by the one resistor; with the module unplugged nothing is left of the bias.
    bias: advisor.diagnosis(session).goodHere(named('sensor.minus.volts'))?.from,
    unplugged: advisor.diagnosis(session).goodHere(named('sensor.plus.alone-volts'))?.from,
  });
  const read = (id: string) => {
    const test = named(id);
    const shown = keptOf(bench.shows(test));
    if (shown.kind === 'look') throw new Error(`${id} is a look`);
    const typed = `${shown.value} V`;
    session = after(session, { type: 'record-test', test, typed, shown, expected: null });
    return session.events.length;
  };
  let session = after(begun, { type: 'add-note', text: 'Tow rope still on.' });
  expect(from()).toEqual({ bias: null, unplugged: null });
  read('sensor.plus.alone-volts');
  expect(from()).toEqual({ bias: null, unplugged: null });
  session = after(session, { type: 'add-note', text: 'Cold engine.' });
  const telling = read('sensor.plus.open-volts');
  expect(from()).toEqual({ bias: telling, unplugged: null });
  read('sensor.plus.volts');
  expect(from()).toEqual({ bias: telling, unplugged: null });
});
