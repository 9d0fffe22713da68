/** A session that the arguments name, from the job sheet to the saved file: on the screen, in lines, or without a person. */
import type { Circuit } from '../../circuit/circuit.ts';
import { libraryFolder } from '../../files/folders.ts';
import { loadFile } from '../../files/load-library.ts';
import { codesAmong, searchWords } from '../../identify/search-words.ts';
import { emptyJob, type Job } from '../../procedure/job.ts';
import { type LoadedJob, loadJob } from '../../procedure/load-job.ts';
import type { ParsedProcedure } from '../../procedure/parse-procedure.ts';
import { replaceablesOf } from '../../procedure/read-repair.ts';
import { harnessTerminals } from '../../procedure/read-terminal.ts';
import { type AnswersFile, loadAnswers } from '../../session/answers-file.ts';
import type { Hand } from '../../session/events.ts';
import { formatIssue } from '../../source/format-issue.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { leaveSession } from '../../ui/carry-on.ts';
import { matching } from '../../ui/parts/pick-list-state.ts';
import type { Dialogue } from '../../ui/plain/dialogue.ts';
import { harnessIssues } from '../check/harness-issues.ts';
import { knownIssues } from '../check/known-issues.ts';
import { sharesIssues } from '../check/shares-issues.ts';
import { type Arguments, EXIT, type Io, optionText, tellProblem } from '../command.ts';
import { programName } from '../version.ts';
import { finish } from './finish.ts';
import { handAtInput } from './hand-at-input.ts';
import {
  type Desk,
  findSubject,
  linkSubject,
  openDesk,
  type SessionSubject,
  startable,
  subjectTitle,
} from './open-desk.ts';
import { beginSession } from './open-session.ts';
import { pickByNumber } from './pick-by-number.ts';
import { runAnswers, runOnBench } from './run-unattended.ts';
import { treeNotice } from './tree-notice.ts';
import { isPath, namesNone } from './what-is-named.ts';

/** `--bench job`: the simulated vehicle has what the job sheet says. */
export const OWN_FAULT = 'job';

/** Runs the session; the exit code. In lines a person who named none is asked which procedure and which vehicle. */
export async function runNamed(
  args: Arguments,
  io: Io,
  way: 'screen' | 'lines' | 'unattended',
): Promise<number> {
  const desk = await deskFor(args, io);
  if (isProblem(desk)) return tellProblem(io, desk, EXIT.wrongInput);
  if (way === 'unattended') return runUnattended(desk, args, io);
  if (way === 'lines') return runPlain(desk, args, io);
  const { runFromSheet, runOnScreen } = await import('./run-on-screen.ts');
  if (wantsSheet(args)) {
    const subject = findSubject(desk, args.positionals[0] ?? '');
    if (isProblem(subject)) return tellProblem(io, subject, EXIT.wrongInput);
    const linked = linkSubject(desk, subject, emptyJob('').vehicle.drive);
    if (isProblem(linked)) return tellProblem(io, linked, EXIT.wrongInput);
    return runFromSheet(
      desk,
      { file: args.positionals[0] ?? '', title: subjectTitle(subject) },
      args,
      io,
    );
  }
  const begun = begin(desk, args);
  if (isProblem(begun)) return tellProblem(io, begun, EXIT.wrongInput);
  return runOnScreen(desk, begun, args, io);
}

/** At a real vehicle there is a complaint to write down, unless a job file has it or nothing is kept. */
export function wantsSheet({ values }: Arguments): boolean {
  return ['bench', 'job', 'preview', 'no-sheet'].every((name) => values[name] === undefined);
}

/** The same as a preview, again after each save of the named file. */
export async function watchNamed(args: Arguments, io: Io, unattended: boolean): Promise<number> {
  const { watchRun } = await import('./watch-run.ts');
  const once = async (turnIo: Io, dialogue: Dialogue | null) => {
    const desk = await deskFor(args, turnIo);
    if (isProblem(desk)) return tellProblem(turnIo, desk, EXIT.wrongInput);
    return dialogue ? talkPlain(desk, args, turnIo, dialogue) : runUnattended(desk, args, turnIo);
  };
  const library = libraryFolder(io.cwd);
  return watchRun({ file: args.positionals[0] ?? '', library, plain: !unattended, once }, io);
}

/** The desk with what lies beside the named file, and in a preview with nothing to keep. */
export function deskFor(args: Arguments, io: Io): Promise<Desk | Problem> {
  const [named] = args.positionals;
  return openDesk(io, programName(), {
    sessions: optionText(args, 'sessions'),
    file: named !== undefined && isPath(named) ? named : undefined,
    preview: args.values['preview'] === true || args.values['watch'] === true,
  });
}

