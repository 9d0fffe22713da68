/** One step of a draft as a step of the flat tree. All that is wrong with it goes to the linker's issues. */
import {
  type Bridge,
  LOOKS,
  type Look,
  type LookProbe,
  type Probe,
  type Setup,
  type Test,
} from '../circuit/test.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import { parseQuantity, parseToleranced } from '../quantity/parse-quantity.ts';
import { nearestName } from '../source/nearest-name.ts';
import type { Path } from '../source/parse-yaml.ts';
import { placesOf } from './bind-text.ts';
import { cautionsFor } from './cautions.ts';
import { checkRanges } from './check-ranges.ts';
import { computedRange } from './expected-range.ts';
import type {
  Measure,
  Outcome as OutcomeDraft,
  Step as StepDraft,
} from './generated/procedure.mjs';
import type { Frame, Linker } from './link-procedure.ts';
import type {
  ActStep,
  AskStep,
  Caution,
  Conclusion,
  ExpectedRange,
  Family,
  LookStep,
  MeasureStep,
  MeasureUnit,
  RangeOutcome,
  Step,
} from './procedure.ts';

/** Minutes of a step whose author gives none: one reading at a place already reached. */
const USUAL_MINUTES = 1;
/** Keys of which a step has exactly one: what kind of step it is. */
const KINDS = ['conclude', 'use', 'result', 'measure', 'outcomes', 'go'] as const;
const MOVING_PROBES: readonly string[] = ['pattern', 'counts', 'timing'];

/** The step, or null when it is none. */
export function buildStep(
  linker: Linker,
  frame: Frame,
  name: string,
  draft: StepDraft,
): Step | null {
  return new StepBuilder(linker, frame, name, draft).build();
}

class StepBuilder {
  private readonly linker: Linker;
  private readonly frame: Frame;
  private readonly draft: StepDraft;
  private readonly path: Path;
  private readonly id: string;

  constructor(linker: Linker, frame: Frame, name: string, draft: StepDraft) {
    this.linker = linker;
    this.frame = frame;
    this.draft = draft;
    this.path = ['steps', name];
    this.id = frame.prefix + name;
  }

  build(): Step | null {
    const { draft } = this;
    if (draft.conclude !== undefined) return this.conclusion(draft.conclude);
    if (draft.measure !== undefined) return this.measured(draft.measure);
    if (draft.outcomes !== undefined) return this.question(draft.outcomes);
    if (draft.go !== undefined) return this.act(draft.go);
    this.add(
      'empty-step',
      this.path,
      'this step asks for nothing and leads nowhere',
      `give it one of: ${KINDS.join(', ')}`,
      'key',
    );
    return null;
  }

  private conclusion(patterns: readonly string[]): Conclusion {
    const { draft } = this;
    const faults = [
      ...new Set(patterns.flatMap((pattern, index) => this.faultsOf(pattern, index))),
    ];
    if (draft.repair === undefined)
      this.add(
        'missing-repair',
        this.path,
        'a conclusion says what puts it right',
        'add the key "repair"',
        'key',
      );
    if (draft.say === undefined)
      this.add(
        'missing-text',
        this.path,
        'a conclusion says what is wrong and how it is known',
        'add the key "say"',
        'key',
      );
    return {
      id: this.id,
      kind: 'conclude',
      title: this.title(),
      faults,
      say: this.text('say'),
      repair: this.text('repair'),
      customer: this.text('customer'),
      retest: (draft.retest ?? []).map((target, index) => this.retest(target, index)),
    };
  }

  /** A retest names a step of this file, or `caller/inner` inside a sub-procedure it uses. */
  private retest(target: string, index: number): string {
    const [first, ...rest] = target.split('/');
    const head = this.linker.target(this.frame, first!, [...this.path, 'retest', index]);
    return [head, ...rest].join('/');
  }

