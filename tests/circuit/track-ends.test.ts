/** Where wipers stand: the ways a second track runs, sensors that are built the other way round, levels of the travel. */
import { describe, expect, test } from 'vitest';
import type { Circuit, PotentiometerPart } from '../../src/circuit/circuit.ts';
import { levelsIn } from '../../src/circuit/input-levels.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { NOMINAL_DRAW } from '../../src/circuit/plan.ts';
import { trackEnds } from '../../src/circuit/track-ends.ts';
import { knownText } from './known-car.ts';
import { METER, modelOf, number, volts } from './shipped.ts';

const MOVED = { target: 'moving' } as const;
/** Track 1 stands at 15 % at rest and at 86 % fully moved. */
const SECOND = /closed: 7.5 % .* 1.5 %/;

function loaded(text: string): Circuit {
  const { value, issues } = loadCircuit(text, 'made.yaml');
  if (!value) throw new Error(JSON.stringify(issues));
  return value;
}

/** The known pedal whose second track hangs on its first. */
function pedal(second: string, turned = ''): Circuit {
  return loaded(
    knownText('pedal-dual')
      .replace(SECOND, `beside: track-1, ${second}`)
      .replace('    tracks:\n', `${turned}    tracks:\n`),
  );
}

function sensorOf(circuit: Circuit): PotentiometerPart {
  return circuit.parts.find((part) => part.kind === 'potentiometer') as PotentiometerPart;
}

/** The ends of both tracks in a car whose values are these, the middle ones where they are left out. */
function ends(circuit: Circuit, values: Readonly<Record<string, number>> = {}): number[][] {
  const sensor = sensorOf(circuit);
  return sensor.tracks.map((track) => {
    const at = trackEnds(sensor, track, (name, of) => () => values[name] ?? of.nominal);
    const { closed, open } = at(NOMINAL_DRAW);
    return [closed, open].map((share) => Math.round(share * 1000) / 1000);
  });
}

describe('a second track', () => {
  test.each([
    ['runs: half', [0.075, 0.43]],
    ['runs: opposite', [0.85, 0.14]],
    ['runs: lower, lower: 8 %', [0.07, 0.78]],
  ])('that runs beside the first, %s', (second, expected) => {
    expect(ends(pedal(second))).toEqual([[0.15, 0.86], expected]);
  });

  test('runs half of it where nothing is said', () => {
    expect(ends(pedal('lower: 8 %'))[1]).toEqual([0.075, 0.43]);
  });

  test('of several kinds is of one in each car', () => {
    const several = pedal('runs: "one of: half 40 %, opposite 30 %, lower 30 %", lower: 8 %');
    const second = (runs: number) => ends(several, { 'track-2.runs': runs })[1];
    expect([0, 1, 2].map(second)).toEqual([
      [0.075, 0.43],
      [0.85, 0.14],
      [0.07, 0.78],
    ]);
    expect(ends(several, { 'track-2.runs': 2, 'track-2.lower': 0.1 })[1]).toEqual([0.05, 0.76]);
  });

  test('is read so: against the first it falls while the pedal goes down', () => {
    const model = createModel(pedal('runs: opposite'), { samples: 1, seed: 1, meter: METER });
    const second = (part = {}) =>
      number(model, 'healthy', volts('sensor.signal-2', 'sensor.ground-2', part));
    // by hand: 85 % and 14 % of 5 V; a pull-down of 470 kohm takes hardly anything
    expect(second()).toBeCloseTo(4.25, 1);
    expect(second(MOVED)).toBeCloseTo(0.7, 1);
  });
});

describe('a sensor that is built the other way round', () => {
  test('has all its tracks turned, in that share of cars', () => {
    const some = pedal('runs: half', '    turned: 30 %\n');
    expect(sensorOf(some).turned?.oneOf?.map(({ chance }) => chance)).toEqual([0.7, 0.3]);
    expect(ends(some, { turned: 0 })).toEqual(ends(pedal('runs: half')));
    expect(ends(some, { turned: 1 })).toEqual([
      [0.85, 0.14],
      [0.925, 0.57],
    ]);
  });

  test('is told by its name in words that a person understands', () => {
    const { quantities } = modelOf('throttle-potentiometer', 1);
    expect(quantities.find(({ key }) => key === 'sensor.turned')).toMatchObject({
      words: 'which way round the throttle position sensor is built',
      ways: ['as usual', 'the other way round'],
    });
  });
});

test('a good spare is built like the sensor in its place and ends where that ends', () => {
  const circuit = loaded(
    knownText('throttle-potentiometer')
      .replace(
        'closed: 12 % +/- 2 %, open: 90 % +/- 3 %',
        'closed: 5 % to 15 %, open: 85 % to 95 %',
      )
      .replace('    tracks:\n', '    turned: 30 %\n    tracks:\n'),
  );
  const model: Model = createModel(circuit, { samples: 8, seed: 1, meter: METER });
  const signal = (part: object, sample: number) =>
    number(model, 'healthy', volts('module.signal', 'module.ground', part), sample);
  for (let sample = 0; sample < model.samples; sample += 1)
    for (const part of [{}, MOVED]) {
      const off = signal({ ...part, sensor: 'spare' }, sample) - signal(part, sample);
      // Its track and wiper are other ones, which a pull-down of 470 kohm hardly shows.
      expect(Math.abs(off), `car ${sample}`).toBeLessThan(0.04);
    }
});

describe('levels of the travel', () => {
  const throttle = (turned: string) =>
    loaded(
      knownText('throttle-potentiometer')
        .replace(
          'low-below: 1.2 V, high-above: 4 V',
          'of: travel, low-below: 25 %, high-above: 70 %',
        )
        .replace('    tracks:\n', `${turned}    tracks:\n`),
    );
  const levels = (circuit: Circuit) =>
    levelsIn(circuit, 'module.signal', 'key-on')!(NOMINAL_DRAW.value);

  test('are parts of the way between the two ends, in volts of the reference', () => {
    // by hand: 12 % to 90 % of 5 V; 5 V * (0.12 + 0.25 * 0.78) and 5 V * (0.12 + 0.7 * 0.78)
    const { lowBelow, highAbove } = levels(throttle(''));
    expect(lowBelow).toBeCloseTo(1.575, 6);
    expect(highAbove).toBeCloseTo(3.33, 6);
  });

  test('begin at the lower end where the track falls', () => {
    // by hand: 88 % to 10 %; 5 V * (0.1 + 0.25 * 0.78) and 5 V * (0.1 + 0.7 * 0.78)
    const { lowBelow, highAbove } = levels(throttle('    turned: 100 %\n'));
    expect(lowBelow).toBeCloseTo(1.475, 6);
    expect(highAbove).toBeCloseTo(3.23, 6);
  });
});
