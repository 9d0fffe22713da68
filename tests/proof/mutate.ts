/** Breaks a procedure's draft in one small way, as an author's slip of the hand would. Seeded. */
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { ProcedureDraft, Step } from '../../src/procedure/generated/procedure.mjs';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

interface Mutant {
  readonly words: string;
  readonly draft: ProcedureDraft;
}

type Random = () => number;
type Writable<T> = { -readonly [K in keyof T]: T[K] };
type Kind = (draft: ProcedureDraft, random: Random, circuit: Circuit) => string | null;

/** `count` different mutants of a draft; fewer when no more are found. */
export function mutants(
  draft: ProcedureDraft,
  circuit: Circuit,
  count: number,
  seed: number,
): Mutant[] {
  const random = seededRandom(seed);
  const found = new Map<string, Mutant>();
  const before = JSON.stringify(draft);
  for (let trial = 0; trial < count * 40 && found.size < count; trial += 1) {
    const kind = KINDS[trial % KINDS.length]!;
    const copy = structuredClone(plain(draft));
    const words = kind(copy, random, circuit);
    const after = JSON.stringify(copy);
    if (words !== null && after !== before && !found.has(after))
      found.set(after, { words, draft: copy });
  }
  return [...found.values()];
}

/** The draft has objects without prototype, which structuredClone keeps apart from ordinary ones. */
function plain(draft: ProcedureDraft): ProcedureDraft {
  return JSON.parse(JSON.stringify(draft)) as ProcedureDraft;
}

function pick<T>(list: readonly T[], random: Random): T | null {
  return list[Math.floor(random() * list.length)] ?? null;
}

function stepsWhere(
  draft: ProcedureDraft,
  holds: (step: Step) => boolean,
): [string, Writable<Step>][] {
  return Object.entries(draft.steps).filter(([, step]) => holds(step));
}

function outcomesOf(step: Step) {
  return Object.entries(step.outcomes ?? {});
}

