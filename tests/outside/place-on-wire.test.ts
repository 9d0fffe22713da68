/**
 * Location of a short from two drops: against ngspice on decks by hand, and against the worked example of Murray's loop in
 * Hawkins Electrical Guide 3 (1917), "Murray loop, Case II".
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { placeOnWire, type Stretch } from '../../src/quantity/place-on-wire.ts';
import { freshNgspice, operatingPoint } from './ngspice.ts';

beforeAll(freshNgspice);

/**
 * 3 m of 0.5 mm2: 36.9 mohm a metre. 34.5 of solid copper at 20 degC (IEC 60028, 1/58 ohm mm2/m); 7 % more for strands is
 * common practice, no source.
 */
const METRE = 0.0369;
const WIRE: Stretch = { metres: 3, ohmsPerMetre: [METRE, METRE], jointOhms: null };
const exact = (volts: number) => ({ volts, limitVolts: 0 });

/**
 * The wire A to B with a short F at 0.9 m to battery negative, fed from 12.6 V through a lamp of 55 ohm; everything on it is
 * unplugged. The meter has 10 Mohm and its leads stand at A and B themselves, not on the clip of the lamp.
 */
function deck(fed: 'a' | 'b', faultOhms: number, more: readonly string[] = []): string[] {
  return [
    '* a wire with a short',
    'Vbat  bat   0     12.6',
    'Rbat  bat   post  20m',
    'Rlamp post  clip  55',
    // A clip on a terminal: what it drops is not in the reading.
    `Rclip clip  ${fed}  30m`,
    `Raf   a     f     ${0.9 * METRE}`,
    `Rfb   f     b     ${2.1 * METRE}`,
    `Rf    f     0     ${faultOhms}`,
    'Rdmm  a     b     10meg',
    ...more,
  ];
}

async function drops(faultOhms: readonly [number, number], more: readonly string[] = []) {
  const read = async (fed: 'a' | 'b', ohms: number) => {
    const volts = (await operatingPoint(deck(fed, ohms, more)))!;
    return {
      volts: volts.get('a')! - volts.get('b')!,
      amps: (volts.get('post')! - volts.get('clip')!) / 55,
    };
  };
  return { here: await read('a', faultOhms[0]), there: await read('b', faultOhms[1]) };
}

describe('against ngspice', () => {
  test.each([0.01, 2, 20])('a short of %d ohm drops out: 0.9 m from A', async (ohms) => {
    const { here, there } = await drops([ohms, ohms]);
    expect(here.amps).toBeGreaterThan(0.1);
    expect(here.amps).toBeLessThan(0.3);
    // With the leads left where they are the sign turns.
    expect(Math.sign(here.volts)).toBe(-Math.sign(there.volts));
    const place = placeOnWire({
      fedHere: exact(here.volts),
      fedThere: exact(there.volts),
      currents: 1,
      stretches: [WIRE],
    })!;
    expect(place.metres).toBeCloseTo(0.9, 2);
  });

  test('a short that changes between the two readings shows in the currents, which put it right', async () => {
    const { here, there } = await drops([0.05, 20]);
    const at = (currents: number) =>
      placeOnWire({
        fedHere: exact(here.volts),
        fedThere: exact(there.volts),
        currents,
        stretches: [WIRE],
      })!.metres;
    expect(Math.abs(at(1) - 0.9)).toBeGreaterThan(0.1);
    expect(at(here.amps / there.amps)).toBeCloseTo(0.9, 2);
  });

  test('what is left plugged in at B draws current past the short, and the place comes out wrong', async () => {
    const { here, there } = await drops([20, 20], ['Rload b 0 30']);
    const place = placeOnWire({
      fedHere: exact(here.volts),
      fedThere: exact(there.volts),
      currents: here.amps / there.amps,
      stretches: [WIRE],
    })!;
    expect(Math.abs(place.metres - 0.9)).toBeGreaterThan(0.3);
  });
});

describe("Murray's loop, as printed", () => {
  test('332 of 1000 parts of a loop of 54.07 ohm, a wire of 16.46 ohm a mile: 1.09 miles', () => {
    const perMile = 16.46;
    // Any length of the faulty wire beyond the short does; the other wire of the loop is the rest.
    const bad = 2;
    const place = placeOnWire({
      fedHere: exact(332),
      fedThere: exact(668),
      currents: 1,
      stretches: [
        { metres: bad, ohmsPerMetre: [perMile, perMile], jointOhms: [0, 0] },
        {
          metres: 1,
          ohmsPerMetre: [54.07 - bad * perMile, 54.07 - bad * perMile],
          jointOhms: null,
        },
      ],
    })!;
    expect(place.metres).toBeCloseTo(1.09, 2);
  });
});
