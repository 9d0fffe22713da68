/** Ranges an author wrote that call a healthy circuit bad, or let a faulty one pass as good, with the values. */

import { computedRange } from '../procedure/expected-range.ts';
import { expectedEnds, type MeasureStep, type RangeOutcome } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { formatReadings } from '../quantity/format-quantity.ts';
import { NEVER_NEGATIVE } from '../quantity/typed-reading.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { carNotes } from './lost-cars.ts';
import type { ProofFacts } from './proof-facts.ts';
import { carsWords, listed } from './proof-words.ts';
import { sourceLocation } from './source-location.ts';
import { WRONG_SHARE_MAX } from './way-issues.ts';

/** Below this, in V, a healthy reading is no sign of swapped leads: drops along wires go both ways. */
const REVERSED_VOLTS = -0.3;

/** Issues about the outcome "good" of each measurement that some fault comes to. */
export function rangeIssues(facts: ProofFacts): Issue[] {
  const reached = new Set(facts.ways.flatMap(({ visits }) => visits.map(({ step }) => step)));
  return Object.values(facts.linked.procedure.steps).flatMap((step) => {
    if (step.kind !== 'measure' || !reached.has(step.id) || step.probe === null) return [];
    const good = step.outcomes.find(({ name }) => name === 'good');
    const byAuthor = step.expected?.from === 'author';
    return [
      ...reversed(facts, step),
      ...(good && byAuthor ? [...tooNarrow(facts, step, good), ...tooWide(facts, step, good)] : []),
    ];
  });
}

/** Of the healthy cars those that come to the step; all of them where none does. */
function healthyAt({ ways, model }: ProofFacts, step: string): Iterable<number> {
  const come = ways.filter(
    ({ fault, visits }) => fault === HEALTHY && visits.some((visit) => visit.step === step),
  );
  return come.length > 0
    ? new Set(come.flatMap(({ samples }) => samples))
    : Array.from({ length: model.samples }, (_, sample) => sample);
}

function tooNarrow(facts: ProofFacts, step: MeasureStep, good: RangeOutcome): Issue[] {
  const { linked, model, teller } = facts;
  const test = testOf(step)!;
  const outside: number[] = [];
  const inside: number[] = [];
  for (const sample of healthyAt(facts, step.id)) {
    const shown = model.shows(HEALTHY, test, sample);
    if (shown.kind === 'number') (within(good, shown.value) ? inside : outside).push(sample);
  }
  const share = outside.length / model.samples;
  const expected = model.expected(test);
  const range = computedRange(model, test);
  if (share === 0 || expected.kind !== 'number' || !range) return [];
  const { low, high } = expectedEnds(range);
  const lost = teller.beside({ fault: HEALTHY, samples: outside, share }, inside);
  return [
    {
      code: 'good-too-narrow',
      severity: share > WRONG_SHARE_MAX ? 'error' : 'warning',
      at: sourceLocation(linked, step.id, ['outcomes', good.name]),
      words: `a healthy circuit reads ${formatReadings(expected.low, expected.high, step.unit)} at "${step.id}", and in ${carsWords(lost.cars)}, that is not "good" (${rangeWords(good, step)})`,
      fix: `with tolerances and meter a good reading is ${formatReadings(NEVER_NEGATIVE[step.unit] === undefined ? low : Math.max(0, low), high, step.unit)}; write that, or "expect: computed" without limits`,
      notes: carNotes([lost]),
      cars: [lost.cars],
    },
  ];
}

/** Faults that pass as good here though they read otherwise than a healthy circuit, and are then lost. */
function tooWide(
  { linked, model, ways, teller }: ProofFacts,
  step: MeasureStep,
  good: RangeOutcome,
): Issue[] {
  const test = testOf(step)!;
  const { low, high } = expectedEnds(computedRange(model, test)!);
  const passed = new Map<string, Set<number>>();
  const values: number[] = [];
  for (const way of ways) {
    if (way.verdict !== 'wrong' && way.verdict !== 'missed') continue;
    if (!way.visits.some((visit) => visit.step === step.id && visit.outcome === good.name))
      continue;
    for (const sample of way.samples) {
      const shown = model.shows(way.fault, test, sample);
      if (shown.kind !== 'number' || (shown.value >= low && shown.value <= high)) continue;
      values.push(shown.value);
      passed.set(way.fault, (passed.get(way.fault) ?? new Set()).add(sample));
    }
  }
  if (passed.size === 0) return [];
  const lost = [...passed].map(([fault, samples]) => {
    const share = samples.size / model.samples;
    return teller.cars({ fault, samples: [...samples], share });
  });
  const names = listed(lost.map(({ cars }) => `${cars.fault} (${carsWords(cars)})`));
  return [
    {
      code: 'good-too-wide',
      severity: 'warning',
      at: sourceLocation(linked, step.id, ['outcomes', good.name]),
      words: `"good" of "${step.id}" (${rangeWords(good, step)}) also holds ${names} at ${formatReadings(Math.min(...values), Math.max(...values), step.unit)}, which then ends wrongly`,
      fix: `a healthy circuit reads ${formatReadings(low, high, step.unit)} here with tolerances and meter; tighten the limit`,
      notes: carNotes(lost),
      cars: lost.map(({ cars }) => cars),
    },
  ];
}

function reversed({ linked, model }: ProofFacts, step: MeasureStep): Issue[] {
  const expected = model.expected(testOf(step)!);
  if (expected.kind !== 'number' || expected.high > REVERSED_VOLTS) return [];
  return [
    {
      code: 'reversed-leads',
      severity: 'warning',
      at: sourceLocation(linked, step.id, ['measure']),
      words: `a healthy circuit reads ${formatReadings(expected.low, expected.high, expected.unit)} at "${step.id}": the leads are the wrong way round`,
      fix: 'name the red lead first, then the black one',
    },
  ];
}

function within({ from, to }: RangeOutcome, value: number): boolean {
  return (from === null || value >= from) && (to === null || value < to);
}

function rangeWords({ from, to }: RangeOutcome, { unit }: MeasureStep): string {
  return formatReadings(from ?? Number.NEGATIVE_INFINITY, to ?? Number.POSITIVE_INFINITY, unit);
}
