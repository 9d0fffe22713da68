/** The module's own live data: whether they follow the signal at an input. */
import { moduleOf } from '../circuit.ts';
import type { Instrument } from '../instrument.ts';
import type { Probe } from '../test.ts';

export const liveData: Instrument<Extract<Probe, { kind: 'counts' }>> = {
  element: null,
  read: (bench, { input }, asked) => ({
    kind: 'look',
    look: bench.follows(asked, input) ? 'follows' : 'still',
  }),
  refusal: (circuit, setup, { input: terminal }) => {
    const module = moduleOf(circuit);
    const pin = module.inside.find((one) => `${module.name}.${one.name}` === terminal);
    if (!pin?.input) return { code: 'no-input', terminal };
    if (setup.unplugged.includes(module.name)) return { code: 'module-unplugged' };
    return setup.state === 'key-off' ? { code: 'module-off' } : null;
  },
  joinsAs: null,
  need: 'live-data',
  minutes: 1,
  isReadStill: false,
  needsMotion: true,
  isForDeadCircuit: false,
  canBeMisplaced: false,
  words: {
    name: 'live data of the module',
    tool: 'live data',
    line: ({ input }) => `live data: does the module follow ${input}`,
    say: ({ input }, at) => `Watch the live data of ${at(input)}.`,
  },
};
