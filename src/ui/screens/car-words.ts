/** What is known of the car in front, in words: its values, whether it is as described, what is good for it. No React. */
import { numberUnitOf } from '../../circuit/shown-by.ts';
import type { Test } from '../../circuit/test.ts';
import type { Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { expectedRangeWords } from '../../procedure/test-words.ts';
import { type CarView, MISFIT_LISTED } from '../../session/car-view.ts';
import type { EventNumber, ExpectedShown } from '../../session/events.ts';
import { isNarrower } from '../../session/good-here.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { percentWords } from '../parts/bar.ts';
import { readAt, unstopped } from './evidence-words.ts';
import { adviceOf } from './pages-state.ts';

export const MISFIT_WORDS = 'This car does not match its circuit file';

/** The values that the readings have shown, as a sentence; null while they have shown none. */
export function carLine(car: CarView | null): string | null {
  if (!car || car.values.length === 0) return null;
  return `This car: ${car.values.map(({ words, shown }) => `${words} ${shown}`).join(', ')}.`;
}

/** The same with the reading that told each. */
export function carWithSources(
  opened: OpenedSession,
  session: Session,
  car: CarView | null,
): string | null {
  if (!car || car.values.length === 0) return null;
  const values = car.values.map(
    ({ words, shown, by }) => `${words} ${shown} (from ${readingWords(opened, session, by)})`,
  );
  return `This car: ${values.join('; ')}.`;
}

/** Which described value disagrees with which reading, and what to do about it; null while none does. */
export function misfitWords(
  opened: OpenedSession,
  session: Session,
  car: CarView | null,
): string | null {
  if (!car?.misfit.value) return null;
  const { words, described, shown, by } = car.misfit.value;
  const against =
    by === null ? '' : ` The reading most at odds with it: ${readingWords(opened, session, by)}.`;
  return `${MISFIT_WORDS} (${percentWords(car.misfit.chance)}): ${words} described ${described}; the readings say ${shown}.${against}`;
}

/** In place of `misfitWords` while no value stands out. */
export const NO_VALUE_STANDS_OUT =
  'A value of this car may be outside what its circuit file allows; none stands out yet.';
/** How it is set right, on the page and in the dialogue. */
export const SET_RIGHT = 'If so, set it on the page of suspects.';
export const SET_RIGHT_PLAIN = 'If so, set it with: known';

/** What is to be added to what is good in a test: what it is for this car and what tells it; empty where nothing is. */
export function goodHereWords(
  opened: OpenedSession,
  session: Session,
  test: Test | null,
  stated: ExpectedShown | null,
): string {
  const here = test && adviceOf(opened)?.diagnosis(session).goodHere(test);
  if (!here || stated?.kind !== 'number') return '';
  const { expected, from, isWide } = here;
  const unit = numberUnitOf(test);
  const range = expectedRangeWords({ ...expected, nominal: null, from: 'circuit' }, unit);
  const isSame = expected.low === stated.low && expected.high === stated.high;
  const isTold = from !== null && (isSame || isNarrower(expected, stated));
  return [
    ...(isTold
      ? [`; for this car${isSame ? '' : ` ${range}`}, from ${readingWords(opened, session, from)}`]
      : []),
    ...(isWide ? [LITTLE_ALONE] : []),
  ].join('');
}
/** The same of the present step; nothing where a drill does not tell what is good. */
export function stepHereWords(opened: OpenedSession, session: Session, step: Step): string {
  if (step.kind !== 'measure' || !step.expected || opened.drill?.level.expected === false)
    return '';
  const { low, high } = step.expected;
  return goodHereWords(opened, session, testOf(step), { kind: 'number', low, high });
}

/** Until more is known of the car. */
const LITTLE_ALONE = '; so wide that the value alone tells you little';

/** `Volts at the battery, 11.9 V` */
function readingWords(opened: OpenedSession, session: Session, event: EventNumber): string {
  const { test, found } = readAt(opened, session, event);
  return `${unstopped(test)}, ${found}`;
}

/** What the page of suspects tells of the car. */
export interface CarTold {
  /** Its values, each with the reading that told it, and without; null while nothing is known. */
  readonly withSources: string | null;
  readonly short: string | null;
  /** From a few per cent on; null below. */
  readonly misfit: {
    readonly chance: number;
    readonly words: string;
    readonly isLoud: boolean;
  } | null;
}

/**
 * What the readings show of this car, for the page of suspects: its values, and whether it matches its circuit file.
 */
export function carTold(opened: OpenedSession, session: Session, car: CarView | null): CarTold {
  const misfit = misfitWords(opened, session, car);
  const chance = car?.misfit.chance ?? 0;
  return {
    withSources: carWithSources(opened, session, car),
    short: carLine(car),
    misfit:
      chance < MISFIT_LISTED
        ? null
        : {
            chance,
            words: misfit === null ? NO_VALUE_STANDS_OUT : `${misfit} ${SET_RIGHT}`,
            isLoud: misfit !== null,
          },
  };
}
