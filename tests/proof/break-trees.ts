/** One mistake put into a shipped tree or into a sub-procedure that it uses: does the check find it, and does it harm? */
import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { testKey } from '../../src/circuit/test-key.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import type { ProcedureDraft } from '../../src/procedure/generated/procedure.mjs';
import {
  type Library,
  type LinkedProcedure,
  linkProcedure,
} from '../../src/procedure/link-procedure.ts';
import type { ParsedProcedure } from '../../src/procedure/parse-procedure.ts';
import { isTask, stepOf } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { discriminatingTests } from '../../src/proof/discriminating-tests.ts';
import { judgeOf } from '../../src/proof/judge-ways.ts';
import { otherWays } from '../../src/proof/other-ways.ts';
import { proveProcedure } from '../../src/proof/prove-procedure.ts';
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
  /** Codes of what is told anew. */
  readonly codes: readonly string[];
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
  private kept: Counted | null = null;

  constructor(name: string, cars: { readonly checked: number; readonly judged: number }) {
    this.name = name;
    const circuit = LIBRARY.circuits.get(LIBRARY.procedures.get(name)!.draft.circuit!)!;
    this.model = modelOf(circuit, cars.checked, 1);
    // Other cars than those of the check, so that what it misses is not missed here as well.
    this.judged = throughMeter(modelOf(circuit, cars.judged, 2), circuit);
    const { linked, issues } = this.check(LIBRARY);
    if (!linked) throw new Error(`${name} cannot be linked`);
    this.known = new Set(issues.map(printOf));
    this.linked = linked;
  }

  /** Whether it is found, and which harm it does; of what is found, harm is counted only where that is wanted. */
  examine(instance: Instance, ofAll = true): Examined {
    const { linked, issues } = this.check(libraryWith(instance));
    const fresh = issues.filter((issue) => !this.known.has(printOf(issue)));
    const codes = [...new Set(fresh.map(({ code }) => code))];
    const found = fresh.length > 0;
    if (!linked || (found && !ofAll))
      return { found, refused: linked === null, codes, harm: [], cars: 0 };
    this.kept ??= count(this.linked, this.judged);
    const now = count(linked, this.judged);
    const harm = worse(this.kept, now);
    const more = (of: 'ends' | 'beside' | 'retests') => now[of] - this.kept![of];
    const cars = Math.max(0, more('ends'), more('beside'), more('retests'));
    const [end] = instance.words.split(':');
    if (instance.kind === 'says-more-than-measured' && this.kept.standing.has(end!))
      harm.push('claims');
    return { found, refused: false, codes, harm, cars };
  }

  private check(library: Library): { linked: LinkedProcedure | null; issues: readonly Issue[] } {
    const { value, issues } = linkProcedure(library.procedures.get(this.name)!, library, {
      drive: 'combustion',
      modelOf: () => this.model,
    });
    if (!value) return { linked: null, issues };
    return { linked: value, issues: [...issues, ...proveProcedure(value, this.model).issues] };
  }
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
  const shows: Model['shows'] = (fault, test, sample, carOf = fault) => {
    const shown = model.shows(fault, test, sample, carOf);
    if (shown.kind !== 'number' || sample < 0 || !Number.isFinite(shown.value)) return shown;
    const { limit } = meterUncertainty(
      shown.unit === 'V' ? model.meter.volts : model.meter.ohms,
      shown.value,
    );
    const off = limit * shareOf(`${name} ${fault} ${carOf} ${sample} ${testKey(test)}`);
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

interface Counted {
  /** Cars, each of one fault, that end wrongly. */
  readonly ends: number;
  readonly beside: number;
  readonly retests: number;
  /** Hazards by step; the first step with its words. */
  readonly hazards: ReadonlyMap<string, ReadonlySet<string>>;
  readonly start: string;
  /** Conclusions that stand at the end of some way. */
  readonly standing: ReadonlySet<string>;
}

function count({ procedure }: LinkedProcedure, model: Model): Counted {
  const discriminating = discriminatingTests(
    model,
    testEntries(model.circuit, procedure, model.meter),
  );
  const judge = judgeOf(procedure, model.circuit, discriminating);
  const ends = new Set<string>();
  const retests = new Set<string>();
  const leaves = (id: string, fault: string, sample: number): string | null => {
    const step = stepOf(procedure, id);
    const read = testOf(step);
    if (!read || (step.kind !== 'measure' && step.kind !== 'look')) return null;
    return outcomeOf(step, model.shows(fault, read, sample, fault));
  };
  for (const way of walkFaults(procedure, model).flatMap(judge.judge)) {
    const { verdict, fault, samples, end } = way;
    if (verdict !== 'right' && verdict !== 'inseparable')
      for (const sample of samples) ends.add(`${fault} ${sample}`);
    const last = stepOf(procedure, end.step);
    if (last.kind !== 'conclude' || fault === HEALTHY || last.faults.length === 0) continue;
    for (const sample of samples)
      if (
        last.retest.every((id) => {
          const step = stepOf(procedure, id);
          const read = testOf(step);
          if (!read || (step.kind !== 'measure' && step.kind !== 'look')) return true;
          const mended = outcomeOf(step, model.shows(HEALTHY, read, sample, fault));
          return leaves(id, fault, sample) === mended;
        })
      )
        retests.add(`${fault} ${sample}`);
  }
  const beside = new Set<string>();
  const healthy = new Set<string>();
  const standing = new Set<string>();
  otherWays(procedure, model, ({ fault, end, sleeping, samples }) => {
    standing.add(end);
    if (fault === HEALTHY) healthy.add(end);
    if (sleeping && healthy.has(end)) return;
    if (judge.standsFor(end, fault)) return;
    const nothing = judge.saysNothingFound(end);
    if (nothing && sleeping) return;
    for (const sample of samples)
      if (!nothing || discriminating.detects(fault, sample)) beside.add(`${fault} ${sample}`);
  });
  const tasks = Object.values(procedure.steps).filter(isTask);
  // By what is done: a caution that goes with its plug or its key is not needed any more.
  const hazards = new Map(
    tasks.map((task) => [
      JSON.stringify([task.id, task.setup, 'probe' in task ? task.probe : null]),
      new Set(task.cautions.flatMap((one) => one.hazards)),
    ]),
  );
  return {
    ends: ends.size,
    beside: beside.size,
    retests: retests.size,
    hazards,
    start: procedure.start,
    standing,
  };
}

function worse(sound: Counted, now: Counted): Harm[] {
  const lost = [...now.hazards].some(([id, hazards]) =>
    [...(sound.hazards.get(id) ?? [])].some((one) => !hazards.has(one as never)),
  );
  return [
    ...(now.ends > sound.ends ? (['ends'] as const) : []),
    ...(now.beside > sound.beside ? (['beside'] as const) : []),
    ...(now.retests > sound.retests ? (['retests'] as const) : []),
    ...(lost || now.start !== sound.start ? (['cautions'] as const) : []),
  ];
}