  private faultsOf(pattern: string, index: number): string[] {
    const { circuit } = this.linker;
    const path = [...this.path, 'conclude', index];
    if (!circuit) return [pattern];
    const known = circuit.faults.map((fault) => fault.id);
    const found = known.filter((id) => matches(pattern, id));
    if (found.length === 0) {
      const near = nearestName(pattern, known);
      this.add(
        'unknown-fault',
        path,
        `circuit "${circuit.name}" has no fault "${pattern}"`,
        near ? `did you mean "${near}"?` : relatedFaults(pattern, known),
      );
    }
    return found;
  }

  private measured(measure: Measure): Step | null {
    const before = this.linker.issues.length;
    const setup = this.setup(measure);
    const { reading } = measure;
    if (reading !== undefined) {
      const { unit, level } = reading;
      if (level !== undefined && unit !== 'V' && unit !== 'A')
        this.add(
          'bad-value',
          [...this.path, 'measure', 'reading', 'level'],
          `a signal has no level in ${unit}`,
          'leave "level" out, or measure in V or A',
        );
      const step = this.measureStep(setup, null, unit);
      return level === undefined ? step : { ...step, level };
    }
    const probe = this.probe(measure);
    if (!probe) return null;
    const refused = this.linker.model()?.refusal({ setup, probe }) ?? null;
    // A name that is not known has been told already.
    if (refused !== null && !this.lacksAny() && this.linker.issues.length === before)
      this.add(
        'refused-test',
        [...this.path, 'measure'],
        `this test is not done: ${refused}`,
        'change the leads, what is unplugged, or the vehicle state',
        'key',
      );
    if (probe.kind === 'volts' || probe.kind === 'ohms')
      return this.measureStep(setup, probe, probe.kind === 'volts' ? 'V' : 'ohm', refused !== null);
    return this.lookStep(setup, probe, refused !== null);
  }

  private base(setup: Setup, probe: Probe | null) {
    const { draft } = this;
    if (draft.say === undefined)
      this.add(
        'missing-text',
        this.path,
        'this step does not say what to do',
        'add the key "say"',
        'key',
      );
    return {
      id: this.id,
      title: this.title(),
      family: (draft.test ?? 'inspection') as Family,
      setup,
      say: this.text('say'),
      why: this.text('why'),
      minutes: draft.minutes ?? USUAL_MINUTES,
      cautions: [
        ...this.tooWeak(setup, probe),
        ...cautionsFor(this.linker.library.cautions, this.linker.drive, setup, probe, this.named()),
      ],
      cannot:
        draft.cannot === undefined
          ? null
          : this.linker.target(this.frame, draft.cannot, [...this.path, 'cannot']),
    };
  }

  /** Said before the test: a light or resistor that cannot pull the module's input low enough to be counted. */
  private tooWeak(setup: Setup, probe: Probe | null): Caution[] {
    const model = probe && setup.bridges.length > 0 ? this.linker.model() : null;
    if (!model || !probe || model.refusal({ setup, probe }) !== null) return [];
    const pull = model.pullsLow({ setup, probe });
    if (!pull || pull.pulls) return [];
    const volts = (value: number) => formatQuantity({ value, unit: 'V' });
    return [
      {
        id: 'pull-too-weak',
        word: 'NOTICE',
        hazards: ['instrument-damage'],
        say: `This load pulls {${pull.input}} down to about ${volts(pull.nominal)} only; the module counts a low below ${volts(pull.thresholdVolts)}. A module that does not react here proves nothing.`,
      },
    ];
  }

  private named(): readonly string[] {
    const known = this.linker.library.cautions.map((rule) => rule.id);
    for (const [index, name] of (this.draft.cautions ?? []).entries()) {
      if (known.includes(name)) continue;
      const near = nearestName(name, known);
      this.add(
        'unknown-caution',
        [...this.path, 'cautions', index],
        `no caution named "${name}"`,
        near ? `did you mean "${near}"?` : `known: ${known.join(', ')}`,
      );
    }
    return this.draft.cautions ?? [];
  }

