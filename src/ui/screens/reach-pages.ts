/**
 * Saying that nothing can be done at a connector, or in a vehicle state: of a proposed test, and of a step that cannot be
 * done. No React.
 */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Setup, Test } from '../../circuit/test.ts';
import { touchedConnectors } from '../../circuit/touched-connectors.ts';
import type { StateAside } from '../../session/events.ts';
import {
  type AsideCommand,
  asideCommand,
  connectorsOfStep,
  connectorWords,
  isUnreached,
  stateAsideCommand,
  statesOut,
  stateToSay,
} from '../../session/out-of-reach.ts';
import { presentStep, type Session, type Unreached } from '../../session/session.ts';
import {
  open,
  type PageParts,
  type PagesState,
  refusedTurn,
  send,
  type Turn,
} from './pages-state.ts';
import { CANNOT, type Question } from './text-questions.ts';

/** What a test needs that may be out of reach: its connectors, and the state of the vehicle. */
export function reachOfTest(circuit: Circuit | null, test: Test): Unreached[] {
  const parts = circuit ? touchedConnectors(circuit, test) : [];
  return [...parts.map((part) => ({ part })), ...statesOf(test.setup)];
}

/** Asks which of them it is; the choice is made even of one, since it takes many tests away. */
export function openReach(state: PagesState, test: Test): Turn {
  const of = reachOfTest(state.session.opened.circuit, test);
  return of.length === 0
    ? refusedTurn(state, 'this test needs no connector, and the key is off: x sets it aside alone')
    : open(state, { name: 'reach', of });
}

/** A line for each of them. */
export function reachItems({ session }: PagesState, { of }: PageParts['reach']) {
  return of.map((one) => ({
    id: idOf(one),
    text: capital(outWords(session, one)),
    about:
      'All tests that need it are set aside at once, and steps of the procedure that need it are skipped.',
  }));
}

/** One of them was chosen, by its id on the page. */
export function afterReach(state: PagesState, { of }: PageParts['reach'], id: string): Turn {
  const chosen = of.find((one) => idOf(one) === id);
  return chosen
    ? send(state, outCommand(state.session, chosen))
    : refusedTurn(state, 'choose one of these');
}

/** The command that says so, in the usual words. */
export function outCommand(session: Session, what: Unreached): AsideCommand {
  return 'part' in what ? asideCommand(session, what.part) : stateAsideCommand(what.state);
}

/** `nothing can be done at the connector of the sensor`. */
export function outWords(session: Session, what: Unreached): string {
  return 'part' in what
    ? `nothing can be done at ${connectorWords(session.opened.circuit, what.part)}`
    : OUT_OF_STATE[what.state];
}

const OUT_OF_STATE: Readonly<Record<StateAside, string>> = {
  'key-on': "the key can't be switched on",
  cranking: "the engine can't or must not be cranked",
  running: "the engine can't or must not run",
};

/** The question why a step cannot be done, with what it needs that may be out of reach to choose from by number. */
export function cannotQuestion(session: Session): Question {
  const of = reachableOf(session);
  if (of.length === 0) return CANNOT;
  const lines = of.map(
    (one, index) => `${index + 1}: ${outWords(session, one)}, in this step or any other`,
  );
  const { about } = CANNOT;
  return { ...CANNOT, about: [`Type the reason, or a number. ${about}`, ...lines].join('\n') };
}

/** What was chosen by its number; null for a reason in words. */
export function reachOfReason({ session }: PagesState, typed: string): Unreached | null {
  const number = typed.trim();
  return /^[1-9]$/.test(number) ? (reachableOf(session)[Number(number) - 1] ?? null) : null;
}

/**
 * What the present step needs and nobody said out of reach: connectors, then the state of the vehicle; nothing where there
 * is no way round the step, and on a drill.
 */
export function reachableOf(session: Session): Unreached[] {
  const { circuit, vehicle } = session.opened;
  const step = presentStep(session);
  if (!step || vehicle.kind === 'drill' || step.kind === 'conclude' || step.cannot === null)
    return [];
  const parts = circuit ? connectorsOfStep(circuit, step) : [];
  return [
    ...parts.map((part) => ({ part })).filter((one) => !isUnreached(session, one)),
    ...statesOf(step.setup).filter(({ state }) => !statesOut(session).includes(state)),
  ];
}

function statesOf(setup: Setup): { readonly state: StateAside }[] {
  const state = stateToSay(setup);
  return state === null ? [] : [{ state }];
}

function idOf(what: Unreached): string {
  return 'part' in what ? `part ${what.part}` : `state ${what.state}`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
