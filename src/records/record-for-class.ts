/**
 * A record that may be shown to a class: people, vehicle and order are gone, the diagnosis stays.
 *
 * Built field by field from a list of what may stay, so that a field added to the record later is left out until
 * someone allows it. In free texts the names and numbers of this job are replaced wherever they are found, and
 * whatever looks like an identification number, an address or a telephone number. A nickname, a description of a
 * person or a misspelled name can only be found by a reader: look before handing it out.
 */
import { maskPersonal, REMOVED } from './mask-personal.ts';
import type {
  JudgedToday,
  Moment,
  RecordCapture,
  RecordCaution,
  RecordConclusion,
  RecordDebrief,
  RecordDrill,
  RecordJob,
  RecordLine,
  RecordRetest,
  RecordTest,
  SessionRecord,
} from './record-form.ts';

/** The record without personal data. The head stays: it tells nothing to who has no session file. */
export function recordForClass(record: SessionRecord): SessionRecord {
  const mask = maskPersonal(record);
  const { conclusion, drill, job, retest } = record;
  return {
    format: record.format,
    id: `class copy ${record.head.hash.slice(0, 12)}`,
    program: mask(record.program),
    status: record.status,
    title: mask(record.title),
    procedure: record.procedure && {
      name: mask(record.procedure.name),
      title: mask(record.procedure.title),
    },
    circuit: record.circuit === null ? null : mask(record.circuit),
    wiring: record.wiring.map(mask),
    picture: null,
    vehicle: record.vehicle,
    by: record.by,
    origin: record.origin,
    rules: record.rules,
    person: '',
    shop: '',
    instruments: record.instruments.map(mask),
    meter: mask(record.meter),
    startedAt: '',
    endedAt: '',
    workedMs: record.workedMs,
    minutes: record.minutes,
    complaint: mask(record.complaint),
    cause: mask(record.cause),
    correction: mask(record.correction),
    job: jobForClass(job, mask),
    lines: record.lines.map((one) => lineForClass(one, mask)),
    shorts: record.shorts.map((one) => ({
      ...when(one),
      stretch: mask(one.stretch),
      touches: mask(one.touches),
      typed: mask(one.typed),
      found: mask(one.found),
    })),
    tests: record.tests.map((one) => testForClass(one, mask)),
    cautions: record.cautions.map((one) => cautionForClass(one, mask)),
    known: record.known.map((one) => ({
      ...when(one),
      quantity: mask(one.quantity),
      words: mask(one.words),
      is: mask(one.is),
      typed: mask(one.typed),
      from: mask(one.from),
      of: one.of,
      standing: one.standing,
    })),
    notes: record.notes.map((note) => ({
      ...when(note),
      step: mask(note.step),
      text: mask(note.text),
    })),
    ...(record.watched && {
      watched: record.watched.map((round) => ({
        ...when(round),
        step: mask(round.step),
        found: mask(round.found),
        minutes: round.minutes,
        drops: round.drops,
        ...(round.capture && { capture: captureForClass(round.capture, mask) }),
      })),
    }),
    corrections: record.corrections.map((one) => ({
      ...when(one),
      step: mask(one.step),
      line: one.line,
      found: mask(one.found),
    })),
    interruptions: record.interruptions.map((one) => ({ ...when(one), words: mask(one.words) })),
    conclusion: conclusion && conclusionForClass(conclusion, mask),
    retest: retestForClass(retest, mask),
    call: record.call.map(mask),
    work: record.work.map((one) => ({
      ...when(one),
      answer: one.answer,
      by: REMOVED,
      words: mask(one.words),
    })),
    drill: drill && drillForClass(drill, mask),
    head: record.head,
    howToVerify: 'only the shop that keeps the session file can check this copy',
  };
}

type Mask = (text: string) => string;

/** When by the work alone, and not on which day. */
function when({ event, workedMs }: Moment): Moment {
  return { event, at: '', workedMs };
}

function jobForClass(job: RecordJob, mask: Mask): RecordJob {
  return {
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
    earlierRepairs: job.earlierRepairs.map(({ words, part, outcome }) => ({
      words: mask(words),
      part: mask(part),
      outcome,
    })),
    harness: job.harness.map(mask),
    told: job.told.map(({ what, words, moved }) => ({ what, words: mask(words), moved })),
    terminals: job.terminals.map(({ id, words, pin, colour }) => ({
      id,
      words: mask(words),
      pin: mask(pin),
      colour: mask(colour),
    })),
    notes: mask(job.notes),
  };
}

function lineForClass(line: RecordLine, mask: Mask): RecordLine {
  return {
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
    ...todayForClass(line, mask),
    outcome: mask(line.outcome),
    reason: mask(line.reason),
    ...(line.by === undefined ? {} : { by: line.by }),
    standing: line.standing,
    ...(line.capture && { capture: captureForClass(line.capture, mask) }),
  };
}

function testForClass(test: RecordTest, mask: Mask): RecordTest {
  return {
    ...when(test),
    number: test.number,
    afterRepair: test.afterRepair,
    ...(test.made === undefined ? {} : { made: test.made }),
    ...(test.note === undefined ? {} : { note: mask(test.note) }),
    title: mask(test.title),
    family: test.family,
    where: mask(test.where),
    setup: mask(test.setup),
    instrument: test.instrument,
    expected: test.expected,
    expectedRange: test.expectedRange,
    found: mask(test.found),
    reading: test.reading && { ...test.reading, typed: mask(test.reading.typed) },
    verdict: test.verdict,
    judgement: mask(test.judgement),
    ...todayForClass(test, mask),
    ...(test.capture && { capture: captureForClass(test.capture, mask) }),
  };
}

