/** A drill without a person: the actions of a file as commands. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Test } from '../circuit/test.ts';
import { draftedTest, isTestDraft, type NoTest } from '../circuit/test-draft.ts';
import type { Command } from '../session/command.ts';
import type { LevelName } from '../session/events.ts';
import type { Checked, Issue } from '../source/issue.ts';
import { parseShaped } from '../source/parse-shaped.ts';
import type { YamlSource } from '../source/yaml-source.ts';
import type { DrillAction } from './drill-act.ts';
import type { ActionsDraft } from './generated/drill-actions.mjs';
import validate from './generated/drill-actions.mjs';

type ActionDraft = ActionsDraft['actions'][number];

/** The actions as written, with the drill that they are meant for. */
export interface ActionsFile {
  readonly procedure: string | null;
  readonly level: LevelName | null;
  readonly seed: number | null;
  readonly actions: readonly ActionDraft[];
  readonly source: YamlSource;
}

/** The actions in `text`; null with issues when their shape is wrong. */
export function loadActions(text: string, file: string): Checked<ActionsFile> {
  const { value: shaped, issues } = parseShaped(text, file, validate);
  if (!shaped) return { value: null, issues };
  const { data, source } = shaped;
  const { procedure = null, level = null, seed = null, actions } = data;
  return { value: { procedure, level, seed, actions, source }, issues };
}

/** What one action asks for: perhaps an acknowledgement first, then a note or an act at the vehicle. */
export interface ActionCommands {
  /** Cautions to acknowledge first, of the test or of the present step; null where the action does not say so. */
  readonly acknowledge: Extract<Command, { type: 'acknowledge-cautions' }> | null;
  readonly command: Extract<Command, { type: 'add-note' }> | DrillAction;
}

/** The commands of action `index`, or the issue at its place. */
export function commandsFor(
  file: ActionsFile,
  index: number,
  circuit: Circuit,
): ActionCommands | Issue {
  const draft = file.actions[index]!;
  const plain = (command: ActionCommands['command']): ActionCommands => ({
    acknowledge: null,
    command,
  });
  if (draft.note !== undefined) return plain({ type: 'add-note', text: draft.note });
  if (draft.diagnose !== undefined) return plain({ type: 'diagnose', repairs: draft.diagnose });
  if (draft['give-up']) return plain({ type: 'diagnose', repairs: [] });
  const said = draft.acknowledge ? ({ type: 'acknowledge-cautions' } as const) : null;
  if (draft.follow) return { acknowledge: said, command: { type: 'do-step' } };
  const test = actionTest(draft, circuit);
  if ('code' in test) {
    const at = file.source.locate(['actions', index]);
    return { severity: 'error', at, ...test };
  }
  const type = draft.capture === undefined ? 'make-test' : 'capture';
  return { acknowledge: said && { ...said, test }, command: { type, test } };
}

/** The test of an action that is neither a note nor a diagnosis, nor follows the procedure. */
export function actionTest(draft: ActionDraft, circuit: Circuit): Test | NoTest {
  if (isTestDraft(draft)) return draftedTest(draft, circuit);
  return {
    code: 'no-test',
    words: 'this action does nothing',
    fix: 'give one of: measure, capture, test, follow, note, diagnose, give-up',
  };
}
