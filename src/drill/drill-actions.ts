/** A drill without a person: the actions of a file as commands. */

import { targetIn } from '../circuit/arrange-test.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { parseBridge, parseMeasure } from '../circuit/parse-measure.ts';
import { standardTests } from '../circuit/standard-tests.ts';
import type { Bridge } from '../circuit/test.ts';
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { nameFix } from '../source/nearest-name.ts';
import { parseYaml, type YamlSource } from '../source/parse-yaml.ts';
import { schemaIssues } from '../source/schema-issues.ts';
import { type DrillCommand, stepTest } from './decide-drill.ts';
import type { Drill } from './drill.ts';
import type { DrillTest } from './drill-test.ts';
import type { ActionsDraft } from './generated/drill-actions.mjs';
import validate from './generated/drill-actions.mjs';
import type { LevelName } from './levels.ts';

type ActionDraft = ActionsDraft['actions'][number];

export interface ActionsFile {
  readonly procedure: string | null;
  readonly level: LevelName | null;
  readonly seed: number | null;
  readonly actions: readonly ActionDraft[];
  readonly source: YamlSource;
}

/** The actions in `text`; null with issues when their shape is wrong. */
export function loadActions(text: string, file: string): Checked<ActionsFile> {
  const parsed = parseYaml(text, file);
  if (!parsed.value || !isUsable(parsed.issues)) return { value: null, issues: parsed.issues };
  const source = parsed.value;
  if (!validate(source.data))
    return { value: null, issues: [...parsed.issues, ...schemaIssues(validate.errors, source)] };
  const { procedure, level, seed, actions } = source.data;
  return {
    value: {
      procedure: procedure ?? null,
      level: level ?? null,
      seed: seed ?? null,
      actions,
      source,
    },
    issues: parsed.issues,
  };
}

/** What one action asks for: perhaps an acknowledgement first, then the command. */
export type ActionCommands = {
  readonly acknowledge: DrillTest | null;
  readonly command: DrillCommand;
};

/** The commands of action `index`, or the issue at its place. */
export function commandsFor(
  file: ActionsFile,
  index: number,
  drill: Drill,
): ActionCommands | Issue {
  const draft = file.actions[index]!;
  const issue = (code: string, words: string, fix: string): Issue => ({
    code,
    severity: 'error',
    at: file.source.locate(['actions', index]),
    words,
    fix,
  });
  const plain = (command: DrillCommand): ActionCommands => ({ acknowledge: null, command });
  if (draft.note !== undefined) return plain({ type: 'note', text: draft.note });
  if (draft.diagnose !== undefined) return plain({ type: 'diagnose', repairs: draft.diagnose });
  if (draft['give-up']) return plain({ type: 'diagnose', repairs: [] });
  if (draft.follow)
    return { acknowledge: draft.acknowledge ? stepTest(drill) : null, command: { type: 'follow' } };
  const test = actionTest(draft, drill.opened.circuit);
  if ('code' in test) return issue(test.code, test.words, test.fix);
  const type = draft.capture === undefined ? 'measure' : 'capture';
  return { acknowledge: draft.acknowledge ? test : null, command: { type, test } };
}

/** Why an action is no test. */
export interface NoTest {
  readonly code: 'empty-action' | 'unknown-test' | 'bad-test';
  readonly words: string;
  readonly fix: string;
}

/** The test of an action that is neither a note nor a diagnosis, nor follows the procedure. */
export function actionTest(draft: ActionDraft, circuit: Circuit): DrillTest | NoTest {
  const test = testOf(draft, circuit);
  if (test === null)
    return {
      code: 'empty-action',
      words: 'this action does nothing',
      fix: 'give one of: measure, capture, test, follow, note, diagnose, give-up',
    };
  return 'words' in test ? { code: 'bad-test', fix: 'mend it here', ...test } : test;
}

function testOf(
  draft: ActionDraft,
  circuit: Circuit,
): DrillTest | { readonly words: string } | NoTest | null {
  const wiggle = draft.wiggle ?? false;
  if (draft.test !== undefined) {
    const all = standardTests(circuit);
    const found = all.find(({ id }) => id === draft.test);
    if (found) return { ...found.test, wiggle };
    const names = all.map(({ id }) => id);
    const words = `there is no test "${draft.test}"`;
    return { code: 'unknown-test', words, fix: nameFix(draft.test, names) };
  }
  const measured = draft.capture === undefined ? draft.measure : `pattern ${draft.capture}`;
  if (measured === undefined) return null;
  const probe = parseMeasure(measured);
  if ('words' in probe) return probe;
  const bridges: Bridge[] = [];
  for (const text of draft.bridges ?? []) {
    const bridge = parseBridge(text);
    if ('words' in bridge) return bridge;
    bridges.push(bridge.value);
  }
  const state = draft.state ?? 'key-on';
  const setup = {
    state,
    unplugged: [...new Set(draft.unplug ?? [])].sort(),
    bridges,
    sensor: draft.spare ? ('spare' as const) : ('fitted' as const),
    target: draft.moving ? ('moving' as const) : targetIn(circuit, state, 'still'),
  };
  return { setup, probe: probe.value, wiggle };
}
