/**
 * Everything that can be wrong with a set of files, all at once: each file by itself, each against the others, and
 * the proof of every tree. What has not changed since the last check is not computed again.
 */

import { basename } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { loadCircuit } from '../../circuit/load-circuit.ts';
import { createModel, type Model } from '../../circuit/model.ts';
import { loadAssignment } from '../../drill/assignment.ts';
import { loadActions } from '../../drill/drill-actions.ts';
import { LazyFiles } from '../../files/lazy-files.ts';
import { STANDARD_SETTINGS } from '../../files/settings.ts';
import { loadCautions } from '../../procedure/cautions.ts';
import { DRIVES } from '../../procedure/job.ts';
import {
  type Library,
  type LinkedProcedure,
  linkProcedure,
} from '../../procedure/link-procedure.ts';
import { loadJob } from '../../procedure/load-job.ts';
import { type MergedCautions, mergeCautions } from '../../procedure/merge-cautions.ts';
import { type ParsedProcedure, parseProcedure } from '../../procedure/parse-procedure.ts';
import { proofSize } from '../../proof/proof-size.ts';
import { type Proof, proveProcedure } from '../../proof/prove-procedure.ts';
import { loadAnswers } from '../../session/answers-file.ts';
import { SESSION_SAMPLES } from '../../session/session-model.ts';
import type { Checked, Issue } from '../../source/issue.ts';
import type { CheckedFile, LoadedValue } from './checked-file.ts';
import { crossIssues } from './cross-issues.ts';
import { CAUTIONS_FILE, type FileKind, fileKind } from './file-kind.ts';
import type { Gathered, GatheredFile } from './gather-files.ts';
import { treeKey, treesIn } from './kept-verdicts.ts';
import { quietCautions } from './quiet-cautions.ts';
import { isLostTree, unshownCautions } from './unshown-cautions.ts';

/** Cars a fault; while watching fewer, so that the answer comes soon after a save. */
export const SAMPLES = SESSION_SAMPLES;
export const SAMPLES_WATCHING = 32;
const SEED = 1;
/** One fault goes through the tree after the other, and what was compiled for it is hardly asked for again. Our choice. */
const KEPT_ELEMENTS = 20_000;

/** What a check found, and what the drawings and reports behind it need. */
export interface CheckReport {
  /** The files that were asked about. */
  readonly files: readonly CheckedFile[];
  /** By file, line and column. */
  readonly issues: readonly Issue[];
  readonly proofs: readonly ProvedFile[];
  /** Trees that were asked for and not proved, since a mistake leaves open where they lead. */
  readonly held: number;
  /** Every tree that was proved, also one of which only a sub-procedure was asked for: its text, and how many errors it has. */
  readonly verdicts: readonly { readonly key: string; readonly errors: number }[];
  /** Trees that can be walked, the proved ones and those without a circuit. */
  readonly trees: readonly LinkedFile[];
  /** Texts of all files that an issue may stand in. */
  readonly texts: ReadonlyMap<string, string>;
}

/** A file whose tree can be walked. */
export interface LinkedFile {
  readonly path: string;
  readonly linked: LinkedProcedure;
}

/** A file whose tree was walked with every fault. */
export interface ProvedFile extends LinkedFile {
  readonly proof: Proof;
  readonly model: Model;
}

/** What is kept of a tree until something it depends on changes. */
interface CheckedTree {
  readonly issues: readonly Issue[];
  readonly tree: LinkedFile | null;
  readonly proved: ProvedFile | null;
  /** Whether a mistake has kept it from being proved. */
  readonly isHeld: boolean;
}

/** Told now and then what is being done and how much of it is, 0 to 1. */
export type OnProgress = (what: string, share: number) => void;
/** Part of the time for a tree that linking takes, which computes its limits. About so with the shipped trees. */
const LINK_SHARE = 0.2;

/** How far files are gone into: `linked` leaves out the proofs, and with them the trees that use a sub-procedure. */
export type Depth = 'linked' | 'proved';

