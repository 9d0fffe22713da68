/**
 * Breaks a procedure's draft in one small way, as an author's slip would: the kinds that docs/broken-trees.md lists, in
 * its order, each with every place where it can be made.
 */
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { ProcedureDraft, Step } from '../../src/procedure/generated/procedure.mjs';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

export interface Mutant {
  readonly kind: string;
  readonly words: string;
  readonly draft: ProcedureDraft;
}
/** A place where a kind of mistake can be made; `draft` makes it. */
export interface Site {
  readonly kind: string;
  readonly words: string;
  readonly draft: () => ProcedureDraft;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };
type Steps = Record<string, Writable<Step>>;
type Outcome = NonNullable<Step['outcomes']>[string];
/** What is changed, in words, and how. */
type Change = readonly [string, (steps: Steps, draft: Writable<ProcedureDraft>) => void];
type Kind = (around: Around) => Change[];

/** `count` different mutants of a draft, the kinds in turn; fewer when no more are found. */
export function mutants(
  draft: ProcedureDraft,
  circuit: Circuit,
  count: number,
  seed: number,
): Mutant[] {
  const random = seededRandom(seed);
  const queues = KIND_NAMES.map((kind) => shuffled(sitesOf(draft, circuit, kind), random));
  const found = new Map<string, Mutant>();
  for (let round = 0; found.size < count && queues.some((queue) => queue.length > 0); round += 1) {
    const site = queues[(round * STRIDE) % queues.length]!.pop();
    if (!site) continue;
    const { kind, words } = site;
    const mutant = { kind, words, draft: site.draft() };
    found.set(JSON.stringify(mutant.draft), mutant);
  }
  return [...found.values()];
}
/** Prime to the number of kinds, so that a small count takes kinds from all over the list. */
const STRIDE = 23;

/** Every place of a draft, a tree or a sub-procedure of one with this circuit, where a kind of mistake can be made. */
export function sitesOf(draft: ProcedureDraft, circuit: Circuit, kind: string): Site[] {
  const before = JSON.stringify(draft);
  return KINDS[kind]!(new Around(draft, circuit)).flatMap(([words, change]) => {
    const made = () => {
      // The draft has objects without prototype, which structuredClone keeps apart from ordinary ones.
      const copy = JSON.parse(before) as Writable<ProcedureDraft>;
      change(copy.steps as Steps, copy);
      return copy;
    };
    return JSON.stringify(made()) === before ? [] : [{ kind, words, draft: made }];
  });
}

export function shuffled<T>(list: readonly T[], random: () => number): T[] {
  const all = [...list];
  for (let last = all.length - 1; last > 0; last -= 1) {
    const at = Math.floor(random() * (last + 1));
    [all[last], all[at]] = [all[at]!, all[last]!];
  }
  return all;
}

/** A draft and what its author has around it. */
class Around {
  readonly draft: ProcedureDraft;
  readonly circuit: Circuit;
  readonly steps: [string, Step][];
  /** Where ways end: conclusions, or the results of a sub-procedure. */
  readonly ends: readonly string[];
  readonly isTree: boolean;
  /** Terminals that a lead can be put on, as they are written here. */
  readonly terminals: readonly string[];
  /** What can be unplugged, as it is written here. */
  readonly plugs: readonly string[];

  constructor(draft: ProcedureDraft, circuit: Circuit) {
    this.draft = draft;
    this.circuit = circuit;
    this.steps = Object.entries(draft.steps);
    this.isTree = draft.needs === undefined;
    this.ends = this.steps.flatMap(([id, step]) =>
      (this.isTree ? step.conclude : step.result) === undefined ? [] : [id],
    );
    const leads = this.steps.flatMap(([, { measure }]) => leadsOf(measure) ?? []);
    this.terminals = this.isTree
      ? circuit.terminals.map(({ id }) => id)
      : [...new Set([...leads, 'battery.positive', 'battery.negative'])];
    this.plugs = this.isTree
      ? circuit.connectors.filter(({ unplugs }) => unplugs).map(({ part }) => part)
      : [...new Set(this.steps.flatMap(([, { unplug }]) => unplug ?? []))];
  }

