/** A tree as boxes and arrows: what all its drawings have in common. */
import { type Conclusion, isTask, type Procedure, stepOf } from './procedure.ts';

/** One step as a box, with its ways on. */
export interface GraphNode {
  readonly id: string;
  readonly kind: 'task' | 'conclusion' | 'no-fault';
  /** Empty when it says no more than the id. */
  readonly title: string;
  /** `key-on, sensor unplugged, 2 min`; empty for a conclusion. */
  readonly setting: string;
  /** Faults that a conclusion stands for. */
  readonly faults: readonly string[];
  readonly exits: readonly GraphExit[];
}

/** One way out of a step. */
export interface GraphExit {
  /** Name of the outcome; empty for a step that is only done; `cannot` for a person who can't do it. `left out` of a conclusion in whose place another stands then. */
  readonly name: string;
  readonly kind: 'outcome' | 'done' | 'cannot';
  readonly words: string;
  readonly to: string;
  /** Faults that leave here, when the tree was proved: `wire.feed.open`, `sensor.dead 40 %`. */
  readonly passing: readonly string[] | null;
}

/** Faults that leave a step by an outcome (empty name where nothing is read). */
export type Passing = (step: string, outcome: string) => readonly string[];

/** Boxes in the order in which a reader comes to them, each once; what nothing leads to is left out. `bind` fills the titles. */
export function treeGraph(
  procedure: Procedure,
  passing?: Passing,
  bind: (title: string) => string = (title) => title,
): GraphNode[] {
  const found = new Map<string, GraphNode>();
  const visit = (id: string) => {
    if (found.has(id)) return;
    const made = nodeOf(procedure, id, passing);
    const node = { ...made, title: bind(made.title) };
    found.set(id, node);
    for (const { to } of node.exits) visit(to);
  };
  visit(procedure.start);
  return [...found.values()];
}

function nodeOf(procedure: Procedure, id: string, passing?: Passing): GraphNode {
  const step = stepOf(procedure, id);
  if (!isTask(step)) return conclusionNode(step, procedure);
  const { state, unplugged, sensor } = step.setup;
  const setting = [
    ...(step.kind === 'ask' || step.kind === 'act' ? [] : [state]),
    ...(unplugged.length > 0 ? [`${andWords(unplugged)} unplugged`] : []),
    ...(sensor === 'spare' ? ['spare sensor'] : []),
    `${step.minutes} min`,
  ].join(', ');
  const through = (outcome: string) => passing?.(id, outcome) ?? null;
  const exits: GraphExit[] =
    step.kind === 'act'
      ? [{ name: '', kind: 'done', words: '', to: step.go, passing: through('') }]
      : step.outcomes.map(({ name, words, go }) => ({
          name,
          kind: 'outcome',
          words: words === name.replace(/-/g, ' ') ? '' : words,
          to: go,
          passing: through(name),
        }));
  if (step.cannot !== null && !exits.some(({ to }) => exits.length === 1 && to === step.cannot))
    exits.push({ name: 'cannot', kind: 'cannot', words: '', to: step.cannot, passing: null });
  return { id, kind: 'task', title: ownTitle(id, step.title), setting, faults: [], exits };
}

/** `module`, `module and sensor`, `module, sensor and throttle-position`. */
export function andWords(names: readonly string[]): string {
  return names.join(', ').replace(/, ([^,]*)$/, ' and $1');
}

function conclusionNode(conclusion: Conclusion, procedure: Procedure): GraphNode {
  const { id, title, faults, requires = [], otherwise } = conclusion;
  const exits: GraphExit[] =
    otherwise === undefined
      ? []
      : [
          {
            name: 'left out',
            kind: 'cannot',
            words: andWords(requires),
            to: otherwise,
            passing: null,
          },
        ];
  return {
    id,
    kind: faults.length > 0 ? 'conclusion' : 'no-fault',
    title: ownTitle(id, title),
    setting: '',
    faults: leavesAllOpen(conclusion, procedure) ? ['any fault'] : faults,
    exits,
  };
}

/** Whether it names every fault that the tree speaks of, and so claims none. */
function leavesAllOpen({ id, faults }: Conclusion, { steps }: Procedure): boolean {
  const held = new Set(faults);
  const others = Object.values(steps).flatMap((step) =>
    step.kind === 'conclude' && step.id !== id ? step.faults : [],
  );
  return others.length > 0 && others.every((fault) => held.has(fault));
}

function ownTitle(id: string, title: string): string {
  const plain = id.slice(id.lastIndexOf('/') + 1).replace(/-/g, ' ');
  return title.toLowerCase() === plain ? '' : title;
}
