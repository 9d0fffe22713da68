/**
 * Plugs that go on for one test between two that have them off, on every way that the answers of a tree leave open, however
 * rare. `ohmward check` tells of the common ways; here each of them has to be worth it: with the plug left off the test in
 * between would read something else in some car, so that it can tell nothing otherwise. Common practice, no source: each
 * opening wipes the contacts.
 */
import { expect, test } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { Shown, Test } from '../../src/circuit/test.ts';
import { isTask, type Procedure, type Step } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { standingOf } from '../../src/proof/plug-cycles.ts';
import { shipped, trees } from './shipped.ts';

/** Less than this tells no two readings apart. */
const ALIKE = 0.003;
/** The coil alone, at its own pins: most come with the module's plug on, which stays as it is. */
const AS_MOST_COME = ['reluctor-no-signal: module for coil'];

interface Closing {
  readonly part: string;
  readonly closed: string;
}

const leads = (step: Step): readonly string[] => {
  if (!isTask(step)) return [];
  const done = step.kind === 'act' ? [step.go] : step.outcomes.map(({ go }) => go);
  return step.cannot === null ? done : [...done, step.cannot];
};

/** Whether a step has a plug off, on, or leaves it as it is. */
function standsAt(procedure: Procedure, id: string, part: string): 'off' | 'on' | null {
  const stands = standingOf(procedure, id);
  if (stands === null) return null;
  if (stands.open.has(part)) return 'off';
  return stands.isWhole ? 'on' : null;
}

/** The steps that come next and have the plug off or on, over all that leave it as it is. */
function nextOf(procedure: Procedure, id: string, part: string): string[] {
  const seen = new Set<string>();
  const found: string[] = [];
  const open = [...leads(procedure.steps[id]!)];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (seen.has(next) || !isTask(procedure.steps[next]!)) continue;
    seen.add(next);
    if (standsAt(procedure, next, part) === null) open.push(...leads(procedure.steps[next]!));
    else found.push(next);
  }
  return found;
}

function closingsOf(procedure: Procedure): Closing[] {
  const ids = Object.keys(procedure.steps);
  const parts = new Set(ids.flatMap((id) => [...(standingOf(procedure, id)?.open ?? [])]));
  const at = (id: string, part: string) => standsAt(procedure, id, part);
  const found = [...parts].flatMap((part) =>
    ids
      .filter((id) => at(id, part) === 'off')
      .flatMap((id) => nextOf(procedure, id, part))
      .filter((id) => at(id, part) === 'on')
      .filter((id) => nextOf(procedure, id, part).some((next) => at(next, part) === 'off'))
      .map((closed) => `${part} ${closed}`),
  );
  return [...new Set(found)].map((pair) => {
    const [part = '', closed = ''] = pair.split(' ');
    return { part, closed };
  });
}

/** Whether the test would read the same in every car with the plug left off. */
function isNeedless(model: Model, asked: Test, part: string): boolean {
  const unplugged = [...asked.setup.unplugged, part].sort();
  const left: Test = { ...asked, setup: { ...asked.setup, unplugged } };
  if (asked.setup.sensor === 'spare' || model.refusal(left) !== null) return false;
  const faults = ['healthy', ...model.circuit.faults.map(({ id }) => id)];
  return faults.every((fault) =>
    isAlike(model.shows(fault, asked, 0), model.shows(fault, left, 0)),
  );
}

function isAlike(one: Shown, other: Shown): boolean {
  if (one.kind === 'look' || other.kind === 'look')
    return one.kind === 'look' && other.kind === 'look' && one.look === other.look;
  if (one.value === other.value) return true;
  return Math.abs(one.value - other.value) <= ALIKE * Math.max(1, Math.abs(one.value));
}

test.each(trees.map(({ draft }) => draft.procedure))(
  '%s plugs nothing in for one test that it does not need it for, on any way',
  (name) => {
    const { linked, model } = shipped(name);
    const { procedure } = linked;
    const closings = closingsOf(procedure);
    expect(closings.length).toBeGreaterThan(0);
    const needless = closings.flatMap(({ part, closed }) => {
      const asked = testOf(procedure.steps[closed]!);
      return asked && isNeedless(model, asked, part) ? [`${name}: ${part} for ${closed}`] : [];
    });
    expect(needless).toEqual(AS_MOST_COME.filter((one) => one.startsWith(`${name}:`)));
  },
  60_000,
);