/** A checker that keeps what it has computed. */
export class Checker {
  private readonly samples: number;
  private readonly loaded = new Map<string, CheckedFile>();
  private readonly models = new Map<Circuit, Model>();
  private readonly depth: Depth;
  private readonly asked: boolean;
  private proved = new Map<string, CheckedTree>();

  /** `asked`: the number of cars was asked for, and is taken however long that is. */
  constructor(samples: number = SAMPLES, depth: Depth = 'proved', asked = false) {
    this.samples = samples;
    this.depth = depth;
    this.asked = asked;
  }

  check(gathered: Gathered, onProgress: OnProgress = () => {}): CheckReport {
    const files = gathered.files.map((file, index) => {
      onProgress(`reading ${file.path}`, index / gathered.files.length);
      return this.load(file);
    });
    const cautions = cautionsOf(files);
    const circuits = this.circuitsOf(files);
    const library = libraryOf(files, circuits, cautions.rules);
    const issues: Issue[] = [...gathered.issues];
    const wanted = files.filter((file) => file.wanted);
    for (const file of files) if (file.wanted || isLostCautions(file)) issues.push(...file.issues);
    issues.push(...crossIssues(files, library));
    issues.push(...cautions.issues, ...quietCautions(files), ...unshownCautions(files));
    const paths = new Set(wanted.map(({ path }) => path));
    const proofs: ProvedFile[] = [];
    const trees: LinkedFile[] = [];
    let held = 0;
    const verdicts: { readonly key: string; readonly errors: number }[] = [];
    const kept: typeof this.proved = new Map();
    const roots = files.flatMap((file) => {
      if (file.loaded?.kind !== 'procedure' || file.loaded.value.draft.needs !== undefined)
        return [];
      const concerned = usedBy(file.loaded.value, library);
      const isCaller = this.depth === 'proved' && [...concerned].some((path) => paths.has(path));
      if (!file.wanted && !isCaller) return [];
      return [{ file, parsed: file.loaded.value, concerned }];
    });
    for (const [index, { file, parsed, concerned }] of roots.entries()) {
      const circuit = circuits.pathOf(parsed.draft.circuit ?? '');
      const key = JSON.stringify([file.path, dependsOn(files, concerned, circuit)]);
      const place = roots.length > 1 ? ` (${index + 1} of ${roots.length})` : '';
      const onShare = (share: number) => onProgress(`proving ${file.path}${place}`, share);
      const found = this.proved.get(key) ?? this.prove(file.path, parsed, library, onShare);
      kept.set(key, found);
      if (found.proved) {
        const all = [...file.issues, ...found.issues].filter(
          ({ severity }) => severity === 'error',
        );
        verdicts.push({ key: treeKey(parsed, library), errors: inOrder(all).length });
      }
      issues.push(...(circuits.lost(parsed.draft.circuit ?? '')?.issues ?? []));
      issues.push(...lostProcedures(files, parsed, library));
      // A sub-procedure is checked through its callers, and then only its own lines are told.
      issues.push(...found.issues.filter(({ at }) => file.wanted || paths.has(at.file)));
      if (file.wanted && found.isHeld) held += 1;
      if (file.wanted && found.tree) trees.push(found.tree);
      if (file.wanted && found.proved) proofs.push(found.proved);
    }
    this.proved = kept;
    const unread = wanted.filter(isLostTree);
    const texts = new Map(files.map(({ path, text }) => [path, text]));
    return {
      files: wanted,
      issues: inOrder(issues),
      proofs,
      held: held + unread.length,
      verdicts,
      trees,
      texts,
    };
  }

  /** A circuit that nobody asked about is left until something names it: working out its faults takes longest of all. */
  private load(file: GatheredFile): CheckedFile {
    const known = this.loaded.get(file.path);
    if (known && known.text === file.text) return { ...known, ...file };
    const found = fileKind(file.text, file.path);
    if ('issues' in found) return { ...file, kind: null, loaded: null, issues: found.issues };
    if (found.kind === 'circuit' && !file.wanted)
      return { ...file, kind: 'circuit', loaded: null, issues: [] };
    return this.keep(loadAs(found.kind, file));
  }