  private setup(measure: Measure | null): Setup {
    const { draft } = this;
    const state = draft.state ?? 'key-off';
    const kind = measure ? (Object.keys(measure)[0] ?? '') : '';
    const turning = state === 'cranking' || state === 'running';
    const unplugged = (draft.unplug ?? []).map((part, index) =>
      this.lacks(part)
        ? this.fill(part, ['unplug', index])
        : this.part(this.fill(part, ['unplug', index]), ['unplug', index]),
    );
    return {
      state,
      unplugged: [...new Set(unplugged)].sort(),
      bridges: this.bridges(),
      sensor: draft.spare ? 'spare' : 'fitted',
      target: turning || draft.moving || MOVING_PROBES.includes(kind) ? 'moving' : 'still',
    };
  }

  private part(name: string, path: Path): string {
    const { circuit } = this.linker;
    if (!circuit) return name;
    const known = circuit.connectors.filter(({ unplugs }) => unplugs).map(({ part }) => part);
    if (!known.includes(name)) {
      const near = nearestName(name, known);
      this.add(
        'unknown-part',
        [...this.path, ...path],
        `"${name}" is no part that can be unplugged`,
        near ? `did you mean "${near}"?` : `known: ${known.join(', ')}`,
      );
    }
    return name;
  }

  private bridges(): Bridge[] {
    const { bridge } = this.draft;
    if (bridge === undefined) return [];
    const single = !Array.isArray(bridge);
    return (single ? [bridge] : bridge).map((one, index) => {
      const path = single ? ['bridge'] : ['bridge', index];
      return {
        from: this.terminal(one.from, [...path, 'from']),
        to: this.terminal(one.to, [...path, 'to']),
        through: this.through(one.through ?? 'lead', [...path, 'through']),
      };
    });
  }

  private through(value: string, path: Path): Bridge['through'] {
    if (value === 'lead' || value === 'test-light' || value === 'lamp') return value;
    const ohms = parseQuantity(value);
    if (ohms?.unit === 'ohm' && ohms.value > 0) return { ohms: ohms.value };
    this.add(
      'bad-value',
      [...this.path, ...path],
      `"${value}" is not something to clip between two terminals`,
      'one of: lead, test-light, lamp, or a resistance such as 1 kohm',
    );
    return 'lead';
  }

  private terminal(value: string, path: Path): string {
    const id = this.fill(value, path);
    const { circuit } = this.linker;
    if (!circuit || this.lacks(value)) return id;
    const known = circuit.terminals.map((terminal) => terminal.id);
    if (!known.includes(id)) {
      const near = nearestName(id, known);
      this.add(
        'unknown-terminal',
        [...this.path, ...path],
        `circuit "${circuit.name}" has no terminal "${id}"`,
        near ? `did you mean "${near}"?` : `known: ${known.slice(0, 16).join(', ')}`,
      );
    }
    return id;
  }

  /** A need that the caller has not given, which is told at the caller. */
  private lacks(value: string): boolean {
    return value.startsWith('$') && this.frame.given[value.slice(1)] === undefined;
  }

  private lacksAny(): boolean {
    const needs = Object.keys(this.frame.parsed.draft.needs ?? {});
    return needs.some((need) => this.frame.given[need] === undefined);
  }

  private fill(value: string, path: Path): string {
    return this.linker.fill(this.frame, value, [...this.path, ...path]);
  }

  private probe(measure: Measure): Probe | null {
    const kind = Object.keys(measure)[0] as keyof Measure;
    if (kind === 'counts')
      return { kind, input: this.terminal(measure.counts!, ['measure', kind]) };
    if (kind === 'inspect') return { kind, of: this.fill(measure.inspect!, ['measure', kind]) };
    if (kind === 'reading') return null;
    const [plus, minus] = measure[kind] as readonly string[];
    return {
      kind,
      plus: this.terminal(plus!, ['measure', kind, 0]),
      minus: this.terminal(minus!, ['measure', kind, 1]),
    };
  }

