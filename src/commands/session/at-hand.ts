/** All that a session on the screen is given, brought together: its driver, its advisor, its vehicle, words and sums for them. */
import type { Model } from '../../circuit/model.ts';
import type { Test } from '../../circuit/test.ts';
import {
  answersFor,
  type Bench,
  benchFor,
  createBench,
  displayed,
  readingAnswer,
} from '../../drill/bench.ts';
import { drillDesk } from '../../drill/drill-desk.ts';
import { createWorld } from '../../drill/drill-world.ts';
import { showsGood } from '../../drill/levels.ts';
import { folderTyped } from '../../files/folders.ts';
import type { Disk } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { driveSession } from '../../log/session-driver.ts';
import type { SessionWriter } from '../../log/session-writer.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import { bindText, terminalWords } from '../../procedure/bind-text.ts';
import { wiringSketch } from '../../procedure/wiring-sketch.ts';
import { callMinutes, callPrices, estimateWords } from '../../records/call-words.ts';
import { type Rates, readRates } from '../../records/read-rates.ts';
import type { SessionRecord } from '../../records/record-form.ts';
import { transcriptOf } from '../../records/transcript.ts';
import type { Advisor } from '../../session/advisor.ts';
import type { SessionDriver } from '../../session/driver.ts';
import type { SessionOpened } from '../../session/events.ts';
import { followAdvisor } from '../../session/follow-advisor.ts';
import { circuitAtStart, circuitOf } from '../../session/known-circuit.ts';
import type { Session } from '../../session/session.ts';
import { modelFor } from '../../session/session-model.ts';
import { modelHere } from '../../session/step-here.ts';
import { withVain } from '../../session/waking-vain.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { capturesAtHand } from './captures-at-hand.ts';
import type { Desk } from './open-desk.ts';
import { isSameFiled, recordNow } from './record-now.ts';
import { calculate, scopeLine, sumsFor } from './session-sums.ts';
import { voltageLimits } from './voltage-limits.ts';

/** A session at this desk, with its file open in `writer`. */
export function atHand(desk: Desk, writer: SessionWriter, session: Session): OpenedSession {
  const { opened } = session;
  const { meter, procedure, vehicle } = opened;
  const atStart = circuitAtStart(opened);
  const model = atStart && modelFor(atStart, meter);
  const bench = model && vehicle.kind === 'bench' ? benchFor(model, procedure, vehicle) : null;
  const world = vehicle.kind === 'drill' ? createWorld(opened, sha256) : null;
  const advisor = model && advisorOver(model, session);
  const driver = driverOver(desk, writer, session, { bench, advisor });
  const modelNow = () => model && modelHere(driver.session(), model);
  return {
    driver,
    preview: desk.preview,
    isAsFiled: () => isSameFiled(session, driver.session()),
    name: () => desk.nameOf(driver.path()),
    advisor,
    model,
    drill: drillDesk(driver, world, model),
    ...wordsFor(desk, opened),
    limits: (step) => {
      const known = circuitOf(driver.session());
      return step.unit === 'V' && known ? voltageLimits(known) : null;
    },
    call: () => callOf(desk, driver, session),
    estimate: (said) => {
      const now = driver.session();
      const record = recordNow(now, driver.head(), isSameFiled(session, now));
      return estimateWords(said, callMinutes(now, record), ratesOf(desk));
    },
    benchShows: (test) => (bench && model ? benchAnswer(model, bench, test) : null),
    ...capturesAtHand(desk, driver, { model, modelNow, advisor }),
    // Well repaired, unless somebody says otherwise.
    repaired:
      model && vehicle.kind === 'bench'
        ? createBench(model, HEALTHY, vehicle.seed, vehicle.fault)
        : null,
    ...sumsAtHand(desk, driver, modelNow),
  };
}

/** What the model says of a session as it goes on. */
export function advisorOver(model: Model, { opened }: Session): Advisor {
  return followAdvisor((now) => modelHere(now, model), opened);
}

function driverOver(
  desk: Desk,
  writer: SessionWriter,
  session: Session,
  { bench, advisor }: { readonly bench: Bench | null; readonly advisor: Advisor | null },
): SessionDriver {
  const driven = driveSession({
    writer,
    session,
    now: desk.now,
    refuge: desk.refuge,
    folderOf: (typed) => folderTyped(typed, desk),
    vehicle: bench ? answersFor(bench, session.opened.job) : null,
    onRest: (rested) => {
      const record = recordNow(rested, driven.head(), isSameFiled(session, rested));
      writeTranscript(desk.disk, record, driven.path());
    },
  });
  return {
    ...driven,
    perform: (command) => driven.perform(withVain(driven.session(), command, advisor, desk.now())),
  };
}

/** The readable transcript beside the log. The log is the truth: when the transcript cannot be written, nothing is lost. */
function writeTranscript(disk: Disk, record: SessionRecord, path: string): void {
  writeWholeFile(disk, path.replace(/\.jsonl$/, '.md'), transcriptOf(record));
}

function wordsFor(
  desk: Desk,
  { job, circuit }: SessionOpened,
): Pick<OpenedSession, 'sketch' | 'bind' | 'terminalWords'> {
  return {
    sketch: (test, columns, besides = false) => {
      const { ascii } = desk.settings();
      return circuit ? wiringSketch(circuit, job, { columns, ascii, test, besides }) : [];
    },
    bind: (text) => bindText(text, job, circuit),
    terminalWords: (id) => terminalWords(id, job, circuit),
  };
}

/** Null where none are set, or what is set is not understood. */
function ratesOf(desk: Desk): Rates | null {
  const rates = readRates(desk.settings().rates);
  return rates && 'fix' in rates ? null : rates;
}

function callOf(
  desk: Desk,
  driver: SessionDriver,
  atOpening: Session,
): ReturnType<OpenedSession['call']> {
  const session = driver.session();
  if (!session.concluded || session.opened.vehicle.kind === 'drill')
    return { sentences: [], prices: [] };
  const record = recordNow(session, driver.head(), isSameFiled(atOpening, session));
  return {
    sentences: record.call,
    prices: callPrices(callMinutes(session, record), ratesOf(desk), record),
  };
}

function benchAnswer(model: Model, bench: Bench, test: Test) {
  const shown = bench.shows(test);
  if (shown.kind === 'number') return readingAnswer(model, shown);
  const { look } = shown;
  const { words } = displayed(model, shown);
  return { words, answer: { kind: 'outcome', outcome: look, look } as const };
}

function sumsAtHand(
  desk: Desk,
  driver: SessionDriver,
  modelNow: () => Model | null,
): Pick<OpenedSession, 'scopeLine' | 'sums' | 'calculate'> {
  const context = () => {
    const { ascii, scope } = desk.settings();
    return { model: modelNow(), meter: driver.session().meter, ascii, scope };
  };
  return {
    scopeLine: (test) => scopeLine(test, context()),
    // Their levels and limits would tell what is good.
    sums: (step) => (showsGood(driver.session()) ? sumsFor(step, context()) : []),
    calculate: (line, step) => calculate(line, step, context()),
  };
}
