/** Why a command is refused: a code with its facts, and the words made of it when it is shown. */
import type { Step } from '../procedure/procedure.ts';
import type { RepairVerdict } from './events.ts';

/** Why the session takes no notice of a command, with the facts that the words are made of. */
export type Refusal =
  /** Cautions that must be acknowledged first, by their ids. */
  | { readonly code: 'caution-first'; readonly cautions: readonly string[] }
  | { readonly code: 'no-caution' }
  /** What the step asks for is something else; null where no step is asked. */
  | {
      readonly code: 'wrong-kind';
      readonly step: string | null;
      readonly wanted: Step['kind'] | null;
    }
  | { readonly code: 'no-capture' }
  | { readonly code: 'no-waking' }
  /** Rounds at this step counted drops where the answer has none: how many, and at which places that were named. */
  | {
      readonly code: 'drops-counted';
      readonly drops: number;
      readonly places: readonly string[];
    }
  | { readonly code: 'not-a-number' }
  | {
      readonly code: 'no-such-outcome';
      readonly step: string;
      readonly outcome: string;
      readonly known: readonly string[];
    }
  /** The outcome is one of the step's, and another one of what was shown. */
  | { readonly code: 'other-outcome'; readonly step: string; readonly outcome: string }
  /** The tests after the repair give another verdict. */
  | {
      readonly code: 'other-verdict';
      readonly verdict: RepairVerdict;
      readonly due: RepairVerdict;
    }
  | { readonly code: 'no-such-step'; readonly step: string }
  | { readonly code: 'no-such-fault'; readonly fault: string; readonly known: readonly string[] }
  | { readonly code: 'no-circuit' }
  | { readonly code: 'no-such-connector'; readonly part: string; readonly known: readonly string[] }
  /** The vehicle of a drill stands with everything open. */
  | { readonly code: 'all-in-reach' }
  /** Its engine cranks and runs. */
  | { readonly code: 'all-states' }
  /** Location of a short cannot be measured so; a sentence and its way out. */
  | { readonly code: 'no-place'; readonly flaw: string; readonly fix: string }
  | { readonly code: 'no-place-on-drill' }
  /** What would draw a current of its own while a short is placed. */
  | { readonly code: 'still-plugged'; readonly parts: readonly string[] }
  /** There is no circuit whose values could be set. */
  | { readonly code: 'no-values' }
  /** The vehicle of a drill is as its circuit describes it. */
  | { readonly code: 'as-described' }
  /** Nobody can know this of the circuit; the rest of a sentence. */
  | { readonly code: 'bad-value'; readonly flaw: string }
  | { readonly code: 'nothing-to-take-back' }
  | { readonly code: 'not-open'; readonly status: 'paused' | 'concluded' | 'closed' | 'revealed' }
  | { readonly code: 'empty-text'; readonly of: 'note' | 'reason' | 'conclusion' | 'customer' }
  | { readonly code: 'no-way-round'; readonly step: string }
  | {
      readonly code: 'not-concluded';
      readonly wanted: 'conclusion' | 'repair' | 'close' | 'drive' | 'work';
    }
  | { readonly code: 'old-capture'; readonly name: string }
  | { readonly code: 'no-drill' }
  | { readonly code: 'no-drive' }
  | { readonly code: 'no-customer' };

/** The identity of a refusal, which tests and programs compare. */
export type RefusalCode = Refusal['code'];

/** The refusal in words, each without a full stop; `fix` is empty where there is no way out to name. */
export function refusalWords(refusal: Refusal): { readonly words: string; readonly fix: string } {
  const [words, fix = ''] = sentences(refusal);
  return { words, fix };
}

