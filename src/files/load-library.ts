/**
 * The shipped and the shop's own procedures, circuits, cautions and jobs, read from one folder:
 * `*.yaml` and `families/*.yaml` are procedures, `circuits/*.yaml`, `jobs/*.yaml`, `cautions.yaml`. The shop's cautions
 * are added to the shipped ones.
 */

import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Circuit } from '../circuit/circuit.ts';
import { loadCircuit } from '../circuit/load-circuit.ts';
import { type LoadedCautions, loadCautions } from '../procedure/cautions.ts';
import type { Library } from '../procedure/link-procedure.ts';
import { type LoadedJob, loadJob } from '../procedure/load-job.ts';
import { mergeCautions } from '../procedure/merge-cautions.ts';
import { type ParsedProcedure, parseProcedure } from '../procedure/parse-procedure.ts';
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { parseYaml } from '../source/parse-yaml.ts';
import { LazyFiles } from './lazy-files.ts';
import type { LibraryFile } from './library-file.ts';
import { readTextFile } from './read-text.ts';

/** A circuit by what a list of them shows. */
export interface CircuitHead {
  readonly name: string;
  readonly title: string;
}

/** The library in hand: each file is worked out when it is first asked for. */
export interface LoadedLibrary extends Library {
  readonly folder: string;
  readonly procedures: LazyFiles<ParsedProcedure>;
  readonly circuits: LazyFiles<Circuit>;
  /** Names and titles of the circuits, without working any of them out. */
  readonly circuitHeads: () => readonly CircuitHead[];
  readonly jobFiles: () => readonly LibraryFile<LoadedJob>[];
  /** The shipped one first. */
  readonly cautionFiles: readonly LibraryFile<LoadedCautions>[];
  /** Errors of the cautions, each with the text it stands in: with any, nobody is sent to a vehicle. */
  readonly cautionFlaws: readonly { readonly issue: Issue; readonly text: string }[];
}

/** Files that come before those of the folder; of two with one name the first is used, and of cautions all. */
export interface LibraryPaths {
  readonly procedures: readonly string[];
  readonly circuits: readonly string[];
  readonly cautions: readonly string[];
}

const NO_PATHS: LibraryPaths = { procedures: [], circuits: [], cautions: [] };

/** The library in a folder, and the files of `before`. Files that cannot be used are kept with their issues and are missing from the maps. */
export function loadLibrary(folder: string, before: LibraryPaths = NO_PATHS): LoadedLibrary {
  const circuitPaths = yamlFiles(join(folder, 'circuits'));
  const cautionFiles = [join(folder, 'cautions.yaml'), ...before.cautions].map((path) =>
    loadFile(path, loadCautions),
  );
  const [shipped, ...own] = cautionFiles.map(({ value }) => value);
  const merged = mergeCautions(
    shipped ?? null,
    own.filter((value) => value !== null),
  );
  const flaws = [...cautionFiles.flatMap(({ issues }) => issues), ...merged.issues];
  let jobFiles: readonly LibraryFile<LoadedJob>[] | null = null;
  return {
    folder,
    procedures: new LazyFiles(
      {
        first: before.procedures,
        rest: [folder, join(folder, 'families')].flatMap((place) =>
          yamlFiles(place).filter((path) => basename(path) !== 'cautions.yaml'),
        ),
      },
      (path) => loadFile(path, parseProcedure),
      ({ draft }) => draft.procedure,
    ),
    circuits: new LazyFiles(
      { first: before.circuits, rest: circuitPaths },
      (path) => loadFile(path, loadCircuit),
      ({ name }) => name,
    ),
    circuitHeads: () => [...before.circuits, ...circuitPaths].flatMap(headOf),
    jobFiles: () => {
      jobFiles ??= yamlFiles(join(folder, 'jobs')).map((path) => loadFile(path, loadJob));
      return jobFiles;
    },
    cautionFiles,
    cautionFlaws: flaws
      .filter((issue) => !isUsable([issue]))
      .map((issue) => ({
        issue,
        text: cautionFiles.find(({ path }) => path === issue.at.file)?.text ?? '',
      })),
    cautions: merged.rules,
  };
}

/** One file through its loader; a file that cannot be read is an issue of its own. */
export function loadFile<T>(
  path: string,
  load: (text: string, file: string) => Checked<T>,
): LibraryFile<T> {
  const read = readTextFile(path);
  if ('problem' in read) {
    const { words, fix } = read.problem;
    const at = { file: path, line: 1, column: 1, endLine: 1, endColumn: 1 };
    return {
      path,
      text: '',
      value: null,
      issues: [{ code: 'unreadable-file', severity: 'error', at, words, fix }],
    };
  }
  return { path, text: read.text, ...load(read.text, path) };
}

function yamlFiles(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => /\.ya?ml$/.test(name))
      .sort()
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}

/** A name that a circuit can have, as the schema has it. */
const CIRCUIT_NAME = /^[a-z][a-z0-9-]{0,60}$/;

/** Name and title of a circuit file that has these at least; its other mistakes are told when it is used. */
function headOf(path: string): CircuitHead[] {
  const read = readTextFile(path);
  if ('problem' in read) return [];
  const data = parseYaml(read.text, path).value?.data as Record<string, unknown> | null | undefined;
  const name = data?.['circuit'];
  const title = data?.['title'];
  if (typeof name !== 'string' || !CIRCUIT_NAME.test(name)) return [];
  return typeof title === 'string' ? [{ name, title }] : [];
}
