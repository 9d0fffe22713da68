/** A capture's outcome in the words of a procedure. */
import type { Finding, FindingKind } from './finding.ts';
import { LOW_VOLTS, type SignalExpected } from './judge-channel.ts';
import type { ChannelMeasures } from './measure-channel.ts';

/** Without thresholds a line this near to a 5 V pull-up is high; common practice, no source. */
const HIGH_VOLTS = 4;
/** How a pattern looks in the words of a procedure's outcomes. */
export type PatternLook = 'full' | 'weak' | 'uneven' | 'flat-high' | 'flat-middle' | 'flat-low';

const UNEVEN: ReadonlySet<FindingKind> = new Set<FindingKind>([
  'drop-out',
  'contact-lost',
  'pattern',
  'missing-teeth',
  'extra-pulses',
  'weak-teeth',
  'run-out',
  'noisy',
]);

/** The look that a capture's measures and findings amount to, so that a capture can answer a step. */
export function patternLook(
  measures: ChannelMeasures,
  findings: readonly Finding[],
  { lowBelow = LOW_VOLTS, highAbove = HIGH_VOLTS }: SignalExpected = {},
): PatternLook {
  if (measures.kind === 'steady') {
    if (measures.levels.mean >= highAbove) return 'flat-high';
    return measures.levels.mean < lowBelow ? 'flat-low' : 'flat-middle';
  }
  const kinds = findings.map((finding) => finding.kind);
  if (kinds.some((kind) => UNEVEN.has(kind))) return 'uneven';
  return kinds.length > 0 ? 'weak' : 'full';
}
