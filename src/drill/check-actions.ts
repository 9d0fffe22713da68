/** What is wrong with a file of actions before anybody does them: against the circuit, without a vehicle. */
import type { Circuit } from '../circuit/circuit.ts';
import { refuseTest } from '../circuit/refuse-test.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import type { Issue } from '../source/issue.ts';
import { nameFix } from '../source/nearest-name.ts';
import { type ActionsFile, actionTest } from './drill-actions.ts';
import { dangerOf } from './hazards.ts';

type ActionFlaw = Pick<Issue, 'code' | 'severity' | 'words'> & { readonly fix: string };

/** Every action that could not be done on this circuit; `hasTree` where there is a procedure to follow. */
export function actionIssues(file: ActionsFile, circuit: Circuit, hasTree: boolean): Issue[] {
  const end = file.actions.findIndex((one) => one.diagnose !== undefined || one['give-up']);
  return file.actions.flatMap((draft, index): Issue[] => {
    const found = end >= 0 && index > end ? [AFTER_THE_END] : findingsOf(draft, circuit, hasTree);
    const at = file.source.locate(['actions', index]);
    return found.map((one) => ({ ...one, at }));
  });
}

const AFTER_THE_END: ActionFlaw = {
  code: 'after-the-end',
  severity: 'error',
  words: 'the drill has ended before this action',
  fix: 'put the diagnosis last',
};

function findingsOf(
  draft: ActionsFile['actions'][number],
  circuit: Circuit,
  hasTree: boolean,
): ActionFlaw[] {
  if (draft.note !== undefined || draft['give-up']) return [];
  if (draft.diagnose !== undefined)
    return draft.diagnose.flatMap((repair) => repairFinding(repair, circuit) ?? []);
  if (draft.follow)
    return hasTree
      ? []
      : [
          {
            code: 'nothing-to-follow',
            severity: 'error',
            words: 'a circuit on its own has no procedure to follow',
            fix: 'name a procedure, or choose a test',
          },
        ];
  const test = actionTest(draft, circuit);
  if ('code' in test) return [{ severity: 'error', ...test }];
  const reason = refuseTest(circuit, test);
  if (reason === null) return [];
  const danger = dangerOf({ refusal: (one) => refuseTest(circuit, one) }, test);
  if (danger)
    return [
      {
        code: 'refused-test',
        severity: 'warning',
        words: `the bench stops this test: ${danger.reason}`,
        fix: 'it costs safety points; leave it out unless that is what you want to show',
      },
    ];
  return [
    {
      code: 'refused-test',
      severity: 'error',
      words: testRefusalWords(reason),
      fix: 'change the leads, the state, or what is unplugged',
    },
  ];
}

function repairFinding(repair: string, { faults }: Circuit): ActionFlaw | null {
  const known = [...new Set(faults.map((fault) => fault.repair))];
  if (known.includes(repair)) return null;
  return {
    code: 'unknown-repair',
    severity: 'error',
    words: `this circuit has no repair "${repair}"`,
    fix: nameFix(repair, known),
  };
}