  private measureStep(
    setup: Setup,
    probe: Extract<Probe, { kind: 'volts' | 'ohms' }> | null,
    unit: MeasureUnit,
    refused = false,
  ): MeasureStep {
    const drafts = this.draft.outcomes ?? {};
    const computed = this.draft.expect === 'computed';
    const model = refused ? null : this.linker.model();
    const span = probe && model ? computedRange(model, { setup, probe }) : null;
    const unknownCircuit = !this.linker.circuit && this.linker.namesCircuit;
    if (computed && !span && !refused && !unknownCircuit)
      this.add(
        'nothing-computed',
        [...this.path, 'expect'],
        'there is nothing to compute this from',
        'name a circuit, or write the limits',
      );
    const before = this.linker.issues.length;
    const outcomes = this.rangeOutcomes(drafts, unit, computed ? span : null);
    const understood = this.linker.issues.length === before;
    if (Object.keys(drafts).length === 0)
      this.add(
        'missing-outcomes',
        this.path,
        'a measurement leads somewhere by its outcomes',
        'add the key "outcomes"',
        'key',
      );
    else if (understood && !(computed && !span)) this.ranges(outcomes, unit);
    return {
      ...this.base(setup, probe),
      kind: 'measure',
      probe,
      unit,
      expected: computed ? span : (this.authored(unit, outcomes) ?? span),
      outcomes,
    };
  }

  private ranges(outcomes: readonly RangeOutcome[], unit: MeasureUnit): void {
    for (const fault of checkRanges(outcomes, unit)) {
      const codes = {
        empty: 'empty-range',
        overlap: 'overlapping-ranges',
        gap: 'range-gap',
      } as const;
      const fixes = {
        empty: 'the lower limit stands first',
        overlap: 'let one begin exactly where the other ends: "from" counts, "to" does not',
        gap: 'let one outcome reach to where the next begins, or add one',
      } as const;
      this.add(
        codes[fault.kind],
        [...this.path, 'outcomes', fault.outcome],
        fault.words,
        fixes[fault.kind],
        'key',
      );
    }
  }

  private rangeOutcomes(
    drafts: Readonly<Record<string, OutcomeDraft>>,
    unit: MeasureUnit,
    span: ExpectedRange | null,
  ): RangeOutcome[] {
    const read = Object.entries(drafts).map(([name, draft]) => {
      const path = ['outcomes', name];
      if (draft.look !== undefined || draft.looks !== undefined)
        this.add(
          'wrong-outcome',
          [...this.path, ...path],
          'a number has limits, not looks',
          'write "from" and "to", or "below" or "above", with a unit',
          'key',
        );
      const from = this.limit(draft.from ?? draft.above, unit, [
        ...path,
        draft.from === undefined ? 'above' : 'from',
      ]);
      const to = this.limit(draft.to ?? draft.below, unit, [
        ...path,
        draft.to === undefined ? 'below' : 'to',
      ]);
      return { ...this.outcome(name, draft), from, to };
    });
    return span ? withComputed(read, span) : read;
  }

  private outcome(name: string, draft: OutcomeDraft) {
    return {
      name,
      words:
        draft.words === undefined
          ? words(name)
          : this.bound(draft.words, ['outcomes', name, 'words']),
      go: this.linker.target(this.frame, draft.go, [...this.path, 'outcomes', name, 'go']),
    };
  }

  private limit(text: string | undefined, unit: MeasureUnit, path: Path): number | null {
    if (text === undefined) return null;
    const read = parseQuantity(text);
    if (read && read.unit === unit) return read.value;
    this.add(
      'bad-value',
      [...this.path, ...path],
      `"${text}" is not a value in ${unit}`,
      `for example: 4.75 ${unit}`,
    );
    return null;
  }

  /** The author's own idea of good: `expect: 4.75 V .. 5.25 V`, or the limits of the outcome called good. */
  private authored(unit: MeasureUnit, outcomes: readonly RangeOutcome[]): ExpectedRange | null {
    const { expect } = this.draft;
    if (expect !== undefined && expect !== 'computed') {
      const read = parseToleranced(expect);
      if (read?.unit === unit)
        return { low: read.low, nominal: null, high: read.high, from: 'author' };
      this.add(
        'bad-value',
        [...this.path, 'expect'],
        `"${expect}" is neither "computed" nor a range in ${unit}`,
        `for example: 4.75 ${unit} .. 5.25 ${unit}`,
      );
    }
    const good = outcomes.find(({ name }) => name === 'good');
    if (!good || (good.from === null && good.to === null)) return null;
    return { low: good.from, nominal: null, high: good.to, from: 'author' };
  }

