/** A drill in hand without a file. */
import { drawCircuit } from '../../src/circuit/draw-circuit.ts';
import { decideDrill, revealedBy } from '../../src/drill/decide-drill.ts';
import { evolveDrill } from '../../src/drill/drill.ts';
import type { DrillInHand } from '../../src/drill/drill-in-hand.ts';
import { newDrill, when } from './students.ts';

/** Everything as with a file, but nothing is written. */
export function memoryDrill(seed: number, ask: Parameters<typeof newDrill>[1] = {}): DrillInHand {
  const begun = newDrill(seed, ask);
  const { world } = begun;
  let { drill } = begun;
  return {
    drill: () => drill,
    world,
    perform: (command) => {
      const { events, refused } = decideDrill(drill, command, when(drill.events.length), world);
      drill = events.reduce(evolveDrill, drill);
      return { refused: refused && { ...refused, disk: false } };
    },
    debrief: () => (drill.revealed ? revealedBy(drill, world, drill.revealed).debrief : null),
    sketch: (test, columns) =>
      drawCircuit(drill.opened.circuit, {
        width: columns,
        ascii: false,
        ...(test ? { test } : {}),
      }),
    path: () => 'drills/in-memory.jsonl',
    close: () => {},
  };
}
