/**
 * From drafts to a procedure that can be walked: sub-procedures folded in, every name resolved, limits computed.
 *
 * A sub-procedure's steps stand as `caller/inner`; its results become the caller's targets. So nothing later knows
 * of calls: a session, the proof and a drawing all see one flat tree.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { nearestName } from '../source/nearest-name.ts';
import type { Path, YamlSource } from '../source/yaml-source.ts';
import { buildStep } from './build-step.ts';
import type { CautionRule } from './cautions.ts';
import { checkStructure } from './check-structure.ts';
import type { Step as StepDraft } from './generated/procedure.mjs';
import type { Drive } from './job.ts';
import { givenFor, resultsFor } from './link-call.ts';
import type { Frame, Linking, Written } from './linking.ts';
import { openPlaces } from './open-place.ts';
import type { MendedShape, ParsedProcedure } from './parse-procedure.ts';
import type { Procedure, Step } from './procedure.ts';

/** What a procedure may refer to. */
export interface Library {
  readonly procedures: ReadonlyMap<string, ParsedProcedure>;
  readonly circuits: ReadonlyMap<string, Circuit>;
  readonly cautions: readonly CautionRule[];
}

/** A procedure and where each of its steps was written. */
export interface LinkedProcedure {
  readonly procedure: Procedure;
  readonly circuit: Circuit | null;
  readonly places: ReadonlyMap<string, Written>;
  /** The flat step that a name stands for: the first step inside for a name that uses a sub-procedure. */
  readonly standing: (name: string) => string;
}
/** Sub-procedures inside each other at most; deeper is a circle. */
const MAX_CALL_DEPTH = 8;
/** Steps of a tree with those of all it uses: beyond any that a person could follow, and calls of calls multiply. */
const STEPS_MAX = 1000;

/** For which drive the cautions are chosen, and where a model comes from. */
export interface LinkOptions {
  readonly drive: Drive;
  /** Makes the circuit's model for `expect: computed`; called at most once. */
  readonly modelOf: (circuit: Circuit) => Model;
}

/** A tree, or one that is only good for finding the rest of its mistakes. */
export interface CheckedLink extends Checked<LinkedProcedure> {
  /** The tree with each name read as it was most likely meant; null where a mistake leaves open where it leads. */
  readonly readable: LinkedProcedure | null;
}

/** Links `parsed` with the library and checks its structure. `value` is null when it cannot be walked. */
export function linkProcedure(
  parsed: ParsedProcedure,
  library: Library,
  options: LinkOptions,
): CheckedLink {
  const linker = new Linker(library, options, parsed);
  const linked = linker.link();
  const issues = [...linker.issues];
  issues.push(...checkStructure(linked, options.drive, linker.isReadable));
  const isWalked = isUsable(issues) && parsed.mended === undefined;
  return {
    value: isWalked ? linked : null,
    issues,
    readable: linker.isReadable ? linked : null,
  };
}

/** Mistakes that leave where the tree leads as it is, whatever mends them. */
const BESIDE_THE_WAY: ReadonlySet<string> = new Set([
  'missing-repair',
  'missing-text',
  'unknown-place',
  'open-place',
  'unknown-caution',
  'unknown-outcome',
  'unknown-need',
  'unknown-result',
  'bad-level',
  'against-setup',
]);
/** Mistakes in a step of which something was left out that have nothing to do with that. */
const OF_A_DAMAGED_STEP = /^unknown-|^bad-value$/;

/** So many names are read before anyone looks into the file instead. */
const NAMES_MAX = 12;

function knownSteps(names: readonly string[]): string {
  const more = names.length > NAMES_MAX ? ` and ${names.length - NAMES_MAX} more` : '';
  return `known steps: ${names.slice(0, NAMES_MAX).join(', ')}${more}`;
}

