/** What the person has at hand, and what cannot be done with it. */
import type { Test } from '../../../src/circuit/test.ts';
import { INSTRUMENTS } from '../../../src/files/settings.ts';
import { oneOf, type Random } from './seeded.ts';

export const MEANS = ['all', 'no-scope', 'no-live-data', 'plug-out-of-reach'] as const;
export type MeansName = (typeof MEANS)[number];

export interface Means {
  readonly instruments: readonly string[];
  /** Why a test cannot be done, or null. */
  readonly cannot: (test: Test) => string | null;
  /** The part whose connector is out of reach, which the person says once; null where all can be reached. */
  readonly outOfReach: string | null;
}

export function meansOf(name: MeansName, random: Random): Means {
  const without = (one: string) => INSTRUMENTS.filter((instrument) => instrument !== one);
  switch (name) {
    case 'all':
      return { instruments: INSTRUMENTS, cannot: () => null, outOfReach: null };
    case 'no-scope':
      return {
        instruments: without('scope'),
        cannot: ({ probe }) =>
          probe.kind === 'pattern' || probe.kind === 'timing' ? 'no scope at hand' : null,
        outOfReach: null,
      };
    case 'no-live-data':
      return {
        instruments: without('live-data'),
        cannot: ({ probe }) => (probe.kind === 'counts' ? 'no live data here' : null),
        outOfReach: null,
      };
    case 'plug-out-of-reach': {
      const part = oneOf(random, ['module', 'sensor']);
      return {
        instruments: INSTRUMENTS,
        cannot: (test) => (touches(test, part) ? `the ${part} plug is out of reach` : null),
        outOfReach: part,
      };
    }
  }
}

/** Whether a lead, a clip or a hand has to come to the plug of a part. */
function touches({ setup, probe }: Test, part: string): boolean {
  const places = [
    ...('plus' in probe ? [probe.plus, probe.minus] : []),
    ...setup.bridges.flatMap(({ from, to }) => [from, to]),
    ...(probe.kind === 'inspect' ? [probe.of.replace(/^connector\./, '')] : []),
  ];
  const isSpare = part === 'sensor' && setup.sensor === 'spare';
  return (
    isSpare ||
    setup.unplugged.includes(part) ||
    places.some((place) => place === part || place.startsWith(`${part}.`))
  );
}
