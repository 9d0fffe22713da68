/** `records verify` and `records compare`. */
import { nodeDisk } from '../../log/node-disk.ts';
import { beforeAndAfter, compareRecords } from '../../records/compare-records.ts';
import { writeReport } from '../../records/export-record.ts';
import { harmlessJson } from '../../records/record-json.ts';
import { type Verification, verifySession } from '../../records/verify-session.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io, optionText } from '../command.ts';
import { deliver, optionChoice, readNamed, Stop, sessionPathOf } from './record-arguments.ts';

const SCHEMA_VERSION = 1;

/** Verifies each session named; 1 when one of them was changed. */
export async function verifyRecords(args: Arguments, io: Io): Promise<number> {
  const { positionals: names } = args;
  if (names.length === 0)
    throw new Stop(EXIT.wrongUse, 'verify what?', 'ohmward records verify SESSION');
  const head = optionText(args, 'head');
  if (head !== undefined && !/^[0-9a-f]{64}$/.test(head))
    throw new Stop(
      EXIT.wrongUse,
      '--head is not a valid head',
      'it has 64 digits and letters from a to f',
    );
  if (head !== undefined && names.length > 1)
    throw new Stop(EXIT.wrongUse, '--head belongs to one session', 'name one session');
  const known = head === undefined ? undefined : { hash: head };
  const results: Verification[] = [];
  for (const name of names)
    results.push(verifySession(nodeDisk, await sessionPathOf(name, args, io), known));
  if (args.values['json'] === true)
    io.out(harmlessJson({ schemaVersion: SCHEMA_VERSION, sessions: results }));
  else io.out(results.map((result) => resultText(result, head !== undefined)).join('\n'));
  return results.every(({ genuine }) => genuine) ? EXIT.done : EXIT.wrongInput;
}

function resultText(
  { paths, genuine, checks, firstBad, head }: Verification,
  noted: boolean,
): string {
  const isOther = checks.some(({ differs }) => differs);
  const lines = [
    `${safeText(paths.at(-1) ?? '')}: ${genuine ? `whole${isOther ? ', and not all as our rules have it' : ''}` : 'NOT AS IT WAS'}`,
    ...checks.map(
      ({ name, passed, differs, words }) =>
        `  ${passed ? (differs ? 'OTHER ' : 'ok    ') : 'FAILED'} ${name}: ${safeText(words)}`,
    ),
  ];
  if (firstBad)
    lines.push(
      `  first bad line: ${safeText(firstBad.path)}:${firstBad.line} ${safeText(firstBad.words)}`,
    );
  if (head) lines.push(`  head: event ${head.seq}, ${head.hash}`);
  if (genuine && !noted)
    lines.push(
      '  Lines cut off the end, or a rewritten file, only show with --head from a report.',
    );
  return `${lines.join('\n')}\n`;
}

export const COMPARE_FORMS = ['markdown', 'html', 'pdf'] as const;

/** Two sessions side by side, or one before and after its repair. */
export async function compare(args: Arguments, io: Io): Promise<number> {
  const [first, second, ...more] = args.positionals;
  const form = optionChoice(args, 'as', COMPARE_FORMS, 'markdown');
  if (first === undefined || more.length > 0)
    throw new Stop(
      EXIT.wrongUse,
      'compare takes one or two sessions',
      'ohmward records compare A B',
    );
  const left = await readNamed(first, args, io);
  const report =
    second === undefined
      ? beforeAndAfter(left.record)
      : compareRecords(left.record, (await readNamed(second, args, io)).record);
  if (report === null)
    throw new Stop(
      EXIT.wrongInput,
      'this session has no test after the repair',
      'name a second session to compare it with',
    );
  deliver(writeReport(report, form), args, io);
  return EXIT.done;
}