  private lookStep(setup: Setup, probe: LookStep['probe'], refused: boolean): LookStep {
    const model = refused ? null : this.linker.model();
    const known: readonly Look[] = LOOKS[probe.kind as LookProbe];
    const test: Test = { setup, probe };
    const expected = model?.expected(test);
    const outcomes = Object.entries(this.draft.outcomes ?? {}).map(([name, draft]) => ({
      ...this.outcome(name, draft),
      looks: this.looks(name, draft, known),
    }));
    this.coverage(outcomes, known);
    return {
      ...this.base(setup, probe),
      kind: 'look',
      probe,
      expected:
        expected?.kind === 'looks'
          ? expected.looks.filter(({ chance }) => chance > 0).map(({ look }) => look)
          : [known[0]!],
      outcomes,
    };
  }

  private looks(name: string, draft: OutcomeDraft, known: readonly Look[]): Look[] {
    const named = draft.looks ?? (draft.look === undefined ? [name as Look] : [draft.look]);
    for (const look of named) {
      if (known.includes(look)) continue;
      const near = nearestName(look, known);
      this.add(
        'unknown-look',
        [...this.path, 'outcomes', name],
        `"${look}" is not what this instrument shows`,
        near ? `did you mean "${near}"?` : `it shows: ${known.join(', ')}`,
        'key',
      );
    }
    return named;
  }

  private coverage(
    outcomes: readonly { name: string; looks: readonly Look[] }[],
    known: readonly Look[],
  ): void {
    for (const look of known) {
      const holders = outcomes.filter(({ looks }) => looks.includes(look));
      if (holders.length === 0)
        this.add(
          'look-gap',
          [...this.path, 'outcomes'],
          `nothing holds the look "${look}"`,
          'add it to an outcome with "looks"',
          'key',
        );
      if (holders.length > 1)
        this.add(
          'overlapping-looks',
          [...this.path, 'outcomes', holders[1]!.name],
          `the look "${look}" is also held by the outcome "${holders[0]!.name}"`,
          'keep it in one of them',
          'key',
        );
    }
  }

  private question(drafts: Readonly<Record<string, OutcomeDraft>>): AskStep {
    const outcomes = Object.entries(drafts).map(([name, draft]) => this.outcome(name, draft));
    const { usual } = this.draft;
    if (usual !== undefined && !outcomes.some(({ name }) => name === usual))
      this.add(
        'unknown-outcome',
        [...this.path, 'usual'],
        `no outcome named "${usual}"`,
        `one of: ${outcomes.map(({ name }) => name).join(', ')}`,
      );
    return { ...this.base(this.setup(null), null), kind: 'ask', usual: usual ?? null, outcomes };
  }

  private act(go: string): ActStep {
    return {
      ...this.base(this.setup(null), null),
      kind: 'act',
      go: this.linker.target(this.frame, go, [...this.path, 'go']),
    };
  }

  private title(): string {
    const { title } = this.draft;
    if (title === undefined) return words(this.id);
    const filled = withoutPlaces(this.bound(title, ['title']));
    return filled.charAt(0).toUpperCase() + filled.slice(1);
  }

  private text(key: 'say' | 'why' | 'repair' | 'customer'): string {
    const text = this.draft[key];
    return text === undefined ? '' : this.bound(text, [key]);
  }

  /** Places named by a need become the caller's terminal or words; all other places must be terminals. */
  private bound(text: string, path: Path): string {
    const filled = text
      .trim()
      .replace(/\s*\n\s*/g, ' ')
      .replace(/\{([a-z][a-z0-9-]*)\}/g, (whole, need: string) => {
        const given = this.frame.given[need];
        if (given === undefined) return whole;
        return given.includes('.') && !given.includes(' ') ? `{${given}}` : given;
      });
    const { circuit } = this.linker;
    for (const place of circuit ? placesOf(filled) : []) {
      const known = circuit!.terminals.map((terminal) => terminal.id);
      if (known.includes(place) || Object.hasOwn(this.frame.parsed.draft.needs ?? {}, place))
        continue;
      const near = nearestName(place, [
        ...known,
        ...Object.keys(this.frame.parsed.draft.needs ?? {}),
      ]);
      this.add(
        'unknown-place',
        [...this.path, ...path],
        `"{${place}}" is no terminal of circuit "${circuit!.name}"`,
        near ? `did you mean "{${near}}"?` : undefined,
      );
    }
    return filled;
  }

