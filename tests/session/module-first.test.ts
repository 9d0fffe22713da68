/** What puts a conclusion of several faults right; a module is not replaced before its own feeds and grounds were tested. */
import { expect, it } from 'vitest';
import { conclusionWords, moduleFirst } from '../../src/session/conclusion-words.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';

const circuit = shipped('hall-module-fed');
const FIRST =
  "First test the feeds and grounds of the engine control module itself under load, using the maker's diagram.";

it('a conclusion on the module alone says what comes first', () => {
  expect(moduleFirst(circuit, ['module.reference.dead', 'module.signal.input-dead'])).toBe(FIRST);
  expect(moduleFirst(circuit, ['module.reference.dead', 'wire.feed.open'])).toBe('');
  expect(moduleFirst(circuit, [])).toBe('');
  expect(moduleFirst(null, ['module.reference.dead'])).toBe('');
});

it('it stands in the repair of the record', () => {
  const own = { words: null, faults: ['module.reference.dead'] };
  const session = sessionAfter([{ type: 'conclude', own }], null, { circuit });
  expect(conclusionWords(session)?.repair).toBe(
    `${FIRST} If they hold: Replace the engine control module.`,
  );
});

it('several repairs are one sentence', () => {
  const own = { words: null, faults: ['wire.signal.open', 'contact.module.signal.open'] };
  const session = sessionAfter([{ type: 'conclude', own }], null, { circuit });
  expect(conclusionWords(session)?.repair).toBe(
    'Repair or replace the signal wire; clean, refit or replace the terminals at the connector of the engine control module.',
  );
});