const KINDS: readonly Kind[] = [
  function swapTargets(draft, random) {
    const site = pick(
      stepsWhere(draft, (step) => new Set(outcomesOf(step).map(([, one]) => one.go)).size > 1),
      random,
    );
    if (!site) return null;
    const [name, step] = site;
    const one = pick(outcomesOf(step), random)!;
    const other = pick(
      outcomesOf(step).filter(([, { go }]) => go !== one[1].go),
      random,
    )!;
    [one[1].go, other[1].go] = [other[1].go, one[1].go];
    return `${name}: targets of ${one[0]} and ${other[0]} swapped`;
  },
  function redirect(draft, random) {
    const site = pick(
      stepsWhere(draft, (step) => outcomesOf(step).length > 0),
      random,
    );
    if (!site) return null;
    const [name, outcome] = pick(outcomesOf(site[1]), random)!;
    const target = pick(
      Object.keys(draft.steps).filter((id) => id !== outcome.go && id !== site[0]),
      random,
    )!;
    const words = `${site[0]}: ${name} leads to ${target} and not to ${outcome.go}`;
    outcome.go = target;
    return words;
  },
  function shiftLimit(draft, random) {
    const keys = ['from', 'to', 'below', 'above'] as const;
    const limited = stepsWhere(draft, (step) =>
      outcomesOf(step).some(([, one]) => keys.some((key) => one[key])),
    );
    const site = pick(limited, random);
    if (!site) return null;
    const texts = outcomesOf(site[1]).flatMap(([, one]) => keys.flatMap((key) => one[key] ?? []));
    const text = pick(texts, random)!;
    const read = parseQuantity(text)!;
    const factor = pick([0, 0.1, 0.4, 3, 20, 1000], random)!;
    const moved = `${Number((read.value * factor).toPrecision(6))} ${read.unit}`;
    for (const [, one] of outcomesOf(site[1]))
      for (const key of keys) if (one[key] === text) one[key] = moved;
    return `${site[0]}: limit ${text} is now ${moved}`;
  },
  function swapLeads(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ measure }) => leadsOf(measure) !== null),
      random,
    );
    if (!site) return null;
    leadsOf(site[1].measure)!.reverse();
    return `${site[0]}: leads swapped`;
  },
  function moveLead(draft, random, circuit) {
    const site = pick(
      stepsWhere(draft, ({ measure }) => leadsOf(measure) !== null),
      random,
    );
    if (!site) return null;
    const leads = leadsOf(site[1].measure)!;
    const at = random() < 0.5 ? 0 : 1;
    const ends = circuit.terminals.filter(({ side }) => side !== 'part').map(({ id }) => id);
    const target = pick(
      ends.filter((id) => !leads.includes(id)),
      random,
    )!;
    const words = `${site[0]}: lead on ${target} and not on ${leads[at]}`;
    leads[at] = target;
    return words;
  },
  function dropOutcome(draft, random) {
    const site = pick(
      stepsWhere(draft, (step) => outcomesOf(step).length > 1),
      random,
    );
    if (!site) return null;
    const [name] = pick(outcomesOf(site[1]), random)!;
    delete site[1].outcomes![name];
    return `${site[0]}: outcome ${name} dropped`;
  },
  function swapConclusions(draft, random) {
    const all = stepsWhere(draft, ({ conclude }) => conclude !== undefined);
    const one = pick(all, random);
    const other = pick(
      all.filter(([name]) => name !== one?.[0]),
      random,
    );
    if (!one || !other) return null;
    [one[1].conclude, other[1].conclude] = [other[1].conclude!, one[1].conclude!];
    return `${one[0]} and ${other[0]}: faults swapped`;
  },
  function emptyConclusion(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ conclude }) => (conclude?.length ?? 0) > 0),
      random,
    );
    if (!site) return null;
    site[1].conclude = [];
    return `${site[0]}: says that no fault was found`;
  },
  function dropFault(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ conclude }) => (conclude?.length ?? 0) > 0),
      random,
    );
    if (!site) return null;
    const fault = pick(site[1].conclude!, random)!;
    const rest = site[1].conclude!.filter((one) => one !== fault);
    const other = pick(
      allFaults(draft).filter((one) => one !== fault && !rest.includes(one)),
      random,
    );
    site[1].conclude = rest.length > 0 ? rest : [other ?? 'sensor.dead'];
    return `${site[0]}: no longer stands for ${fault}`;
  },
  function forgetUnplug(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ unplug }) => (unplug?.length ?? 0) > 0),
      random,
    );
    if (!site) return null;
    const part = pick(site[1].unplug!, random)!;
    site[1].unplug = site[1].unplug!.filter((one) => one !== part);
    return `${site[0]}: ${part} stays plugged in`;
  },
  function otherState(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ measure, state }) => measure !== undefined && state !== undefined),
      random,
    );
    if (!site) return null;
    const state = pick(
      (['key-off', 'key-on', 'cranking'] as const).filter((one) => one !== site[1].state),
      random,
    )!;
    const words = `${site[0]}: ${state} and not ${site[1].state}`;
    site[1].state = state;
    return words;
  },
  function swapResults(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ results }) => new Set(Object.values(results ?? {})).size > 1),
      random,
    );
    if (!site) return null;
    const results = site[1].results!;
    const one = pick(Object.keys(results), random)!;
    const other = pick(
      Object.keys(results).filter((key) => results[key] !== results[one]),
      random,
    )!;
    [results[one], results[other]] = [results[other]!, results[one]!];
    return `${site[0]}: results ${one} and ${other} swapped`;
  },
  function swapGiven(draft, random) {
    const site = pick(
      stepsWhere(draft, (step) => Object.keys(step.with ?? {}).length > 1),
      random,
    );
    if (!site) return null;
    const given = site[1].with!;
    const one = pick(Object.keys(given), random)!;
    const other = pick(
      Object.keys(given).filter((key) => key !== one),
      random,
    )!;
    [given[one], given[other]] = [given[other]!, given[one]!];
    return `${site[0]}: given ${one} and ${other} swapped`;
  },
  function swapLooks(draft, random) {
    const site = pick(
      stepsWhere(draft, (step) => isLook(step.measure) && outcomesOf(step).length > 1),
      random,
    );
    if (!site) return null;
    const outcomes = site[1].outcomes!;
    const one = pick(Object.keys(outcomes), random)!;
    const other = pick(
      Object.keys(outcomes).filter((key) => key !== one),
      random,
    )!;
    const looks = (name: string) =>
      outcomes[name]!.looks ?? [outcomes[name]!.look ?? (name as never)];
    const [first, second] = [looks(one), looks(other)];
    for (const [name, list] of [
      [one, second],
      [other, first],
    ] as const) {
      delete outcomes[name]!.look;
      outcomes[name]!.looks = list;
    }
    return `${site[0]}: looks of ${one} and ${other} swapped`;
  },
  function forgetBridge(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ bridge }) => bridge !== undefined),
      random,
    );
    if (!site) return null;
    delete site[1].bridge;
    return `${site[0]}: nothing clipped in`;
  },
  function forgetSpare(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ spare }) => spare === true),
      random,
    );
    if (!site) return null;
    delete site[1].spare;
    return `${site[0]}: the old sensor stays in`;
  },
  function otherRetest(draft, random) {
    const site = pick(
      stepsWhere(draft, ({ retest }) => (retest?.length ?? 0) > 0),
      random,
    );
    if (!site) return null;
    const target = pick(
      Object.keys(draft.steps).filter((id) => !site[1].retest!.includes(id)),
      random,
    )!;
    const words = `${site[0]}: retest ${target} and not ${site[1].retest!.join(', ')}`;
    site[1].retest = [target];
    return words;
  },
  function mistype(draft, random) {
    const site = pick(
      stepsWhere(draft, (step) => outcomesOf(step).length > 0),
      random,
    );
    if (!site) return null;
    const [name, outcome] = pick(outcomesOf(site[1]), random)!;
    outcome.go = `${outcome.go.slice(0, -1)}q`;
    return `${site[0]}: target of ${name} mistyped`;
  },
];

function leadsOf(measure: Step['measure']): string[] | null {
  const leads = measure ? Object.values(measure)[0] : null;
  return Array.isArray(leads) ? (leads as string[]) : null;
}

function isLook(measure: Step['measure']): boolean {
  return measure !== undefined && !['volts', 'ohms', 'reading'].includes(Object.keys(measure)[0]!);
}

function allFaults(draft: ProcedureDraft): string[] {
  return Object.values(draft.steps).flatMap(({ conclude }) => conclude ?? []);
}