/** What is known before the session begins, beside the arguments. */
export interface KnownBefore {
  readonly answers?: AnswersFile;
  /** A job sheet that was filled in before. */
  readonly sheet?: LoadedJob;
  readonly by?: Hand;
}

const MEND = 'fix the job sheet, then try again';

/** Opens the session that the arguments name. */
export function begin(
  desk: Desk,
  args: Arguments,
  { answers, sheet, by = answers ? 'answers-file' : handAtInput() }: KnownBefore = {},
): OpenedSession | Problem {
  const jobFile = optionText(args, 'job');
  let job = sheet?.job ?? emptyJob('');
  let ownFault = sheet?.fault ?? null;
  let intermittent = sheet?.intermittent ?? false;
  let named = args.positionals[0] ?? answers?.procedure ?? sheet?.procedure ?? undefined;
  const file = jobFile === undefined ? null : loadFile(jobFile, loadJob);
  if (file) {
    if (!file.value)
      return {
        problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
        fix: MEND,
      };
    job = file.value.job;
    named ??= file.value.procedure ?? undefined;
    ownFault = file.value.fault;
    intermittent = file.value.intermittent;
  }
  if (named === undefined)
    return {
      problem: 'no procedure was named',
      fix: `name one of: ${startable(desk)
        .map(({ draft }) => draft.procedure)
        .join(', ')}`,
    };
  const subject = findSubject(desk, named);
  if (isProblem(subject)) return subject;
  if (file) {
    const circuit = circuitOfSubject(desk, subject);
    const wrong = [
      ...knownIssues(file, job.known, circuit),
      ...sharesIssues(file, job.shares, circuit),
      ...harnessIssues(file, job.harness, circuit),
    ];
    if (wrong.length > 0)
      return {
        problem: wrong.map((issue) => formatIssue(issue, file.text)).join('\n'),
        fix: MEND,
      };
  }
  const seed = Number(optionText(args, 'vehicle') ?? '1');
  if (!Number.isInteger(seed) || seed < 0)
    return {
      problem: `"${optionText(args, 'vehicle')}" is not a vehicle number`,
      fix: 'give a whole number from 0 up',
    };
  const asked = optionText(args, 'bench');
  if (asked === OWN_FAULT && ownFault === null)
    return {
      problem: 'the job sheet does not say what a simulated vehicle has',
      fix: 'add the key "simulated-fault" to it, or name a fault with --bench',
    };
  const fault = asked === OWN_FAULT ? (ownFault ?? undefined) : asked;
  return beginSession(desk, {
    subject,
    job,
    by,
    bench:
      fault === undefined
        ? null
        : { fault, seed, intermittent: intermittent && asked === OWN_FAULT },
    from: optionText(args, 'from'),
  });
}

async function runUnattended(desk: Desk, args: Arguments, io: Io): Promise<number> {
  const path = optionText(args, 'answers');
  let answers: AnswersFile | null = null;
  if (path !== undefined) {
    const file = loadFile(path, loadAnswers);
    if (!file.value)
      return tellProblem(
        io,
        {
          problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
          fix: 'fix the answers file',
        },
        EXIT.wrongInput,
      );
    answers = file.value;
  } else if (optionText(args, 'bench') === undefined)
    return tellProblem(
      io,
      { problem: '--unattended needs a simulated vehicle to answer', fix: 'add --bench FAULT' },
      EXIT.wrongUse,
    );
  const opened = begin(desk, args, answers ? { answers } : { by: 'program' });
  if (isProblem(opened)) return tellProblem(io, opened, EXIT.wrongInput);
  if (opened.notice !== undefined) io.err(`${safeText(opened.notice)}\n`);
  const warn = (words: string) => io.err(`${safeText(words, { lines: true })}\n`);
  const failure = answers ? await runAnswers(opened, answers, warn) : runOnBench(opened);
  leaveSession(opened);
  if (failure !== null) io.err(`${safeText(failure, { lines: true })}\n`);
  return finish(opened, desk, args, io, failure === null ? EXIT.done : EXIT.wrongInput);
}

async function runPlain(desk: Desk, args: Arguments, io: Io): Promise<number> {
  const { lineDialogue } = await import('./line-dialogue.ts');
  const dialogue = lineDialogue(io);
  try {
    return await talkPlain(desk, args, io, dialogue);
  } finally {
    dialogue.close();
  }
}

