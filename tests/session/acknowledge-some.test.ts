/** Cautions acknowledged one by one, each by its id. */
import { expect, it } from 'vitest';
import type { Command } from '../../src/session/command.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { sessionAfter } from './sample-tree.ts';
import { ACK, DONE, said, volts } from './shorthand.ts';

const AT_PATTERN: Command[] = [DONE, ACK, volts(5)];
const some = (...ids: string[]): Command => ({
  type: 'acknowledge-cautions',
  ids,
  readBy: 'R. Example',
});
const idsLeft = (...commands: Command[]) =>
  pendingCautions(sessionAfter([...AT_PATTERN, ...commands])).map(({ id }) => id);

it('one that is named is read, the other still stands before the test', () => {
  expect(idsLeft()).toEqual(['turns', 'live']);
  expect(idsLeft(some('live'))).toEqual(['turns']);
  expect(idsLeft(some('live'), some('turns'))).toEqual([]);
});

it('the event says which, with the text that was shown and by whom it was read', () => {
  const { acknowledgements } = sessionAfter([...AT_PATTERN, some('live')]);
  expect(acknowledgements.at(-1)).toMatchObject({
    step: 'pattern',
    readBy: 'R. Example',
    cautions: [{ id: 'live', word: 'CAUTION', text: 'The circuits are live.' }],
  });
});

it('one that is not pending here is refused, beside one that is, and so is none at all', () => {
  const session = sessionAfter(AT_PATTERN);
  expect(said(session, some('live', 'hot'))).toBe('no-caution');
  expect(said(session, some())).toBe('no-caution');
  expect(said(session, some('live'))).not.toBe('no-caution');
});
