/**
 * The proof of a tree: every fault of its circuit, and the healthy circuit, through it with what the instruments
 * would show over all tolerances. Each must come to a conclusion that stands for it, or for something put right by
 * the same repair. Nothing is drawn by chance: the same files give the same proof.
 */
import type { Model } from '../circuit/model.ts';
import type { LinkedProcedure } from '../procedure/link-procedure.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { testEntries } from '../suspects/test-entries.ts';
import { ambiguityGroups } from './ambiguity-groups.ts';
import { claimIssues } from './claim-issues.ts';
import { discriminatingTests } from './discriminating-tests.ts';
import type { Coming } from './fault-reach.ts';
import { type JudgedWay, judgeOf } from './judge-ways.ts';
import { likeHealthyIssues } from './like-healthy.ts';
import { limitIssues } from './limit-issues.ts';
import { CarTeller } from './lost-cars.ts';
import { otherWayIssues } from './other-way-issues.ts';
import { earlyPlugIssues, plugCycleIssues } from './plug-cycles.ts';
import type { ProofFacts } from './proof-facts.ts';
import { rangeIssues } from './range-issues.ts';
import { retestIssues } from './retest-issues.ts';
import { sourceLocation } from './source-location.ts';
import { stepIssues } from './step-issues.ts';
import { WAYS_MAX, walkFault } from './walk-faults.ts';
import { watchedIssues } from './watched-issues.ts';
import { wayIssues } from './way-issues.ts';
import { minutesOfWays } from './way-minutes.ts';

/** What the walk of every fault through the tree came to. */
export interface Proof {
  /** Healthy first, then the faults in the order of the circuit. */
  readonly rows: readonly ProofRow[];
  /** At the place of the step they belong to, in the order of the tree. */
  readonly issues: readonly Issue[];
  /** Every way of every fault, for drawings. */
  readonly ways: readonly JudgedWay[];
  /** Faults that end at "no fault found" in samples in which no instrument can tell them from a healthy circuit. */
  readonly inseparable: readonly { readonly fault: string; readonly share: number }[];
  /** Minutes to a conclusion over all faults, by their weights; each test from where the one before it ended. */
  readonly minutes: number;
}

/** One fault and where it ends. */
export interface ProofRow {
  readonly fault: string;
  readonly words: string;
  /** Chance among all faults, by weight; 0 for the healthy circuit. */
  readonly chance: number;
  readonly ends: readonly Ending[];
  /** Steps on the way and minutes, means over all samples. */
  readonly steps: number;
  readonly minutes: number;
}

/** One end that some samples of a fault come to. */
export interface Ending {
  readonly step: string;
  readonly verdict: JudgedWay['verdict'];
  /** Part of the fault that ends so, 0 to 1. */
  readonly share: number;
}

/** Part of the time that the walk takes; the rest goes into what is found. About so with the shipped trees. */
const WALK_SHARE = 0.8;
const FINDERS = [
  wayIssues,
  rangeIssues,
  stepIssues,
  ambiguityGroups,
  retestIssues,
  likeHealthyIssues,
  watchedIssues,
  plugCycleIssues,
  earlyPlugIssues,
] as const;

/**
 * Proves a linked procedure with the model of its circuit. The model keeps what it has shown, so keep the model. `onShare`
 * is called now and then with the part that is done, 0 to 1.
 */
export function proveProcedure(
  linked: LinkedProcedure,
  model: Model,
  onShare: (share: number) => void = () => {},
): Proof {
  const { facts, rows, issues: found } = begin(linked, model, onShare);
  const { ways } = facts;
  const issues = [...found];
  const inseparable = rows.flatMap(({ fault, ends }) => {
    const share = ends.reduce(
      (sum, end) => sum + (end.verdict === 'inseparable' ? end.share : 0),
      0,
    );
    return share > 0 ? [{ fault, share }] : [];
  });
  const minutes = rows.reduce((sum, row) => sum + row.chance * row.minutes, 0);
  return { rows, issues: inOrder(issues), ways, inseparable, minutes };
}

