/**
 * Questions that wake a fault by hand: what is watched meanwhile must show each fault that an answer names, in the state
 * that the step names. A signal whose output is off stands at the pull-up with its wire and without it.
 */

import { type Circuit, HEALTHY, moduleOf, sensorOf } from '../circuit/circuit.ts';
import { functionOf } from '../circuit/meter-units.ts';
import type { Model } from '../circuit/model.ts';
import type { Meter, MeterUnit, Probe, Setup, Shown, Test } from '../circuit/test.ts';
import { type AskStep, WAKING } from '../procedure/procedure.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import type { Issue } from '../source/issue.ts';
import { provedFault } from './lost-cars.ts';
import type { ProofFacts } from './proof-facts.ts';
import { listed, sharePercent } from './proof-words.ts';
import { outcomeLocation, sourceLocation } from './source-location.ts';

/** A fault that shows in fewer of its cars is missed more often than it is seen. */
const SHOWN_SHARE_MIN = 0.5;
/** Cars of each fault that are looked at: a share below one half is then told from one of nine tenths. Ours. */
const WATCHED_CARS = 64;
/** A digit or a bar is seen to jump by this share of what stands there. Common practice, no source. */
const JUMP_SHARE = 0.02;
/** Least jumps that are seen: below, a display wanders by itself. Common practice, no source. */
const JUMP_LEAST: Readonly<Record<MeterUnit, number>> = { V: 0.02, ohm: 1, A: 2e-4 };

/** Answers that name faults which do not show, and questions that have nothing watched. */
export function watchedIssues({ linked, model }: ProofFacts): Issue[] {
  const told = new Set<string>();
  return Object.values(linked.procedure.steps).flatMap((step) => {
    if (step.kind !== 'ask') return [];
    return issuesOf(step, linked, model).filter(({ at, code }) => {
      const key = `${code} ${at.file}:${at.line}:${at.column}`;
      return told.has(key) ? false : told.add(key);
    });
  });
}

function issuesOf(step: AskStep, linked: ProofFacts['linked'], model: Model): Issue[] {
  const known = new Set(model.circuit.faults.map(({ id }) => id));
  const answers = step.outcomes.flatMap(({ name, under = [] }) => {
    const faults = under.includes(HEALTHY) ? [] : under.filter((id) => known.has(id));
    return faults.length > 0 ? [{ name, faults }] : [];
  });
  const { watched = [], setup } = step;
  if (answers.length === 0) return [];
  if (watched.length === 0)
    return WAKING.includes(step.family)
      ? [
          {
            code: 'nothing-watched',
            severity: 'warning',
            at: sourceLocation(linked, step.id),
            words: `"${step.id}" provokes a fault and does not say what to watch, so nobody knows whether it shows`,
            fix: 'add the key "watch": an instrument and where its leads go, in a state in which the fault shows',
          },
        ]
      : [];
  return answers.flatMap(({ name, faults }): Issue[] => {
    const hidden = faults
      .map((fault) => ({ fault, share: shownShare(model, fault, setup, watched) }))
      .filter(({ share }) => share < SHOWN_SHARE_MIN);
    if (hidden.length === 0) return [];
    const all = hidden.map(
      ({ fault, share }) => `${provedFault(fault)} (shows in ${sharePercent(share)})`,
    );
    return [
      {
        code: 'unseen-when-woken',
        severity: 'error',
        at: outcomeLocation(linked, step.id, name),
        words: `"${name}" of "${step.id}" cannot be answered under ${listed(all)}: in the other cars what is watched does not change`,
        fix: 'watch another end or in another state, or leave these faults out with "never-with"',
        notes: all.length > 3 ? all : [],
      },
    ];
  });
}

/** Part of the cars of a fault in which something that is watched jumps when it comes, 0 to 1. */
function shownShare(model: Model, fault: string, setup: Setup, watched: readonly Probe[]): number {
  const tests = watched.flatMap((probe) => testsOf(model.circuit, setup, probe));
  const cars = Math.min(WATCHED_CARS, model.samples);
  let shown = 0;
  for (let car = 0; car < cars; car += 1)
    if (
      tests.some((test) =>
        jumps(model.meter, model.shows(HEALTHY, test, car, fault), model.shows(fault, test, car)),
      )
    )
      shown += 1;
  return shown / cars;
}

/** The live data of a track is its number, which is what stands at the module's own pin. */
function testsOf(circuit: Circuit, setup: Setup, probe: Probe): Test[] {
  const isTrack = probe.kind === 'counts' && sensorOf(circuit).kind === 'potentiometer';
  if (!isTrack) return [{ setup, probe }];
  const own = `${moduleOf(circuit).name}.${probe.input.split('.')[1]}.pin`;
  const inside: Probe = { kind: 'volts', plus: own, minus: 'battery.negative' };
  return [
    { setup, probe },
    { setup, probe: inside },
  ];
}

function jumps(meter: Meter, before: Shown, after: Shown): boolean {
  if (before.kind === 'look' || after.kind === 'look')
    return before.kind !== 'look' || after.kind !== 'look' || before.look !== after.look;
  if (before.value === after.value) return false;
  if (!Number.isFinite(before.value) || !Number.isFinite(after.value)) return true;
  const { unit } = before;
  const own = meterUncertainty(functionOf(meter, unit), before.value).limit;
  const least = Math.max(2 * own, JUMP_SHARE * Math.abs(before.value), JUMP_LEAST[unit]);
  return Math.abs(after.value - before.value) > least;
}
