/** What a weighed conclusion rests on, by the step or test of each event that it names. */
import type { Model } from '../../src/circuit/model.ts';
import type { Weighed } from '../../src/session/advisor.ts';
import { chooseSuspects } from '../../src/session/choose-suspects.ts';
import type { EventNumber } from '../../src/session/events.ts';
import type { Session } from '../../src/session/session.ts';
import type { SessionReading } from '../../src/session/session-readings.ts';

export interface WeighedWords {
  readonly evidence: readonly {
    readonly test: string;
    readonly where: string;
    readonly found: string;
    readonly counted: boolean;
  }[];
  readonly ruledOut: readonly { readonly words: string; readonly by: string }[];
}

/** The lines in words; an event that was no reading is a mistake. */
export function weighedWords(model: Model, session: Session, weighed: Weighed): WeighedWords {
  const readings = chooseSuspects(model, session.opened)(session).readingsOf(session);
  const at = (event: EventNumber): SessionReading => {
    const found = readings.find((reading) => reading.event === event);
    if (!found) throw new Error(`event ${event} is no reading`);
    return found;
  };
  const wordsOf = (repair: string) =>
    model.circuit.faults.find((fault) => fault.repair === repair)!.repairWords;
  return {
    evidence: weighed.evidence.map((line) => {
      if (!('reading' in line)) throw new Error('an advisor names events');
      const { words, where, found } = at(line.reading);
      return { test: words, where, found, counted: line.counted };
    }),
    ruledOut: weighed.ruledOut.map((line) => {
      if (!('repair' in line)) throw new Error('an advisor names repairs');
      const by = line.by.map((event) => `${at(event).words}: ${at(event).found}`);
      return { words: wordsOf(line.repair), by: by.join('; ') };
    }),
  };
}
