/**
 * The debrief of a drill in its record. It weighs every reading anew, so a record has it only where somebody reads it,
 * and here is the one place that asks for it.
 */
import { type Debrief, debriefOf } from '../drill/debrief.ts';
import { debriefLines } from '../drill/drill-words.ts';
import { createWorld } from '../drill/drill-world.ts';
import { sha256 } from '../log/hash.ts';
import type { Session } from '../session/session.ts';
import type { RecordDebrief, SessionRecord } from './record-form.ts';

/** The debrief of a drill whose answer was revealed; null for everything else. */
export function debriefFrom(session: Session): Debrief | null {
  if (!session.revealed) return null;
  const world = createWorld(session.opened, sha256);
  return world && debriefOf(session, world);
}

/** The record of a drill with its debrief; any other record as it is. */
export function withDebrief(record: SessionRecord, debrief: Debrief | null): SessionRecord {
  const { drill } = record;
  if (!drill || !debrief) return record;
  return { ...record, drill: { ...drill, debrief: recordDebrief(debrief) } };
}

function recordDebrief(debrief: Debrief): RecordDebrief {
  const { alike, readings, evidence, left, yardstick, next } = debrief;
  const { steps, minutes, expectedMinutes, chance } = yardstick;
  return {
    lines: debriefLines(debrief),
    alike,
    readings: readings.map((one) => ({
      event: one.event,
      words: one.words,
      found: one.found,
      minutes: one.minutes,
      bits: one.bits,
      ratio: one.ratio,
      against: one.against,
      proves: one.proves,
      toldNothing: one.toldNothing,
    })),
    evidence: evidence.map(({ reading, words, found, ratio, against }) => ({
      event: readings[reading]?.event ?? 0,
      words,
      found,
      ratio,
      against,
    })),
    left,
    plan: {
      steps: steps.map((step) => ({
        words: step.words,
        found: step.found,
        minutes: step.minutes,
      })),
      minutes,
      expectedMinutes,
      chance,
    },
    next,
  };
}