  /** Each step with outcomes, name by name. */
  get told(): [string, Step, [string, Outcome][]][] {
    return this.steps.flatMap(([id, step]) =>
      step.outcomes ? [[id, step, Object.entries(step.outcomes)]] : [],
    );
  }
  get conclusions(): [string, Step][] {
    return this.steps.filter(([, { conclude }]) => conclude !== undefined);
  }
  /** Conclusions that name faults, and not all. */
  get verdicts(): [string, Step][] {
    return this.conclusions.filter(
      ([, { conclude }]) => conclude!.length > 0 && !conclude!.includes('*'),
    );
  }
  /** The end behind this one in the file. */
  endAfter(id: string): string | null {
    const at = this.ends.indexOf(id);
    return at < 0 || this.ends.length < 2 ? null : this.ends[(at + 1) % this.ends.length]!;
  }
  /** Other terminals of the same plug; in a sub-procedure the others that it is given. */
  besides(terminal: string): string[] {
    const others = this.terminals.filter((one) => one !== terminal);
    if (terminal.startsWith('$')) return others.filter((one) => one.startsWith('$'));
    const part = (id: string) => id.split('.')[0];
    const isPin = terminal.endsWith('.pin');
    return others.filter((one) => part(one) === part(terminal) && one.endsWith('.pin') === isPin);
  }
  /** Both leads of each step that has two. */
  get leads(): [string, Step, readonly string[]][] {
    return this.steps.flatMap(([id, step]) => {
      const both = leadsOf(step.measure);
      return both ? [[id, step, both] as [string, Step, readonly string[]]] : [];
    });
  }
  /** Each limit of each step, as it is written. */
  get limits(): { id: string; text: string; value: number; unit: string }[] {
    return this.told.flatMap(([id, , outcomes]) => {
      const texts = outcomes.flatMap(([, one]) => LIMITS.flatMap((key) => one[key] ?? []));
      return [...new Set(texts)].flatMap((text) => {
        const read = parseQuantity(text);
        return read ? [{ id, text, value: read.value, unit: read.unit }] : [];
      });
    });
  }
}

const LIMITS = ['from', 'to', 'below', 'above'] as const;

function leadsOf(measure: Step['measure']): string[] | null {
  const leads = measure ? Object.values(measure)[0] : null;
  return Array.isArray(leads) ? (leads as string[]) : null;
}

function isLook(measure: Step['measure']): boolean {
  return measure !== undefined && !['volts', 'ohms', 'reading'].includes(Object.keys(measure)[0]!);
}

function pairs<T>(list: readonly T[]): [T, T][] {
  return list.flatMap((one, index) => list.slice(index + 1).map((other): [T, T] => [one, other]));
}

function neighbours<T>(list: readonly T[]): [T, T][] {
  return list.flatMap((one, at) =>
    [list[at - 1], list[at + 1]].flatMap((other): [T, T][] => (other ? [[one, other]] : [])),
  );
}

/** A limit moved, wherever it stands in the step. */
function limitTo(id: string, text: string, value: number, unit: string): Change {
  const moved = `${Number(value.toPrecision(6))} ${unit}`;
  return [
    `${id}: limit ${text} is now ${moved}`,
    (steps) => {
      for (const one of Object.values(steps[id]!.outcomes!))
        for (const key of LIMITS) if (one[key] === text) one[key] = moved;
    },
  ];
}

function scaled(around: Around, factor: number): Change[] {
  return around.limits
    .filter(({ value }) => value !== 0)
    .map(({ id, text, value, unit }) => limitTo(id, text, value * factor, unit));
}

function goTo(id: string, name: string, was: string, target: string): Change {
  return [
    `${id}: ${name} leads to ${target} and not to ${was}`,
    (steps) => {
      steps[id]!.outcomes![name]!.go = target;
    },
  ];
}

function leadTo({ leads }: Around, others: (terminal: string) => readonly string[]): Change[] {
  return leads.flatMap(([id, , both]) =>
    both.flatMap((lead, at) =>
      others(lead)
        .filter((other) => !both.includes(other))
        .map(
          (other): Change => [
            `${id}: lead on ${other} and not on ${lead}`,
            (steps) => {
              leadsOf(steps[id]!.measure)![at] = other;
            },
          ],
        ),
    ),
  );
}

