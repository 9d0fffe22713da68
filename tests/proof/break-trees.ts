/** One mistake put into a shipped tree or into a sub-procedure that it uses: does the check find it, and does it harm? */
import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import type { Test } from '../../src/circuit/test.ts';
import { testKey } from '../../src/circuit/test-key.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import type { ProcedureDraft } from '../../src/procedure/generated/procedure.mjs';
import {
  type Library,
  type LinkedProcedure,
  linkProcedure,
} from '../../src/procedure/link-procedure.ts';
import type { ParsedProcedure } from '../../src/procedure/parse-procedure.ts';
import { isTask, type Procedure, stepOf } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import {
  type DiscriminatingTests,
  discriminatingTests,
} from '../../src/proof/discriminating-tests.ts';
import { type Judge, judgeOf } from '../../src/proof/judge-ways.ts';
import { otherWays } from '../../src/proof/other-ways.ts';
import { proofIssues } from '../../src/proof/prove-procedure.ts';
import { outcomeOf, walkFaults } from '../../src/proof/walk-faults.ts';
import { meterUncertainty } from '../../src/quantity/normal.ts';
import type { Issue } from '../../src/source/issue.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { testEntries } from '../../src/suspects/test-entries.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LIBRARY } from './library.ts';
import { KIND_NAMES, type Site, shuffled, sitesOf } from './mutate.ts';

/** A mistake in one file, the tree's own or that of a sub-procedure. */
export interface Instance extends Site {
  readonly file: string;
}
export interface Examined {
  /** Something is told that is not told of the tree as it is. */
  readonly found: boolean;
  /** It cannot be run at all, so where its cars would end is not known. */
  readonly refused: boolean;
  /** Code of the first that is told anew. */
  readonly code: string | null;
  /** What got worse; empty for a mistake without harm. */
  readonly harm: readonly Harm[];
  /** By how many cars, each of one fault, of all that were counted. */
  readonly cars: number;
}
/**
 * `ends`: more cars end wrongly by the usual answers. `beside`: more do by other answers, or where up to two steps cannot
 * be done. `retests`: more cars pass the retests without a repair. `cautions`: a hazard that was told before a step is
 * not told any more, or the step that secures the vehicle is passed over. `claims`: a part is called good that is named as
 * what is at fault.
 */
export type Harm = 'ends' | 'beside' | 'retests' | 'cautions' | 'claims';

/** `perKind` instances at most of each of some kinds in a tree with its sub-procedures, drawn by a seed. */
export function instancesOf(
  name: string,
  perKind: number,
  seed: number,
  kinds: readonly string[] = KIND_NAMES,
): Instance[] {
  const { draft } = LIBRARY.procedures.get(name)!;
  const circuit = LIBRARY.circuits.get(draft.circuit!)!;
  const files = [name, ...usedBy(draft)];
  const random = seededRandom(seed);
  return kinds.flatMap((kind) => {
    const all = files.flatMap((file) =>
      sitesOf(LIBRARY.procedures.get(file)!.draft, circuit, kind).map((site) => ({
        ...site,
        file,
      })),
    );
    return shuffled(all, random).slice(0, perKind);
  });
}

function usedBy(draft: ProcedureDraft, found = new Set<string>()): Set<string> {
  for (const { use } of Object.values(draft.steps)) {
    if (use === undefined || found.has(use)) continue;
    found.add(use);
    usedBy(LIBRARY.procedures.get(use)!.draft, found);
  }
  return found;
}

/** Examines broken copies of one tree, with so many cars a fault in the check and in the count of harm. */
export class Breaker {
  private readonly name: string;
  private readonly model: Model;
  private readonly judged: Model;
  private readonly known: ReadonlySet<string>;
  private readonly linked: LinkedProcedure;
  private kept: Count | null = null;

  constructor(name: string, cars: { readonly checked: number; readonly judged: number }) {
    this.name = name;
    const circuit = LIBRARY.circuits.get(LIBRARY.procedures.get(name)!.draft.circuit!)!;
    this.model = modelOf(circuit, cars.checked, 1);
    // Other cars than those of the check, so that what it misses is not missed here as well.
    this.judged = throughMeter(modelOf(circuit, cars.judged, 2), circuit);
    const { linked, issues } = this.check(LIBRARY);
    if (!linked) throw new Error(`${name} cannot be linked`);
    this.known = new Set([...issues].map(printOf));
    this.linked = linked;
  }

