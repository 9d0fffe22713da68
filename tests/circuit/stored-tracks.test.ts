/** Tracks of a stored circuit: those of old sessions are good, and one that ends nowhere is told. */
import { describe, expect, test } from 'vitest';
import type { Circuit, PotentiometerPart, Track } from '../../src/circuit/circuit.ts';
import { valueFlaw } from '../../src/circuit/stored-values.ts';
import validate from '../../src/log/generated/session-event.mjs';
import { whichOf } from '../../src/quantity/value-at.ts';
import { sealed } from '../log/events.ts';
import { begin } from '../records/sample-session.ts';
import { knownCircuit } from './known-car.ts';
import { shipped } from './shipped.ts';

const PEDAL = shipped('pedal-dual');

function sensor(change: (part: PotentiometerPart) => PotentiometerPart): Circuit {
  const parts = PEDAL.parts.map((part) => (part.kind === 'potentiometer' ? change(part) : part));
  return { ...PEDAL, parts };
}

/** The second track with keys changed, or left out where they are undefined. */
function second(change: object): Circuit {
  return sensor((part) => {
    const [one, two] = part.tracks as readonly [Track, Track];
    const made = Object.entries({ ...two, ...change }).filter(([, value]) => value !== undefined);
    return { ...part, tracks: [one, Object.fromEntries(made) as unknown as Track] };
  });
}

/** Whether the schema of a session's first event takes the circuit. */
function fits(circuit: Circuit): boolean {
  const [opened] = begin().events;
  return sealed([{ ...opened!, circuit } as typeof opened & object])
    .text.split('\n')
    .filter(Boolean)
    .every((line) => validate(JSON.parse(line)));
}

test.each([
  ['with both ends, as sessions before had it', knownCircuit('pedal-dual')],
  ['beside another', PEDAL],
  ['that may be turned', shipped('throttle-potentiometer')],
])('a track is good %s', (_, circuit) => {
  expect(fits(circuit)).toBe(true);
  expect(valueFlaw(circuit)).toBeNull();
});

const beside = (change: object) => {
  const two = sensorTracks()[1]!;
  return { beside: { ...two.beside, ...change } };
};
const sensorTracks = () =>
  (PEDAL.parts.find(({ kind }) => kind === 'potentiometer') as PotentiometerPart).tracks;

describe('a track that ends nowhere is told', () => {
  test.each([
    ['no ends and no other track', second({ beside: undefined })],
    ['half of its ends', second({ beside: undefined, closed: sensorTracks()[0]!.closed })],
    ['a track that is not there', second(beside({ track: 'track-9' }))],
    ['itself', second(beside({ track: 'track-2' }))],
    ['fewer ways than chances', second(beside({ runs: ['half'] }))],
    ['turned in three ways', sensor((part) => ({ ...part, turned: whichOf([0.5, 0.3, 0.2]) }))],
  ])('%s', (_, circuit) => {
    expect(valueFlaw(circuit)).toEqual({
      at: 'parts, "sensor"',
      words: 'has a track that ends nowhere',
    });
  });
});

test('levels of the travel are parts of it', () => {
  const parts = PEDAL.parts.map((part) =>
    part.kind === 'module'
      ? {
          ...part,
          inside: part.inside.map((pin) =>
            pin.input?.kind === 'levels'
              ? { ...pin, input: { ...pin.input, highAbove: 1e9 } }
              : pin,
          ),
        }
      : part,
  );
  expect(valueFlaw({ ...PEDAL, parts })?.at).toMatch(/signal-1/);
});