/** One linking from the top file down; gathers all mistakes instead of stopping at one. */
export class Linker implements Linking {
  readonly issues: Issue[] = [];
  /** Whether every mistake so far leaves the tree as it was meant: a name with "did you mean" is read as that. */
  isReadable = true;
  readonly circuit: Circuit | null;
  readonly library: Library;
  readonly drive: Drive;
  private readonly top: ParsedProcedure;
  private readonly modelOf: (circuit: Circuit) => Model;
  private cachedModel: Model | null = null;
  private readonly steps: Record<string, Step> = {};
  private readonly places = new Map<string, Written>();
  /** Files that are read in spite of their shape. */
  private readonly shapes = new Map<YamlSource, MendedShape>();
  /** Steps that are no steps of their own in the flat tree, and what stands for them. */
  private readonly aliases = new Map<string, string>();

  constructor(library: Library, options: LinkOptions, top: ParsedProcedure) {
    this.library = library;
    this.drive = options.drive;
    this.modelOf = options.modelOf;
    this.top = top;
    this.circuit = this.findCircuit();
  }

  link(): LinkedProcedure {
    const { draft, source } = this.top;
    if (draft.needs !== undefined)
      this.add(
        'sub-procedure',
        source,
        ['needs'],
        'this is a sub-procedure; it only runs inside another one',
        'choose a procedure without "needs"',
      );
    this.tellOpenPlaces();
    const start = this.fold({
      parsed: this.top,
      prefix: '',
      given: {},
      givenAt: {},
      results: {},
      callers: [],
      cautions: [],
    });
    this.tellCircles();
    const procedure: Procedure = {
      name: draft.procedure,
      title: draft.title,
      about: draft.about ?? '',
      circuit: draft.circuit ?? null,
      codes: draft.codes ?? [],
      start: this.standing(start),
      steps: Object.fromEntries(
        Object.entries(this.steps).map(([id, step]) => [id, this.resolved(step)]),
      ),
    };
    return {
      procedure,
      circuit: this.circuit,
      places: this.places,
      standing: (name) => this.standing(name),
    };
  }

  /** Braces in the texts over the tree; those of a step are told with it. */
  private tellOpenPlaces(): void {
    const { draft, source } = this.top;
    const known = (this.circuit?.terminals ?? []).map(({ id }) => id);
    for (const key of ['title', 'about'] as const)
      for (const { words, fix } of openPlaces(draft[key] ?? '', known))
        this.add('open-place', source, [key], words, fix, 'value');
  }

  /** The cautions that a step asks for by name; one that is not there is told. */
  namedCautions(source: YamlSource, path: Path, { cautions = [] }: StepDraft): readonly string[] {
    const known = this.library.cautions.map((rule) => rule.id);
    for (const [index, name] of cautions.entries()) {
      if (known.includes(name)) continue;
      const near = nearestName(name, known);
      this.add(
        'unknown-caution',
        source,
        [...path, 'cautions', index],
        `no caution named "${name}"`,
        near ? `did you mean "${near}"?` : `known: ${known.join(', ')}`,
      );
    }
    return cautions;
  }

  /** Whether the procedure names a circuit, known or not. */
  get namesCircuit(): boolean {
    return this.top.draft.circuit !== undefined;
  }

  model(): Model | null {
    if (!this.circuit) return null;
    this.cachedModel ??= this.modelOf(this.circuit);
    return this.cachedModel;
  }

  add(
    code: string,
    source: YamlSource,
    path: Path,
    words: string,
    fix?: string,
    what: 'key' | 'value' = 'value',
    severity: Issue['severity'] = 'error',
    isMeant = false,
  ): void {
    const at = source.locate(path, what);
    const { issues: told = [], damaged } = this.shapes.get(source) ?? { damaged: new Set() };
    const inDamaged = damaged === null || (path[0] === 'steps' && damaged.has(String(path[1])));
    // What is wrong with its shape was told there, and what follows from that needs no words.
    if (inDamaged && !OF_A_DAMAGED_STEP.test(code)) return;
    if (told.some((one) => one.at.line === at.line && one.at.column === at.column)) return;
    if (severity === 'error' && !isMeant && !BESIDE_THE_WAY.has(code)) this.isReadable = false;
    const same = this.issues.some(
      (one) =>
        one.code === code &&
        one.words === words &&
        one.at.file === at.file &&
        one.at.line === at.line,
    );
    if (!same) this.issues.push({ code, severity, at, words, ...(fix ? { fix } : {}) });
  }

