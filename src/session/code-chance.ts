/**
 * How likely the module stores a code of each kind when a fault is there: from what its own input sees under the
 * fault while the engine turns. Shares are our assumptions from what the code kinds mean; no published count is known.
 */
import type { Model } from '../circuit/model.ts';
import type { Look, TerminalId, Test } from '../circuit/test.ts';
import type { CodeKind } from '../identify/describe-code.ts';

type Shares = Readonly<Record<CodeKind, number>>;

const FLAT = { circuit: 0.8, intermittent: 0.2, range: 0.3, correlation: 0.3 };
/** By how the input's pattern looks, or its timing; a look that is not here says nothing. */
const SHARES: Partial<Readonly<Record<Look, Shares>>> = {
  'flat-low': { ...FLAT, low: 0.8, high: 0.05 },
  'flat-high': { ...FLAT, low: 0.05, high: 0.8 },
  'flat-middle': { ...FLAT, low: 0.3, high: 0.3 },
  weak: { circuit: 0.5, intermittent: 0.6, range: 0.7, correlation: 0.2, low: 0.3, high: 0.3 },
  uneven: { circuit: 0.2, intermittent: 0.6, range: 0.8, correlation: 0.2, low: 0.1, high: 0.1 },
  shifted: { circuit: 0.1, intermittent: 0.1, range: 0.6, correlation: 0.9, low: 0.05, high: 0.05 },
};
/** Nothing is to be seen at any input. */
const UNSEEN: Shares = {
  circuit: 0.3,
  intermittent: 0.4,
  range: 0.2,
  correlation: 0.1,
  low: 0.1,
  high: 0.1,
};

/** Chance, 0 to 1, by fault and kind. Computed when asked, once for each fault. */
export function codeChance(
  model: Model,
  inputs: readonly TerminalId[],
): (fault: string, kind: CodeKind) => number {
  const known = new Map<string, Shares>();
  return (fault, kind) => {
    const shares = known.get(fault) ?? sharesOf(model, inputs, fault);
    known.set(fault, shares);
    return shares[kind];
  };
}

/** By the first input where the fault shows: a fault shows where it shows. */
function sharesOf(model: Model, inputs: readonly TerminalId[], fault: string): Shares {
  for (const plus of inputs)
    for (const kind of ['pattern', 'timing'] as const) {
      const test: Test = {
        setup: {
          state: 'cranking',
          unplugged: [],
          bridges: [],
          sensor: 'fitted',
          target: 'moving',
        },
        probe: { kind, plus, minus: 'battery.negative' },
      };
      const shown = model.shows(fault, test, -1);
      const shares = shown.kind === 'look' ? SHARES[shown.look] : undefined;
      if (shares) return shares;
    }
  return UNSEEN;
}
