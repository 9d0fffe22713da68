/**
 * A waveform that we did not make: ngspice (as WebAssembly, eecircuit-engine 1.8.0) drives a pull-up and an input
 * capacitor with a switch, and its curve is measured. The expected values follow from the circuit by hand.
 */
import { beforeAll, expect, test } from 'vitest';
import { measureChannel } from '../../src/waveform/measure-channel.ts';
import { freshNgspice, runDeck } from './ngspice.ts';

const RATE = 1_000_000;
const NETLIST = `pull-up with input capacitor
V1 feed 0 DC 5
R1 feed signal 2.2k
C1 signal 0 10n
Vc gate 0 PULSE(0 1 0.1m 1n 1n 0.4m 1m)
S1 signal 0 gate 0 SW1
.model SW1 SW(VT=0.5 VH=0 RON=100 ROFF=1e9)
.options RELTOL=1e-6 ABSTOL=1e-15 VNTOL=1e-9
.tran 0.5u 10m 0 0.5u
.end
`;

let times: readonly number[] = [];
let volts: readonly number[] = [];

beforeAll(async () => {
  freshNgspice();
  const { values } = await runDeck(NETLIST);
  times = values.get('time') ?? [];
  volts = values.get('v(signal)') ?? [];
}, 60_000);

test("ngspice's curve has the levels, times and duty of the circuit", () => {
  expect(times.length).toBeGreaterThan(10_000);
  let at = 0;
  const samples = Float32Array.from({ length: 0.01 * RATE }, (_, i) => {
    const time = i / RATE;
    while (at + 2 < times.length && times[at + 1]! < time) at += 1;
    const share = (time - times[at]!) / (times[at + 1]! - times[at]!);
    return volts[at]! + share * (volts[at + 1]! - volts[at]!);
  });
  const found = measureChannel({ name: 'signal', unit: 'V', samples }, RATE);
  expect(found.kind).toBe('switched');
  expect(found.levels.high).toBeCloseTo(5, 1); // by hand: no current through the pull-up
  expect(found.levels.low).toBeCloseTo(0.2174, 2); // by hand: 5 * 100 / 2300
  expect(found.pulses.hertz).toBeCloseTo(1000, 1);
  // By hand: rising with 2.2 kohm * 10 nF = 22 us, tau ln 9 = 48.34 us.
  expect(Math.abs(found.riseSeconds!.mean / (22e-6 * Math.log(9)) - 1)).toBeLessThan(0.02);
  // Falling through 100 ohm beside 2.2 kohm: 0.9565 us, ln 9 times that is 2.1 us, two samples.
  expect(Math.abs(found.fallSeconds!.mean - 2.1e-6)).toBeLessThan(1e-6);
  // Low from the switch closing (+ tau ln 2 = 0.66 us) until it opens (+ 22 us ln 2 = 15.25 us): 414.6 us of 1 ms.
  expect(found.pulses.duty).toBeCloseTo(1 - 0.4146, 3);
});
