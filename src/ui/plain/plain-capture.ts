/** Captures and sums in the plain dialogue. */
import type { CaptureFolder } from '../../files/list-captures.ts';
import type { Step } from '../../procedure/procedure.ts';
import { type CaptureAnswer, type CaptureAsk, takesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../app-services.ts';
import { ageWords, sizeWords } from '../parts/file-words.ts';
import type { Dialogue } from './dialogue.ts';
import { helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

/** Files that are listed; more are found by typing a path. */
const LISTED_MOST = 30;

/** The session, what the capture is to answer, and what was typed. */
export interface PlainCapture {
  readonly opened: OpenedSession;
  readonly ask: CaptureAsk;
  /** What was typed behind the word: a path, a number of the list, or nothing. */
  readonly typed: string;
  /** List files even where a simulated vehicle would give a capture. */
  readonly listed?: boolean;
  /** What a simulated vehicle has after the repair. */
  readonly fault?: string;
}

/** Measures a capture, says what it shows, and gives the command that saves it when the person says yes; else null. */
export async function askCapture(
  wanted: PlainCapture,
  dialogue: Dialogue,
): Promise<Command | null> {
  const { opened, ask, fault } = wanted;
  const { first, second, against } = filesIn(wanted.typed);
  const path = await pathOf({ ...wanted, typed: first }, dialogue);
  if (path === undefined) return null;
  let found: CaptureAnswer = await opened.measureCapture(ask, path, {
    ...(fault === undefined ? {} : { fault }),
    ...(second === undefined ? {} : { second }),
    ...(against === undefined ? {} : { against }),
  });
  while (true) {
    sayFound(found, dialogue.say);
    if (!found.ok && !found.channels) return null;
    const word = (await dialogue.ask(questionOf(found)))?.trim().toLowerCase() ?? '';
    if (found.channels && /^[1-9]\d*$/.test(word)) found = found.channels.judge(Number(word) - 1);
    else if (found.ok && word === 'yes') return found.command;
    else {
      dialogue.say('Nothing was saved.');
      return null;
    }
  }
}

/** `crank.csv + cam.csv against good.csv`: the files in such a line; the last word of its kind parts them. */
function filesIn(typed: string): { first: string; second?: string; against?: string } {
  const [files = '', ...rest] = typed.split(/\bagainst\s/i);
  const against = rest.length > 0 ? rest.join('against ') : undefined;
  const [, first = files, second] = /^(.*\S)\s+\+\s+(\S.*)$/s.exec(files) ?? [];
  return {
    first: first.trim(),
    ...(second === undefined ? {} : { second: second.trim() }),
    ...(against === undefined ? {} : { against: against.trim() }),
  };
}

/** The file that is meant, null for the simulated vehicle's own capture, undefined where the choice is left. */
async function pathOf(
  { opened, typed, listed = false }: PlainCapture,
  dialogue: Dialogue,
): Promise<string | null | undefined> {
  const onBench = opened.driver.session().opened.vehicle.kind === 'bench';
  if (typed === '' && onBench && !listed) return null;
  if (typed !== '' && !/^\d+$/.test(typed)) return typed;
  return (await chooseFile(opened, typed, dialogue)) ?? undefined;
}

function sayFound(found: CaptureAnswer, say: Dialogue['say']): void {
  for (const line of found.lines ?? []) say(line);
  if (!found.ok) say(`${found.words}; ${found.fix}`);
}

function questionOf({ ok, channels }: CaptureAnswer): string {
  const names = channels?.names.map((name, at) => `${at + 1} ${name}`).join(', ');
  const others = channels ? `, or the number of another channel (${names})` : '';
  return ok
    ? `Take it as the answer? Type yes${others}: `
    : `Just press Enter to leave it${others}: `;
}

/** What stands behind the word "capture" in a line; null when the line is something else. */
export function captureTyped(line: string): string | null {
  const behind = /^captures?(?:\s(.*))?$/i.exec(line.trim());
  return behind ? (behind[1] ?? '').trim() : null;
}

export const CAPTURE_WORD: Word<WordPlace> = {
  words: ['capture', 'captures'],
  help: [
    ...helpLine('capture FILE', 'measure a saved capture; "yes" uses it as the answer'),
    ...helpLine('capture', 'the same, from the simulated vehicle or picked from a list'),
    ...helpLine(
      'capture FILE + FILE',
      'both channels of the same crank, if the scope saved two files',
    ),
    ...helpLine('capture FILE against GOOD', 'against a known-good capture'),
    ...helpLine('capture FILE against falls at 114 deg', 'with the edge positions the maker gives'),
    ...helpLine('captures', 'pick a capture file from a folder, by number'),
  ],
  does: async (place, typed, word) => {
    const { opened, dialogue, step } = place;
    if (!step || !takesCapture(step))
      return sayAll(place, ["A capture can't answer this step; answer it by hand."]);
    const ask = { kind: 'step', step } as const;
    const command = await askCapture({ opened, ask, typed, listed: word === 'captures' }, dialogue);
    if (command && (await performSaved(place, command)).ok)
      dialogue.say('Saved, with the capture.');
    return null;
  },
};

export const CALC_WORD: Word<WordPlace> = {
  words: ['calc'],
  help: [
    ...helpLine('calc', 'the calculations that fit this step, worked out'),
    ...helpLine('calc NAME ...', 'one of them, with your own values'),
  ],
  does: async ({ opened, step, dialogue }, typed) => {
    if (step) await saySums(opened, step, typed, dialogue.say);
    else dialogue.say('Calculations belong to a step of a procedure; for any other: ohmward calc');
    return null;
  },
};

/** Lists captures by number until one is chosen; null when it is left. `typed` is a first answer, which needs no list. */
async function chooseFile(
  { captures }: OpenedSession,
  typed: string,
  { say, ask }: Dialogue,
): Promise<string | null> {
  let folder = captures.begin();
  let line: string | null = typed === '' ? null : typed;
  while (true) {
    if (line === null) {
      sayFolder(folder, say);
      line = await ask('Which one? Its number, or a path; Enter alone leaves it: ');
    }
    const named = line?.trim() ?? '';
    if (named === '') {
      say('Nothing was measured.');
      return null;
    }
    line = null;
    const byNumber = /^\d+$/.test(named);
    const name = byNumber ? folder.entries.slice(0, LISTED_MOST)[Number(named) - 1]?.name : named;
    if (name === undefined) {
      say(`There is no number ${named} in this list.`);
      continue;
    }
    const to = captures.follow(folder.path, name);
    if ('file' in to) return to.file;
    folder = to;
  }
}

function sayFolder({ path, entries, leftOut, problem }: CaptureFolder, say: Dialogue['say']): void {
  say(`Captures in ${path}`);
  if (problem) say(`${problem.problem}; ${problem.fix}`);
  if (!problem && !entries.some(({ kind }) => kind === 'file'))
    say(
      'There are no captures here. Captures end in .csv, .tsv, .txt or .wav; type the name of any other file.',
    );
  entries.slice(0, LISTED_MOST).forEach(({ kind, name, bytes, ageMs }, index) => {
    // A name is made harmless before it stands among words of ours.
    const shown = safeText(name);
    const what =
      kind === 'file'
        ? `${shown}  (${sizeWords(bytes)}, ${ageWords(ageMs)})`
        : name === '..'
          ? '..  (the folder above)'
          : `${shown}/  (folder)`;
    say(`  ${String(index + 1).padStart(2)}  ${what}`);
  });
  const more = Math.max(0, entries.length - LISTED_MOST) + leftOut;
  if (more > 0) say(`And ${more} more: type a name or a path.`);
}

/** The sums of this step, or the one that was typed. */
async function saySums(
  opened: OpenedSession,
  step: Step,
  typed: string,
  say: Dialogue['say'],
): Promise<void> {
  if (typed !== '') {
    for (const line of await opened.calculate(typed, step)) say(line);
    return;
  }
  const sums = opened.sums(step);
  if (sums.length === 0)
    say('No calculation fits this step. For any other: calc NAME, with its values.');
  for (const { title, lines, typed: again } of sums) {
    say(title);
    for (const [label, value] of lines) say(`  ${label}: ${value}`);
    say(`  With other values: calc ${again}`);
  }
}
