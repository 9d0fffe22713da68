/** One step that uses a sub-procedure: what it gives, and where each result leads. */
import { nearestName } from '../source/nearest-name.ts';
import type { Step as StepDraft } from './generated/procedure.mjs';
import type { Frame, Linking, Written } from './linking.ts';
import type { ParsedProcedure } from './parse-procedure.ts';

/** What a caller gives for each need; a missing or unknown one is told. */
export function givenFor(
  linker: Linking,
  frame: Frame,
  name: string,
  step: StepDraft,
  parsed: ParsedProcedure,
): { readonly given: Record<string, string>; readonly givenAt: Record<string, Written> } {
  const needs = parsed.draft.needs ?? {};
  const { source } = frame.parsed;
  const withs = step.with ?? {};
  for (const [need, words] of Object.entries(needs)) {
    if (!Object.hasOwn(withs, need))
      linker.add(
        'missing-need',
        source,
        ['steps', name, 'use'],
        `"${step.use}" needs "${need}": ${words}`,
        `add "${need}: ..." under "with"`,
      );
  }
  for (const key of Object.keys(withs)) {
    if (Object.hasOwn(needs, key)) continue;
    const near = nearestName(key, Object.keys(needs));
    linker.add(
      'unknown-need',
      source,
      ['steps', name, 'with', key],
      `"${step.use}" has no need "${key}"`,
      near ? `did you mean "${near}"?` : `it needs: ${Object.keys(needs).join(', ')}`,
      'key',
    );
  }
  const given: Record<string, string> = {};
  const givenAt: Record<string, Written> = {};
  for (const [key, value] of Object.entries(withs)) {
    const path = ['steps', name, 'with', key];
    given[key] = linker.fill(frame, value, path);
    givenAt[key] = passedOn(frame, value) ?? { source, path };
  }
  return { given, givenAt };
}

/** Where a value was written that a caller was given itself and hands on as it is. */
export function passedOn({ givenAt }: Frame, value: string): Written | null {
  const need = /^\$([a-z][a-z0-9-]*)$/.exec(value)?.[1];
  return (need !== undefined && givenAt[need]) || null;
}

/** Where each result of a sub-procedure leads in the caller; one that leads nowhere is told. */
export function resultsFor(
  linker: Linking,
  frame: Frame,
  name: string,
  step: StepDraft,
  parsed: ParsedProcedure,
): Record<string, string> {
  const { source } = frame.parsed;
  const known = new Set(
    Object.values(parsed.draft.steps).flatMap((inner) =>
      inner.result === undefined ? [] : [inner.result],
    ),
  );
  const mapped = step.results ?? {};
  for (const result of known) {
    if (!Object.hasOwn(mapped, result))
      linker.add(
        'missing-result',
        source,
        ['steps', name, 'use'],
        `"${step.use}" can end in "${result}", which leads nowhere`,
        `add "${result}: STEP" under "results"`,
      );
  }
  for (const key of Object.keys(mapped)) {
    if (known.has(key)) continue;
    const near = nearestName(key, [...known]);
    linker.add(
      'unknown-result',
      source,
      ['steps', name, 'results', key],
      `"${step.use}" never ends in "${key}"`,
      near ? `did you mean "${near}"?` : `it ends in: ${[...known].join(', ')}`,
      'key',
    );
  }
  return Object.fromEntries(
    Object.entries(mapped).map(([key, value]) => [
      key,
      linker.target(frame, value, ['steps', name, 'results', key]),
    ]),
  );
}
