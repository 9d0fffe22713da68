/** Trees broken on purpose: the check must notice. */
import { describe, expect, test } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { LinkedProcedure } from '../../src/procedure/link-procedure.ts';
import { walkFaults } from '../../src/proof/walk-faults.ts';
import type { Issue } from '../../src/source/issue.ts';
import { checkTree, LIBRARY, modelFor, TREES } from './library.ts';
import { mutants } from './mutate.ts';

const LONG = process.env['OHMWARD_LONG'] === '1';
const MUTANTS = LONG ? 200 : 48;
const SAMPLES = LONG ? 64 : 24;
/** Of the mutants that are not equivalent. */
const NOTICED_SHARE_MIN = 0.95;

const total = { broken: 0, noticed: 0 };

describe.each(TREES)('%s', (name, parsed) => {
  test(`at least ${NOTICED_SHARE_MIN * 100} % of its broken copies are noticed`, () => {
    const circuit = LIBRARY.circuits.get(parsed.draft.circuit ?? '');
    if (!circuit) throw new Error(`${name} has no circuit`);
    const model = modelFor(circuit, SAMPLES);
    const sound = checkTree(parsed, SAMPLES);
    if (!sound.linked) throw new Error(`${name} cannot be linked`);
    const known = new Set(sound.issues.map(printOf));
    const map = mapOf(sound.linked, model);
    const all = mutants(parsed.draft, circuit, MUTANTS, 20);
    expect(all.length).toBeGreaterThanOrEqual(40);
    const survivors: string[] = [];
    let equivalent = 0;
    for (const { words, draft } of all) {
      const { linked, issues } = checkTree({ draft, source: parsed.source }, SAMPLES);
      const fresh = issues.filter((issue) => !known.has(printOf(issue)));
      if (fresh.length > 0) total.noticed += 1;
      else if (linked && mapOf(linked, model) === map) {
        equivalent += 1;
        continue;
      } else survivors.push(words);
      total.broken += 1;
    }
    const broken = all.length - equivalent;
    const share = (broken - survivors.length) / broken;
    console.log(
      `${name}: ${broken} broken, ${survivors.length} not noticed, ${equivalent} equivalent`,
    );
    for (const words of survivors) console.log(`  not noticed: ${words}`);
    expect(broken).toBeGreaterThanOrEqual(30);
    expect(share).toBeGreaterThanOrEqual(NOTICED_SHARE_MIN);
  });
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
 * The rule for equivalence: in every sample every fault and the healthy circuit come to a conclusion of the same name,
 * with the same repairs and retests. A tree is a map from vehicles to conclusions, and this is the same map.
 */
function mapOf({ procedure, circuit }: LinkedProcedure, model: Model): string {
  const repairs = new Map(circuit?.faults.map(({ id, repair }) => [id, repair]));
  const map = new Map<string, unknown>();
  for (const { fault, samples, end } of walkFaults(procedure, model)) {
    const last = procedure.steps[end.step];
    const concluded =
      last?.kind === 'conclude'
        ? [last.id, [...new Set(last.faults.map((id) => repairs.get(id)))].sort(), last.retest]
        : [end.kind];
    for (const sample of samples) map.set(`${fault} ${sample}`, concluded);
  }
  return JSON.stringify([...map].sort(([a], [b]) => (a < b ? -1 : 1)));
}