async function talkPlain(desk: Desk, args: Arguments, io: Io, dialogue: Dialogue): Promise<number> {
  const { plainSession } = await import('../../ui/plain/plain-session.ts');
  const picked = namesNone(args) ? await choosePlain(desk, args, dialogue) : { args, codes: [] };
  if (!picked) return EXIT.interrupted;
  const { args: chosen, codes } = picked;
  if (!(await goesOn(desk, chosen, io, dialogue))) return EXIT.interrupted;
  const sheet =
    desk.preview || !wantsSheet(chosen) ? undefined : await fillIn(desk, chosen, codes, dialogue);
  if (sheet === null) {
    io.out('No session was started.\n');
    return EXIT.interrupted;
  }
  if (sheet && isProblem(sheet)) return tellProblem(io, sheet, EXIT.wrongInput);
  const opened = begin(desk, chosen, sheet ? { sheet: asLoaded(sheet) } : {});
  if (isProblem(opened)) return tellProblem(io, opened, EXIT.wrongInput);
  const end = await plainSession(opened, dialogue);
  opened.driver.close();
  return finish(opened, desk, args, io, end === 'input-ended' ? EXIT.interrupted : EXIT.done);
}

/** Says what is known of a tree of one's own; at a real vehicle, one that is known to be wrong is not followed unasked. */
async function goesOn(desk: Desk, args: Arguments, io: Io, dialogue: Dialogue): Promise<boolean> {
  const [named] = args.positionals;
  const subject = named === undefined ? null : findSubject(desk, named);
  const notice = subject === null || isProblem(subject) ? null : treeNotice(desk, subject);
  if (notice === null) return true;
  dialogue.say(notice.words);
  if (!notice.isWrong || optionText(args, 'bench') !== undefined || desk.preview) return true;
  const line = await dialogue.ask('Follow it all the same? Type yes: ');
  if (line?.trim().toLowerCase() === 'yes') return true;
  io.out('No session was started.\n');
  return false;
}

function circuitOfSubject(desk: Desk, subject: SessionSubject): Circuit | null {
  if (subject.kind === 'free-order') return subject.circuit;
  return desk.library.circuits.get(subject.procedure.draft.circuit ?? '') ?? null;
}

/** A sheet that names nothing but the job. */
function asLoaded(job: Job): LoadedJob {
  return { job, procedure: null, fault: null, intermittent: false };
}

/** The job sheet in lines; null at the end of input. */
async function fillIn(
  desk: Desk,
  args: Arguments,
  codes: readonly string[],
  dialogue: Dialogue,
): Promise<Job | Problem | null> {
  const subject = findSubject(desk, args.positionals[0] ?? '');
  if (isProblem(subject)) return subject;
  // A mistake in the procedure is told before anybody fills in a sheet for it.
  const linked = linkSubject(desk, subject, emptyJob('').vehicle.drive);
  if (isProblem(linked)) return linked;
  const { askSheet } = await import('../../ui/plain/plain-sheet.ts');
  const { circuit } = linked;
  const terminals = circuit ? harnessTerminals(circuit) : [];
  const parts = circuit ? replaceablesOf(circuit) : [];
  return askSheet({ job: { ...emptyJob(''), codes }, terminals, parts, circuit }, dialogue);
}

/** Procedure and vehicle by number, for a person who named none. */
async function choosePlain(
  desk: Desk,
  args: Arguments,
  dialogue: Dialogue,
): Promise<{ readonly args: Arguments; readonly codes: readonly string[] } | null> {
  let search = '';
  const procedures = startable(desk).map((one) => ({
    one,
    text: one.draft.title,
    also: searchWords(one.draft.codes ?? []).join(' '),
  }));
  const picked = await pickByNumber(dialogue, 'Procedures:', procedures, ({ text }) => text, {
    words: 'a trouble code or words',
    find: (typed) => matching(procedures, typed),
    found: (typed) => {
      search = typed;
    },
  });
  if (!picked) return null;
  const chosen = picked.one;
  const values = { ...args.values };
  if (values['bench'] === undefined) {
    const simulated = await dialogue.ask(
      'Type bench for a simulated vehicle with a fault, or just Enter for a real one: ',
    );
    if (simulated === null) return null;
    const fault = simulated.trim().toLowerCase() === 'bench' ? firstFault(desk, chosen) : undefined;
    if (fault !== undefined) values['bench'] = fault;
  }
  return { args: { positionals: [chosen.draft.procedure], values }, codes: codesAmong(search) };
}

/** An open signal wire, or the first fault of a circuit that has none. */
function firstFault(desk: Desk, { draft }: ParsedProcedure): string | undefined {
  const faults = desk.library.circuits.get(draft.circuit ?? '')?.faults ?? [];
  return (faults.find(({ id }) => id === 'wire.signal.open') ?? faults[0])?.id;
}
