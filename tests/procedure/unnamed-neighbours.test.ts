/** What nobody named on this car is called by what it shares with the sensor, in the circuit and in the tree. */
import { expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { withoutPlaces } from '../../src/procedure/bind-text.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { fitNeighbours } from '../../src/procedure/read-neighbours.ts';
import { thingOfRepair } from '../../src/procedure/test-words.ts';
import { calledByRole } from '../../src/procedure/unnamed-neighbours.ts';
import { shipped } from '../library/shipped.ts';

const SHEET: Job = emptyJob('stalls');
const called = (name: string, job: Job = SHEET) => {
  const { linked, model } = shipped(name);
  const fitted = fitNeighbours(model.circuit, job.shares ?? []).circuit;
  const made = calledByRole({ circuit: fitted, procedure: linked.procedure }, job);
  return made as { circuit: Circuit; procedure: Procedure };
};
const wordsOf = (circuit: Circuit, id: string) =>
  circuit.faults.find((fault) => fault.id === id)?.words;

test.each([
  ['hall-no-signal', 'throttle'],
  ['hall-relay-no-signal', 'speed sensor'],
  ['throttle-position', 'pressure'],
])('%s names no %s that nobody spoke of', (name, assumed) => {
  const { circuit, procedure } = called(name);
  const texts: string[] = [];
  const gather = (value: unknown): void => {
    if (typeof value === 'string') texts.push(...(value.includes(' ') ? [value] : []));
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(gather);
  };
  gather([circuit.parts, circuit.connectors, circuit.terminals, circuit.faults]);
  gather(procedure);
  const said = texts.map(withoutPlaces).filter((text) => text.toLowerCase().includes(assumed));
  expect(said).toEqual([]);
});

test('by what it shares, as whole sentences', () => {
  const hall = called('hall-no-signal').circuit;
  expect(wordsOf(hall, 'throttle-position.shorted')).toBe(
    'the other part on the same reference is shorted and drags the shared feed down',
  );
  expect(wordsOf(hall, 'wire.throttle-feed.short-to-ground')).toBe(
    'the feed wire of the other part on the same reference is shorted to ground',
  );
  const relay = called('hall-relay-no-signal').circuit;
  expect(wordsOf(relay, 'speed-sensor.shorted')).toContain('the other part on the same feed');
});

test('a name that the person gave stands, and a pin of the sheet names it too', () => {
  const named = called('hall-no-signal', {
    ...SHEET,
    shares: [{ name: 'throttle position sensor', shares: ['feed'] }],
  });
  const pinned = called('hall-no-signal', {
    ...SHEET,
    terminals: { 'throttle-position.feed': { pin: '1', colour: 'RD' } },
  });
  for (const { circuit, procedure } of [named, pinned]) {
    expect(wordsOf(circuit, 'throttle-position.shorted')).toMatch(/^the throttle position sensor/);
    expect(JSON.stringify(procedure)).toContain('throttle position sensor');
  }
});

test('beside a part of another name the assumed one is still not named', () => {
  const { circuit } = called('hall-no-signal', {
    ...SHEET,
    shares: [{ name: 'oil pressure sensor', shares: ['feed'] }],
  });
  expect(wordsOf(circuit, 'oil-pressure-sensor.shorted')).toMatch(/^the oil pressure sensor/);
  expect(wordsOf(circuit, 'throttle-position.shorted')).toMatch(/^the other part/);
});

test('names, numbers and chances stay as they are', () => {
  const before = shipped('hall-no-signal').model.circuit;
  const { circuit } = called('hall-no-signal');
  const bare = ({ faults, parts, wires, terminals }: Circuit) => [
    faults.map(({ words: _, repairWords: __, ...rest }) => rest),
    parts.map(({ words: _, ...rest }) => rest),
    wires,
    terminals.map(({ words: _, ...rest }) => rest),
  ];
  expect(bare(circuit)).toEqual(bare(before));
});

test('a wire of it is called after it wherever it is named', () => {
  const { circuit } = called('hall-no-signal');
  expect(thingOfRepair('wire.throttle-feed', circuit)).toBe(
    'feed wire of the other part on the same reference',
  );
  expect(thingOfRepair('wire.feed', circuit)).toBe('feed wire');
});
