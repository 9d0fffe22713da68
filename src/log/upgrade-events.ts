/**
 * Events of earlier versions in today's form: format 1 of sessions, and drills, which had events of their own.
 *
 * Nothing of what comes in has been checked, so nothing is believed here: what is not as it should be is passed on as
 * it stands, and the check that follows names it. What an early version wrote down in its own words is kept as `said`
 * where no fact stands behind it, and dropped where the facts say it again.
 */
import { SESSION_FORMAT } from '../session/events.ts';
import {
  AT_HAND_ONCE,
  FIRST_RULES,
  type Upgraded,
  unknownType,
  withCapture,
} from './early-events.ts';
import type { StoredEvent } from './event-line.ts';
import { each, isEmpty, isKeys, type Keys, without } from './loose-keys.ts';
import { EarlyDrill } from './upgrade-drill.ts';

/** All events of a session, in order. */
export function upgradeEvents(stored: readonly StoredEvent[]): Upgraded[] {
  const [first] = stored;
  if (first?.type === 'drill-opened') {
    const drill = new EarlyDrill(first);
    return upgradedBy(stored, (event) => drill.upgraded(event));
  }
  return upgradedBy(stored, sessionEvent);
}

/** Another version of the program may have gone on with the file: each resumption says in which form. */
function upgradedBy(
  stored: readonly StoredEvent[],
  early: (event: StoredEvent) => Upgraded,
): Upgraded[] {
  let isEarly = stored[0]?.['format'] === 1;
  return stored.map((event) => {
    if (event.type === 'session-resumed') isEarly = !('format' in event || 'rules' in event);
    return isEarly ? early(event) : event;
  });
}

/** One event of a session of format 1. */
function sessionEvent(event: StoredEvent): Upgraded {
  switch (event.type) {
    case 'session-opened':
      return {
        ...event,
        format: SESSION_FORMAT,
        rules: FIRST_RULES,
        by: 'not-stated',
        instruments: withThoseAtHand(event['instruments']),
        cautionRules: [],
        vehicle: vehicleOf(event['vehicle']),
      };
    case 'session-resumed':
      return { ...event, format: SESSION_FORMAT, rules: FIRST_RULES, by: 'not-stated' };
    case 'instruments-changed':
      return { ...event, instruments: withThoseAtHand(event['instruments']) };
    case 'reading-recorded':
      return withCapture({ ...event, judgement: judgementOf(event['judgement']) });
    case 'look-recorded':
    case 'retest-recorded':
      return withCapture(event);
    case 'extra-reading': {
      const { words: _words, expected = null, judgement = null, ...rest } = event;
      const typed = isKeys(event['shown']) && event['shown'].kind === 'look' ? '' : event['typed'];
      const told = { typed, expected, judgement: judgementOf(judgement) };
      return withCapture({ ...rest, type: 'test-recorded', ...told });
    }
    case 'concluded':
      return concluded(event);
    case 'session-closed':
      return without(event, 'words');
    case 'caution-acknowledged':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'note-added':
    case 'session-paused':
    case 'retest-impossible':
    case 'recovered':
    case 'segment-continued':
      return event;
    default:
      return unknownType(event);
  }
}

function withThoseAtHand(instruments: unknown): unknown {
  return Array.isArray(instruments)
    ? [...new Set<unknown>([...instruments, ...AT_HAND_ONCE])]
    : instruments;
}

function vehicleOf(vehicle: unknown): unknown {
  if (!isKeys(vehicle) || !('comesAndGoes' in vehicle)) return vehicle;
  const { comesAndGoes, ...rest } = vehicle;
  return { ...rest, intermittent: comesAndGoes };
}

function judgementOf(judgement: unknown): unknown {
  return isKeys(judgement) ? without(judgement, 'words') : judgement;
}

/** The title of a tree's conclusion stands in the tree, that of named faults in the circuit; of one's own in words it is all there is. */
function concluded(event: StoredEvent): Keys {
  const { title, repair, evidence, ruledOut, ...rest } = event;
  const isOwn = rest['conclusion'] === null && isEmpty(rest['faults']);
  const own = typeof title === 'string' ? title.trim() : title;
  const more = typeof repair === 'string' ? repair.trim() : '';
  const isMore = typeof own === 'string' && more !== '' && more !== own;
  return {
    ...rest,
    ownWords: isOwn ? (isMore ? `${own}: ${more}` : own) : null,
    evidence: each(evidence, ({ counted = true, ...said }) => ({ counted, said })),
    ruledOut: each(ruledOut, (said) => ({ said })),
  };
}