  /** The flat id of a step named in a frame; an unknown name is an issue and leads to the start. */
  target(frame: Frame, name: string, path: Path): string {
    const { draft, source } = frame.parsed;
    if (Object.hasOwn(draft.steps, name)) return frame.prefix + name;
    const near = nearestName(name, Object.keys(draft.steps));
    this.add(
      'unknown-step',
      source,
      path,
      `no step named "${name}"`,
      near ? `did you mean "${near}"?` : knownSteps(Object.keys(draft.steps)),
      'value',
      'error',
      near !== null,
    );
    return frame.prefix + (near ?? draft.start);
  }

  private findCircuit(): Circuit | null {
    const name = this.top.draft.circuit;
    if (name === undefined) return null;
    const found = this.library.circuits.get(name);
    if (found) return found;
    const near = nearestName(name, [...this.library.circuits.keys()]);
    this.add(
      'unknown-circuit',
      this.top.source,
      ['circuit'],
      `no circuit named "${name}" can be used`,
      near
        ? `did you mean "${near}"?`
        : 'check that its file is in the folder "circuits" beside the procedures and has no errors',
    );
    return null;
  }

  /** Adds the steps of a frame; the flat id of its start. */
  private fold(frame: Frame): string {
    const { draft, source, mended } = frame.parsed;
    if (mended) {
      this.shapes.set(source, mended);
      if (mended.damaged === null || mended.damaged.size > 0) this.isReadable = false;
    }
    if (this.places.size + Object.keys(draft.steps).length > STEPS_MAX) {
      const words = `a tree has at most ${STEPS_MAX} steps, including those of all sub-procedures`;
      this.add('file-too-large', source, ['steps'], words, 'split it into several trees', 'key');
      return frame.prefix + draft.start;
    }
    for (const [name, step] of Object.entries(draft.steps)) {
      const id = frame.prefix + name;
      this.places.set(id, { source, path: ['steps', name] });
      if (step.use !== undefined) this.call(frame, name, step);
      else if (step.result !== undefined) this.result(frame, name, step.result);
      else {
        const built = buildStep(this, frame, name, step);
        // Of a damaged one the mistakes are told, and what it leads to is not known.
        if (built && mended?.damaged?.has(name) !== true) this.steps[id] = built;
      }
    }
    return this.target(frame, draft.start, ['start']);
  }

  private call(frame: Frame, name: string, step: StepDraft): void {
    const { source } = frame.parsed;
    const path = ['steps', name];
    const used = step.use!;
    const parsed = this.library.procedures.get(used);
    if (!parsed) {
      const near = nearestName(used, [...this.library.procedures.keys()]);
      this.add(
        'unknown-procedure',
        source,
        [...path, 'use'],
        `no procedure named "${used}"`,
        near ? `did you mean "${near}"?` : undefined,
      );
      return;
    }
    if (frame.callers.includes(used) || frame.callers.length >= MAX_CALL_DEPTH) {
      this.add(
        'circular-use',
        source,
        [...path, 'use'],
        `"${used}" uses itself: ${[...frame.callers, used].join(' > ')}`,
        'break the loop',
      );
      return;
    }
    const { given, givenAt } = givenFor(this, frame, name, step, parsed);
    const results = resultsFor(this, frame, name, step, parsed);
    const start = this.fold({
      parsed,
      prefix: `${frame.prefix}${name}/`,
      given,
      givenAt,
      results,
      callers: [...frame.callers, used],
      cautions: [...frame.cautions, ...this.namedCautions(source, path, step)],
    });
    this.aliases.set(frame.prefix + name, start);
  }

