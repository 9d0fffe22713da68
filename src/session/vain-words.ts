/** What waking in vain was worth, in words: when to stop. */
import type { WakingVain } from './events.ts';
import { WOKEN_CHANCE } from './intermittent.ts';
import type { Session } from './session.ts';

/** As much again is worth it while it would take so many hundredths off the chance. Our choice. */
const WORTH = 0.1;

/** The stop rule, as sentences. */
export function vainWords({ minutes, before, after }: WakingVain): string {
  const left = hundredths(leftBy({ before, after }));
  const worth =
    after - left < WORTH ? 'stop trying there.' : 'worth it where nothing else tells more.';
  const fell = after < before ? 'fell' : 'went';
  return `Nothing in ${Number(minutes.toPrecision(2))} minutes of trying to bring it on: the chance that it is there ${fell} from ${percent(before)} to ${percent(after)}. The same again would leave ${percent(left)}: ${worth}`;
}

/**
 * What the same again in vain would leave: by how far the chance fell the share that hands can wake is known, and of those
 * a tenth were missed.
 */
function leftBy({ before, after }: Pick<WakingVain, 'before' | 'after'>): number {
  const odds = (chance: number) => chance / (1 - chance);
  const kept = Math.min(1, odds(after) / odds(before));
  const willing = Math.min(1, (1 - kept) / WOKEN_CHANCE);
  const missed = (willing * (1 - WOKEN_CHANCE)) / (1 - WOKEN_CHANCE * willing);
  const again = odds(after) * (1 - WOKEN_CHANCE * missed);
  return Number.isFinite(again) ? again / (1 + again) : after;
}

/** What came of the answer that was given last, where it was one of waking in vain; else null. */
export function lastVain({ events }: Session): string | null {
  const last = events.findLast(({ type }) => type !== 'caution-acknowledged');
  return last?.type === 'look-recorded' && last.vain ? vainWords(last.vain) : null;
}

function hundredths(chance: number): number {
  return Math.round(chance * 100) / 100;
}

function percent(chance: number): string {
  return `${Math.round(chance * 100)} %`;
}
