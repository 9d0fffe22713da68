/** Places in the text are worked out only for what is wrong: finding them takes ten times as long as all the rest. */
import { expect, test } from 'vitest';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';

const TREE = `
procedure: small
title: A small tree
start: look
steps:
  look:
    say: Read it.
    why: To know.
    measure: { reading: { unit: V } }
    outcomes:
      low: { below: 4 V, go: bad }
      good: { from: 4 V, go: other }
  bad:
    conclude: [a.fault]
    say: Found.
    repair: Mend it.
    retest: [look]
  other:
    conclude: [another.fault]
    say: Found.
    repair: Mend it.
    retest: [look]
`;

test('a tree without mistakes asks for no place', () => {
  const { value } = parseProcedure(TREE, 'small.yaml');
  const locate = () => {
    throw new Error('a place was asked for');
  };
  const parsed = { ...value!, source: { ...value!.source, locate } };
  const library = { procedures: new Map(), circuits: new Map(), cautions: [] };
  const modelOf = () => {
    throw new Error('a tree without circuit needs no model');
  };
  const { issues } = linkProcedure(parsed, library, { drive: 'combustion', modelOf });
  expect(issues).toEqual([]);
});
