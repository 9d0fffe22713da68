/** What makes a session a drill, from its events alone. */
import { bindText } from '../procedure/bind-text.ts';
import { probeWhere, setupWords } from '../procedure/test-words.ts';
import type { AnswerRevealed, TestHazard } from '../session/events.ts';
import { recordedFault, recordedRepair } from './record-conclusion.ts';
import type { RecordContext } from './record-context.ts';
import type { RecordAnswer, RecordDrill } from './record-form.ts';

/** The drill; null for a session on any other vehicle. Its debrief has to be asked for: see `drill-record.ts`. */
export function recordDrill(context: RecordContext): RecordDrill | null {
  const { session, clock, named } = context;
  const { vehicle, job, circuit, cautionRules } = session.opened;
  if (vehicle.kind !== 'drill') return null;
  const { level, seed, commitment, assignment } = vehicle;
  return {
    level,
    seed,
    commitment,
    assignment,
    stopped: session.stopped.map((event) => ({
      ...clock(event),
      test: named(event.test).words,
      where: probeWhere(event.test.probe, job, circuit),
      setup: setupWords(event.test.setup, job, circuit),
      hazard: event.hazard,
      words: HAZARD_WORDS[event.hazard],
    })),
    passedOver: session.passedOver.map((event) => ({
      ...clock(event),
      cautions: event.cautions.map((id) => {
        const rule = cautionRules.find((one) => one.id === id);
        return rule ? bindText(rule.say, job, circuit) : id;
      }),
    })),
    answer: session.revealed && answerOf(context, session.revealed),
    debrief: null,
  };
}

const HAZARD_WORDS: Readonly<Record<TestHazard, string>> = {
  'ohms-on-live': 'an ohmmeter on a live circuit or on electronics',
  'lamp-on-module': 'a filament lamp at a terminal of the module',
  'clipped-in': 'battery voltage or ground at a terminal that is not made for it',
};

function answerOf(context: RecordContext, event: AnswerRevealed): RecordAnswer {
  const { faults, repairs, salt, right, points, score, minutes, yardstickMinutes, late } = event;
  return {
    ...context.clock(event),
    faults: faults.map((id) => ({ id, words: recordedFault(context, id) })),
    repairs: repairs.map((repair) => recordedRepair(context, repair)),
    salt,
    right,
    points,
    score,
    minutes,
    yardstickMinutes,
    late,
  };
}
