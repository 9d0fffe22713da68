/** `ohmward drill`: practice on a hidden fault, alone, as an assignment, without a person, or a class's results. */

import { type ActionsFile, loadActions } from '../drill/drill-actions.ts';
import { SEED_MAX } from '../drill/hidden-fault.ts';
import { LEVELS, type Level, levelOf } from '../drill/levels.ts';
import { loadFile } from '../files/load-library.ts';
import type { Hand } from '../session/events.ts';
import { formatIssue } from '../source/format-issue.ts';
import { isProblem, type Problem } from '../source/problem.ts';
import { safeText } from '../source/safe-text.ts';
import type { OpenedSession } from '../ui/app-services.ts';
import type { Dialogue } from '../ui/plain/dialogue.ts';
import { decideFrontEnd } from '../ui/term/colour.ts';
import {
  type Arguments,
  type CliCommand,
  EXIT,
  type Io,
  optionText,
  tellProblem,
  wordTooMany,
} from './command.ts';
import { assignedDrill } from './drill/assigned-drill.ts';
import { finishDrill } from './drill/finish-drill.ts';
import { anySeed, beginDrill, continueDrill, type NewDrill } from './drill/open-drill.ts';
import { runActions } from './drill/run-actions.ts';
import { showClass } from './drill/show-class.ts';
import { handAtInput } from './session/hand-at-input.ts';
import { type Desk, openDesk } from './session/open-desk.ts';
import { pickByNumber } from './session/pick-by-number.ts';
import { isForProgram, RPC_OPTION, rpcProblem } from './session/rpc-option.ts';
import { isPath } from './session/what-is-named.ts';
import { programName } from './version.ts';

export const command: CliCommand = {
  name: 'drill',
  summary: 'practice on a simulated vehicle with a hidden fault, with a score and a debrief',
  usage: 'drill [PROCEDURE] [options]',
  examples: [
    'ohmward drill                                      choose on the screen',
    'ohmward drill hall-no-signal --level blind         no suspects, no good values',
    'ohmward drill hall-module-fed --vehicle 7 --plain     a circuit without a procedure, as a dialogue',
    'ohmward drill ./my-tree.yaml                       a tree of your own, or a circuit by its file',
    'ohmward drill --assignment week3.yaml --student "Ada Example"',
    'ohmward drill --actions FILE --json                without a person',
    'ohmward drill --class FOLDER --html results.html   the results of a class',
  ],
  options: {
    level: {
      type: 'string',
      short: 'l',
      value: 'LEVEL',
      help: `1 to ${LEVELS.length} or ${LEVELS.map(({ name }) => name).join(', ')} (named)`,
    },
    vehicle: {
      type: 'string',
      value: 'NUMBER',
      help: 'which vehicle; the same number is the same one',
    },
    student: { type: 'string', value: 'NAME', help: 'whose drill it is' },
    assignment: {
      type: 'string',
      value: 'FILE',
      help: "an instructor's list of drills; with --class: what was set",
    },
    part: { type: 'string', value: 'NUMBER', help: 'which drill of the assignment (the next one)' },
    actions: {
      type: 'string',
      short: 'a',
      value: 'FILE',
      help: 'take tests and diagnosis from a file',
    },
    resume: { type: 'string', value: 'FILE', help: 'continue an unfinished drill' },
    class: { type: 'string', value: 'FOLDER', help: "read all students' drills in a folder" },
    csv: { type: 'boolean', help: 'with --class: print CSV instead of the table' },
    html: { type: 'string', value: 'FILE', help: 'with --class: write a page with pictures' },
    plain: { type: 'boolean', short: 'p', help: 'a dialogue of lines instead of screens' },
    rpc: RPC_OPTION,
    json: { type: 'boolean', help: 'print the result as JSON' },
    sessions: {
      type: 'string',
      value: 'FOLDER',
      help: 'where sessions are; drills go to drills/ in it',
    },
    ascii: { type: 'boolean', help: 'draw with ASCII characters only' },
    color: { type: 'string', value: 'WHEN', help: 'always, never or auto' },
    'no-alt-screen': { type: 'boolean', help: 'stay on the normal screen' },
  },
  run,
};

