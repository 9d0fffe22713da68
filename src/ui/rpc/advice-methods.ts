/** What the circuit says of the session: suspects, next tests, the weight of a conclusion; and the conclusion itself. */
import { isHeldUp, type Proposal, readingItRestsOn, type Weighed } from '../../session/advisor.ts';
import { moduleFirst } from '../../session/conclusion-words.ts';
import { presentConclusion, type Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { restsWords } from '../screens/conclusion-words.ts';
import { evidenceWords, ruledOutWords } from '../screens/evidence-words.ts';
import { adviceOf, noAdviceWords } from '../screens/pages-state.ts';
import type { CallFailure, Outcome, Result } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { performCall, refusedCall } from './refused.ts';
import { firstView, suspectsView } from './state-view.ts';

export const ADVICE_METHODS: Methods<'suspects' | 'next' | 'weigh' | 'accept' | 'conclude'> = {
  suspects: {
    where: 'anywhere',
    run: (opened) => suspectsView(opened) ?? noAdvice(opened),
  },
  next: {
    where: 'anywhere',
    run: (opened) => {
      const advisor = adviceOf(opened);
      if (!advisor) return noAdvice(opened);
      const session = opened.driver.session();
      const { nextTests, furtherTests } = advisor.diagnosis(session);
      const view = (one: Proposal) => proposalView(opened, one);
      return {
        proposals: nextTests.map(view),
        further: furtherTests.map(view),
        aside: session.aside,
        unreached: session.unreached.flatMap((one) => ('part' in one ? [one.part] : [])),
        statesOut: session.unreached.flatMap((one) => ('state' in one ? [one.state] : [])),
      };
    },
  },
  weigh: { where: 'session', run: weigh },
  accept: { where: 'session', run: accept },
  conclude: { where: 'session', run: conclude },
};

function noAdvice(opened: OpenedSession): CallFailure {
  return refusedCall(opened.advisor ? 'hidden' : 'no-circuit', noAdviceWords(opened));
}

function proposalView({ bind }: OpenedSession, proposal: Proposal): Result {
  const { id, words, test, step, minutes, needs, shows, why, expected, healthy, looks } = proposal;
  return {
    id,
    words: bind(words),
    test,
    step,
    minutes,
    needs,
    shows: shows.map(({ faults, suspect, shown }) => ({ faults, suspect: bind(suspect), shown })),
    why: bind(why),
    bits: proposal.bits,
    expected,
    good: bind(healthy),
    looks,
  };
}

function weigh(opened: OpenedSession, { faults: named }: Params<'weigh'>): Outcome {
  const { advisor, driver } = opened;
  const session = driver.session();
  const faults = named ?? presentConclusion(session)?.faults;
  if (!advisor) return noAdvice(opened);
  if (!faults)
    return refusedCall(
      'not-concluded',
      'the tree has not reached a conclusion yet',
      'name faults to weigh',
    );
  const unknown = unknownFault(session, faults);
  if (unknown) return unknown;
  return weighedView(opened, faults, advisor.weigh(session, faults));
}

function unknownFault({ opened }: Session, faults: readonly string[]): CallFailure | null {
  const known = opened.circuit?.faults.map(({ id }) => id) ?? [];
  const fault = faults.find((id) => !known.includes(id));
  if (fault === undefined) return null;
  return refusedCall(
    'no-such-fault',
    `this circuit has no fault "${fault}"`,
    'see them with "sheet"',
    {
      fault,
      known,
    },
  );
}

function weighedView(opened: OpenedSession, faults: readonly string[], weighed: Weighed): Result {
  const session = opened.driver.session();
  const { evidence, ruledOut, proven, chance, missing, unexplained, hangsOn, wouldProve } = weighed;
  return {
    faults,
    moduleFirst: moduleFirst(session.opened.circuit, faults),
    proven,
    chance,
    missing,
    unexplained: unexplained === null ? null : opened.bind(unexplained),
    hangsOn,
    evidence: evidence.map((line) => ({
      ...line,
      words: evidenceWords(opened, session, line),
    })),
    ruledOut: ruledOut.map((line) => ({ ...line, words: ruledOutWords(opened, session, line) })),
    wouldProve: wouldProve.map((one) => proposalView(opened, one)),
    wouldPlace: weighed.wouldPlace.map((one) => proposalView(opened, one)),
  };
}

function accept(opened: OpenedSession, { sure = false }: Params<'accept'>): Outcome {
  const session = opened.driver.session();
  const tree = session.status === 'open' ? presentConclusion(session) : null;
  const weighed = tree && opened.advisor?.weigh(session, tree.faults);
  if (weighed && isHeldUp(weighed) && !sure) return notYet(opened, weighed);
  return performCall(opened, { type: 'conclude', ...(weighed ? { weighed } : {}) });
}

/** Something is better than to accept; a program that has reasons sends it with "sure". */
function notYet(opened: OpenedSession, weighed: Weighed): CallFailure {
  const words = restsWords(opened, opened.driver.session(), weighed) ?? '';
  return refusedCall(
    readingItRestsOn(weighed) === null ? 'not-borne-out' : 'rests-on-one-reading',
    words,
    weighed.better.kind === 'take-back'
      ? `take the answer at place ${weighed.better.overturned.place} back, with "back"; or send it with "sure"`
      : 'do the test "first", or conclude with "instead"; or send it with "sure"',
    firstView(opened, weighed),
  );
}

function conclude(
  opened: OpenedSession,
  { faults, words, sure = false }: Params<'conclude'>,
): Outcome {
  const session = opened.driver.session();
  const unknown = faults && opened.advisor ? unknownFault(session, faults) : null;
  if (unknown) return unknown;
  const weighed =
    faults && session.status === 'open' ? opened.advisor?.weigh(session, faults) : undefined;
  if (weighed && isHeldUp(weighed) && !sure) return notYet(opened, weighed);
  return performCall(opened, {
    type: 'conclude',
    own: { words: words ?? null, faults: faults ?? [] },
    ...(weighed ? { weighed } : {}),
  });
}
