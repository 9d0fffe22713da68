/** The sample tree with steps that wake a fault which comes and goes, and a question about one. */
import type {
  AskOutcome,
  AskStep,
  Conclusion,
  LookStep,
  Procedure,
  Step,
} from '../../src/procedure/procedure.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { TREE } from './sample-tree.ts';

function ask(id: string, more: Partial<AskStep>, outcomes: readonly AskOutcome[]): AskStep {
  return {
    kind: 'ask',
    id,
    title: `Step ${id}`,
    family: 'interview',
    setup: KEY_ON,
    say: '',
    why: '',
    minutes: 0,
    cautions: [],
    cannot: null,
    usual: outcomes[0]!.name,
    outcomes,
    ...more,
  };
}
const to = (name: string, go: string, more: Partial<AskOutcome> = {}): AskOutcome => ({
  name,
  words: `it is ${name}`,
  go,
  ...more,
});

const PLUG = ['contact.feed.open', 'contact.signal.open'];
const SEAT: Conclusion = { ...(TREE.steps['broken'] as Conclusion), id: 'seat', faults: PLUG };
/** Its places are the plug and the harness, in this order; the other answers wake nothing. */
export const WIGGLE = ask('wiggle', { family: 'wiggle' }, [
  to('plug', 'seat'),
  to('harness', 'broken'),
  to('nothing', 'fine'),
  to('unsure', 'pattern'),
]);
const HEAT = ask(
  'heat',
  { family: 'actuation', minutes: 3, setup: { ...KEY_ON, state: 'running', unplugged: ['relay'] } },
  [to('holds', 'fine'), to('drops', 'shorted')],
);
/** It leads to a conclusion too, but nothing is moved for it. */
export const QUESTION = ask('question', {}, [
  to('dead', 'broken', { codeKinds: ['circuit'] }),
  to('fleeting', 'wiggle', { codeKinds: ['intermittent'] }),
  to('unknown', 'wiggle'),
]);
/** It moves something, and no answer says of what. */
const SHAKE = ask('shake', { family: 'wiggle' }, [to('done', 'fine')]);
/** The scope watches what is moved; what it shows is a look, which stands for itself. */
const WATCH: Step = { ...(TREE.steps['pattern'] as LookStep), id: 'watch', family: 'wiggle' };
const steps = [SEAT, WIGGLE, HEAT, QUESTION, SHAKE, WATCH].map((step) => [step.id, step] as const);
export const WAKING: Procedure = {
  ...TREE,
  steps: { ...TREE.steps, ...Object.fromEntries(steps) },
};