  private add(
    code: string,
    path: Path,
    wording: string,
    fix?: string,
    what: 'key' | 'value' = 'value',
  ): void {
    this.linker.add(code, this.frame.parsed.source, path, wording, fix, what);
  }
}

/** `good` takes the computed span, `low` and `high` what is beside it, up to limits the author wrote. */
function withComputed(outcomes: readonly RangeOutcome[], span: ExpectedRange): RangeOutcome[] {
  const names = new Set(outcomes.map(({ name }) => name));
  const low = names.has('low') ? span.low : null;
  const high = names.has('high') ? span.high : null;
  const written = outcomes.filter(({ from, to }) => from !== null || to !== null);
  const spanLow = span.low ?? Number.NEGATIVE_INFINITY;
  const spanHigh = span.high ?? Number.POSITIVE_INFINITY;
  const below = Math.max(
    ...written.flatMap(({ to }) => (to !== null && to <= spanLow ? [to] : [])),
    Number.NEGATIVE_INFINITY,
  );
  const above = Math.min(
    ...written.flatMap(({ from }) => (from !== null && from >= spanHigh ? [from] : [])),
    Number.POSITIVE_INFINITY,
  );
  return outcomes.map((outcome) => {
    if (outcome.from !== null || outcome.to !== null) return outcome;
    if (outcome.name === 'good') return { ...outcome, from: low, to: high };
    if (outcome.name === 'low')
      return { ...outcome, from: Number.isFinite(below) ? below : null, to: span.low };
    if (outcome.name === 'high')
      return { ...outcome, from: span.high, to: Number.isFinite(above) ? above : null };
    return outcome;
  });
}

function words(name: string): string {
  return name.slice(name.lastIndexOf('/') + 1).replace(/-/g, ' ');
}

/** Whether a name fits a pattern in which each `*` stands for any signs, none too. */
function matches(pattern: string, name: string): boolean {
  const [head = '', ...rest] = pattern.split('*');
  const tail = rest.pop();
  if (tail === undefined) return name === pattern;
  if (!name.startsWith(head) || !name.endsWith(tail)) return false;
  let at = head.length;
  for (const part of rest) {
    const found = name.indexOf(part, at);
    if (found < 0) return false;
    at = found + part.length;
  }
  return at + tail.length <= name.length;
}

/** Faults that begin as the pattern does, as far as any do. */
function relatedFaults(pattern: string, known: readonly string[]): string {
  const segments = pattern.split('.');
  for (let count = segments.length - 1; count > 0; count -= 1) {
    const head = `${segments.slice(0, count).join('.')}.`;
    const related = known.filter((id) => matches(`${head}*`, id));
    if (related.length === 0) continue;
    const more = related.length > RELATED_MAX ? ', ...' : '';
    return `what there is of "${head}*": ${related.slice(0, RELATED_MAX).join(', ')}${more}`;
  }
  const firsts = new Set(known.map((id) => `${id.slice(0, id.indexOf('.') + 1)}*`));
  return `faults of this circuit: ${[...firsts].join(', ')}; all of them with: ohmward predict CIRCUIT --table`;
}
/** Names that a fix lists at most. */
const RELATED_MAX = 12;

/** A title names a place in a word or two: `{sensor.signal-1}` is "signal 1", `{module.signal}` "module signal". */
function withoutPlaces(title: string): string {
  return placesOf(title).reduce((text, place) => {
    const [part, pin = ''] = place.split('.');
    const named = part === 'sensor' ? pin : `${part} ${pin}`;
    return text.replace(`{${place}}`, named.replace(/-/g, ' '));
  }, title);
}