async function run(args: Arguments, io: Io): Promise<number> {
  const wrong = wrongUse(args);
  if (wrong) return tellProblem(io, wrong, EXIT.wrongUse);
  const desk = await openDesk(io, programName(), {
    sessions: optionText(args, 'sessions'),
    file: ownFile(args),
  });
  if (isProblem(desk)) return tellProblem(io, desk, EXIT.wrongInput);
  const folder = optionText(args, 'class');
  if (folder !== undefined) return showClass(desk, folder, args, io);
  const path = optionText(args, 'actions');
  if (path !== undefined) {
    const file = loadFile(path, loadActions);
    if (!file.value)
      return tellProblem(
        io,
        {
          problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
          fix: 'fix the file of actions',
        },
        EXIT.wrongInput,
      );
    return runUnattended(desk, args, io, file.value);
  }
  if (isForProgram(args)) {
    const { drillForProgram } = await import('./session/run-rpc.ts');
    const begun = isNamed(args) ? begin(desk, args, null, 'program') : null;
    const asked = (more: Arguments) => begin(desk, more, null, 'program');
    return drillForProgram(desk, args, begun, asked, io);
  }
  const flags = { plain: args.values['plain'] === true };
  if (decideFrontEnd(io.env, process.stdin, process.stdout, flags) === 'screen') {
    const wanted = isNamed(args) ? begin(desk, args, null) : null;
    if (wanted && isProblem(wanted)) return tellProblem(io, wanted, EXIT.wrongInput);
    const { drillOnScreen } = await import('./drill/drill-on-screen.ts');
    return drillOnScreen(desk, wanted, args, io);
  }
  return runPlain(desk, args, io);
}

/** Options that do nothing by themselves, with the one they belong to. */
const GOES_WITH: readonly (readonly [string, string])[] = [
  ['csv', 'class'],
  ['html', 'class'],
  ['part', 'assignment'],
];
/** Options that settle what others would ask for. */
const SETTLED: readonly (readonly [string, readonly string[]])[] = [
  ['class', ['level', 'vehicle', 'part', 'actions', 'resume']],
  ['resume', ['level', 'vehicle', 'part', 'assignment']],
  ['assignment', ['level', 'vehicle']],
];

function wrongUse(args: Arguments): Problem | null {
  const tooMany = wordTooMany(args, 1) ?? rpcProblem(args);
  if (tooMany) return tooMany;
  const has = (name: string) => args.values[name] !== undefined;
  for (const [name, partner] of GOES_WITH)
    if (has(name) && !has(partner))
      return {
        problem: `--${name} goes with --${partner}`,
        fix: `add --${partner}, or leave it out`,
      };
  const [named] = args.positionals;
  for (const [name, others] of SETTLED) {
    if (!has(name)) continue;
    const other = others.find(has);
    if (other === undefined && named === undefined) continue;
    const words = other === undefined ? `"${named}"` : `--${other}`;
    return { problem: `${words} does not go with --${name}`, fix: 'leave one of them out' };
  }
  const asked = levelAsked(args, null);
  const seed = seedAsked(args, null);
  return isProblem(asked) ? asked : isProblem(seed) ? seed : null;
}

function levelAsked(args: Arguments, actions: ActionsFile | null): Level | Problem {
  const asked = optionText(args, 'level') ?? actions?.level ?? 'named';
  return (
    levelOf(asked) ?? {
      problem: `there is no level "${asked}"`,
      fix: `the levels are: ${LEVELS.map(({ name, number }) => `${number} ${name}`).join(', ')}`,
    }
  );
}

function seedAsked(
  args: Arguments,
  actions: ActionsFile | null,
): { readonly seed: number } | Problem {
  const text = optionText(args, 'vehicle');
  const seed = text === undefined ? (actions?.seed ?? anySeed()) : wholeNumber(text);
  return seed !== null && seed <= SEED_MAX
    ? { seed }
    : {
        problem: `"${text}" is not a vehicle number`,
        fix: `give a whole number from 0 to ${SEED_MAX}`,
      };
}

/** The file of one's own that is named; circuits and procedures beside it come before the library. */
function ownFile(args: Arguments): string | undefined {
  const [named] = args.positionals;
  return (
    optionText(args, 'assignment') ?? (named !== undefined && isPath(named) ? named : undefined)
  );
}

