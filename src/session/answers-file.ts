/** A session without a person: the answers of a file as commands, each checked against the step that is asked. */

import type { Model } from '../circuit/model.ts';
import { looksShownBy, unitShownBy } from '../circuit/shown-by.ts';
import type { Look, Test } from '../circuit/test.ts';
import { draftedTest, isTestDraft } from '../circuit/test-draft.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import type { Step } from '../procedure/procedure.ts';
import { parseReading } from '../quantity/parse-reading.ts';
import type { Checked, Issue } from '../source/issue.ts';
import { parseShaped } from '../source/parse-shaped.ts';
import type { YamlSource } from '../source/yaml-source.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { type Better, firstTest, isHeldUp, type Weighed } from './advisor.ts';
import type { Command, WeighedConclusion } from './command.ts';
import type { EventNumber, StateAside } from './events.ts';
import { expectedReading } from './expected-reading.ts';
import { expectedShown } from './expected-shown.ts';
import type { AnswersDraft } from './generated/answers.mjs';
import validate from './generated/answers.mjs';
import { asideCommand, reachBack, stateAsideCommand } from './out-of-reach.ts';
import { pendingCautions, pendingTestCautions } from './pending-cautions.ts';
import { shortFlaw, testOfShort } from './place-short.ts';
import { readSaid } from './read-known.ts';
import { readDrops, stretchOf } from './read-short.ts';
import { readWatched } from './read-watched.ts';
import { readWork } from './read-work.ts';
import { presentStep, type Session } from './session.ts';
import { modelHere } from './step-here.ts';
import { watchedAsked } from './watched-asked.ts';

type AnswerDraft = AnswersDraft['answers'][number];

/** The answers as written, with where each of them stands in the file. */
export interface AnswersFile {
  readonly procedure: string | null;
  readonly answers: readonly AnswerDraft[];
  readonly source: YamlSource;
}

/** The answers in `text`; null with issues when their shape is wrong. */
export function loadAnswers(text: string, file: string): Checked<AnswersFile> {
  const { value: shaped, issues } = parseShaped(text, file, validate);
  if (!shaped) return { value: null, issues };
  const { data, source } = shaped;
  const { procedure = null, answers } = data;
  return { value: { procedure, answers, source }, issues };
}

/** What has to be known, beside the session, to understand an answer of the file. */
export interface AnswerContext {
  /** What weighs a conclusion with these faults; from the advisor. */
  readonly weigh: (
    session: Session,
    faults: readonly string[],
  ) => (WeighedConclusion & Pick<Weighed, 'better'>) | undefined;
  /** Null for a session without a circuit. */
  readonly model: Model | null;
}

/** Why an answer does not fit, still without its place. */
interface AnswerFlaw {
  readonly code: string;
  readonly words: string;
  readonly fix?: string;
  /** Place within the answer; the answer itself where there is none. */
  readonly at?: readonly string[];
}

/** The command for answer `index`, or the issue at its place when it does not fit what is asked. */
export function commandFor(
  file: AnswersFile,
  index: number,
  session: Session,
  context: AnswerContext,
): Command | Issue {
  const found = commandOf(file.answers[index]!, session, context);
  if ('type' in found) return found;
  const { at: inside = [], ...rest } = found;
  const at = file.source.locate(['answers', index, ...inside]);
  return { severity: 'error', at, ...rest };
}

