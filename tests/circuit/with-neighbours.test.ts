/** What a person says shares the feed of the sensor: a part of this car's circuit, and what the open level of a sister leaves. */
import { describe, expect, it } from 'vitest';
import { moduleOf, pullEnds } from '../../src/circuit/circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { tellingNeighbours } from '../../src/circuit/telling-neighbours.ts';
import { withNeighbours, withSisterLevel } from '../../src/circuit/with-neighbours.ts';
import type { SessionOpened } from '../../src/session/events.ts';
import { openingFlaw } from '../../src/session/opening-flaw.ts';
import { METER, shipped, volts } from './shipped.ts';

const OIL = { name: 'oil-sensor', words: 'oil sensor', feed: true, ground: true };
const hall = shipped('hall-module-fed');

function number(circuit: typeof hall, fault: string, at: ReturnType<typeof volts>): number {
  const model = createModel(circuit, { samples: 1, seed: 1, meter: METER });
  const shown = model.shows(fault, at, -1);
  return shown.kind === 'number' ? shown.value : Number.NaN;
}

describe('a neighbour', () => {
  it.each(['hall-module-fed', 'hall-relay-fed', 'throttle-potentiometer', 'current-two-wire'])(
    'gets its feed where the sensor of %s gets it, and keeps all that was there',
    (name) => {
      const circuit = shipped(name);
      const made = tellingNeighbours(circuit, withNeighbours(circuit, [OIL]));
      expect(made.faults.slice(0, circuit.faults.length)).toEqual(circuit.faults);
      expect(made.faults.slice(circuit.faults.length).map(({ id }) => id)).toEqual([
        'oil-sensor.shorted',
      ]);
      const opened = {
        procedure: null,
        circuit: made,
        vehicle: { kind: 'real' },
      } as unknown as SessionOpened;
      expect(openingFlaw(opened)).toBeNull();
      const feed = number(made, 'healthy', volts('oil-sensor.feed'));
      // by hand: both hang on one supply, whose wires lose some millivolts
      const sensor = circuit.wires.find(({ role, from, to }) =>
        role !== 'ground' && role !== 'signal' ? `${from} ${to}`.includes('sensor.feed') : false,
      );
      const own = sensor?.to.startsWith('sensor.') ? sensor.to : sensor!.from;
      expect(Math.abs(feed - number(made, 'healthy', volts(own)))).toBeLessThan(0.1);
    },
  );

  it('that is shorted drags the feed of the sensor down, and comes off with its plug', () => {
    const made = withNeighbours(hall, [OIL]);
    const down = number(made, 'oil-sensor.shorted', volts('sensor.feed'));
    const off = volts('sensor.feed', 'battery.negative', { unplugged: ['oil-sensor'] });
    expect(down).toBeLessThan(2);
    expect(number(made, 'oil-sensor.shorted', off)).toBeGreaterThan(4.7);
  });

  it('with a ground alone can drag nothing down', () => {
    const made = withNeighbours(hall, [{ ...OIL, feed: false }]);
    expect(made.faults).toEqual(hall.faults);
  });

  it('that the circuit has already is only marked as told', () => {
    const made = withNeighbours(hall, [{ ...OIL, name: 'throttle-position' }]);
    expect(made.parts.find(({ name }) => name === 'throttle-position')).toMatchObject({
      told: true,
    });
    expect([made.faults, made.wires]).toEqual([hall.faults, hall.wires]);
  });

  it('can be compared with, where the person has named it', () => {
    const beside = (circuit: typeof hall) =>
      standardTests(circuit).flatMap(({ id }) => (id.includes('beside-') ? [id] : []));
    expect(beside(hall)).toEqual([]);
    expect(beside(withNeighbours(hall, [OIL]))).toEqual([
      'sensor.feed.beside-oil-sensor',
      'sensor.ground.beside-oil-sensor',
    ]);
  });
});

describe('the open level of a sister', () => {
  const endsAt = (level: number) => {
    const made = withSisterLevel(hall, level);
    const pull = made && moduleOf(made).inside.find(({ name }) => name === 'signal')!.pull!;
    return (
      pull &&
      pullEnds(pull.to).map((end) => (end.kind === 'volts' ? `${end.volts.nominal} V` : end.kind))
    );
  };

  it('leaves of what the resistor may lead to only what stands at such a level', () => {
    // by hand, of "reference, 5 V, 8 V, battery" in the file
    expect(endsAt(4.98)).toEqual(['5 V', 'pin']);
    expect(endsAt(8.02)).toEqual(['8 V']);
    expect(endsAt(12.4)).toEqual(['battery']);
    expect(endsAt(3)).toBeNull();
  });

  it('is not taken where another pin of the module is built alike', () => {
    const { parts } = shipped('pedal-dual');
    expect(
      parts.some((part) => part.kind === 'module' && part.inside.some(({ pull }) => pull?.alike)),
    ).toBe(true);
    expect(withSisterLevel(shipped('pedal-dual'), 5)).toBeNull();
  });
});

it('comes off its fuse for a test only where it is on one', () => {
  const offFuse = (neighbour: typeof OIL) =>
    standardTests(withNeighbours(shipped('hall-relay-fed'), [neighbour]))
      .map(({ id }) => id)
      .filter((id) => id.startsWith('fuse.burden-without-'));
  const shippedOnes = ['fuse.burden-without-sensor', 'fuse.burden-without-speed-sensor'];
  expect(offFuse(OIL)).toEqual([...shippedOnes, 'fuse.burden-without-oil-sensor']);
  expect(offFuse({ ...OIL, feed: false })).toEqual(shippedOnes);
});
