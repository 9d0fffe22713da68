/** A test with one lead a pin farther on in the same connector: where a lead is put by mistake. */
import type { Circuit } from '../circuit/circuit.ts';
import { instrumentOf } from '../circuit/instruments.ts';
import { isNumberProbe } from '../circuit/shown-by.ts';
import type { Test } from '../circuit/test.ts';

/** The test that is made when the lead slips. */
export interface TestBeside {
  readonly test: Test;
  /** The pin that the lead would be on. */
  readonly words: string;
}

/** The tests beside one whose lead may be misplaced; none of any other. */
export function testsBeside({ probe, ...rest }: Test, circuit: Circuit): TestBeside[] {
  if (!isNumberProbe(probe) || !instrumentOf(probe).canBeMisplaced) return [];
  return (['plus', 'minus'] as const).flatMap((lead) => {
    const own = circuit.terminals.find(({ id }) => id === probe[lead]);
    const other = lead === 'plus' ? probe.minus : probe.plus;
    return circuit.terminals
      .filter(
        ({ id, part, side }) =>
          part === own?.part && side === own.side && id !== own.id && id !== other,
      )
      .map(({ id, words }) => ({ words, test: { ...rest, probe: { ...probe, [lead]: id } } }));
  });
}