  /**
   * Whether it is found, and which harm it does; of what is found, harm is counted only where that is wanted, and no
   * further than to the first.
   */
  examine(instance: Instance, ofAll = true): Examined {
    const { linked, issues } = this.check(libraryWith(instance));
    const fresh = firstOf(issues, (issue) => !this.known.has(printOf(issue)));
    const found = fresh !== null;
    const code = fresh?.code ?? null;
    if (!linked || (found && !ofAll))
      return { found, refused: linked === null, code, harm: [], cars: 0 };
    this.kept ??= new Count(this.linked, this.judged);
    const now = new Count(linked, this.judged);
    const harm = this.worse(instance, this.kept, now);
    if (found) {
      const first = firstOf(harm, () => true);
      return { found, refused: false, code, harm: first ? [first] : [], cars: 0 };
    }
    const more = (of: 'ends' | 'beside' | 'retests') => now[of] - this.kept![of];
    const cars = Math.max(0, more('ends'), more('beside'), more('retests'));
    return { found, refused: false, code, harm: [...harm], cars };
  }

  private check(library: Library): { linked: LinkedProcedure | null; issues: Iterable<Issue> } {
    const { value, issues } = linkProcedure(library.procedures.get(this.name)!, library, {
      drive: 'combustion',
      modelOf: () => this.model,
    });
    if (!value) return { linked: null, issues };
    return { linked: value, issues: both(issues, () => proofIssues(value, this.model)) };
  }

  /** What is quick to count comes first. */
  private *worse({ kind, words }: Instance, sound: Count, now: Count): Generator<Harm> {
    const lost = [...now.hazards].some(([id, hazards]) =>
      [...(sound.hazards.get(id) ?? [])].some((one) => !hazards.has(one)),
    );
    if (lost || now.start !== sound.start) yield 'cautions';
    if (kind === 'says-more-than-measured' && sound.standing.has(words.split(':')[0]!))
      yield 'claims';
    if (now.ends > sound.ends) yield 'ends';
    if (now.retests > sound.retests) yield 'retests';
    if (now.beside > sound.beside) yield 'beside';
  }
}

function* both<T>(first: Iterable<T>, second: () => Iterable<T>): Generator<T> {
  yield* first;
  yield* second();
}

function firstOf<T>(all: Iterable<T>, isIt: (one: T) => boolean): T | null {
  for (const one of all) if (isIt(one)) return one;
  return null;
}

function modelOf(circuit: Circuit, samples: number, seed: number): Model {
  return createModel(circuit, { samples, seed, meter: STANDARD_SETTINGS.meter });
}

/**
 * What a meter shows of a car: each number off by up to what its specification allows, the same for the same test of the
 * same car whatever tree asks for it.
 */
function throughMeter(model: Model, { name }: Circuit): Model {
  const shares = new Map<string, number>();
  const shareOf = (key: string) => {
    const known = shares.get(key) ?? 2 * seededRandom(hashOf(key))() - 1;
    shares.set(key, known);
    return known;
  };
  const keys = new WeakMap<Test, string>();
  const keyOf = (test: Test) => {
    const known = keys.get(test) ?? testKey(test);
    keys.set(test, known);
    return known;
  };
  const shows: Model['shows'] = (fault, test, sample, carOf = fault) => {
    const shown = model.shows(fault, test, sample, carOf);
    if (shown.kind !== 'number' || sample < 0 || !Number.isFinite(shown.value)) return shown;
    const { limit } = meterUncertainty(
      shown.unit === 'V' ? model.meter.volts : model.meter.ohms,
      shown.value,
    );
    const off = limit * shareOf(`${name} ${fault} ${carOf} ${sample} ${keyOf(test)}`);
    const value = shown.value + off;
    return { ...shown, value: shown.unit === 'ohm' ? Math.max(0, value) : value };
  };
  return { ...model, shows };
}

