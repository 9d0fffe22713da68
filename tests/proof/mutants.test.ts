/** Trees broken on purpose: the check must notice. */
import { afterAll, describe, expect, test } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { LinkedProcedure } from '../../src/procedure/link-procedure.ts';
import { stepOf } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { outcomeOf, walkFaults } from '../../src/proof/walk-faults.ts';
import type { Issue } from '../../src/source/issue.ts';
import { LONG } from '../campaign.ts';
import { checkTree, LIBRARY, modelFor, TREES } from './library.ts';
import { mutants } from './mutate.ts';

const MUTANTS = LONG ? 300 : 24;
const SAMPLES = LONG ? 64 : 24;
/** Of all mutants that are not equivalent, and of those of one tree. */
const NOTICED_SHARE_MIN = 0.95;
const NOTICED_IN_ONE_TREE_MIN = 0.9;

const total = { broken: 0, noticed: 0 };

describe.each(TREES)('%s', (name, parsed) => {
  test('its broken copies are noticed', () => {
    const circuit = LIBRARY.circuits.get(parsed.draft.circuit ?? '');
    if (!circuit) throw new Error(`${name} has no circuit`);
    const model = modelFor(circuit, SAMPLES);
    const sound = checkTree(parsed, SAMPLES);
    if (!sound.linked) throw new Error(`${name} cannot be linked`);
    const known = new Set(sound.issues.map(printOf));
    const map = mapOf(sound.linked, model);
    const all = mutants(parsed.draft, circuit, MUTANTS, 20);
    const survivors: string[] = [];
    let noticed = 0;
    for (const { words, draft } of all) {
      const { linked, issues } = checkTree({ draft, source: parsed.source }, SAMPLES);
      if (issues.some((issue) => !known.has(printOf(issue)))) noticed += 1;
      else if (!linked || mapOf(linked, model) !== map) survivors.push(words);
    }
    const broken = noticed + survivors.length;
    total.broken += broken;
    total.noticed += noticed;
    console.log(`${name}: ${broken} broken, ${noticed} noticed, ${all.length - broken} equivalent`);
    for (const words of survivors) console.log(`  not noticed: ${words}`);
    expect(broken).toBeGreaterThanOrEqual(LONG ? 40 : 12);
    expect(noticed / broken).toBeGreaterThanOrEqual(NOTICED_IN_ONE_TREE_MIN);
  });
});

afterAll(() => {
  console.log(`mutants: ${total.noticed} of ${total.broken} noticed`);
  expect(total.noticed / total.broken).toBeGreaterThanOrEqual(NOTICED_SHARE_MIN);
});

/** What a finding is about: shares by tens of per cent, no other numbers, so that a small shift is the same finding. */
function printOf({ code, at, words }: Issue): string {
  const shares = words.replace(
    /(\d+) %/g,
    (_, share: string) => `${'i'.repeat(Math.round(Number(share) / 10))}%`,
  );
  return `${code} ${at.file}:${at.line} ${shares.replace(/[\d.]+/g, '#')}`;
}

/**
 * The rule for equivalence. A tree is a map from vehicles to conclusions: two trees are equivalent when in every sample
 * every fault and the healthy circuit come to a conclusion of the same name, with the same repairs, whose retests tell
 * in the same samples that the fault is still there. Then nothing that such a vehicle can show makes them differ.
 */
function mapOf({ procedure, circuit }: LinkedProcedure, model: Model): string {
  const repairs = new Map(circuit?.faults.map(({ id, repair }) => [id, repair]));
  const leaves = (id: string, fault: string, sample: number): string | null => {
    const step = stepOf(procedure, id);
    const read = testOf(step);
    if (!read || (step.kind !== 'measure' && step.kind !== 'look')) return null;
    return outcomeOf(step, model.shows(fault, read, sample));
  };
  const map: [string, unknown][] = [];
  for (const { fault, samples, end } of walkFaults(procedure, model)) {
    const last = stepOf(procedure, end.step);
    const stands =
      last.kind === 'conclude'
        ? [...new Set(last.faults.map((id) => repairs.get(id)))].sort()
        : end.kind;
    const retests = last.kind === 'conclude' ? last.retest : [];
    for (const sample of samples) {
      const told = retests.some(
        (id) => leaves(id, fault, sample) !== leaves(id, 'healthy', sample),
      );
      map.push([`${fault} ${sample} ${last.id}`, [stands, told]]);
    }
  }
  return JSON.stringify(map.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}