  private keep(made: CheckedFile): CheckedFile {
    this.loaded.set(made.path, made);
    return made;
  }

  /** The circuits among the files by the names that they bear, the named files before those beside them. */
  private circuitsOf(files: readonly CheckedFile[]): LazyFiles<Circuit> {
    const all = files.filter(({ kind }) => kind === 'circuit');
    const paths = (wanted: boolean) =>
      all.filter((file) => file.wanted === wanted).map(({ path }) => path);
    const load = (path: string) => {
      const file = all.find((one) => one.path === path)!;
      const { loaded, issues } = file.loaded ? file : this.keep(loadAs('circuit', file));
      const value = loaded?.kind === 'circuit' ? loaded.value : null;
      return { path, text: file.text, value, issues };
    };
    return new LazyFiles({ first: paths(true), rest: paths(false) }, load, ({ name }) => name);
  }

  private prove(
    path: string,
    parsed: ParsedProcedure,
    library: Library,
    onShare: (share: number) => void,
  ): CheckedTree {
    const issues: Issue[] = [];
    let linked: LinkedProcedure | null = null;
    let readable: LinkedProcedure | null = null;
    const drives = this.depth === 'proved' ? DRIVES : DRIVES.slice(0, 1);
    for (const [index, drive] of drives.entries()) {
      onShare((LINK_SHARE * index) / DRIVES.length);
      const made = linkProcedure(parsed, library, {
        drive,
        modelOf: (circuit) => this.model(circuit),
      });
      for (const issue of made.issues)
        if (!issues.some((one) => same(one, issue))) issues.push(issue);
      linked ??= made.value;
      readable ??= made.readable;
    }
    const tree = linked === null ? null : { path, linked };
    if (!readable?.circuit || this.depth === 'linked')
      return { issues, tree, proved: null, isHeld: readable === null };
    const size = this.asked
      ? { cars: this.samples, issues: [] }
      : proofSize(readable, this.samples);
    issues.push(...size.issues);
    if (size.cars === 0) return { issues, tree, proved: null, isHeld: false };
    // Limits stand over all cars, however few are sent through the tree.
    const model = { ...this.model(readable.circuit), samples: size.cars };
    const proof = proveProcedure(readable, model, (share) =>
      onShare(LINK_SHARE + (1 - LINK_SHARE) * share),
    );
    return {
      issues: [...issues, ...proof.issues],
      tree,
      proved: tree && { ...tree, proof, model },
      isHeld: false,
    };
  }

  private model(circuit: Circuit): Model {
    let model = this.models.get(circuit);
    if (!model) {
      model = createModel(circuit, {
        samples: Math.max(SAMPLES, this.samples),
        seed: SEED,
        meter: STANDARD_SETTINGS.meter,
        keptElements: KEPT_ELEMENTS,
      });
      this.models.set(circuit, model);
    }
    return model;
  }
}

/** Text of everything a proof depends on: the tree, its sub-procedures, its circuit, the cautions, and all names. */
function dependsOn(
  files: readonly CheckedFile[],
  concerned: ReadonlySet<string>,
  circuit: string | null,
): string[] {
  return files.map(({ path, kind, text }) =>
    concerned.has(path) || kind === 'cautions' || path === circuit ? text : path,
  );
}

function loadAs(kind: FileKind, file: GatheredFile): CheckedFile {
  const finish = <K extends FileKind, T>(is: K, { value, issues }: Checked<T>) => ({
    ...file,
    kind: is,
    loaded: (value === null ? null : { kind: is, value }) as LoadedValue | null,
    issues,
  });
  switch (kind) {
    case 'procedure':
      return procedureFile(file);
    case 'circuit':
      return finish(kind, loadCircuit(file.text, file.path));
    case 'job':
      return finish(kind, loadJob(file.text, file.path));
    case 'cautions':
      return finish(kind, loadCautions(file.text, file.path));
    case 'assignment':
      return finish(kind, loadAssignment(file.text, file.path));
    case 'answers':
      return finish(kind, loadAnswers(file.text, file.path));
    case 'actions':
      return finish(kind, loadActions(file.text, file.path));
  }
}