/** FNV-1a. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash >>> 0;
}

function libraryWith({ file, draft }: Instance): Library {
  const procedures: Map<string, ParsedProcedure> = new Map(LIBRARY.procedures);
  procedures.set(file, { ...LIBRARY.procedures.get(file)!, draft: draft() });
  return { procedures, circuits: LIBRARY.circuits, cautions: LIBRARY.cautions };
}

/** What a finding is about: shares by tens of per cent, no other numbers, so that a small shift is the same finding. */
function printOf({ code, at, words }: Issue): string {
  const shares = words.replace(
    /(\d+) %/g,
    (_, share: string) => `${'i'.repeat(Math.round(Number(share) / 10))}%`,
  );
  return `${code} ${at.file}:${at.line} ${shares.replace(/[\d.]+/g, '#')}`;
}

function once<T extends object>(make: () => T): () => T {
  let made: T | null = null;
  return () => {
    made ??= make();
    return made;
  };
}

/** What a tree does with the cars, each part counted when it is asked for. */
class Count {
  readonly start: string;
  /** Hazards by step; the first step with its words. By what is done: a caution that goes with its plug or its key is not needed any more. */
  readonly hazards: ReadonlyMap<string, ReadonlySet<string>>;
  private readonly procedure: Procedure;
  private readonly model: Model;
  private readonly judge: Judge;
  private readonly discriminating: DiscriminatingTests;
  private readonly usually = once(() => this.countUsual());
  private readonly otherwise = once(() => this.countOther());

  constructor({ procedure }: LinkedProcedure, model: Model) {
    this.procedure = procedure;
    this.model = model;
    this.start = procedure.start;
    this.discriminating = discriminatingTests(
      model,
      testEntries(model.circuit, procedure, model.meter),
    );
    this.judge = judgeOf(procedure, model.circuit, this.discriminating);
    this.hazards = new Map(
      Object.values(procedure.steps)
        .filter(isTask)
        .map((task) => [
          JSON.stringify([task.id, task.setup, 'probe' in task ? task.probe : null]),
          new Set<string>(task.cautions.flatMap((one) => one.hazards)),
        ]),
    );
  }

  /** Cars, each of one fault, that end wrongly by the usual answers. */
  get ends(): number {
    return this.usually().ends;
  }
  /** Those that pass the retests unrepaired. */
  get retests(): number {
    return this.usually().retests;
  }
  /** Those that end wrongly by other answers, or where steps cannot be done. */
  get beside(): number {
    return this.otherwise().beside;
  }
  /** Conclusions that stand at the end of some way. */
  get standing(): ReadonlySet<string> {
    return this.otherwise().standing;
  }

  private countUsual() {
    const { procedure, model, judge } = this;
    const ends = new Set<string>();
    const retests = new Set<string>();
    for (const way of walkFaults(procedure, model).flatMap(judge.judge)) {
      const { verdict, fault, samples, end } = way;
      if (verdict !== 'right' && verdict !== 'inseparable')
        for (const sample of samples) ends.add(`${fault} ${sample}`);
      const last = stepOf(procedure, end.step);
      if (last.kind !== 'conclude' || fault === HEALTHY || last.faults.length === 0) continue;
      for (const sample of samples)
        if (last.retest.every((id) => this.isPassed(id, fault, sample)))
          retests.add(`${fault} ${sample}`);
    }
    return { ends: ends.size, retests: retests.size };
  }

  /** Whether a step shows of the car with its fault what it shows of the same car without. */
  private isPassed(id: string, fault: string, sample: number): boolean {
    const step = stepOf(this.procedure, id);
    const read = testOf(step);
    if (!read || (step.kind !== 'measure' && step.kind !== 'look')) return true;
    const left = outcomeOf(step, this.model.shows(fault, read, sample, fault));
    return left === outcomeOf(step, this.model.shows(HEALTHY, read, sample, fault));
  }

  private countOther() {
    const { judge, discriminating } = this;
    const beside = new Set<string>();
    const healthy = new Set<string>();
    const standing = new Set<string>();
    otherWays(this.procedure, this.model, ({ fault, end, sleeping, samples }) => {
      standing.add(end);
      if (fault === HEALTHY) healthy.add(end);
      if (sleeping && healthy.has(end)) return;
      if (judge.standsFor(end, fault)) return;
      const nothing = judge.saysNothingFound(end);
      if (nothing && sleeping) return;
      for (const sample of samples)
        if (!nothing || discriminating.detects(fault, sample)) beside.add(`${fault} ${sample}`);
    });
    return { beside: beside.size, standing };
  }
}
