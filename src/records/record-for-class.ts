/**
 * A record that may be shown to a class: people, vehicle and order are gone, the diagnosis stays.
 *
 * Built field by field from a list of what may stay, so that a field added to the record later is left out until
 * someone allows it. In free texts the names and numbers of this job are replaced wherever they are found, and
 * whatever looks like an identification number, an address or a telephone number. A nickname, a description of a
 * person or a misspelled name can only be found by a reader: look before handing it out.
 */
import { maskPersonal } from './mask-personal.ts';
import type { Moment, RecordCapture, SessionRecord } from './record-form.ts';

/** The record without personal data. The head stays: it tells nothing to who has no session file. */
export function recordForClass(record: SessionRecord): SessionRecord {
  const mask = maskPersonal(record);
  const when = ({ workedMs }: Moment): Moment => ({ at: '', workedMs });
  const { conclusion, job, retest } = record;
  return {
    format: record.format,
    id: `class copy ${record.head.hash.slice(0, 12)}`,
    program: mask(record.program),
    status: record.status,
    procedure: { name: mask(record.procedure.name), title: mask(record.procedure.title) },
    circuit: record.circuit === null ? null : mask(record.circuit),
    wiring: record.wiring.map(mask),
    vehicle: record.vehicle,
    person: '',
    shop: '',
    instruments: record.instruments.map(mask),
    meter: mask(record.meter),
    startedAt: '',
    endedAt: '',
    workedMs: record.workedMs,
    complaint: mask(record.complaint),
    cause: mask(record.cause),
    correction: mask(record.correction),
    job: {
      name: '',
      order: '',
      customer: '',
      codes: job.codes.map(mask),
      vehicle: {
        words: mask(job.vehicle.words),
        vin: '',
        plate: '',
        odometer: '',
        drive: job.vehicle.drive,
      },
      earlierRepairs: job.earlierRepairs.map(({ words, part }) => ({
        words: mask(words),
        part: mask(part),
      })),
      terminals: job.terminals.map(({ id, words, pin, colour }) => ({
        id,
        words: mask(words),
        pin: mask(pin),
        colour: mask(colour),
      })),
      notes: mask(job.notes),
    },
    lines: record.lines.map((line) => ({
      ...when(line),
      number: line.number,
      kind: line.kind,
      step: mask(line.step),
      title: mask(line.title),
      family: line.family,
      where: mask(line.where),
      setup: mask(line.setup),
      instrument: mask(line.instrument),
      expected: mask(line.expected),
      expectedRange: line.expectedRange,
      found: mask(line.found),
      reading: line.reading && { ...line.reading, typed: mask(line.reading.typed) },
      verdict: line.verdict,
      judgement: mask(line.judgement),
      outcome: mask(line.outcome),
      reason: mask(line.reason),
      standing: line.standing,
      ...(line.capture && { capture: captureForClass(line.capture, mask) }),
    })),
    extras: record.extras.map((extra) => ({
      ...when(extra),
      words: mask(extra.words),
      where: mask(extra.where),
      setup: mask(extra.setup),
      instrument: extra.instrument,
      expected: extra.expected,
      expectedRange: extra.expectedRange,
      found: mask(extra.found),
      reading: extra.reading && { ...extra.reading, typed: mask(extra.reading.typed) },
      verdict: extra.verdict,
      judgement: mask(extra.judgement),
      ...(extra.capture && { capture: captureForClass(extra.capture, mask) }),
    })),
    cautions: record.cautions.map((caution) => ({
      ...when(caution),
      step: mask(caution.step),
      id: caution.id,
      word: mask(caution.word),
      text: mask(caution.text),
    })),
    notes: record.notes.map((note) => ({
      ...when(note),
      step: mask(note.step),
      text: mask(note.text),
    })),
    corrections: record.corrections.map((one) => ({
      ...when(one),
      step: mask(one.step),
      line: one.line,
      found: mask(one.found),
    })),
    interruptions: record.interruptions.map((one) => ({ ...when(one), words: mask(one.words) })),
    conclusion: conclusion && {
      ...when(conclusion),
      title: mask(conclusion.title),
      own: conclusion.own,
      faults: conclusion.faults.map(({ id, words }) => ({ id: mask(id), words: mask(words) })),
      repair: mask(conclusion.repair),
      customer: mask(conclusion.customer),
      proven: conclusion.proven,
      evidence: conclusion.evidence.map(({ test, where, found, pointsTo, counted }) => ({
        test: mask(test),
        where: mask(where),
        found: mask(found),
        pointsTo: mask(pointsTo),
        ...(counted === false ? { counted } : {}),
      })),
      ruledOut: conclusion.ruledOut.map(({ words, by }) => ({ words: mask(words), by: mask(by) })),
    },
    retest: {
      rows: retest.rows.map((row) => ({
        ...when(row),
        step: mask(row.step),
        title: mask(row.title),
        where: mask(row.where),
        expected: mask(row.expected),
        expectedRange: row.expectedRange,
        before: mask(row.before),
        after: mask(row.after),
        reading: row.reading && { ...row.reading, typed: mask(row.reading.typed) },
        passed: row.passed,
        ...(row.capture && { capture: captureForClass(row.capture, mask) }),
        ...(row.captureBefore && { captureBefore: captureForClass(row.captureBefore, mask) }),
      })),
      missing: retest.missing.map(mask),
      verdict: retest.verdict,
      words: mask(retest.words),
    },
    head: record.head,
    howToVerify: 'only the shop that keeps the session file can check this copy',
  };
}

/** The file's name may name the vehicle, and its digest would know the file again. */
function captureForClass(capture: RecordCapture, mask: (text: string) => string): RecordCapture {
  const { from, channel, measures, words, pairs, channels, found } = capture;
  return {
    name: '',
    sha256: '',
    from,
    ...(channel === undefined ? {} : { channel }),
    measures,
    words: words.map(mask),
    ...(pairs && { pairs: pairs.map(mask) }),
    channels: channels.map((channel) => ({ ...channel, name: mask(channel.name) })),
    found,
  };
}
