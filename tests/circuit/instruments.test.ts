/** What instruments make of currents and voltages, at the edges named in the source; by hand from their formulas. */
import { describe, expect, test } from 'vitest';
import { bridgeElement } from '../../src/circuit/bridge-element.ts';
import { lampElement, lampLook } from '../../src/circuit/instruments/filament-lamp.ts';
import { lightElement, lightLook } from '../../src/circuit/instruments/led-light.ts';
import {
  OHMS_TEST_SERIES,
  OHMS_TEST_VOLTS,
  ohmsElement,
  ohmsFrom,
} from '../../src/circuit/instruments/ohmmeter.ts';
import { meterElement } from '../../src/circuit/instruments/voltmeter.ts';
import { type Element, nodesOf } from '../../src/circuit/netlist.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';
import { METER } from './shipped.ts';

/** Current of an element across an ideal source. */
function ampsAt(volts: number, element: Element): number {
  const solver = createSolver({
    nodes: ['0', '1'],
    elements: [{ kind: 'emf', plus: 1, minus: 0, volts, ohms: 0 }, element],
  });
  expect(solver.solve()).toBeNull();
  return solver.current(1);
}

test('the LED light takes 32 mA at 12.6 V and nothing backwards; common practice, no source', () => {
  expect(ampsAt(12.6, lightElement(1, 0))).toBeCloseTo(0.032, 6);
  expect(Math.abs(ampsAt(12.6, lightElement(0, 1)))).toBeLessThan(1e-7);
});

test('the filament lamp takes a quarter of an ampere hot, either way round', () => {
  expect(ampsAt(12, lampElement(1, 0))).toBeCloseTo(0.25, 9); // 12 V over 48 ohm
  expect(ampsAt(-12, lampElement(1, 0))).toBeCloseTo(-0.25, 9);
  expect(ampsAt(3, lampElement(1, 0))).toBeCloseTo(3 / 26.5, 9); // half-way up: 5 + 43 / 2
});

test.each([
  [0.003, 'lit'],
  [0.00299, 'dim'],
  [0.0003, 'dim'],
  [0.00029, 'dark'],
  [-0.01, 'dark'],
])('the light at %d A is %s', (amps, look) => {
  expect(lightLook(amps)).toBe(look);
});

test.each([
  [6, 'lit'],
  [-6, 'lit'],
  [5.9, 'dim'],
  [-1.5, 'dim'],
  [1.4, 'dark'],
])('the lamp at %d V is %s', (volts, look) => {
  expect(lampLook(volts)).toBe(look);
});

test('a bridge is the instrument it is named for', () => {
  expect(bridgeElement('test-light', 1, 2)).toEqual(lightElement(1, 2));
  expect(bridgeElement('lamp', 1, 2)).toEqual(lampElement(1, 2));
  expect(meterElement(1, 2, METER)).toEqual({ kind: 'resistor', a: 1, b: 2, ohms: 10e6 });
  expect(ohmsElement(1, 2)).toMatchObject({ kind: 'emf', plus: 1, minus: 2, volts: 1 });
});

describe('the ohmmeter', () => {
  test.each([0, 10, 600, 10_000, 1e6, 60e6])('sees %d ohm as itself', (ohms) => {
    const volts = (OHMS_TEST_VOLTS * ohms) / (ohms + OHMS_TEST_SERIES);
    expect(ohmsFrom(volts, METER)).toBeCloseTo(ohms, ohms > 1e6 ? -2 : 4);
  });
  test.each([
    [1, Number.POSITIVE_INFINITY], // open leads
    [1.2, Number.POSITIVE_INFINITY], // voltage in the circuit
    [61e6 / (61e6 + 1e4), Number.POSITIVE_INFINITY], // beyond its highest range
    [-0.1, 0],
  ])('shows %d V as %d', (volts, ohms) => {
    expect(ohmsFrom(volts, METER)).toBe(ohms);
  });
});

test.each<[Element, number[]]>([
  [{ kind: 'resistor', a: 1, b: 2, ohms: 1 }, [1, 2]],
  [{ kind: 'emf', plus: 3, minus: 4, volts: 1, ohms: 1 }, [3, 4]],
  [{ kind: 'current', from: 1, to: 2, amps: 1 }, [1, 2]],
  [{ kind: 'regulator', from: 1, out: 2, volts: 5, ohms: 1, limitAmps: 1 }, [1, 2]],
  [{ kind: 'sink', a: 1, b: 2, amps: 1, minVolts: 1, reverseOhms: 1 }, [1, 2]],
  [
    {
      kind: 'gated-output',
      out: 1,
      ground: 2,
      feed: 3,
      onSiemens: 1,
      offSiemens: 1,
      minVolts: 1,
      limitAmps: 1,
    },
    [1, 2, 3],
  ],
])('%o touches %o', (element, nodes) => {
  expect(nodesOf(element)).toEqual(nodes);
});
