/**
 * A vehicle that cannot be had in a state passes more steps over than the two that the proof leaves out: cranking is half
 * of a tree. Every shipped tree goes round them, and comes to an end that holds the fault, or leaves it open.
 */
import { expect, it } from 'vitest';
import { isTask, type Step } from '../../src/procedure/procedure.ts';
import { STATES_ASIDE } from '../../src/session/events.ts';
import { connectorsOfStep, statesOut } from '../../src/session/out-of-reach.ts';
import { presentConclusion, type Unreached } from '../../src/session/session.ts';
import { type Shop, shopFor, walkOn } from '../session/walk-library.ts';
import { trees } from './shipped.ts';

const CASES = trees.flatMap(({ draft: { procedure } }): [string, string, Unreached][] => {
  const { connectors } = shopFor(procedure).model.circuit;
  return [
    ...STATES_ASIDE.map((state): [string, string, Unreached] => [procedure, state, { state }]),
    ...connectors.map(({ part }): [string, string, Unreached] => [procedure, part, { part }]),
  ];
});

it.each(CASES)('%s without %s', (name, _, what) => {
  const shop = shopFor(name);
  const out = stepsOut(shop, what);
  // What is only made ready or asked is asked all the same.
  const none = out.filter(
    ({ kind, cannot }) => cannot === null && (kind === 'measure' || kind === 'look'),
  );
  expect(none.map(({ id }) => id)).toEqual([]);
  const round = out.filter(({ cannot }) => cannot !== null);
  const set = Object.fromEntries(round.map(({ id }) => [id, 'cannot']));
  const { faults } = shop.model.circuit;
  const repairOf = new Map(faults.map(({ id, repair }) => [id, repair]));
  const wrong = faults.flatMap((fault) => {
    const end = presentConclusion(walkOn(shop, shop.begun, fault.id, set))!;
    const holds = end.faults.some((id) => repairOf.get(id) === fault.repair);
    return holds ? [] : [`${fault.id} ends at ${end.id}`];
  });
  expect(wrong).toEqual([]);
});

function stepsOut({ linked, model }: Shop, what: Unreached) {
  const lost = statesOut({ unreached: [{ ...what, reason: '', by: 1 }] });
  return Object.values(linked.procedure.steps)
    .filter((step: Step) => isTask(step))
    .filter((step) =>
      'part' in what
        ? connectorsOfStep(model.circuit, step).includes(what.part)
        : lost.includes(step.setup.state),
    );
}
