/**
 * Every fault, and the healthy circuit, through a tree: at each step the samples part by what the model shows there.
 * Samples that go the same way stay together, so a fault takes a handful of ways and not one walk per sample.
 */
import type { Model } from '../circuit/model.ts';
import type { Shown, Test } from '../circuit/test.ts';
import {
  type AskStep,
  type LookStep,
  type MeasureStep,
  outcomeOfValue,
  type Procedure,
  stepOf,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';

/** One step on a way and the outcome it was left by; null where there is nothing to read. */
export interface ProofVisit {
  readonly step: string;
  readonly outcome: string | null;
}

/** How a way through the tree ends. */
export type WayEnd =
  | { readonly kind: 'concluded'; readonly step: string }
  /** A reading that no outcome holds. */
  | { readonly kind: 'dead-end'; readonly step: string }
  /** The same step again with nothing new to say. */
  | { readonly kind: 'endless'; readonly step: string };

/** The samples of one fault that go through the tree by the same outcomes. */
export interface TreeWay {
  /** Fault id, or `healthy`. */
  readonly fault: string;
  readonly samples: readonly number[];
  /** Part of the fault, 0 to 1; the ways of a fault sum to 1. */
  readonly share: number;
  readonly visits: readonly ProofVisit[];
  readonly end: WayEnd;
}

/**
 * Ways of one fault at most. Questions that split it further are answered with their first answer only, which is an
 * error of the tree: `other-ways.ts` still comes to every end, but the shares are those of some ways.
 */
export const WAYS_MAX = 2048;

/** The ways of every fault of the model's circuit, healthy first, then in the order of the circuit. */
export function walkFaults(procedure: Procedure, model: Model): TreeWay[] {
  return [HEALTHY, ...model.circuit.faults.map(({ id }) => id)].flatMap((fault) =>
    walkFault(procedure, model, fault),
  );
}

/** The ways of one fault, from the start and in all samples unless said otherwise. */
export function walkFault(
  procedure: Procedure,
  model: Model,
  fault: string,
  options: { readonly from?: string; readonly samples?: readonly number[] } = {},
): TreeWay[] {
  const walker = new Walker(procedure, model, fault);
  const samples = options.samples ?? Array.from({ length: model.samples }, (_, sample) => sample);
  walker.walk(options.from ?? procedure.start, {
    samples,
    share: 1,
    visits: null,
    passed: null,
  });
  return walker.ways;
}

/** Name of the outcome that holds what is shown, or null. */
export function outcomeOf(step: MeasureStep | LookStep, shown: Shown): string | null {
  if (step.kind === 'measure')
    return shown.kind === 'number' ? (outcomeOfValue(step, shown.value)?.name ?? null) : null;
  return shown.kind === 'look'
    ? (step.outcomes.find(({ looks }) => looks.includes(shown.look))?.name ?? null)
    : null;
}

interface SampleGroup {
  readonly samples: readonly number[];
  readonly share: number;
  readonly visits: Visited | null;
  /** Steps passed since the last answer that could have been another. */
  readonly passed: PassedStep | null;
}

/** Ways that part share what lies before. */
interface Visited {
  readonly visit: ProofVisit;
  readonly before: Visited | null;
}

interface PassedStep {
  readonly step: string;
  readonly before: PassedStep | null;
}

class Walker {
  readonly ways: TreeWay[] = [];
  private readonly procedure: Procedure;
  private readonly model: Model;
  private readonly fault: string;

  constructor(procedure: Procedure, model: Model, fault: string) {
    this.procedure = procedure;
    this.model = model;
    this.fault = fault;
  }

  walk(id: string, group: SampleGroup): void {
    const step = stepOf(this.procedure, id);
    if (step.kind === 'conclude') {
      this.end(group, { kind: 'concluded', step: id });
      return;
    }
    if (hasPassed(group, id)) {
      this.end(group, { kind: 'endless', step: id });
      return;
    }
    const { samples, share, visits } = group;
    const here = { samples, share, visits, passed: { step: id, before: group.passed } };
    const test = testOf(step);
    if (step.kind === 'act') this.leave(here, id, null, step.go);
    else if (step.kind === 'ask' || test === null) this.ask(step, here);
    else this.read(step, test, here);
  }

  private read(step: MeasureStep | LookStep, test: Test, group: SampleGroup): void {
    const byOutcome = new Map<string | null, number[]>();
    for (const sample of group.samples) {
      const outcome = outcomeOf(step, this.model.shows(this.fault, test, sample));
      const list = byOutcome.get(outcome);
      if (list) list.push(sample);
      else byOutcome.set(outcome, [sample]);
    }
    for (const [name, samples] of byOutcome) {
      const { visits, passed } = group;
      const share = (group.share * samples.length) / group.samples.length;
      const part = { samples, share, visits, passed };
      const outcome = step.outcomes.find((one) => one.name === name);
      if (outcome) this.leave(part, step.id, outcome.name, outcome.go);
      else this.end(part, { kind: 'dead-end', step: step.id });
    }
  }

  /** Questions, and numbers the circuit knows nothing of: the usual answer, or each one in turn. */
  private ask(step: AskStep | MeasureStep | LookStep, group: SampleGroup): void {
    const usual = usualAnswer(step);
    if (usual) {
      this.leave(group, step.id, usual.name, usual.go);
      return;
    }
    const said = new Set<string | null>();
    for (let one = group.visits; one; one = one.before)
      if (one.visit.step === step.id) said.add(one.visit.outcome);
    const open = step.outcomes.filter(({ name }) => !said.has(name));
    if (open.length === 0) {
      this.end(group, { kind: 'endless', step: step.id });
      return;
    }
    const answers = this.ways.length < WAYS_MAX ? open : open.slice(0, 1);
    for (const { name, go } of answers)
      this.leave(
        { ...group, share: group.share / answers.length, passed: null },
        step.id,
        name,
        go,
      );
  }

  private leave(group: SampleGroup, step: string, outcome: string | null, go: string): void {
    const { samples, share, visits: before, passed } = group;
    this.walk(go, { samples, share, visits: { visit: { step, outcome }, before }, passed });
  }

  private end({ samples, share, visits: last }: SampleGroup, end: WayEnd): void {
    const visits: ProofVisit[] = [];
    for (let one = last; one; one = one.before) visits.push(one.visit);
    visits.reverse();
    this.ways.push({ fault: this.fault, samples, share, visits, end });
  }
}

function hasPassed({ passed }: SampleGroup, id: string): boolean {
  for (let one = passed; one; one = one.before) if (one.step === id) return true;
  return false;
}

/** The answer of a simulated vehicle: the author's, or for a number outside the model the one that holds what is expected. */
function usualAnswer(step: AskStep | MeasureStep | LookStep) {
  if (step.kind === 'ask') return step.outcomes.find(({ name }) => name === step.usual);
  if (step.kind === 'look') return undefined;
  const { low, nominal, high } = step.expected ?? { low: null, nominal: null, high: null };
  const middle = nominal ?? (low !== null && high !== null ? (low + high) / 2 : (low ?? null));
  return middle === null
    ? step.outcomes.find(({ name }) => name === 'good')
    : (outcomeOfValue(step, middle) ?? undefined);
}