function commandOf(
  draft: AnswerDraft,
  session: Session,
  context: AnswerContext,
): Command | AnswerFlaw {
  const step = presentStep(session);
  if (draft.step !== undefined && draft.step !== step?.id)
    return {
      code: 'other-step',
      words: `this answers step "${draft.step}", but ${step ? `"${step.id}"` : 'none'} is asked`,
      fix: 'put the answers in session order',
    };
  if (isTestDraft(draft)) return testCommand(draft, session, context);
  if (draft.connector !== undefined) return connectorCommand(draft, draft.connector, session);
  if (draft['no-state'] !== undefined) return stateCommand(draft, draft['no-state']);
  if (draft.again !== undefined) return madeAgain(draft, draft.again, session, context);
  if (draft.place) return placeCommand(draft, draft.place, session);
  if (draft.acknowledge) return { type: 'acknowledge-cautions' };
  if (draft.known) return setCommand(draft.known, session);
  if (draft.note !== undefined) return { type: 'add-note', text: draft.note };
  if (draft.back) return { type: 'go-back' };
  if (draft.customer !== undefined) {
    const read = readWork(draft.customer);
    return 'type' in read ? read : { code: 'not-understood', ...read };
  }
  if (draft.pause) return { type: 'pause' };
  if (draft.cannot !== undefined) return { type: 'cannot-do', reason: draft.cannot };
  if (draft.conclude || draft.faults || draft.words !== undefined)
    return conclusion(draft, session, context);
  const pending = pendingCautions(session);
  if (pending.length > 0)
    return cautionFirst(
      `step "${step?.id}"`,
      pending,
      'put an answer "acknowledge: true" before this one',
    );
  if (draft.watched !== undefined) return watched(draft.watched, session, context);
  if (draft.captured)
    return { code: 'wrong-kind', words: `${named(step)}: a capture can't answer it` };
  if (draft.done) return { type: 'mark-done' };
  if (draft.choose !== undefined) return chosen(draft.choose, step);
  if (draft.reading !== undefined) return reading(String(draft.reading), step);
  return {
    code: 'empty-answer',
    words: 'this answers nothing',
    fix: 'give one of: reading, choose, captured, watched, measure, test, connector, no-state, again, done, cannot, acknowledge, known, place, note, customer, back, pause, conclude, faults, words',
  };
}

function connectorCommand(
  { aside = true, cannot }: AnswerDraft,
  part: string,
  session: Session,
): Command {
  return aside ? asideCommand(session, part, cannot) : reachBack({ part });
}

function stateCommand({ aside = true, cannot }: AnswerDraft, state: StateAside): Command {
  return aside ? stateAsideCommand(state, cannot) : reachBack({ state });
}

function setCommand(
  said: NonNullable<AnswerDraft['known']>,
  session: Session,
): Command | AnswerFlaw {
  const { circuit } = session.opened;
  if (!circuit)
    return {
      code: 'no-circuit',
      words: 'this procedure has no circuit model, so no value of the car can be set',
      fix: 'leave this answer out',
    };
  const read = readSaid(circuit, said);
  if ('quantity' in read) return { type: 'set-value', ...read };
  const { at, code, words, fix } = read;
  return { code, words, fix, at: ['known', at] };
}

/** Its cautions are acknowledged by "acknowledge: true" beside it. */
function placeCommand(
  draft: AnswerDraft,
  said: NonNullable<AnswerDraft['place']>,
  session: Session,
): Command | AnswerFlaw {
  const { circuit } = session.opened;
  if (!circuit)
    return {
      code: 'no-circuit',
      words: 'this procedure has no circuit model, so there is no wire to measure along',
      fix: 'leave this answer out',
    };
  const stretch = stretchOf(circuit, said);
  const flaw = shortFlaw(circuit, stretch, null);
  if (flaw) return { code: 'no-place', words: flaw[0], fix: flaw[1], at: ['place'] };
  const test = testOfShort(circuit, stretch, 'from');
  const pending = pendingTestCautions(session, test);
  if (pending.length > 0)
    return draft.acknowledge
      ? { type: 'acknowledge-cautions', test }
      : cautionFirst('this measurement', pending);
  const read = readDrops(said.drops);
  if ('fix' in read)
    return { code: 'bad-reading', words: read.words, fix: read.fix, at: ['place', 'drops'] };
  const { typed, ...drops } = read;
  return { type: 'place-short', stretch, unplugged: said.unplugged, typed, drops };
}

