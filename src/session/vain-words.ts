/** What waking in vain was worth, in words: when to stop. */
import type { WakingVain } from './events.ts';
import { WOKEN_CHANCE } from './intermittent.ts';
import type { Session } from './session.ts';

/** As much again is worth it while it would take so many hundredths off the chance. Our choice. */
const WORTH = 0.1;

/** The stop rule, as sentences. */
export function vainWords({ minutes, before, after }: WakingVain): string {
  const left = hundredths((after * (1 - WOKEN_CHANCE)) / (1 - WOKEN_CHANCE * after));
  const worth =
    after - left < WORTH ? 'stop trying there.' : 'worth it where nothing else tells more.';
  const fell = after < before ? 'fell' : 'went';
  return `Nothing in ${Number(minutes.toPrecision(2))} minutes of trying to bring it on: the chance that it is there ${fell} from ${percent(before)} to ${percent(after)}. The same again would leave ${percent(left)}: ${worth}`;
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
