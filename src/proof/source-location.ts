/** Where in its author's file a piece of the flat tree was written. */
import type { LinkedProcedure } from '../procedure/link-procedure.ts';
import type { SourceSpan } from '../source/issue.ts';
import type { Path } from '../source/yaml-source.ts';

/** The key of a step, or of something below it: `sourceLocation(linked, 'feed', ['measure'])`. */
export function sourceLocation(
  linked: LinkedProcedure,
  step: string,
  below: Path = [],
): SourceSpan {
  const place = linked.places.get(step);
  if (!place) throw new Error(`place: no step "${step}" in a linked procedure`);
  return place.source.locate([...place.path, ...below], 'key');
}

/**
 * The key of an outcome. One that leaves a sub-procedure by a result is where the caller says what that result leads
 * to, because there the decision of this tree was written.
 */
export function outcomeLocation(
  linked: LinkedProcedure,
  step: string,
  outcome: string | null,
): SourceSpan {
  const inside = sourceLocation(linked, step, outcome === null ? ['go'] : ['outcomes', outcome]);
  const found = resultOf(linked, step, outcome);
  return found === null ? inside : sourceLocation(linked, found.caller, ['results', found.result]);
}

/** Steps that the procedure itself can lead to: ids of the flat tree, with the name its author gives each. */
export function entriesOf({ places, procedure }: LinkedProcedure): Map<string, string> {
  const entries = new Map<string, string>();
  for (const name of places.keys()) {
    if (name.includes('/')) continue;
    const id = entryOf(name, places, procedure);
    if (id !== null) entries.set(id, name);
  }
  return entries;
}

/** The step that a step stands for: itself, or the first of the sub-procedure it uses. */
function entryOf(
  name: string,
  places: LinkedProcedure['places'],
  procedure: LinkedProcedure['procedure'],
): string | null {
  if (Object.hasOwn(procedure.steps, name)) return name;
  const inner = [...places].find(([id]) => id.startsWith(`${name}/`));
  const start = inner ? valueAt(inner[1].source.data, ['start']) : null;
  return typeof start === 'string' ? entryOf(`${name}/${start}`, places, procedure) : null;
}

/** How a step is named to its author: `feed/to-battery`, with the caller where an outcome leaves a sub-procedure. */
export function outcomeForAuthor(
  linked: LinkedProcedure,
  step: string,
  outcome: string | null,
): string {
  if (outcome === null) return `"${step}"`;
  const found = resultOf(linked, step, outcome);
  const result = found === null ? '' : `, result "${found.result}" of "${found.caller}"`;
  return `"${outcome}" of "${step}"${result}`;
}

function resultOf(
  linked: LinkedProcedure,
  step: string,
  outcome: string | null,
): { readonly caller: string; readonly result: string } | null {
  let found: { caller: string; result: string } | null = null;
  let id = step;
  let path: Path = outcome === null ? ['go'] : ['outcomes', outcome, 'go'];
  for (;;) {
    const cut = id.lastIndexOf('/');
    const place = linked.places.get(id);
    if (cut < 0 || !place) return found;
    const next = valueAt(place.source.data, [...place.path, ...path]);
    const result =
      typeof next === 'string' ? valueAt(place.source.data, ['steps', next, 'result']) : null;
    if (typeof result !== 'string') return found;
    id = id.slice(0, cut);
    path = ['results', result];
    found = { caller: id, result };
  }
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const key of path)
    value =
      typeof value === 'object' && value !== null
        ? (value as Record<string, unknown>)[key]
        : undefined;
  return value;
}
