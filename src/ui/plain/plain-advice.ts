/** What the advisor says in the dialogue of lines, and a conclusion of one's own. */
import { allTests, type Better, type Proposal, type Weighed } from '../../session/advisor.ts';
import { MISFIT_LISTED } from '../../session/car-view.ts';
import { moduleFirst } from '../../session/conclusion-words.ts';
import { STATES_ASIDE } from '../../session/events.ts';
import {
  type AsideCommand,
  asideBack,
  asideCommand,
  stateAsideCommand,
} from '../../session/out-of-reach.ts';
import type { Session } from '../../session/session.ts';
import { percentWords } from '../parts/bar.ts';
import { asideWords, setAsideWords } from '../screens/aside-words.ts';
import {
  carWithSources,
  MISFIT_WORDS,
  misfitWords,
  SET_RIGHT_PLAIN,
} from '../screens/car-words.ts';
import {
  acceptedWords,
  FLEETING_WORDS,
  fromOwnWords,
  fromSuspect,
  minutesWords,
  type OwnConclusion,
  restsWords,
} from '../screens/conclusion-words.ts';
import { adviceOf, noAdviceWords } from '../screens/pages-state.ts';
import { acceptQuestion, askedFor } from './plain-again.ts';
import { makeTest } from './plain-test.ts';
import { type DialogueEnd, helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

/** Words for suspects and proposals. */
export const ADVICE_WORDS: readonly Word<WordPlace>[] = [
  {
    words: ['suspects'],
    isTold: isAdvised,
    help: helpLine('suspects', 'what it could be, by chance'),
    does: saySuspects,
  },
  {
    words: ['next'],
    isTold: isAdvised,
    help: helpLine('next', 'what would tell you most now'),
    does: sayNextTests,
  },
  {
    words: ['do'],
    isTold: isAdvised,
    help: helpLine('do NUMBER', 'do that suggested test'),
    does: (place, text) => doProposal(place, Number(text)),
  },
  {
    words: ['aside'],
    // At a bench every test can be done.
    isTold: ({ opened }) => opened.drill === null,
    help: helpLine(
      'aside NUMBER',
      "that one can't be done here; a part: nothing at its connector; cranking, running, key-on: can't be had; aside back: it can after all",
    ),
    does: aside,
  },
];

/** A word for a conclusion of one's own. */
export const CONCLUDE_WORD: Word<WordPlace> = {
  words: ['conclude'],
  help: helpLine(
    'conclude NUMBER',
    'conclude with that suspect, or in your own words: conclude TEXT',
  ),
  does: (place, text) => conclude(place, text),
};

/** Some levels of a drill have no suspects; elsewhere the word says itself why it has none. */
function isAdvised({ opened }: WordPlace): boolean {
  return opened.drill === null || adviceOf(opened) !== null;
}

const SUSPECTS_SHOWN = 8;

function saySuspects(place: WordPlace): DialogueEnd {
  const { opened } = place;
  const session = opened.driver.session();
  const advisor = adviceOf(opened);
  if (!advisor) return sayAll(place, [unadvised(place)]);
  const { suspects: view, car } = advisor.diagnosis(session);
  const misfit = car && car.misfit.chance >= MISFIT_LISTED ? car.misfit.chance : null;
  const known = carWithSources(opened, session, car);
  const odd = misfitWords(opened, session, car);
  return sayAll(place, [
    ...view.rows
      .slice(0, SUSPECTS_SHOWN)
      .map((row, index) => `  ${index + 1}  ${percentWords(row.chance).padStart(5)}  ${row.words}`),
    ...(misfit === null ? [] : [`     ${percentWords(misfit).padStart(5)}  ${MISFIT_WORDS}`]),
    ...(odd === null ? [] : [`${odd} ${SET_RIGHT_PLAIN}`]),
    ...(known === null ? [] : [known]),
    ...(view.unexplained ? [view.unexplained] : []),
    ...(view.group ? [view.group] : []),
    ...(view.intermittent ? [FLEETING_WORDS] : []),
    ...(opened.drill ? [] : ['Conclude on one with: conclude NUMBER']),
  ]);
}

/** Why there is no advice, as a sentence. */
function unadvised({ opened }: WordPlace): string {
  const words = noAdviceWords(opened);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

function sayNextTests(place: WordPlace): DialogueEnd {
  const { opened } = place;
  const advisor = adviceOf(opened);
  if (!advisor) return sayAll(place, [unadvised(place)]);
  const proposals = allTests(advisor, opened.driver.session());
  if (proposals.length === 0)
    return sayAll(place, ['No test would tell you more now.', ...setAside(place)]);
  return sayAll(place, [
    ...proposals.flatMap(({ words, minutes, why }, index) => [
      `  ${index + 1}  ${opened.bind(words)} (${minutesWords(minutes)})`,
      `     ${opened.bind(why)}`,
    ]),
    `Do one with: do NUMBER${opened.drill ? '' : "; if you can't do one here: aside NUMBER"}`,
    ...setAside(place),
  ]);
}

/** The tests that were set aside, in a line. */
function setAside({ opened }: WordPlace): string[] {
  const session = opened.driver.session();
  const words = asideWords(opened, session);
  return words.length === 0
    ? []
    : [`Set aside: ${words.join('; ')}. The last one back: aside back`];
}

/**
 * `3` is the proposed test of that number, `sensor` the connector of that part, `cranking` all that needs it, `back` what
 * was set aside last.
 */
async function aside(place: WordPlace, text: string): Promise<DialogueEnd> {
  const { opened } = place;
  const advisor = adviceOf(opened);
  const session = opened.driver.session();
  if (opened.drill) return sayAll(place, ['In a drill every test can be done.']);
  const proposals = advisor && /^\d+$/.test(text) ? allTests(advisor, session) : [];
  const command = asideAsked(session, text, proposals);
  if (!command)
    return sayAll(place, [text === 'back' ? 'No test was set aside.' : whatIsSetAside(session)]);
  const done = await performSaved(place, command);
  return done.ok ? sayAll(place, [setAsideWords(opened, session, command)]) : null;
}

function asideAsked(
  session: Session,
  text: string,
  proposals: readonly Proposal[],
): AsideCommand | null {
  if (text === 'back') return asideBack(session);
  const test = proposals[Number(text) - 1]?.test;
  if (test) return { type: 'set-test-aside', test, aside: true };
  const { circuit } = session.opened;
  const name = text.toLowerCase();
  const named = circuit?.connectors.find(({ part }) => part === name);
  if (named) return asideCommand(session, named.part);
  const state = STATES_ASIDE.find((one) => one === name);
  return state ? stateAsideCommand(state) : null;
}

function whatIsSetAside({ opened }: Session): string {
  const parts = opened.circuit?.connectors.map(({ part }) => part) ?? [];
  const connectors =
    parts.length === 0
      ? ''
      : ` For all that needs a connector: aside and its part, of ${parts.join(', ')}.`;
  return `See their numbers with "next".${connectors} For all that needs a vehicle state that can't be had: aside ${STATES_ASIDE.join(', aside ')}.`;
}

function doProposal(place: WordPlace, number: number): Promise<DialogueEnd> | DialogueEnd {
  const { opened } = place;
  const advisor = adviceOf(opened);
  const proposal = advisor && allTests(advisor, opened.driver.session())[number - 1];
  return proposal
    ? makeTest(place, proposal)
    : sayAll(place, ['There is no suggested test with that number; list them with "next".']);
}

/** On the suspect of a number, or in words. */
async function conclude(place: WordPlace, text: string): Promise<DialogueEnd> {
  const { opened } = place;
  const session = opened.driver.session();
  if (!/^\d*$/.test(text)) return acceptOwn(place, fromOwnWords(text).own);
  const row = opened.advisor?.suspects(session).rows[Number(text) - 1];
  return row
    ? acceptOwn(place, fromSuspect(row).own)
    : sayAll(place, ['There is no suspect with that number; list them with "suspects".']);
}

/** What is better than to accept a conclusion; without a model nothing is known to be. */
export function betterNow(weighed: Weighed | null): Better {
  return weighed?.better ?? { kind: 'accept' };
}

/** Does what is better than to accept a conclusion. */
export async function doBetter(
  place: WordPlace,
  better: Exclude<Better, { kind: 'accept' }>,
): Promise<DialogueEnd> {
  switch (better.kind) {
    case 'take-back':
      // Its repeats answer the step then.
      await performSaved(place, { type: 'go-back', to: better.overturned.place });
      return null;
    case 'repeat':
    case 'first':
    case 'narrow':
    case 'prove':
      return makeTest(place, better.proposal);
    case 'instead':
      return acceptOwn(place, fromSuspect(better.row).own);
  }
}

/** One's own conclusion, asked about where the readings do not bear it out. */
export async function acceptOwn(place: WordPlace, own: OwnConclusion | null): Promise<DialogueEnd> {
  const { opened, dialogue } = place;
  const { driver, advisor } = opened;
  if (!own) return null;
  const isWeighed = own.words === null;
  const weighed = (isWeighed && advisor?.weigh(driver.session(), own.faults)) || null;
  const rests = restsWords(opened, driver.session(), weighed);
  if (rests !== null) dialogue.say(rests);
  const before = moduleFirst(driver.session().opened.circuit, own.faults);
  if (before !== '') dialogue.say(before);
  const better = betterNow(weighed);
  if (better.kind !== 'accept') {
    const wanted = askedFor((await dialogue.ask(acceptQuestion(better))) ?? '', better);
    if (!wanted) return sayAll(place, ['Nothing was concluded.']);
    if (wanted.kind !== 'accept') return doBetter(place, wanted);
  }
  const done = await performSaved(place, {
    type: 'conclude',
    own,
    ...(weighed ? { weighed } : {}),
  });
  const { concluded } = driver.session();
  if (done.ok && concluded) dialogue.say(acceptedWords(concluded, opened));
  return null;
}
