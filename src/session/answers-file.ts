/** A session without a person: the answers of a file as commands, each checked against the step that is asked. */

import { parseReading } from '../quantity/parse-reading.ts';
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { parseYaml, type YamlSource } from '../source/parse-yaml.ts';
import { schemaIssues } from '../source/schema-issues.ts';
import type { Command, WeighedConclusion } from './command.ts';
import { expectedReading } from './expected-reading.ts';
import type { AnswersDraft } from './generated/answers.mjs';
import validate from './generated/answers.mjs';
import { pendingCautions } from './pending-cautions.ts';
import { presentStep, type Session } from './session.ts';

type AnswerDraft = AnswersDraft['answers'][number];

export interface AnswersFile {
  readonly procedure: string | null;
  readonly answers: readonly AnswerDraft[];
  readonly source: YamlSource;
}

/** The answers in `text`; null with issues when their shape is wrong. */
export function loadAnswers(text: string, file: string): Checked<AnswersFile> {
  const parsed = parseYaml(text, file);
  if (!parsed.value || !isUsable(parsed.issues)) return { value: null, issues: parsed.issues };
  const source = parsed.value;
  if (!validate(source.data))
    return { value: null, issues: [...parsed.issues, ...schemaIssues(validate.errors, source)] };
  const { procedure, answers } = source.data;
  return { value: { procedure: procedure ?? null, answers, source }, issues: parsed.issues };
}

/** What weighs a conclusion with these faults; from the advisor. */
export type Weigh = (session: Session, faults: readonly string[]) => WeighedConclusion | undefined;

/** The command for answer `index`, or the issue at its place when it does not fit what is asked. */
export function commandFor(
  file: AnswersFile,
  index: number,
  session: Session,
  weigh: Weigh,
): Command | Issue {
  const draft = file.answers[index]!;
  const step = presentStep(session);
  const issue = (code: string, words: string, fix?: string): Issue => ({
    code,
    severity: 'error',
    at: file.source.locate(['answers', index]),
    words,
    ...(fix ? { fix } : {}),
  });
  if (draft.step !== undefined && draft.step !== step.id)
    return issue(
      'other-step',
      `this answers step "${draft.step}", but "${step.id}" is asked`,
      'put the answers in the order of the session',
    );
  if (draft.acknowledge) return { type: 'acknowledge-cautions' };
  if (draft.note !== undefined) return { type: 'add-note', text: draft.note };
  if (draft.back) return { type: 'go-back' };
  if (draft.pause) return { type: 'pause' };
  if (draft.cannot !== undefined) return { type: 'cannot-do', reason: draft.cannot };
  const pending = pendingCautions(session);
  if (pending.length > 0)
    return issue(
      'caution-first',
      `step "${step.id}" has cautions to acknowledge: ${pending.map(({ id }) => id).join(', ')}`,
      'put "acknowledge: true" before this answer',
    );
  if (draft.done) return { type: 'mark-done' };
  if (draft.conclude) {
    const weighed = step.kind === 'conclude' ? weigh(session, step.faults) : undefined;
    return { type: 'conclude', ...(weighed ? { weighed } : {}) };
  }
  if (draft.choose !== undefined) return chosen(draft.choose, session);
  if (draft.reading === undefined)
    return issue(
      'empty-answer',
      'this answers nothing',
      'give one of: reading, choose, done, cannot, acknowledge, note, back, pause, conclude',
    );
  if (step.kind !== 'measure') return issue('wrong-kind', `step "${step.id}" asks for no reading`);
  const typed = String(draft.reading);
  const read = parseReading(typed, expectedReading(step, null));
  if (read.status === 'read') return { type: 'record-reading', typed, value: read.quantity.value };
  const words = read.status === 'unfinished' ? 'this reading is empty or unfinished' : read.words;
  return issue('bad-reading', words, read.status === 'refused' ? read.fix : undefined);
}

/** A look stands for the outcome that holds it. */
function chosen(name: string, session: Session): Command {
  const step = presentStep(session);
  if (step.kind !== 'look') return { type: 'choose-outcome', outcome: name };
  const byLook = step.outcomes
    .flatMap((outcome) => outcome.looks.map((look) => ({ look, outcome: outcome.name })))
    .find(({ look }) => look === name);
  return byLook
    ? { type: 'choose-outcome', outcome: byLook.outcome, look: byLook.look }
    : { type: 'choose-outcome', outcome: name };
}
