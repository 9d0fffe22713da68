/** Saying that nothing can be done at a connector: of a proposed test, and of a step that cannot be done. No React. */
import type { Test } from '../../circuit/test.ts';
import { touchedConnectors } from '../../circuit/touched-connectors.ts';
import {
  asideCommand,
  connectorsOfStep,
  connectorWords,
  isUnreached,
} from '../../session/out-of-reach.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { open, type PageParts, type PagesState, refuse, send, type Turn } from './pages-state.ts';
import { CANNOT, type Question } from './text-questions.ts';

/** The connectors that this test needs; the choice is made even of one, since it takes many tests away. */
export function openReach(state: PagesState, test: Test): Turn {
  const { circuit } = state.session.opened;
  const parts = circuit ? touchedConnectors(circuit, test) : [];
  return parts.length === 0
    ? refuse(state, 'this test needs no connector: x sets it aside alone')
    : open(state, { name: 'reach', parts });
}

/** A line for each of them. */
export function reachItems({ session }: PagesState, { parts }: PageParts['reach']) {
  return parts.map((part) => ({
    id: part,
    text: `Nothing can be done at ${connectorWords(session.opened.circuit, part)}`,
    about:
      'All tests that need it are set aside at once, and steps of the procedure that need it are skipped.',
  }));
}

/** A connector was chosen. */
export function afterReach(state: PagesState, part: string): Turn {
  return send(state, asideCommand(state.session, part));
}

/** The question why a step cannot be done, with the connectors that it needs to choose from by number. */
export function cannotQuestion(session: Session): Question {
  const parts = reachableOf(session);
  if (parts.length === 0) return CANNOT;
  const lines = parts.map(
    (part, index) =>
      `${index + 1}: nothing can be done at ${connectorWords(session.opened.circuit, part)}, in this step or any other`,
  );
  const { about } = CANNOT;
  return { ...CANNOT, about: [`Type the reason, or a number. ${about}`, ...lines].join('\n') };
}

/** The part whose connector was chosen by its number; null for a reason in words. */
export function partOfReason({ session }: PagesState, typed: string): string | null {
  const number = typed.trim();
  return /^[1-9]$/.test(number) ? (reachableOf(session)[Number(number) - 1] ?? null) : null;
}

/** Parts whose connectors the present step needs and that were not said out of reach; none where there is no way round it. */
export function reachableOf(session: Session): string[] {
  const { circuit, vehicle } = session.opened;
  const step = presentStep(session);
  if (!circuit || !step || vehicle.kind === 'drill') return [];
  if (step.kind === 'conclude' || step.cannot === null) return [];
  return connectorsOfStep(circuit, step).filter((part) => !isUnreached(session, part));
}