/** With mistakes in its shape it is kept as far as it can be read, so that the others are told as well. */
function procedureFile(file: GatheredFile): CheckedFile {
  const { issues, readable } = parseProcedure(file.text, file.path);
  const loaded: LoadedValue | null = readable && { kind: 'procedure', value: readable };
  return { ...file, kind: 'procedure', loaded, issues };
}

/** What the files may refer to; the first of a name wins, and the named files come first. */
function libraryOf(
  files: readonly CheckedFile[],
  circuits: Library['circuits'],
  cautions: Library['cautions'],
): Library {
  const procedures = new Map<string, ParsedProcedure>();
  // None further down takes the place of one that cannot be used.
  const lost = new Set<string>();
  for (const file of files) {
    const { loaded } = file;
    if (loaded?.kind === 'procedure' && isThere(file)) {
      const name = loaded.value.draft.procedure;
      if (!procedures.has(name) && !lost.has(name)) procedures.set(name, loaded.value);
    } else {
      const name = lostName(file);
      if (name !== null) lost.add(name);
    }
  }
  return { procedures, circuits, cautions };
}

/** Cautions that cannot be used are told whatever was asked for: no session begins beside them. */
function isLostCautions({ path, kind, loaded }: CheckedFile): boolean {
  return loaded === null && (kind === 'cautions' || CAUTIONS_FILE.test(basename(path)));
}

/** What is wrong with sub-procedures that a tree uses and that cannot be used, told though only the tree was asked for. */
function lostProcedures(
  files: readonly CheckedFile[],
  parsed: ParsedProcedure,
  library: Library,
): readonly Issue[] {
  const used = [...treesIn(parsed, library)].flatMap(({ draft }) =>
    Object.values(draft.steps).flatMap(({ use }) => (use === undefined ? [] : [use])),
  );
  const lost = new Set(used.filter((name) => !library.procedures.has(name)));
  return files.flatMap((file) =>
    file.wanted || isThere(file) || !lost.has(lostName(file) ?? '') ? [] : file.issues,
  );
}

/** The name that a sub-procedure or tree stands for though it cannot be used; null of any other file. */
function lostName({ path, kind, loaded }: CheckedFile): string | null {
  if (loaded?.kind === 'procedure') return loaded.value.draft.procedure;
  return kind === 'procedure' || kind === null ? basename(path).replace(/\.ya?ml$/, '') : null;
}

/** One that cannot be used is missing, unless its mistakes are told. */
function isThere({ loaded, wanted }: CheckedFile): boolean {
  return loaded?.kind === 'procedure' && (wanted || loaded.value.mended === undefined);
}

/** The shipped cautions with those of all other files added. */
function cautionsOf(files: readonly CheckedFile[]): MergedCautions {
  const all = files.flatMap(({ loaded, shipped }) =>
    loaded?.kind === 'cautions' ? [{ shipped, value: loaded.value }] : [],
  );
  return mergeCautions(
    all.find(({ shipped }) => shipped)?.value ?? null,
    all.flatMap(({ shipped, value }) => (shipped ? [] : [value])),
  );
}

/** Paths of the files that make up a tree: its own and its sub-procedures', theirs included. */
function usedBy(parsed: ParsedProcedure, library: Library): Set<string> {
  return new Set([...treesIn(parsed, library)].map(({ source }) => source.file));
}

function same(a: Issue, b: Issue): boolean {
  return (
    a.code === b.code && a.words === b.words && a.at.file === b.at.file && a.at.line === b.at.line
  );
}

function inOrder(issues: readonly Issue[]): Issue[] {
  const unique = issues.filter(
    (issue, index) => issues.findIndex((one) => same(one, issue)) === index,
  );
  const key = ({ at }: Issue) =>
    `${at.file}\u0000${String(at.line).padStart(7, '0')}${String(at.column).padStart(6, '0')}`;
  return unique.sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}
