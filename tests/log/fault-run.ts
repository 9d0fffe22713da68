/** One run of the fault campaign: a session under a fault, perhaps a power cut, a restart, five more events. */
import type { Disk } from '../../src/log/disk.ts';
import { openSessionFile, resumeSession } from '../../src/log/open-session.ts';
import { createSession, type SessionWriter } from '../../src/log/session-writer.ts';
import type { Tried, WriteProblem } from '../../src/log/write-problem.ts';
import { writeWholeFile } from '../../src/log/write-whole.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { NAME, sampleEvent } from './events.ts';
import { type Fault, FaultyDisk } from './faulty-disk.ts';

export interface RunPlan {
  readonly fault: Fault;
  readonly power: boolean;
  readonly seed: number;
  /** Turns a good writer into a bad one by standing between it and the disk. */
  readonly flaw?: (disk: FaultyDisk) => Disk;
}

export interface RunReport {
  readonly struck: boolean;
  readonly acknowledged: number;
  /** Acknowledged events that are no longer there. */
  readonly lost: number;
  /** What else broke a promise: no way to resume, a problem without words, a retry that never ends. */
  readonly broken: string | null;
  readonly problems: readonly string[];
}

const EVENTS = 6;
const FIRST = '/first';
const SECOND = '/second';
const NOW = { at: '2031-05-06T09:00:00+02:00', elapsed: 1 };

export function faultRun({ fault, power, seed, flaw }: RunPlan): RunReport {
  const random = seededRandom(seed);
  const faulty = new FaultyDisk(random);
  faulty.fault = fault;
  const disk = flaw ? flaw(faulty) : faulty;
  const acknowledged: number[] = [];
  const problems: string[] = [];
  let broken: string | null = null;
  const note = <T>(result: Tried<T>): Tried<T> => {
    if (result.ok) return result;
    problems.push(result.problem.code);
    broken ??= flawInWords(result.problem);
    return result;
  };

  // A person's way: try once more, then go on in another folder.
  let writer: SessionWriter | null = null;
  for (const folder of [FIRST, FIRST, SECOND]) {
    const begun = note(createSession(disk, folder, NAME, sampleEvent(0)));
    if (!begun.ok) continue;
    writer = begun.value;
    acknowledged.push(0);
    break;
  }
  for (let n = 1; writer && n <= EVENTS; n += 1) {
    const event = sampleEvent(n, Math.floor(random() * 900));
    let saved = note(writer.append(event));
    if (!saved.ok && saved.problem.canRetry) saved = note(writer.append(event));
    if (!saved.ok) {
      if (saved.problem.safeEvents !== writer.last.seq) broken ??= 'wrong count of safe events';
      const moved = note(writer.continueIn(random() < 0.3 ? FIRST : SECOND));
      const there = moved.ok ? moved : note(writer.continueIn(SECOND));
      if (!there.ok) {
        broken ??= 'no way to go on in another folder';
        break;
      }
      writer = there.value.writer;
    }
    acknowledged.push(n);
  }
  const struck = faulty.strikes > 0;
  faulty.crash(power);
  if (!writer) return { struck, acknowledged: 0, lost: 0, broken, problems };

  const missing = (ids: ReadonlySet<unknown>) => acknowledged.filter((id) => !ids.has(id)).length;
  const resumed = resumeSession(disk, writer.path, NOW, [FIRST]);
  if (!resumed.ok) {
    const left = openSessionFile(disk, writer.path, [FIRST]);
    const ids = new Set(left.ok ? left.value.events.map(({ id }) => id) : []);
    broken ??= `cannot be resumed: ${resumed.problem.code}`;
    return { struck, acknowledged: acknowledged.length, lost: missing(ids), broken, problems };
  }
  for (let n = EVENTS + 1; n <= EVENTS + 5; n += 1) {
    const saved = resumed.value.writer.append(sampleEvent(n));
    if (saved.ok) acknowledged.push(n);
    else broken ??= `no event after restart: ${saved.problem.code}`;
  }
  faulty.crash(power);
  const again = openSessionFile(disk, resumed.value.writer.path, [FIRST]);
  const events = again.ok ? again.value.events : [];
  if (!again.ok || again.value.log.verdict !== 'whole') broken ??= 'not whole after restart';
  if (events.some(({ seq }, i) => seq !== i + 1)) broken ??= 'numbers with a gap';
  const order = events.map(({ id }) => id).filter((id) => typeof id === 'number');
  if (order.some((id, i) => i > 0 && id <= order[i - 1]!)) broken ??= 'events doubled or crossed';
  const ids = new Set(events.map(({ id }) => id));
  return { struck, acknowledged: acknowledged.length, lost: missing(ids), broken, problems };
}