function cautionForClass(caution: RecordCaution, mask: Mask): RecordCaution {
  return {
    ...when(caution),
    step: mask(caution.step),
    ...(caution.earlier && {
      earlier: { ...when(caution.earlier), step: mask(caution.earlier.step) },
    }),
    id: caution.id,
    word: mask(caution.word),
    text: mask(caution.text),
    readBy: caution.readBy === '' ? '' : REMOVED,
  };
}

function conclusionForClass(conclusion: RecordConclusion, mask: Mask): RecordConclusion {
  return {
    ...when(conclusion),
    title: mask(conclusion.title),
    own: conclusion.own,
    faults: conclusion.faults.map(({ id, words }) => ({ id: mask(id), words: mask(words) })),
    repair: mask(conclusion.repair),
    place: mask(conclusion.place),
    customer: mask(conclusion.customer),
    proven: conclusion.proven,
    ...(conclusion.judgedBy
      ? { judgedBy: { ...conclusion.judgedBy, differs: conclusion.judgedBy.differs.map(mask) } }
      : {}),
    ...(conclusion.nothingFound ? { nothingFound: true as const } : {}),
    ...(conclusion.leavesOpen ? { leavesOpen: true as const } : {}),
    restsOn: conclusion.restsOn && {
      reading: conclusion.restsOn.reading,
      words: mask(conclusion.restsOn.words),
    },
    evidence: conclusion.evidence.map(({ reading, test, where, found, pointsTo, counted }) => ({
      reading,
      test: mask(test),
      where: mask(where),
      found: mask(found),
      pointsTo: mask(pointsTo),
      counted,
    })),
    ruledOut: conclusion.ruledOut.map(({ words, by, readings, assumed }) => ({
      words: mask(words),
      by: mask(by),
      readings,
      ...(assumed && { assumed }),
    })),
    notRuledOut: conclusion.notRuledOut.map(mask),
  };
}

function retestForClass(retest: RecordRetest, mask: Mask): RecordRetest {
  return {
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
    drives: retest.drives.map((one) => ({
      ...when(one),
      code: one.code,
      words: mask(one.words),
    })),
    verdict: retest.verdict,
    words: mask(retest.words),
    ...todayForClass(retest, mask),
  };
}

function todayForClass(
  { today }: { readonly today?: JudgedToday },
  mask: Mask,
): { readonly today?: JudgedToday } {
  if (!today) return {};
  const { rules, of, words } = today;
  return { today: { rules, of, words: mask(words) } };
}

function drillForClass(drill: RecordDrill, mask: Mask): RecordDrill {
  const { level, seed, commitment, assignment, answer } = drill;
  return {
    level,
    seed,
    commitment,
    assignment: assignment && {
      name: mask(assignment.name),
      part: assignment.part,
      limitMinutes: assignment.limitMinutes,
    },
    stopped: drill.stopped.map((one) => ({
      ...when(one),
      test: mask(one.test),
      where: mask(one.where),
      setup: mask(one.setup),
      hazard: one.hazard,
      words: one.words,
    })),
    passedOver: drill.passedOver.map((one) => ({
      ...when(one),
      cautions: one.cautions.map(mask),
    })),
    answer: answer && {
      ...when(answer),
      faults: answer.faults.map(({ id, words }) => ({ id: mask(id), words: mask(words) })),
      repairs: answer.repairs.map(mask),
      salt: answer.salt,
      right: answer.right,
      points: answer.points,
      score: answer.score.map(({ name, points, most }) => ({ name, points, most })),
      minutes: answer.minutes,
      yardstickMinutes: answer.yardstickMinutes,
      late: answer.late,
    },
    debrief: drill.debrief && debriefForClass(drill.debrief, mask),
  };
}

function debriefForClass(debrief: RecordDebrief, mask: Mask): RecordDebrief {
  const { lines, alike, readings, evidence, left, plan, next } = debrief;
  return {
    lines: lines.map(mask),
    alike: alike.map(mask),
    readings: readings.map((one) => ({
      event: one.event,
      words: mask(one.words),
      found: mask(one.found),
      minutes: one.minutes,
      bits: one.bits,
      ratio: one.ratio,
      against: mask(one.against),
      proves: one.proves,
      toldNothing: one.toldNothing,
    })),
    evidence: evidence.map(({ event, words, found, ratio, against }) => ({
      event,
      words: mask(words),
      found: mask(found),
      ratio,
      against: mask(against),
    })),
    left: left === null ? null : mask(left),
    plan: {
      steps: plan.steps.map(({ words, found, minutes }) => ({
        words: mask(words),
        found: mask(found),
        minutes,
      })),
      minutes: plan.minutes,
      expectedMinutes: plan.expectedMinutes,
      chance: plan.chance,
    },
    next: mask(next),
  };
}

/** The file's name may name the vehicle, and its digest would know the file again. */
function captureForClass(capture: RecordCapture, mask: Mask): RecordCapture {
  const { from, channel, measures, words, pairs, channels, found } = capture;
  return {
    name: '',
    sha256: '',
    from,
    ...(channel === undefined ? {} : { channel }),
    measures,
    words: words.map(mask),
    pairs: pairs.map(mask),
    channels: channels.map((channel) => ({ ...channel, name: mask(channel.name) })),
    found,
  };
}