/** The words of a step's looks under an outcome. */
function looksOf(name: string, { look, looks }: Outcome): readonly string[] {
  return looks ?? [look ?? name];
}
function setLooks(steps: Steps, id: string, name: string, list: readonly string[]): void {
  const outcome = steps[id]!.outcomes![name]!;
  delete outcome.look;
  outcome.looks = list as NonNullable<Outcome['looks']>;
}
function looking({ told }: Around): [string, [string, Outcome][]][] {
  return told.flatMap(([id, step, outcomes]) =>
    isLook(step.measure) && outcomes.length > 1
      ? [[id, outcomes] as [string, typeof outcomes]]
      : [],
  );
}

/** A change of one key of each step that has it, by what it is to be; `undefined` takes it out. */
function keyTo<K extends keyof Step>(
  { steps: all }: Around,
  key: K,
  others: (value: NonNullable<Step[K]>, step: Step, id: string) => readonly (Step[K] | undefined)[],
): Change[] {
  return all.flatMap(([id, step]) => {
    const value = step[key];
    if (value === undefined) return [];
    return others(value as NonNullable<Step[K]>, step, id).map(
      (other): Change => [
        `${id}: ${key} ${JSON.stringify(other) ?? 'left out'}`,
        (steps) => {
          if (other === undefined) delete steps[id]![key];
          else (steps[id] as Step)[key] = other;
        },
      ],
    );
  });
}

function bridgesOf({ bridge }: Step) {
  return bridge === undefined ? [] : Array.isArray(bridge) ? bridge : [bridge];
}
type Bridge = ReturnType<typeof bridgesOf>[number];
/** Each bridge changed to what it could be by mistake. */
function bridgeTo(around: Around, others: (bridge: Bridge) => readonly Bridge[]): Change[] {
  return around.steps.flatMap(([id, step]) =>
    bridgesOf(step).flatMap((bridge, at) =>
      others(bridge).map(
        (other): Change => [
          `${id}: bridge ${JSON.stringify(other)}`,
          (steps) => {
            steps[id]!.bridge = bridgesOf(step).map((one, index) => (index === at ? other : one));
          },
        ],
      ),
    ),
  );
}

function without<T>(list: readonly T[], at: number): T[] {
  return list.filter((_, index) => index !== at);
}

/** Where the ways lead that pass a step over: by the first of its answers. */
function firstTarget({ go, outcomes, results }: Step): string | undefined {
  return go ?? Object.values(outcomes ?? {})[0]?.go ?? Object.values(results ?? {})[0];
}

function retarget(steps: Steps, from: string, to: string): void {
  for (const step of Object.values(steps)) {
    if (step.go === from) step.go = to;
    if (step.cannot === from) step.cannot = to;
    for (const outcome of Object.values(step.outcomes ?? {}))
      if (outcome.go === from) outcome.go = to;
    for (const [name, target] of Object.entries(step.results ?? {}))
      if (target === from) step.results![name] = to;
  }
}

/** The outcome that stands for a circuit in order, as far as its place in the step tells. */
function goodOf(outcomes: readonly [string, Outcome][]): [string, Outcome] {
  return (
    outcomes.find(([name]) => ['good', 'sound', 'full', 'follows', 'in-step'].includes(name)) ??
    outcomes[Math.floor(outcomes.length / 2)]!
  );
}

const UNKNOWN =
  /^(unparted|unknown|unseen|uncounted|unfollowed|not-[a-z]+|out-of-reach|[a-z]+-left)$/;