/** Every problem must be a sentence and a next step a person can use. */
function flawInWords({ code, words, fix }: WriteProblem): string | null {
  const poor = words.length < 20 || fix.length < 10 || !/\.$/.test(words) || !/\.$/.test(fix);
  return poor || /undefined|null|\[object/.test(words + fix) ? `no words for ${code}` : null;
}

/** Resuming a session with a torn tail under a fault, then once more without: nothing lost, the fragment kept. */
export function resumeRun({ fault, power, seed }: RunPlan): RunReport {
  const random = seededRandom(seed);
  const disk = new FaultyDisk(random);
  const begun = createSession(disk, FIRST, NAME, sampleEvent(0));
  if (!begun.ok) throw new Error('a good disk fails');
  const { path } = begun.value;
  for (let n = 1; n <= 3; n += 1) begun.value.append(sampleEvent(n, Math.floor(random() * 900)));
  const whole = disk.read(path);
  const fragment = Buffer.from(`{"at":"2031-05-06T0${'y'.repeat(Math.floor(random() * 1500))}`);
  disk.meddle(path, Buffer.concat([whole, fragment]));
  disk.crash(false);

  let broken: string | null = null;
  disk.operations = 0;
  disk.fault = fault;
  const first = resumeSession(disk, path, NOW);
  const struck = disk.strikes > 0;
  if (!first.ok) broken ??= flawInWords(first.problem);
  disk.crash(power);
  const second = first.ok && !power ? first : resumeSession(disk, path, NOW);
  if (!second.ok) broken ??= `cannot be resumed: ${second.problem.code}`;
  const asides = disk.paths().filter((name) => name.includes('.torn-'));
  const kept = asides.some((name) => Buffer.from(disk.read(name)).equals(fragment));
  if (!kept) broken ??= 'the fragment was not kept';
  const events = second.ok ? second.value.events : [];
  const lost = [0, 1, 2, 3].filter((id) => !events.some((event) => event.id === id)).length;
  const problems = first.ok ? [] : [first.problem.code];
  return { struck, acknowledged: 4, lost, broken, problems };
}

/** Replacing a whole file under a fault: afterwards it is the old one or the new one, and new if so reported. */
export function wholeRun({ fault, power, seed }: RunPlan): RunReport {
  const random = seededRandom(seed);
  const disk = new FaultyDisk(random);
  const path = `${FIRST}/report.txt`;
  const before = 'old '.repeat(200);
  const after = 'new text '.repeat(400);
  if (!writeWholeFile(disk, path, before).ok) throw new Error('a good disk fails');
  disk.operations = 0;
  disk.fault = fault;
  const written = writeWholeFile(disk, path, after);
  const struck = disk.strikes > 0;
  let broken = written.ok ? null : flawInWords(written.problem);
  disk.crash(power);
  const found = Buffer.from(disk.read(path)).toString();
  if (found !== before && found !== after) broken ??= 'neither the old file nor the new one';
  const lost = written.ok && found !== after ? 1 : 0;
  return {
    struck,
    acknowledged: 1,
    lost,
    broken,
    problems: written.ok ? [] : [written.problem.code],
  };
}
