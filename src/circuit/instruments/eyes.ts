/** Eyes and fingers on a thing: a part, a connector, a wire, the target. */

import { nearestName } from '../../source/nearest-name.ts';
import type { Circuit } from '../circuit.ts';
import type { Instrument } from '../instrument.ts';
import type { Probe } from '../test.ts';
import { hasMarks, MARKS } from '../timing-marks.ts';

export const eyes: Instrument<Extract<Probe, { kind: 'inspect' }>> = {
  element: null,
  read: (bench, { of }, asked) => ({
    kind: 'look',
    look: bench.isFound(asked, of) ? 'faulty' : 'sound',
  }),
  refusal: (circuit, _, { of }) => {
    const known = inspectable(circuit);
    if (known.includes(of)) return null;
    return { code: 'nothing-to-inspect', of, near: nearestName(of, known) };
  },
  joinsAs: null,
  need: 'eyes',
  minutes: 3,
  isReadStill: false,
  needsMotion: false,
  isForDeadCircuit: true,
  canBeMisplaced: false,
  words: {
    name: 'eyes and fingers',
    tool: 'eyes and fingers',
    line: ({ of }) => `look at ${of}`,
    say: () => '',
  },
};

/** Names of all things that eyes and fingers can be sent to. */
export function inspectable(circuit: Circuit): string[] {
  return [
    ...circuit.parts.map((part) => part.name),
    ...circuit.connectors.map((connector) => `connector.${connector.part}`),
    ...circuit.connectors.flatMap((connector) =>
      connector.pins.map((pin) => `contact.${connector.part}.${pin}`),
    ),
    ...new Set(circuit.wires.flatMap(({ name, of = name }) => [`wire.${of}`, `wire.${name}`])),
    'harness',
    ...(circuit.target ? ['target', 'target.seat', 'target.ring'] : []),
    ...(circuit.target?.ring ? ['target.turning'] : []),
    ...(hasMarks(circuit) ? [MARKS] : []),
  ];
}
