/** Conclusions that stand for so much that who comes to them still does not know what is bad. */
import type { FaultClass } from '../circuit/circuit.ts';
import type { Issue } from '../source/issue.ts';
import { testForAuthor } from './discriminating-tests.ts';
import type { ProofFacts } from './proof-facts.ts';
import { listed } from './proof-words.ts';
import { sourceLocation } from './source-location.ts';

/** What a person has to choose between. A connector goes with what it joins. */
const PLACES: Readonly<Record<FaultClass, string | null>> = {
  sensor: 'the sensor',
  wire: 'the wiring',
  supply: 'the wiring',
  module: 'the module',
  neighbour: 'a neighbour on the same circuit',
  target: 'the target',
  connector: null,
};
/** No reading parts a wheel too far away from a weak sensor; eyes and a feeler do. Our choice. */
const WITH_SENSOR = 'the target';

/** A warning for each conclusion that some fault comes to and that names faults in more than one place. */
export function ambiguityGroups({ linked, model, ways, discriminating }: ProofFacts): Issue[] {
  const faults = new Map(model.circuit.faults.map((fault) => [fault.id, fault]));
  const ends = new Set(ways.map(({ end }) => end.step));
  return Object.values(linked.procedure.steps).flatMap((step): Issue[] => {
    if (step.kind !== 'conclude' || !ends.has(step.id)) return [];
    const byPlace = new Map<string, string[]>();
    for (const id of step.faults) {
      const place = PLACES[faults.get(id)!.class];
      if (place !== null) byPlace.set(place, [...(byPlace.get(place) ?? []), id]);
    }
    if (byPlace.has(PLACES.sensor!)) byPlace.delete(WITH_SENSOR);
    const [[, first] = ['', []], [, second] = ['', []]] = [...byPlace];
    if (second.length === 0) return [];
    const samples = Array.from({ length: model.samples }, (_, sample) => sample);
    const parts = discriminating.separator(first[0]!, samples, second);
    return [
      {
        code: 'ambiguity-group',
        severity: 'warning',
        at: sourceLocation(linked, step.id, ['conclude']),
        words: `"${step.id}" stands for ${listed([...byPlace.keys()])}: whoever gets here still does not know which of them is bad`,
        fix: parts
          ? `tell them apart first, for example by: ${testForAuthor(parts)}`
          : 'tell them apart by a test first, and give each its own conclusion',
      },
    ];
  });
}