/** The issues of a proof one after another, what is found by the usual ways first: for who asks only whether there are others. */
export function proofIssues(linked: LinkedProcedure, model: Model): Iterable<Issue> {
  return begin(linked, model, () => {}).issues;
}

interface Begun {
  readonly facts: ProofFacts;
  readonly rows: readonly ProofRow[];
  /** Each is looked for when it is asked for. */
  readonly issues: Iterable<Issue>;
}

function begin(linked: LinkedProcedure, model: Model, onShare: (share: number) => void): Begun {
  const { procedure } = linked;
  const entries = testEntries(model.circuit, procedure, model.meter);
  const discriminating = discriminatingTests(model, entries);
  const judge = judgeOf(procedure, model.circuit, discriminating);
  const faults = [HEALTHY, ...model.circuit.faults.map(({ id }) => id)];
  const ways = faults.flatMap((fault, index) => {
    onShare((WALK_SHARE * index) / faults.length);
    return walkFault(procedure, model, fault).flatMap(judge.judge);
  });
  const teller = new CarTeller(model, ways);
  const facts = { linked, model, ways, judge, discriminating, teller };
  const rows = rowsOf(model, ways, minutesOfWays(procedure, entries));
  return { facts, rows, issues: issuesOf(facts, onShare) };
}

function* issuesOf(facts: ProofFacts, onShare: (share: number) => void): Generator<Issue> {
  yield* tooManyWays(facts.linked, facts.ways);
  for (const [index, find] of FINDERS.entries()) {
    onShare(WALK_SHARE + ((1 - WALK_SHARE) * index) / FINDERS.length);
    yield* find(facts);
  }
  const comings: Coming[] = [];
  const arrived = new Map<string, Set<string>>();
  yield* otherWayIssues(
    facts,
    (coming) => comings.push(coming),
    (end, fault) => arrived.set(end, (arrived.get(end) ?? new Set()).add(fault)),
  );
  yield* limitIssues(facts, comings);
  yield* claimIssues(facts, arrived);
}

/** A tree whose questions part a fault further than is followed. */
export function tooManyWays(linked: LinkedProcedure, ways: readonly JudgedWay[]): Issue[] {
  const counts = new Map<string, number>();
  for (const { fault } of ways) counts.set(fault, (counts.get(fault) ?? 0) + 1);
  if (Math.max(0, ...counts.values()) < WAYS_MAX) return [];
  return [
    {
      code: 'too-many-ways',
      severity: 'error',
      at: sourceLocation(linked, linked.procedure.start),
      words: `questions without a usual answer split a fault into more than ${WAYS_MAX} paths, so its shares and minutes are not known`,
      fix: 'give them a "usual" answer: the others are still followed',
    },
  ];
}

function rowsOf(
  model: Model,
  ways: readonly JudgedWay[],
  minutesOf: (way: JudgedWay) => number,
): ProofRow[] {
  const total = model.circuit.faults.reduce((sum, { weight }) => sum + weight, 0);
  const all = [{ id: HEALTHY, words: 'nothing is wrong', weight: 0 }, ...model.circuit.faults];
  return all.map(({ id, words, weight }) => {
    const own = ways.filter(({ fault }) => fault === id);
    const mean = (of: (way: JudgedWay) => number) =>
      own.reduce((sum, way) => sum + way.share * of(way), 0);
    const ends = new Map<string, Ending>();
    for (const { end, verdict, share } of own) {
      const key = `${end.step} ${verdict}`;
      ends.set(key, { step: end.step, verdict, share: share + (ends.get(key)?.share ?? 0) });
    }
    return {
      fault: id,
      words,
      chance: total > 0 ? weight / total : 0,
      ends: [...ends.values()].sort((a, b) => b.share - a.share),
      steps: mean((way) => way.visits.length),
      minutes: mean(minutesOf),
    };
  });
}

function inOrder(issues: readonly Issue[]): Issue[] {
  return [...issues].sort(
    (a, b) =>
      (a.at.file < b.at.file ? -1 : a.at.file > b.at.file ? 1 : 0) ||
      a.at.line - b.at.line ||
      a.at.column - b.at.column,
  );
}
