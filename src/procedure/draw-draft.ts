/** A sub-procedure by itself as boxes and arrows: what its callers give stays `{need}`, its results are its ends. */
import { USUAL_MINUTES } from './build-step.ts';
import { andWords, type GraphExit, type GraphNode } from './draw-graph.ts';
import type { ProcedureDraft, Step as StepDraft } from './generated/procedure.mjs';

/** Boxes in the order in which a reader comes to them, each once. Names that lead nowhere are left out. */
export function draftGraph({ start, steps }: ProcedureDraft): GraphNode[] {
  const found = new Map<string, GraphNode>();
  const visit = (id: string) => {
    const step = Object.hasOwn(steps, id) ? steps[id] : undefined;
    if (!step || found.has(id)) return;
    const exits = exitsOf(step).filter(({ to }) => Object.hasOwn(steps, to));
    found.set(id, nodeOf(id, step, exits));
    for (const { to } of exits) visit(to);
  };
  visit(start);
  return [...found.values()];
}

function nodeOf(id: string, step: StepDraft, exits: readonly GraphExit[]): GraphNode {
  if (step.result !== undefined) return end(id, 'no-fault', `ends in "${step.result}"`);
  if (step.conclude !== undefined) return end(id, 'conclusion', step.title ?? '', step.conclude);
  if (step.use !== undefined) {
    const title = step.title ?? `all of ${step.use}`;
    return { id, kind: 'task', title, setting: '', faults: [], exits };
  }
  const unplugged = (step.unplug ?? []).map(needWords);
  const setting = [
    ...(step.measure ? [step.state ?? 'key-off'] : []),
    ...(unplugged.length > 0 ? [`${andWords(unplugged)} unplugged`] : []),
    ...(step.spare ? ['spare sensor'] : []),
    `${step.minutes ?? USUAL_MINUTES} min`,
  ].join(', ');
  return { id, kind: 'task', title: step.title ?? '', setting, faults: [], exits };
}

function end(
  id: string,
  kind: 'conclusion' | 'no-fault',
  title: string,
  faults: readonly string[] = [],
): GraphNode {
  return { id, kind, title, setting: '', faults, exits: [] };
}

function exitsOf(step: StepDraft): GraphExit[] {
  const outcomes = Object.entries(step.outcomes ?? {}).map(([name, { words, go }]) =>
    exit('outcome', name, go, words),
  );
  const results = Object.entries(step.results ?? {}).map(([name, to]) => exit('outcome', name, to));
  const done = step.go === undefined ? [] : [exit('done', '', step.go)];
  const cannot = step.cannot === undefined ? [] : [exit('cannot', 'cannot', step.cannot)];
  return [...outcomes, ...results, ...done, ...cannot];
}

function exit(kind: GraphExit['kind'], name: string, to: string, words = ''): GraphExit {
  return { name, kind, words, to, passing: null };
}

/** `$sensor` as its texts have it. */
function needWords(value: string): string {
  return value.replace(/^\$(.+)$/, '{$1}');
}
