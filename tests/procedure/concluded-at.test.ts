/** The faults that a step concludes on. */
import { expect, it } from 'vitest';
import { concludedAt, type Procedure } from '../../src/procedure/procedure.ts';

const conclude = (...faults: string[]) => ({ kind: 'conclude', faults });
const ask = (...go: string[]) => ({ kind: 'ask', outcomes: go.map((one) => ({ go: one })) });
const tree = {
  steps: {
    one: conclude('a', 'b'),
    two: conclude('b', 'c'),
    none: conclude(),
    which: ask('one', 'two'),
    open: ask('one', 'none'),
    on: ask('one', 'which'),
    read: { kind: 'measure', outcomes: [{ go: 'one' }] },
  },
} as unknown as Procedure;

it.each([
  ['a conclusion', 'one', ['a', 'b']],
  ['a last question whose every answer concludes: each fault once', 'which', ['a', 'b', 'c']],
  ['a question with an answer that names no fault', 'open', []],
  ['a question with an answer that leads on', 'on', []],
  ['a reading', 'read', []],
  ['a step that is not there', 'gone', []],
])('%s', (_, id, faults) => {
  expect(concludedAt(tree, id)).toEqual(faults);
});
