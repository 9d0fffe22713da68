/** For the record: which cautions stood in short, before what, and where they were read. */
import type { VehicleState } from '../circuit/test.ts';
import { type Caution, isTask } from '../procedure/procedure.ts';
import { isByTest } from './answering-test.ts';
import { isAnswer, type SessionEvent } from './events.ts';
import { evolveInPlace, openSession } from './evolve.ts';
import { stepCautions, testCautions } from './pending-cautions.ts';
import { testOfShort } from './place-short.ts';
import { type CautionInShort, cautionsInShort } from './read-cautions.ts';
import type { Session } from './session.ts';

/** Which cautions stood in short before which event, once for each time that the vehicle came into a state. */
export function stoodInShort(
  session: Session,
): (CautionInShort & { readonly event: SessionEvent })[] {
  let before = openSession(session.opened);
  let stood: { readonly state: VehicleState; readonly ids: readonly string[] } | null = null;
  const all: (CautionInShort & { readonly event: SessionEvent })[] = [];
  for (const event of session.events.slice(1)) {
    const made = madeIn(before, event);
    if (made) {
      const stays: boolean = stood?.state === made.state && made.state !== 'cranking';
      const known: readonly string[] = stays && stood ? stood.ids : [];
      const short = cautionsInShort(before, made.state, made.cautions);
      for (const one of short) if (!known.includes(one.caution.id)) all.push({ event, ...one });
      stood = { state: made.state, ids: [...known, ...short.map(({ caution }) => caution.id)] };
    }
    before = evolveInPlace(before, event);
  }
  return all;
}

/** The state and the cautions of what was done at the vehicle just then; null where nothing was. */
function madeIn(
  session: Session,
  event: SessionEvent,
): { readonly state: VehicleState; readonly cautions: readonly Caution[] } | null {
  if (event.type === 'test-recorded')
    return event.made === undefined
      ? { state: event.test.setup.state, cautions: testCautions(session, event.test) }
      : null;
  if (event.type === 'short-placed') {
    const { circuit } = session.opened;
    const test = circuit && testOfShort(circuit, event.stretch, 'from');
    return test && { state: test.setup.state, cautions: testCautions(session, test) };
  }
  const isMade = isAnswer(event) ? !isByTest(event) : event.type === 'retest-recorded';
  if (!isMade || event.type === 'step-impossible' || !('step' in event) || event.step === null)
    return null;
  const step = session.opened.procedure?.steps[event.step];
  return step && isTask(step)
    ? { state: step.setup.state, cautions: stepCautions(session, step) }
    : null;
}