function sentences(refusal: Refusal): readonly [words: string, fix?: string] {
  switch (refusal.code) {
    case 'caution-first':
      return [
        'the cautions of this test have not been acknowledged',
        'read and acknowledge them first',
      ];
    case 'no-caution':
      return ['there is no caution to acknowledge here'];
    case 'wrong-kind':
      if (refusal.wanted === null)
        return ['no step of a procedure is open here', 'record a test, or conclude'];
      return refusal.wanted === 'conclude'
        ? ['the tree has reached its conclusion']
        : [`step "${refusal.step}" needs ${WANTED[refusal.wanted]}`];
    case 'no-capture':
      return ["a capture can't give this answer", 'answer it by hand'];
    case 'no-waking':
      return ['nothing is wiggled or heated at this step', 'write it down as a note'];
    case 'drops-counted': {
      const { drops, places } = refusal;
      const at = places.length === 0 ? '' : ` (${places.join(', ')})`;
      return [
        `the rounds in the record counted ${drops === 1 ? 'a drop' : `${drops} drops`}${at}`,
        'answer where it dropped out; if the count was wrong, say "cannot be done" and why',
      ];
    }
    case 'not-a-number':
      return ['this is not a number'];
    case 'no-such-outcome':
      return [
        `step "${refusal.step}" has no outcome "${refusal.outcome}"`,
        `one of: ${refusal.known.join(', ')}`,
      ];
    case 'other-outcome':
      return [`"${refusal.outcome}" is not the outcome for what step "${refusal.step}" showed`];
    case 'other-verdict':
      return [
        `the tests after the repair do not give "${refusal.verdict}"`,
        `they give "${refusal.due}"`,
      ];
    case 'no-such-step':
      return [`the procedure has no step "${refusal.step}"`];
    case 'no-such-fault':
      return [
        `this circuit has no fault "${refusal.fault}"`,
        `one of: ${refusal.known.join(', ')}`,
      ];
    case 'no-circuit':
      return ['this session has no circuit model', 'conclude in your own words'];
    case 'no-such-connector':
      return [
        `this circuit has no connector of a part "${refusal.part}"`,
        `one of: ${refusal.known.join(', ')}`,
      ];
    case 'all-in-reach':
      return ['in a drill every connector can be reached'];
    case 'all-states':
      return ['in a drill the vehicle can be had in every state'];
    case 'no-place':
      return [refusal.flaw, refusal.fix];
    case 'no-place-on-drill':
      return [
        'the location of a short is not asked in a drill',
        'its tests show that there is one',
      ];
    case 'still-plugged':
      return [
        `parts still plugged in would draw current of their own: ${refusal.parts.join(', ')}`,
        'unplug them all, and feed the wire again',
      ];
    case 'no-values':
      return ['this session has no circuit model, so there are no values to set'];
    case 'as-described':
      return ['in a drill the vehicle is as its circuit describes it'];
    case 'bad-value':
      return [`this ${refusal.flaw}`, 'see what can be set, and give a value with its unit'];
    case 'nothing-to-take-back':
      return ['there is no earlier answer to take back'];
    case 'not-open':
      return NOT_OPEN[refusal.status];
    case 'empty-text':
      return EMPTY[refusal.of];
    case 'no-way-round':
      return [
        'this procedure has no alternative to this step',
        'pause here, or see what other tests would tell you',
      ];
    case 'not-concluded':
      return NOT_CONCLUDED[refusal.wanted];
    case 'old-capture':
      return [
        `${refusal.name} is the same file that was measured before the repair`,
        'capture it again',
      ];
    case 'no-drive':
      return ['a drill ends with its answer: there is no test drive'];
    case 'no-customer':
      return ['a drill vehicle has no owner to ask'];
    case 'no-drill':
      return ['this session is not a drill'];
  }
}

const WANTED: Readonly<Record<Exclude<Step['kind'], 'conclude'>, string>> = {
  measure: 'a reading',
  look: 'one of its looks',
  ask: 'one of its answers',
  act: 'only "done"',
};

/** What is closed stays closed; until then a conclusion can be taken back. */
const NOT_OPEN = {
  paused: ['this session is paused', 'resume it first'],
  concluded: ['this session has ended', 'go back to change an answer'],
  closed: ['this session has ended', 'begin a new session'],
  revealed: ['this drill has ended', 'start another one'],
} as const;

const EMPTY = {
  note: ['the note is empty'],
  reason: ["say briefly why it can't be done"],
  conclusion: ['say briefly what is wrong'],
  customer: ['say who has authorised or declined the work'],
} as const;

const NOT_CONCLUDED = {
  conclusion: ['the tree has not reached a conclusion yet', 'go on, or name your own conclusion'],
  repair: ['there is no conclusion to test yet'],
  close: ['there is no conclusion to close yet'],
  work: ['there is no conclusion yet, so there is no work to authorise'],
  drive: ['there is no conclusion yet, so there is no repair to test-drive'],
} as const;
