/** A saved session in a line of a list, from its first and last event as they stand in the file. */
import { describe, expect, it } from 'vitest';
import type { SessionEntry } from '../../src/files/list-sessions.ts';
import { listWords } from '../../src/records/list-words.ts';
import { drillWalk, openDrillWalk } from './sample-drill.ts';
import { begin, CIRCUIT, finishedWalk, freeWalk, JOB, type Walk } from './sample-session.ts';

function entryOf({ events }: Walk): SessionEntry {
  const plain = events.map((event) => ({ ...event }));
  return {
    path: 'a.jsonl',
    paths: ['a.jsonl'],
    first: plain[0] ?? null,
    last: plain.at(-1) ?? null,
    laterTypes: events.slice(1).map(({ type }) => type),
    startedAt: events[0]!.at,
    events: events.length,
    bytes: 1000,
    state: 'complete-lines',
  };
}

const bare = { ...JOB, complaint: '', vehicle: { ...JOB.vehicle, words: '', plate: '' } };

it.each<[string, Walk, string]>([
  ['its vehicle and complaint', begin(), 'QX 47 ZUM, Lindorf Kestrel 2.0, 2019, Starts badly'],
  ['its procedure', begin({ job: bare }), 'Invented three-wire sensor, no signal'],
  [
    'its circuit in free order',
    freeWalk({ job: bare }),
    'Free order of tests: Invented sensor circuit',
  ],
  ['nothing where nothing is known', begin({ job: bare, procedure: null, circuit: null }), ''],
])('is called by %s', (_, walk, words) => {
  expect(listWords(entryOf(walk)).words.slice(0, words.length || undefined)).toBe(words);
});

it('a circuit of whatever length is one line', () => {
  const circuit = { ...CIRCUIT, title: 'x'.repeat(5000) };
  expect(listWords(entryOf(freeWalk({ job: bare, circuit }))).words.length).toBeLessThan(200);
});

it.each<[string, Walk, boolean]>([
  ['a real vehicle', begin(), false],
  ['a simulated one', begin({ vehicle: { kind: 'bench', fault: 'x', seed: 1 } }), true],
  ['a drill', openDrillWalk(), true],
])('%s is practice or not', (_, walk, simulated) => {
  expect(listWords(entryOf(walk)).simulated).toBe(simulated);
});

describe('how it stands', () => {
  it.each<[string, Walk, string]>([
    ['begun', begin(), 'open'],
    ['paused', begin().do({ type: 'pause' }), 'paused'],
    ['concluded', freeWalk(), 'concluded'],
    ['closed', finishedWalk(), 'closed'],
    ['a drill that was revealed', drillWalk(), 'closed'],
  ])('%s', (_, walk, status) => {
    expect(listWords(entryOf(walk)).status).toBe(status);
  });
});