function conclusion(
  draft: AnswerDraft,
  session: Session,
  context: AnswerContext,
): Command | AnswerFlaw {
  const isOwn = draft.faults !== undefined || draft.words !== undefined;
  const weighed = weighedBy(draft, session, context);
  if (weighed && isHeldUp(weighed) && !draft.accept) {
    const { hangsOn = null, better } = weighed;
    return hangsOn === null || better.kind === 'take-back'
      ? notBorneOut(better)
      : restsOnOne(hangsOn);
  }
  return {
    type: 'conclude',
    ...(isOwn ? { own: { words: draft.words ?? null, faults: draft.faults ?? [] } } : {}),
    ...(weighed ? { weighed } : {}),
  };
}

function restsOnOne(reading: EventNumber): AnswerFlaw {
  return {
    code: 'rests-on-one-reading',
    words: `this conclusion rests on one reading, from event ${reading}`,
    fix: 'repeat it in an answer before this one, with "again: READING", or add "accept: true"',
  };
}

function notBorneOut(better: Better): AnswerFlaw {
  return {
    code: 'not-borne-out',
    words: 'the readings do not support this conclusion',
    fix: `${betterAnswer(better)}, or add "accept: true"`,
  };
}

function betterAnswer(better: Better): string {
  if (better.kind === 'take-back') {
    const { answer, by } = better.overturned;
    return `take back the answer of event ${answer}, which event ${by} contradicts, with "back: true"`;
  }
  if (better.kind === 'instead') {
    const other = better.row.faults.map(({ id }) => id).filter((id) => id !== HEALTHY);
    return `conclude with what they point to, with ${other.length > 0 ? `"faults: [${other.join(', ')}]"` : '"words"'}`;
  }
  return 'do the test that tells most in an answer before this one, with "again: READING"';
}

/** The conclusion that an answer accepts or names; nothing where it has no faults to weigh. */
function weighedBy(draft: AnswerDraft, session: Session, { weigh }: AnswerContext) {
  const step = presentStep(session);
  const ofTree = draft.words === undefined && step?.kind === 'conclude' ? step.faults : null;
  const faults = draft.faults ?? ofTree;
  return faults ? weigh(session, faults) : undefined;
}

/** The test that is to be made before the conclusion: the reading that it rests on once more, or what tells most. */
function madeAgain(
  draft: AnswerDraft,
  shown: string | number,
  session: Session,
  context: AnswerContext,
): Command | AnswerFlaw {
  const again = firstTest(weighedBy(draft, session, context)?.better ?? null);
  if (!again || !context.model)
    return {
      code: 'nothing-to-make-again',
      words: 'there is no conclusion here that needs a test first',
      fix: 'leave this answer out',
    };
  const told = again.kind === 'number' ? { reading: shown } : { choose: String(shown) };
  return madeTest({ ...draft, ...told }, again.test, session, context.model);
}

function cautionFirst(
  of: string,
  pending: readonly { readonly id: string }[],
  fix = 'add "acknowledge: true" to this answer',
): AnswerFlaw {
  return {
    code: 'caution-first',
    words: `${of} has cautions to acknowledge: ${pending.map(({ id }) => id).join(', ')}`,
    fix,
  };
}

function reading(typed: string, step: Step | null): Command | AnswerFlaw {
  if (step?.kind !== 'measure')
    return { code: 'wrong-kind', words: `${named(step)} asks for no reading` };
  const read = parseReading(typed, expectedReading(step, null));
  return read.status === 'read'
    ? { type: 'record-reading', typed, value: read.quantity.value }
    : badReading(read);
}

/** Limits of a good circuit are those of the model, as beside the prompt. */
function watched(said: string, session: Session, { model }: AnswerContext): Command | AnswerFlaw {
  const asked = watchedAsked({ model }, session);
  if (!asked)
    return {
      code: 'wrong-kind',
      words: 'nothing is wiggled or heated at this step',
      at: ['watched'],
    };
  const read = readWatched(said, asked);
  return 'type' in read
    ? read
    : { code: 'bad-reading', words: read.words, fix: read.fix, at: ['watched'] };
}

