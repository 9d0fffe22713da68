/**
 * How likely the module stores a code of each kind when a fault is there: from what its own input sees under the
 * fault while the engine turns. Shares are our assumptions from what the code kinds mean; no published count is known.
 */
import type { Model } from '../circuit/model.ts';
import type { TerminalId, Test } from '../circuit/test.ts';
import type { CodeKind } from '../identify/describe-code.ts';

const FLAT = { circuit: 0.8, intermittent: 0.2, range: 0.3, correlation: 0.3 };
const SHARES: Readonly<Record<string, Readonly<Record<CodeKind, number>>>> = {
  'flat-low': { ...FLAT, low: 0.8, high: 0.05 },
  'flat-high': { ...FLAT, low: 0.05, high: 0.8 },
  'flat-middle': { ...FLAT, low: 0.3, high: 0.3 },
  weak: { circuit: 0.5, intermittent: 0.6, range: 0.7, correlation: 0.2, low: 0.3, high: 0.3 },
  uneven: { circuit: 0.2, intermittent: 0.6, range: 0.8, correlation: 0.2, low: 0.1, high: 0.1 },
  shifted: { circuit: 0.1, intermittent: 0.1, range: 0.6, correlation: 0.9, low: 0.05, high: 0.05 },
  full: { circuit: 0.3, intermittent: 0.4, range: 0.2, correlation: 0.1, low: 0.1, high: 0.1 },
};

/** Chance, 0 to 1, by fault and kind. Computed when asked, once for each fault. */
export function codeChance(
  model: Model,
  inputs: readonly TerminalId[],
): (fault: string, kind: CodeKind) => number {
  const known = new Map<string, Readonly<Record<CodeKind, number>>>();
  return (fault, kind) => {
    let shares = known.get(fault);
    if (!shares) {
      shares = SHARES[lookOf(model, inputs, fault)] ?? SHARES['full']!;
      known.set(fault, shares);
    }
    return shares[kind];
  };
}

/** The worst look at any input: a fault shows where it shows. */
function lookOf(model: Model, inputs: readonly TerminalId[], fault: string): string {
  for (const input of inputs) {
    const at = (kind: 'pattern' | 'timing'): Test => ({
      setup: { state: 'cranking', unplugged: [], bridges: [], sensor: 'fitted', target: 'moving' },
      probe: { kind, plus: input, minus: 'battery.negative' },
    });
    const pattern = model.shows(fault, at('pattern'), -1);
    if (pattern.kind === 'look' && pattern.look !== 'full') return pattern.look;
    const timing = model.shows(fault, at('timing'), -1);
    if (timing.kind === 'look' && timing.look === 'shifted') return 'shifted';
  }
  return 'full';
}
