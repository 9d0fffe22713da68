/** What the customer is told to be at fault names every kind of thing that the conclusion stands for, and so excludes none. */
import { expect, it } from 'vitest';
import { link, TREES } from '../proof/library.ts';

/** A sentence that puts the fault into some things, and so out of others. */
const PLACES_IT = /\b(?:the fault is in|(?:is|are) at fault|does not carry)\b/i;

/** How each kind may be named, by how its faults begin. */
const NAMED: readonly (readonly [faults: RegExp, words: RegExp])[] = [
  [/^sensor\./, /sensor|pedal/i],
  [/^contact\.sensor\./, /connector|contact|its wires/i],
  [/^contact\.(?!sensor\.)/, /connector|contact|socket|switches it/i],
  [/^target\./, /wheel\b(?! speed)|ring|distance|too far/i],
  [/^wire\./, /wire|cable|line|switches it/i],
  [/^module\./, /module|switches it/i],
  [/^relay\./, /relay/i],
  [/^fuse\./, /fuse/i],
];

it.each(TREES)('%s', (_, parsed) => {
  const procedure = link(parsed, 8).linked!.procedure;
  const left = Object.values(procedure.steps).flatMap((step) => {
    if (step.kind !== 'conclude' || !PLACES_IT.test(step.customer)) return [];
    return NAMED.filter(
      ([faults, words]) =>
        step.faults.some((fault) => faults.test(fault)) && !words.test(step.customer),
    ).map(([faults]) => `${step.id}: "${step.customer}" names no ${faults.source}`);
  });
  expect(left).toEqual([]);
});
