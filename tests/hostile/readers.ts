import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { loadCautions } from '../../src/procedure/cautions.ts';
import { loadJob } from '../../src/procedure/load-job.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { loadAnswers } from '../../src/session/answers-file.ts';
import { formatIssue } from '../../src/source/format-issue.ts';
import type { Checked, Issue } from '../../src/source/issue.ts';
import { safeText } from '../../src/source/safe-text.ts';
import { CsvReader } from '../../src/waveform/read-csv.ts';
import { isWav, readWav } from '../../src/waveform/read-wav.ts';

export const YAML_KINDS = ['procedure', 'circuit', 'job', 'cautions', 'answers'] as const;
export type YamlKind = (typeof YAML_KINDS)[number];
export type Kind = YamlKind | 'csv' | 'wav' | 'log';

interface Answered {
  readonly usable: boolean;
  readonly issues: readonly Issue[];
}

const LOADERS: Readonly<Record<YamlKind, (text: string, file: string) => Checked<unknown>>> = {
  procedure: parseProcedure,
  circuit: loadCircuit,
  job: loadJob,
  cautions: loadCautions,
  answers: loadAnswers,
};

/** The file name that every issue must carry. */
const FILE = 'hostile.file';

/** Reads as the program does; a session log's verdict is told as an issue at its first bad line. */
export function readAs(kind: Kind, content: string | Uint8Array): Answered {
  const bytes = typeof content === 'string' ? Buffer.from(content) : content;
  if (kind === 'log') {
    const log = readSessionLog(bytes);
    if (log.verdict === 'whole') return { usable: true, issues: [] };
    const line = log.firstBadLine ?? 0;
    const at = { file: FILE, line, column: 1, endLine: line, endColumn: 1 };
    const words = log.words ?? '';
    return { usable: false, issues: [{ code: log.verdict, severity: 'error', at, words }] };
  }
  if (kind === 'wav' && isWav(bytes)) {
    const { capture, issues } = readWav(bytes, { file: FILE });
    return { usable: capture !== null, issues };
  }
  if (kind === 'csv' || kind === 'wav') {
    const reader = new CsvReader({ file: FILE, rateHz: 1000 });
    for (let at = 0; at < bytes.length; at += 4096)
      if (!reader.push(bytes.subarray(at, at + 4096))) break;
    const { capture, issues } = reader.end();
    return { usable: capture !== null, issues };
  }
  const text = typeof content === 'string' ? content : new TextDecoder().decode(content);
  const { value, issues } = LOADERS[kind](text, FILE);
  return { usable: value !== null, issues };
}

const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/u;
/** More than this is no sentence; a message must not carry a whole file to the terminal. */
const LINE_COLUMNS = 1500;

/** What is wrong with how an answer is told, or null: a place in the file, whole lines, nothing a terminal obeys. */
export function flawOfAnswer({ usable, issues }: Answered, text: string): string | null {
  if (!usable && issues.length === 0) return 'refused without a word';
  if (issues.length > 200) return `${issues.length} issues at once`;
  const lines = text.split('\n').length;
  for (const issue of issues) {
    const { file, line, column, endLine, endColumn } = issue.at;
    const told = JSON.stringify({ ...issue, words: issue.words.slice(0, 200) });
    if (file !== FILE) return `names another file: ${told}`;
    for (const number of [line, column, endLine, endColumn])
      if (!(Number.isInteger(number) && number >= 1)) return `has no place: ${told}`;
    if (line > lines + 1 || endLine < line) return `is outside the file: ${told}`;
    if (issue.words.trim() === '' || issue.words === 'undefined') return `says nothing: ${told}`;
    const shown = formatIssue(issue, text);
    const expected = 1 + (shown.includes(`\n  ${line} | `) ? 2 : 0) + (issue.fix ? 1 : 0);
    if (shown.split('\n').length !== expected) return `forges lines: ${told}`;
    if (UNSAFE.test(shown.replaceAll('\n', ''))) return `carries a control character: ${told}`;
    if (safeText(shown, { lines: true }) !== shown) return `is changed on its way out: ${told}`;
    if (shown.split('\n').some((one) => one.length > LINE_COLUMNS))
      return `floods the terminal: ${told.slice(0, 300)}`;
  }
  return null;
}

/** The prototypes every object leans on, as they are now. */
export function prototypesNow(): string {
  return [Object.prototype, Array.prototype, Function.prototype, String.prototype, Number.prototype]
    .map((one) => Reflect.ownKeys(one).map(String).join())
    .join('|');
}

/** Milliseconds of processor time that `action` takes, which other programs on the machine do not lengthen. */
export function cpuMs<T>(action: () => T): { value: T; ms: number } {
  const before = process.cpuUsage();
  const value = action();
  const { user, system } = process.cpuUsage(before);
  return { value, ms: (user + system) / 1000 };
}
