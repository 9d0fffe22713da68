/** A circuit that a command line names, and a fault of it, with what to do where there is none of that name. */
import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Circuit } from '../circuit/circuit.ts';
import { loadCircuit } from '../circuit/load-circuit.ts';
import { libraryFolder } from '../files/folders.ts';
import { readTextFile } from '../files/read-text.ts';
import { formatIssue } from '../source/format-issue.ts';
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import type { Io } from './command.ts';
import { ownFile } from './own-file.ts';

/** A circuit of the library by its name, or of a file by its path; what is wrong with it goes to `io.err`. */
export function readCircuit(name: string, io: Io): Circuit | null {
  const library = libraryFolder(io.cwd);
  const shipped = library === null ? null : join(library, 'circuits', `${name}.yaml`);
  const path =
    !existsSync(name) && /^[a-z0-9-]+$/.test(name) && shipped !== null && existsSync(shipped)
      ? shipped
      : name;
  const read = readTextFile(resolve(io.cwd, path));
  if ('problem' in read && path === name && library !== null && /^[a-z0-9-]+$/.test(name)) {
    const known = yamlNames(join(library, 'circuits'));
    const near = nearestName(name, known);
    const way = near ? `did you mean "${near}"?` : `known: ${known.join(', ')}.`;
    const own = ownFile(name, io.cwd);
    io.err(
      `there is no circuit "${name}"; ${own ?? `${way} One of your own is named by its path.`}\n`,
    );
    return null;
  }
  if ('problem' in read) {
    io.err(`${safeText(read.problem.path)}: ${read.problem.words}; ${read.problem.fix}\n`);
    return null;
  }
  const { value, issues } = loadCircuit(read.text, path);
  for (const issue of issues) io.err(`${formatIssue(issue, read.text)}\n`);
  return value;
}

function yamlNames(folder: string): string[] {
  const files = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
  return files.map((file) => file.slice(0, -'.yaml'.length)).sort();
}

/** Words for a fault that the circuit has not, or null. */
export function unknownFaultWords(circuit: Circuit, id: string): string | null {
  const ids = ['healthy', ...circuit.faults.map((fault) => fault.id)];
  if (ids.includes(id)) return null;
  const near = nearestName(id, ids);
  return `the circuit "${circuit.name}" has no fault "${safeText(id)}"${near ? `; did you mean "${near}"?` : ''}`;
}