/** The kinds by name, in the order of docs/broken-trees.md. */
const KINDS: Readonly<Record<string, Kind>> = {
  'outcomes-exchanged': ({ told }) =>
    told.flatMap(([id, , outcomes]) =>
      pairs(outcomes)
        .filter(([[, one], [, other]]) => one.go !== other.go)
        .map(
          ([[first, one], [second, other]]): Change => [
            `${id}: targets of ${first} and ${second} exchanged`,
            (steps) => {
              steps[id]!.outcomes![first]!.go = other.go;
              steps[id]!.outcomes![second]!.go = one.go;
            },
          ],
        ),
    ),
  'outcome-copied': ({ told }) =>
    told.flatMap(([id, , outcomes]) =>
      neighbours(outcomes).map(([[name, { go }], [, other]]) => goTo(id, name, go, other.go)),
    ),
  'outcome-to-wrong-end': (around) =>
    around.told.flatMap(([id, , outcomes]) =>
      outcomes.flatMap(([name, { go }]) => {
        const other = around.endAfter(go);
        return other === null ? [] : [goTo(id, name, go, other)];
      }),
    ),
  'step-skipped': ({ steps: all, draft }) =>
    all.flatMap(([id, step]): Change[] => {
      const target = firstTarget(step);
      if (target === undefined || id === draft.start) return [];
      return [[`${id} is passed over, on to ${target}`, (steps) => retarget(steps, id, target)]];
    }),
  'cannot-is-good': (around) =>
    keyTo(around, 'cannot', (_, { outcomes }) =>
      outcomes ? [goodOf(Object.entries(outcomes))[1].go] : [],
    ),
  'cannot-to-no-fault': (around) =>
    keyTo(around, 'cannot', () =>
      around.conclusions.flatMap(([id, { conclude }]) => (conclude!.length === 0 ? [id] : [])),
    ),
  'cannot-left-out': (around) => keyTo(around, 'cannot', () => [undefined]),
  'answer-is-verdict': (around) =>
    around.told.flatMap(([id, { measure }, outcomes]) =>
      measure
        ? []
        : outcomes.flatMap(([name, { go }], index) => {
            const ends = around.isTree ? around.verdicts.map(([end]) => end) : around.ends;
            const end = ends[index % Math.max(1, ends.length)];
            return end === undefined || end === go ? [] : [goTo(id, name, go, end)];
          }),
    ),
  'results-exchanged': ({ steps: all }) =>
    all.flatMap(([id, { results = {} }]) =>
      pairs(Object.entries(results))
        .filter(([[, one], [, other]]) => one !== other)
        .map(
          ([[first, one], [second, other]]): Change => [
            `${id}: results ${first} and ${second} exchanged`,
            (steps) => {
              steps[id]!.results![first] = other;
              steps[id]!.results![second] = one;
            },
          ],
        ),
    ),
  'unknown-is-good': ({ steps: all }) =>
    all.flatMap(([id, { results = {} }]) => {
      const good = Object.entries(results).find(([name]) => !UNKNOWN.test(name))?.[1];
      return Object.keys(results).flatMap((name): Change[] =>
        good === undefined || !UNKNOWN.test(name)
          ? []
          : [
              [
                `${id}: ${name} leads to ${good}`,
                (steps) => {
                  steps[id]!.results![name] = good;
                },
              ],
            ],
      );
    }),
  'limit-ten-times-more': (around) => scaled(around, 10),
  'limit-ten-times-less': (around) => scaled(around, 0.1),
  'limit-prefix': ({ limits }) =>
    limits.flatMap(({ id, text, value, unit }) =>
      value === 0
        ? []
        : [limitTo(id, text, Math.abs(value) >= 1000 ? value / 1000 : value * 0.001, unit)],
    ),
  'limit-at-nominal': ({ limits }) =>
    limits.flatMap(({ id, text, value, unit }) =>
      unit === 'V' && value > 4 && value < 6 ? [limitTo(id, text, 5, unit)] : [],
    ),
  'limit-too-fine': ({ limits }) =>
    limits.flatMap(({ id, text, value, unit }) =>
      unit === 'V' && value > 0 && value <= 0.5
        ? [limitTo(id, text, 0.001, unit)]
        : unit === 'ohm' && value <= 100
          ? [limitTo(id, text, 0.2, unit)]
          : [],
    ),
  'limit-sign': ({ limits }) =>
    limits.flatMap(({ id, text, value, unit }) =>
      value < 0 ? [limitTo(id, text, -value, unit)] : [],
    ),
  'leads-exchanged': ({ leads }) =>
    leads.map(
      ([id]): Change => [
        `${id}: leads swapped`,
        (steps) => {
          leadsOf(steps[id]!.measure)!.reverse();
        },
      ],
    ),
  'lead-other-pin': (around) => leadTo(around, (lead) => around.besides(lead)),
  'lead-other-end': (around) =>
    leadTo(around, (lead) =>
      around.circuit.wires.flatMap(({ from, to }) =>
        from === lead ? [to] : to === lead ? [from] : [],
      ),
    ),
  'lead-harness-side': (around) =>
    leadTo(around, (lead) => {
      const other = lead.endsWith('.pin') ? lead.slice(0, -4) : `${lead}.pin`;
      return around.terminals.includes(other) ? [other] : [];
    }),
  'other-ground': (around) =>
    leadTo(around, (lead) =>
      lead === 'battery.negative'
        ? around.terminals.filter((one) => /(^\$|\.)(ground|minus)$/.test(one))
        : /(^\$|\.)(ground|minus)$/.test(lead)
          ? ['battery.negative']
          : [],
    ),
  'key-other-way': (around) =>
    keyTo(around, 'state', (state, { measure }) =>
      !measure || (state !== 'key-on' && state !== 'key-off')
        ? []
        : [state === 'key-on' ? 'key-off' : 'key-on'],
    ),
  'unplug-forgotten': (around) =>
    keyTo(around, 'unplug', (all) => all.map((_, at) => without(all, at))),
  'unplug-wrong-part': (around) =>
    keyTo(around, 'unplug', (all) =>
      all.flatMap((_, at) =>
        around.plugs
          .filter((other) => !all.includes(other))
          .map((other) => [...without(all, at), other]),
      ),
    ),
  'bridge-forgotten': (around) => keyTo(around, 'bridge', () => [undefined]),
  'bridge-value': (around) =>
    bridgeTo(around, (bridge) => {
      const ohms = parseQuantity(bridge.through ?? '');
      if (!ohms) return [];
      return [`${ohms.value * 10} ohm`, `${ohms.value / 10} ohm`, 'lead'].map((through) => ({
        ...bridge,
        through,
      }));
    }),
  'conclude-lost': (around) =>
    keyTo(around, 'conclude', (all) =>
      all.length < 2 ? [] : all.map((_, at) => without(all, at)),
    ),
  'requires-lost': (around) =>
    keyTo(around, 'requires', (all) =>
      all.length < 2 ? [] : all.map((_, at) => without(all, at) as never),
    ),
  'cautions-lost': (around) =>
    keyTo(around, 'cautions', (all) => all.map((_, at) => without(all, at))),
  'says-more-than-measured': ({ verdicts, circuit }) =>
    verdicts.map(([id, { conclude }]): Change => {
      const [kind, name] = conclude![0]!.split('.');
      const thing =
        kind === 'wire'
          ? `The ${name} wire`
          : kind === 'contact'
            ? `The ${name}'s plug`
            : `The ${circuit.parts.find((part) => part.name === kind)?.words ?? kind}`;
      return [
        `${id}: says that ${thing} is good`,
        (steps) => {
          steps[id]!.customer =
            `${steps[id]!.customer ?? ''} ${thing} was tested and is good.`.trim();
        },
      ];
    }),

  'range-merged': ({ told }) =>
    told.flatMap(([id, , outcomes]) =>
      neighbours(outcomes.filter(([, one]) => LIMITS.some((key) => one[key] !== undefined))).map(
        ([[name, gone], [kept, other]]): Change => [
          `${id}: ${kept} takes the values of ${name}`,
          (steps) => {
            const all = steps[id]!.outcomes!;
            delete all[name];
            const [lower, upper] =
              (limitOf(gone, 'low') ?? Number.NEGATIVE_INFINITY) <
              (limitOf(other, 'low') ?? Number.NEGATIVE_INFINITY)
                ? [gone, other]
                : [other, gone];
            const { from: _, to: __, below: ___, above: ____, ...rest } = other;
            const low = lower.from ?? lower.above;
            const high = upper.to ?? upper.below;
            all[kept] = {
              ...rest,
              ...(low === undefined ? {} : { from: low }),
              ...(high === undefined ? {} : low === undefined ? { below: high } : { to: high }),
            };
          },
        ],
      ),
    ),
  'outcome-dropped': ({ told }) =>
    told.flatMap(([id, , outcomes]) =>
      outcomes.length < 2
        ? []
        : outcomes.map(
            ([name]): Change => [
              `${id}: outcome ${name} dropped`,
              (steps) => {
                delete steps[id]!.outcomes![name];
              },
            ],
          ),
    ),
  'look-moved': (around) =>
    looking(around).flatMap(([id, outcomes]) =>
      outcomes.flatMap(([name, outcome]) => {
        const list = looksOf(name, outcome);
        if (list.length < 2) return [];
        return list.flatMap((look, at) =>
          outcomes
            .filter(([other]) => other !== name)
            .map(
              ([other, to]): Change => [
                `${id}: ${look} is counted to ${other} and not to ${name}`,
                (steps) => {
                  setLooks(steps, id, name, without(list, at));
                  setLooks(steps, id, other, [...looksOf(other, to), look]);
                },
              ],
            ),
        );
      }),
    ),
  'looks-exchanged': (around) =>
    looking(around).flatMap(([id, outcomes]) =>
      pairs(outcomes).map(
        ([[first, one], [second, other]]): Change => [
          `${id}: looks of ${first} and ${second} exchanged`,
          (steps) => {
            setLooks(steps, id, first, looksOf(second, other));
            setLooks(steps, id, second, looksOf(first, one));
          },
        ],
      ),
    ),
  'look-forgotten': (around) =>
    looking(around).flatMap(([id, outcomes]) =>
      outcomes.flatMap(([name, outcome]) => {
        const list = looksOf(name, outcome);
        return list.length < 2
          ? []
          : list.map(
              (look, at): Change => [
                `${id}: ${look} is forgotten`,
                (steps) => setLooks(steps, id, name, without(list, at)),
              ],
            );
      }),
    ),
  'ohms-for-volts': ({ leads }) =>
    leads.flatMap(([id, { measure }, both]): Change[] => {
      const [is, other] = measure!.volts
        ? ['volts', 'ohms']
        : measure!.ohms
          ? ['ohms', 'volts']
          : ['', ''];
      if (is === '') return [];
      const change = (steps: Steps) => {
        steps[id]!.measure = { [other!]: [...both] } as Step['measure'] & object;
        for (const one of Object.values(steps[id]!.outcomes!))
          for (const key of LIMITS)
            if (one[key])
              one[key] =
                is === 'volts' ? one[key].replace(/m?V$/, 'ohm') : one[key].replace(/k?ohm$/, 'V');
      };
      return [[`${id}: ${other} for ${is}`, change]];
    }),
  'lamp-for-light': ({ leads }) =>
    leads.flatMap(([id, { measure }, both]): Change[] =>
      measure!.light
        ? [
            [
              `${id}: a filament lamp for the LED light`,
              (steps) => {
                steps[id]!.measure = { lamp: [...both] } as never;
              },
            ],
          ]
        : [],
    ),
  'spare-forgotten': (around) => keyTo(around, 'spare', () => [undefined]),
  'moving-forgotten': (around) => keyTo(around, 'moving', () => [undefined]),
  'state-cranking': (around) =>
    keyTo(around, 'state', (state, { measure }) =>
      measure === undefined
        ? []
        : state === 'cranking'
          ? ['key-on']
          : state === 'key-on'
            ? ['cranking']
            : [],
    ),
  'bridge-other-pole': (around) =>
    bridgeTo(around, (bridge) =>
      (['from', 'to'] as const).flatMap((end) => {
        const other = {
          'battery.negative': 'battery.positive',
          'battery.positive': 'battery.negative',
        }[bridge[end]];
        return other ? [{ ...bridge, [end]: other }] : [];
      }),
    ),
  'bridge-other-pin': (around) =>
    bridgeTo(around, (bridge) =>
      (['from', 'to'] as const).flatMap((end) =>
        around
          .besides(bridge[end])
          .filter((one) => one !== bridge.from && one !== bridge.to && !one.startsWith('battery.'))
          .map((one) => ({ ...bridge, [end]: one })),
      ),
    ),
  'unplug-one-more': (around) =>
    around.steps.flatMap(([id, { measure, unplug = [] }]) =>
      measure === undefined
        ? []
        : around.plugs
            .filter((part) => !unplug.includes(part))
            .map(
              (part): Change => [
                `${id}: ${part} comes off as well`,
                (steps) => {
                  steps[id]!.unplug = [...unplug, part];
                },
              ],
            ),
    ),
  'look-elsewhere': (around) =>
    around.steps.flatMap(([id, { measure, with: given }]): Change[] => {
      const connectors = around.circuit.connectors.map(({ part }) => `connector.${part}`);
      const sights = measure?.inspect
        ? (around.isTree ? connectors : [])
            .filter((one) => one !== measure.inspect)
            .map(
              (one): Change => [
                `${id}: looks at ${one}`,
                (steps) => {
                  steps[id]!.measure = { inspect: one };
                },
              ],
            )
        : [];
      const called = Object.entries(given ?? {}).flatMap(([need, value]) =>
        value.startsWith('connector.')
          ? connectors
              .filter((one) => one !== value)
              .map(
                (one): Change => [
                  `${id}: given ${need} is ${one}`,
                  (steps) => {
                    steps[id]!.with![need] = one;
                  },
                ],
              )
          : [],
      );
      return [...sights, ...called];
    }),
  'conclude-too-much': (around) =>
    around.verdicts.flatMap(([id, { conclude }], at) => {
      const next = around.verdicts[(at + 1) % around.verdicts.length]![1].conclude![0]!;
      return conclude!.includes(next)
        ? []
        : [
            [
              `${id}: stands for ${next} as well`,
              (steps) => {
                steps[id]!.conclude = [...conclude!, next];
              },
            ] as Change,
          ];
    }),
  'conclude-everything': (around) =>
    keyTo(around, 'conclude', (all) => (all.includes('*') ? [] : [['*']])),
  'conclude-narrowed': (around) =>
    keyTo(around, 'conclude', (all) =>
      all.flatMap((pattern, at) => {
        const stem = pattern.replace(/\*$/, '');
        const one = around.circuit.faults.find(({ id }) => id.startsWith(stem))?.id;
        return stem === pattern || stem === '' || !one
          ? []
          : [all.map((other, index) => (index === at ? one : other))];
      }),
    ),
  'conclude-other-wire': (around) =>
    keyTo(around, 'conclude', (all) => {
      const [kind, name, ...rest] = all[0]?.split('.') ?? [];
      if (kind !== 'wire' && kind !== 'contact') return [];
      const others =
        kind === 'wire'
          ? around.circuit.wires.map((wire) => wire.name)
          : around.circuit.connectors.map(({ part }) => part);
      const known = (pattern: string) =>
        around.circuit.faults.some(({ id }) => id.startsWith(pattern.replace(/\*$/, '')));
      return others
        .filter((other) => other !== name)
        .map((other) => [[kind, other, ...rest].join('.'), ...all.slice(1)])
        .filter(([first]) => known(first!));
    }),
  'conclude-nothing': (around) =>
    keyTo(around, 'conclude', (all) => (all.length === 0 ? [] : [[]])),
  'conclusions-exchanged': ({ conclusions }) =>
    neighbours(conclusions)
      .filter((_, at) => at % 2 === 0)
      .map(
        ([[first, one], [second, other]]): Change => [
          `${first} and ${second}: faults exchanged`,
          (steps) => {
            steps[first]!.conclude = other.conclude!;
            steps[second]!.conclude = one.conclude!;
          },
        ],
      ),
  'otherwise-is-verdict': (around) =>
    keyTo(around, 'otherwise', (_, __, id) =>
      around.verdicts
        .map(([end]) => end)
        .filter((end) => end !== id)
        .slice(0, 3),
    ),
  'requires-gone': ({ steps: all }) =>
    all.flatMap(([id, { requires }]): Change[] =>
      requires
        ? [
            [
              `${id}: requires nothing`,
              (steps) => {
                delete steps[id]!.requires;
                delete steps[id]!.otherwise;
              },
            ],
          ]
        : [],
    ),
  'retest-other': (around) => {
    const readings = around.steps.flatMap(([id, { measure }]) => (measure ? [id] : []));
    return keyTo(around, 'retest', (all) =>
      readings
        .filter((id) => !all.includes(id))
        .slice(0, 4)
        .map((id) => [id]),
    );
  },
  'retest-one-lost': (around) =>
    keyTo(around, 'retest', (all) => (all.length < 2 ? [] : all.map((_, at) => without(all, at)))),
  'given-exchanged': (around) =>
    keyTo(around, 'with', (given) =>
      pairs(Object.entries(given)).map(([[first, one], [second, other]]) => ({
        ...given,
        [first]: other,
        [second]: one,
      })),
    ),
  'given-other-pin': (around) =>
    keyTo(around, 'with', (given) =>
      Object.entries(given).flatMap(([need, value]) =>
        around.terminals.includes(value)
          ? around.besides(value).map((other) => ({ ...given, [need]: other }))
          : [],
      ),
    ),
  'usual-other': (around) =>
    keyTo(around, 'usual', (usual, { outcomes }) =>
      Object.keys(outcomes ?? {}).filter((name) => name !== usual),
    ),
  'goes-back': ({ told, steps: all }) =>
    told.flatMap(([id, , outcomes]) => {
      const before = all
        .slice(
          0,
          all.findIndex(([one]) => one === id),
        )
        .filter(([, step]) => step.outcomes);
      const back = before.at(-2)?.[0] ?? before.at(-1)?.[0];
      return back === undefined
        ? []
        : outcomes.flatMap(([name, { go }]) => (go === back ? [] : [goTo(id, name, go, back)]));
    }),
  'target-mistyped': ({ told }) =>
    told.flatMap(([id, , outcomes]) =>
      outcomes.map(([name, { go }]) => goTo(id, name, go, `${go.slice(0, -1)}q`)),
    ),
  'limit-thrice': (around) => scaled(around, 3),
  'limit-of-another-step': ({ limits }) =>
    limits.flatMap(({ id, text, unit, value }, at) => {
      const other = [...limits.slice(at + 1), ...limits].find(
        (one) => one.id !== id && one.unit === unit && one.value !== value,
      );
      return other ? [limitTo(id, text, other.value, unit)] : [];
    }),
  'limit-one-side': ({ told }) =>
    told.flatMap(([id, , outcomes]) =>
      outcomes.flatMap(([name, outcome]) =>
        LIMITS.flatMap((key): Change[] => {
          const read = parseQuantity(outcome[key] ?? '');
          if (!read) return [];
          const moved = `${Number((read.value === 0 ? 0.1 : read.value * 1.5).toPrecision(6))} ${read.unit}`;
          return [
            [
              `${id}: ${key} of ${name} is ${moved}`,
              (steps) => {
                steps[id]!.outcomes![name]![key] = moved;
              },
            ],
          ];
        }),
      ),
    ),
  'start-later': ({ draft, isTree }) => {
    const target = firstTarget(draft.steps[draft.start]!);
    if (target === undefined || !isTree) return [];
    return [
      [
        `begins at ${target}`,
        (_, copy) => {
          copy.start = target;
        },
      ],
    ];
  },
  'caution-weaker': (around) =>
    keyTo(around, 'cautions', (all) =>
      all.map((_, at) => [...without(all, at), 'circuit-energised']),
    ),
  'result-to-wrong-end': (around) =>
    around.steps.flatMap(([id, { results = {} }]) =>
      Object.entries(results).flatMap(([name, target]): Change[] => {
        const other = around.endAfter(target);
        return other === null
          ? []
          : [
              [
                `${id}: ${name} leads to ${other} and not to ${target}`,
                (steps) => {
                  steps[id]!.results![name] = other;
                },
              ],
            ];
      }),
    ),
  'cannot-is-verdict': (around) =>
    keyTo(around, 'cannot', (cannot) =>
      (around.isTree ? around.verdicts.map(([end]) => end) : around.ends)
        .filter((end) => end !== cannot)
        .slice(0, 2),
    ),
};

function limitOf(outcome: Outcome, _: 'low'): number | null {
  const text = outcome.from ?? outcome.above;
  return text === undefined ? null : (parseQuantity(text)?.value ?? null);
}

export const KIND_NAMES: readonly string[] = Object.keys(KINDS);