function isNamed(args: Arguments): boolean {
  return (
    args.positionals.length > 0 ||
    optionText(args, 'assignment') !== undefined ||
    optionText(args, 'resume') !== undefined
  );
}

/** Opens the drill that the arguments name; what they leave out, the file of actions says. */
function begin(
  desk: Desk,
  args: Arguments,
  actions: ActionsFile | null,
  by: Hand = actions ? 'answers-file' : handAtInput(),
): OpenedSession | Problem {
  const resumed = optionText(args, 'resume');
  if (resumed !== undefined) return continueDrill(desk, resumed, by);
  const wanted = wantedDrill(desk, args, actions);
  return isProblem(wanted) ? wanted : beginDrill(desk, { ...wanted, by });
}

function wantedDrill(desk: Desk, args: Arguments, actions: ActionsFile | null): NewDrill | Problem {
  const student = optionText(args, 'student') ?? desk.settings().person;
  const assignment = optionText(args, 'assignment');
  if (assignment !== undefined)
    return assignedDrill(desk, assignment, student, optionText(args, 'part'));
  const subject = args.positionals[0] ?? actions?.procedure ?? undefined;
  if (subject === undefined)
    return {
      problem: 'no procedure was named',
      fix: `name one, or a circuit: ${subjects(desk).join(', ')}`,
    };
  const level = levelAsked(args, actions);
  if (isProblem(level)) return level;
  const asked = seedAsked(args, actions);
  if (isProblem(asked)) return asked;
  const { seed } = asked;
  return { subject, level, seed, student, assignment: null };
}

function wholeNumber(text: string): number | null {
  return /^\d+$/.test(text) ? Number(text) : null;
}

function subjects(desk: Desk): string[] {
  const { procedures, circuits } = desk.library;
  const withCircuit = [...procedures.values()].filter(
    ({ draft }) => draft.needs === undefined && draft.circuit !== undefined,
  );
  return [...withCircuit.map(({ draft }) => draft.procedure), ...circuits.keys()];
}

function runUnattended(desk: Desk, args: Arguments, io: Io, actions: ActionsFile): number {
  const hand = begin(desk, args, actions);
  if (isProblem(hand)) return tellProblem(io, hand, EXIT.wrongInput);
  if (hand.notice !== undefined) io.err(`${safeText(hand.notice)}\n`);
  const failure = runActions(hand, actions, (words) =>
    io.err(`${safeText(words, { lines: true })}\n`),
  );
  hand.driver.close();
  if (failure !== null) io.err(`${safeText(failure, { lines: true })}\n`);
  return finishDrill(hand, args, io, 'debrief', failure === null ? EXIT.done : EXIT.wrongInput);
}

async function runPlain(desk: Desk, args: Arguments, io: Io): Promise<number> {
  const { lineDialogue } = await import('./session/line-dialogue.ts');
  const { plainDrill } = await import('../ui/drill/plain-drill.ts');
  const dialogue = lineDialogue(io);
  try {
    const chosen = isNamed(args) ? args : await choosePlain(desk, args, dialogue);
    if (!chosen) return EXIT.interrupted;
    const hand = begin(desk, chosen, null);
    if (isProblem(hand)) return tellProblem(io, hand, EXIT.wrongInput);
    if (hand.notice !== undefined) dialogue.say(hand.notice);
    const end = await plainDrill(hand, dialogue);
    hand.driver.close();
    const code = end === 'input-ended' ? EXIT.interrupted : EXIT.done;
    return finishDrill(hand, chosen, io, 'said', code);
  } finally {
    dialogue.close();
  }
}

/** Drill and level by number, for a person who named none; null at the end of input. */
async function choosePlain(
  desk: Desk,
  args: Arguments,
  dialogue: Dialogue,
): Promise<Arguments | null> {
  const subject = await pickByNumber(dialogue, 'Drills:', subjects(desk), (name) => name);
  if (subject === null) return null;
  const values = { ...args.values };
  if (optionText(args, 'level') === undefined) {
    const level = await pickByNumber(dialogue, 'Levels:', LEVELS, ({ title }) => title);
    if (level === null) return null;
    values['level'] = level.name;
  }
  return { positionals: [subject], values };
}
