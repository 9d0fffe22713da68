/**
 * Plugs that are closed for one step between two that have them open, or opened before the harness has been moved. Each
 * time a plug is opened its contacts are wiped, and a bad one reads right for a while; and it takes time. So what needs it
 * open is done in one go, after all that its contacts can still show closed.
 */
import { type Procedure, stepOf } from '../procedure/procedure.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { ProofFacts } from './proof-facts.ts';
import { sharePercent } from './proof-words.ts';
import { sourceLocation } from './source-location.ts';
import type { ProofVisit } from './walk-faults.ts';

/** What fewer of all faults come by, by their weights, is not the main way. Our choice. */
const MAIN_SHARE_MIN = 0.005;

/** Fewer healthy cars than these come by a doubtful reading of their own, and clear it first. Our choice. */
const HEALTHY_SHARE_MIN = 0.1;

/** One plug on one way: open at a step, closed for the next that reads something, open again. */
export interface PlugCycle {
  readonly part: string;
  readonly open: string;
  readonly closed: string;
  readonly again: string;
}

/** One plug that is opened at a step before another moves the harness. */
export interface EarlyPlug {
  readonly part: string;
  readonly open: string;
  readonly moved: string;
}

/** One warning for each such closing on the way of a healthy vehicle, or of enough faults. */
export function plugCycleIssues({ linked, model, ways }: ProofFacts): Issue[] {
  const { procedure } = linked;
  const weights = new Map(model.circuit.faults.map(({ id, weight }) => [id, weight]));
  const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
  const found = new Map<string, PlugCycle & { share: number; isHealthy: boolean }>();
  for (const { fault, share, visits } of ways)
    for (const cycle of plugCycles(procedure, visits)) {
      const key = Object.values(cycle).join();
      const known = found.get(key) ?? { ...cycle, share: 0, isHealthy: false };
      found.set(key, known);
      if (fault === HEALTHY) known.isHealthy = true;
      else known.share += (share * weights.get(fault)!) / total;
    }
  return [...found.values()]
    .filter(({ share, isHealthy }) => isHealthy || share >= MAIN_SHARE_MIN)
    .map(({ part, open, closed, again, share, isHealthy }) => ({
      code: 'plug-cycle',
      severity: 'warning',
      at: sourceLocation(linked, closed),
      words: `the connector of "${part}" is unplugged at "${open}", plugged in for "${closed}" and unplugged again at "${again}", on the path of ${isHealthy ? 'a healthy vehicle' : `${sharePercent(share)} of all faults`}`,
      fix: 'do everything that needs it unplugged in one go: move the step in between before or after it',
    }));
}

/** One warning for each plug that is opened, where nothing is wrong now, before the step that moves the harness. */
export function earlyPlugIssues({ linked, ways }: ProofFacts): Issue[] {
  const { procedure } = linked;
  const found = new Map<string, EarlyPlug & { share: number }>();
  for (const { fault, share, visits } of ways)
    for (const early of fault === HEALTHY ? earlyPlugs(procedure, visits) : []) {
      const key = Object.values(early).join();
      found.set(key, { ...early, share: share + (found.get(key)?.share ?? 0) });
    }
  return [...found.values()]
    .filter(({ share }) => share >= HEALTHY_SHARE_MIN)
    .map(({ part, open, moved }) => ({
      code: 'early-plug',
      severity: 'warning',
      at: sourceLocation(linked, open),
      words: `the connector of "${part}" is unplugged at "${open}", on the path of a vehicle with nothing wrong now, before the harness is wiggled at "${moved}"`,
      fix: 'put what wiggles the harness before it: unplugging wipes an intermittent contact, and then nothing brings the fault on',
    }));
}

/** The plugs of a way that are opened before the first step that moves the harness, each where it is opened first. */
export function earlyPlugs(procedure: Procedure, visits: readonly ProofVisit[]): EarlyPlug[] {
  const at = visits.findIndex(({ step: id }) => {
    const step = stepOf(procedure, id);
    return step.kind === 'ask' && step.family === 'wiggle';
  });
  if (at < 0) return [];
  const opened = new Map<string, string>();
  for (const { step } of visits.slice(0, at))
    for (const part of standingOf(procedure, step)?.open ?? [])
      if (!opened.has(part)) opened.set(part, step);
  return [...opened].map(([part, open]) => ({ part, open, moved: visits[at]!.step }));
}

/** The plugs of a way that are closed for one step only. A look into one plug leaves the others as they are. */
export function plugCycles(procedure: Procedure, visits: readonly ProofVisit[]): PlugCycle[] {
  const steps = visits.map(({ step }) => ({ step, stands: standingOf(procedure, step) }));
  const parts = new Set(steps.flatMap(({ stands }) => [...(stands?.open ?? [])]));
  return [...parts].flatMap((part): PlugCycle[] => {
    const asked = steps.flatMap(({ step, stands }) => {
      if (stands === null) return [];
      if (stands.open.has(part)) return [{ step, isOpen: true }];
      return stands.isWhole ? [{ step, isOpen: false }] : [];
    });
    return asked.flatMap(({ step, isOpen }, index) => {
      const [before, after] = [asked[index - 1], asked[index + 1]];
      if (isOpen || !before?.isOpen || !after?.isOpen) return [];
      return [{ part, open: before.step, closed: step, again: after.step }];
    });
  });
}

/** The plugs that a step wants open, and whether it wants all others closed; null where nothing is read. */
export function standingOf(
  procedure: Procedure,
  id: string,
): { readonly open: ReadonlySet<string>; readonly isWhole: boolean } | null {
  const step = stepOf(procedure, id);
  if (step.kind === 'conclude' || step.kind === 'act') return null;
  if (step.kind === 'ask' && !step.watched) return null;
  const probe = step.kind === 'ask' ? null : step.probe;
  if (probe?.kind !== 'inspect') return { open: new Set(step.setup.unplugged), isWhole: true };
  const looked = probe.of.startsWith('connector.') ? [probe.of.slice('connector.'.length)] : [];
  return { open: new Set(looked), isWhole: false };
}