function named(step: Step | null): string {
  return step ? `step "${step.id}"` : 'a session in free order';
}

function badReading(
  read: Exclude<ReturnType<typeof parseReading>, { status: 'read' }>,
): AnswerFlaw {
  const words = read.status === 'unfinished' ? 'this reading is empty or incomplete' : read.words;
  const fix = read.status === 'refused' ? read.fix : undefined;
  return { code: 'bad-reading', words, ...(fix === undefined ? {} : { fix }) };
}

/** A look stands for the outcome that holds it. */
function chosen(name: string, step: Step | null): Command {
  if (step?.kind !== 'look') return { type: 'choose-outcome', outcome: name };
  const byLook = step.outcomes
    .flatMap((outcome) => outcome.looks.map((look) => ({ look, outcome: outcome.name })))
    .find(({ look }) => look === name);
  return byLook
    ? { type: 'choose-outcome', outcome: byLook.outcome, look: byLook.look }
    : { type: 'choose-outcome', outcome: name };
}

/** A test that no step asks for, with what it showed; its cautions are acknowledged in an answer of their own before. */
function testCommand(
  draft: AnswerDraft,
  session: Session,
  { model }: AnswerContext,
): Command | AnswerFlaw {
  if (!model)
    return {
      code: 'no-circuit',
      words: 'this procedure has no circuit model to test',
      fix: 'leave this answer out',
    };
  const test = draftedTest(draft, model.circuit);
  if ('code' in test) return test;
  if (draft.aside !== undefined) return { type: 'set-test-aside', test, aside: draft.aside };
  return madeTest(draft, test, session, model);
}

function madeTest(
  draft: AnswerDraft,
  test: Test,
  session: Session,
  model: Model,
): Command | AnswerFlaw {
  const reason = model.refusal(test);
  if (reason !== null)
    return {
      code: 'refused-test',
      words: testRefusalWords(reason),
      fix: 'change the leads, the state, or what is unplugged',
    };
  // What was made before hurts nobody now.
  const pending = draft.made === undefined ? pendingTestCautions(session, test) : [];
  if (pending.length > 0)
    return draft.acknowledge
      ? { type: 'acknowledge-cautions', test }
      : cautionFirst('this test', pending);
  return shownCommand(draft, test, modelHere(session, model));
}

/** What is said beside such a test: when it was made already, and a remark. */
function saidOf({ made, note }: AnswerDraft) {
  return { ...(made === undefined ? {} : { made }), ...(note === undefined ? {} : { note }) };
}

function shownCommand(draft: AnswerDraft, test: Test, model: Model): Command | AnswerFlaw {
  const expected = expectedShown(model, test);
  const unit = unitShownBy(test.probe);
  const base = { type: 'record-test', test, expected, ...saidOf(draft) } as const;
  if (unit !== null) {
    if (draft.reading === undefined) return nothingShown('reading');
    const typed = String(draft.reading);
    const read = parseReading(typed, { unit });
    if (read.status !== 'read') return badReading(read);
    const { value } = read.quantity;
    const kept = Number.isFinite(value) ? value : null;
    return { ...base, typed, shown: { kind: 'number', value: kept, unit } };
  }
  const looks = looksShownBy(test.probe);
  const look = looks.find((one) => one === draft.choose);
  if (look === undefined) return nothingShown('choose', looks);
  return { ...base, typed: '', shown: { kind: 'look', look } };
}

function nothingShown(key: 'reading' | 'choose', looks: readonly Look[] = []): AnswerFlaw {
  return {
    code: 'empty-answer',
    words: 'this is not a result that the test can show',
    fix:
      key === 'reading' ? 'add: reading: 4.98 V' : `add "choose" with one of: ${looks.join(', ')}`,
  };
}