  private result(frame: Frame, name: string, result: string): void {
    if (frame.callers.length === 0)
      this.add(
        'result-outside',
        frame.parsed.source,
        ['steps', name, 'result'],
        'only a sub-procedure ends in a result',
        'end in a conclusion with "conclude"',
      );
    this.aliases.set(frame.prefix + name, frame.results[result] ?? '');
  }

  /** `$name` becomes what the caller gave. */
  fill(frame: Frame, value: string, path: Path): string {
    return value.replace(/\$([a-z][a-z0-9-]*)/g, (_, need: string) => {
      const given = frame.given[need];
      if (given !== undefined) return given;
      const declared = Object.hasOwn(frame.parsed.draft.needs ?? {}, need);
      this.isReadable = false;
      if (!declared)
        this.add(
          'unknown-need',
          frame.parsed.source,
          path,
          `"$${need}" is not among the needs of this procedure`,
          `declare it under "needs"`,
        );
      return need;
    });
  }

  /** Follows aliases to a step that stands in the flat tree. */
  private standing(id: string): string {
    let now = id;
    for (let hops = 0; hops <= this.aliases.size; hops += 1) {
      const next = this.aliases.get(now);
      if (next === undefined) return now;
      now = next;
    }
    return now;
  }

  /** A call whose result leads back to it without a step between: nothing would ever be asked there. */
  private tellCircles(): void {
    for (const [id, start] of this.aliases) {
      const isCall = start.startsWith(`${id}/`);
      if (!isCall || !this.aliases.has(this.standing(id))) continue;
      const { source, path } = this.places.get(id)!;
      const words = `"${id}" loops back to itself without asking for anything`;
      this.add('endless-loop', source, path, words, 'lead one result out', 'key');
    }
  }

  /** Steps inside calls that a conclusion names: one that is not there is told, and read as the one that is meant. */
  private insideCalls(
    id: string,
    key: 'requires' | 'retest',
    names: readonly string[],
  ): readonly string[] {
    const all = Object.keys(this.steps);
    return names.flatMap((name, index) => {
      const isThere =
        Object.hasOwn(this.steps, this.standing(name)) ||
        (key === 'requires' && all.some((one) => one.startsWith(`${name}/`)));
      if (isThere) return [name];
      const call = name.split('/').slice(0, -1).join('/');
      const inner = all.filter((one) => one.startsWith(`${call}/`));
      const near = nearestName(name, inner);
      // The call itself is unknown, or a step in it could not be read, which has been told.
      const isTold = near === null && !this.isReadable;
      if (call === '' || inner.length === 0 || isTold) return [name];
      const { source, path } = this.places.get(id)!;
      const fix = near ? `did you mean "${near}"?` : knownSteps(inner);
      const words = `no step named "${name}"`;
      this.add('unknown-step', source, [...path, key, index], words, fix, 'value', 'error', true);
      return near ? [near] : [];
    });
  }

  private resolved(step: Step): Step {
    const follow = (id: string) => this.standing(id);
    if (step.kind === 'conclude')
      return {
        ...step,
        // What is inside a call is named by the call, so these stay as they are written.
        ...(step.requires === undefined
          ? {}
          : { requires: this.insideCalls(step.id, 'requires', step.requires) }),
        ...(step.otherwise === undefined ? {} : { otherwise: follow(step.otherwise) }),
        retest: this.insideCalls(step.id, 'retest', step.retest).map(follow),
      };
    const cannot = step.cannot === null ? null : follow(step.cannot);
    const leading = <T extends { readonly go: string }>(one: T): T => ({
      ...one,
      go: follow(one.go),
    });
    // biome-ignore lint/nursery/useExhaustiveSwitchCases: a conclusion is dealt with above, and the compiler holds the rest complete
    switch (step.kind) {
      case 'act':
        return { ...leading(step), cannot };
      case 'measure':
        return { ...step, cannot, outcomes: step.outcomes.map(leading) };
      case 'look':
        return { ...step, cannot, outcomes: step.outcomes.map(leading) };
      case 'ask':
        return { ...step, cannot, outcomes: step.outcomes.map(leading) };
    }
  }
}
