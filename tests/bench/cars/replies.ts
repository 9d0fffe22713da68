/** What the bench takes from the program's replies. */
import type { Test } from '../../../src/circuit/test.ts';
import type { ProposalSeen, Reply, State, StepSeen } from './client.ts';
import type { Said } from './person.ts';

/** The program's word for nothing wrong. */
const HEALTHY = 'healthy';
/** So likely that a program that told a misfit would let it lead. */
const MISFIT_LEADS = 0.5;

/** The test of a step that names its leads; null for a question, and where they stand in words only. */
export function testOf(step: StepSeen): Test | null {
  const { test } = step;
  if (!test?.probe) return null;
  return { setup: test.setup, probe: test.probe, ...(test.wiggle ? { wiggle: true } : {}) };
}

/** As the person says it. */
export function textOf(said: Said): string {
  return said.kind === 'look' ? said.look : said.text;
}

/** The same without a prefix before the unit. */
export function plainOf(said: Said): string {
  return said.kind === 'look' ? said.look : said.plain;
}

/** The state that every change is answered with. */
export function stateIn({ state }: Reply): State {
  if (!state) throw new Error('cars: the program answered without a state');
  return state;
}

/** Tests that are proposed. */
export function proposalsIn(
  reply: Reply,
  key: 'proposals' | 'wouldProve',
): readonly ProposalSeen[] {
  const found: readonly ProposalSeen[] = Object(reply[key]);
  return Array.isArray(found) ? found : [];
}

/** A repair with its chance and the faults behind it. */
export interface Row {
  readonly repair: string;
  readonly chance: number;
  readonly faults: readonly { readonly id: string }[];
}

/** All suspects, the likeliest first. */
export function rowsIn(reply: Reply): readonly Row[] {
  const found: readonly Row[] = Object(reply['suspects']);
  return Array.isArray(found) ? found : [];
}

/** The faults behind a row; none behind the row of a whole circuit, which has no fault's id. */
export function faultsIn({ faults }: Row): string[] {
  return faults.map(({ id }) => id).filter((id) => id !== HEALTHY);
}

/** In whichever form the program says it: a flag, a chance, or a text; else that nothing explains the readings. */
export function isMisfit(misfit: unknown, explained: boolean): boolean {
  if (typeof misfit === 'number') return misfit > MISFIT_LEADS;
  if (typeof misfit === 'object' && misfit !== null) {
    const { chance }: { readonly chance?: unknown } = misfit;
    return typeof chance === 'number' ? chance > MISFIT_LEADS : true;
  }
  if (misfit === undefined || misfit === null) return !explained;
  return misfit === true || typeof misfit === 'string';
}

/** From how many volts peak to peak on the line that sets the scope calls waves full; null where it does not say. */
export function fullVoltsIn(scope: unknown): number | null {
  const [, digits, prefix] = /Full: > ([\d.]+) (m?)V/.exec(String(scope)) ?? [];
  return digits === undefined ? null : Number(digits) / (prefix ? 1000 : 1);
}
