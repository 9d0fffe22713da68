/**
 * A session against a model of itself: any sequence of commands, crashes and full disks among them. What is in hand
 * is always the replay of what is saved, and what was refused leaves no trace.
 */

import { expect, it } from 'vitest';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import type { LogEvent } from '../../src/log/event-line.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { resumeSessionFile } from '../../src/log/read-session-file.ts';
import { driveSession } from '../../src/log/session-driver.ts';
import { createSession } from '../../src/log/session-writer.ts';
import type { Command } from '../../src/session/command.ts';
import type { SessionDriver } from '../../src/session/driver.ts';
import type { SessionEvent, When } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import { presentStep, type Session } from '../../src/session/session.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG, SEED } from '../campaign.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { NAME } from '../log/events.ts';
import { FaultyDisk } from '../log/faulty-disk.ts';
import fc from '../seeded-check.ts';
import { opened, STILL_TREE } from '../session/sample-tree.ts';

const SEQUENCES = LONG ? 2000 : process.env.OHMWARD_SHORT === '1' ? 30 : 60;
const COMMANDS_MAX = 60;
/** The runner's own limit, far above what it takes. */
const TIME_MS = LONG ? 900_000 : 120_000;
const FOLDER = '/sessions';

/** What a sequence is made of: a command of the person, or something that happens to the program. */
type Move =
  | { readonly do: 'command'; readonly command: Command }
  /** The right kind of answer for whatever is asked, so that sequences come far. */
  | { readonly do: 'answer'; readonly value: number; readonly pick: number }
  | { readonly do: 'crash'; readonly power: boolean }
  | { readonly do: 'full-disk'; readonly partial: boolean; readonly after: 'retry' | 'next-part' };

const text = fc.string({ unit: 'grapheme', maxLength: 20 });
const volts = fc.integer({ min: -2000, max: 2000 }).map((hundredths) => hundredths / 100);
const reading = fc.oneof(
  volts,
  fc.constantFrom(4.75, 5.25, Number.POSITIVE_INFINITY, Number.NaN, -0),
);
/** A file is gone on with only where each value is what was typed. */
const typedOf = (value: number | null) =>
  value !== null && Number.isFinite(value) ? `${value} V` : 'OL';
const command: fc.Arbitrary<Command> = fc.oneof(
  fc.constantFrom<Command>(
    { type: 'acknowledge-cautions' },
    { type: 'acknowledge-cautions', step: 'pattern' },
    { type: 'mark-done' },
    { type: 'go-back' },
    { type: 'pause' },
    { type: 'resume', program: 'ohmward test', by: 'person' },
    { type: 'conclude' },
    { type: 'conclude', own: { words: 'My own', faults: [] } },
    { type: 'conclude', own: { words: null, faults: ['x'] } },
    { type: 'close', verdict: 'no-retest' },
  ),
  reading.map((value) => ({ type: 'record-reading' as const, typed: typedOf(value), value })),
  fc.record({
    type: fc.constant('choose-outcome' as const),
    outcome: fc.constantFrom('full', 'none', 'good', 'toString', '__proto__', ''),
  }),
  fc.record({ type: fc.constant('cannot-do' as const), reason: text }),
  fc.record({ type: fc.constant('go-back' as const), to: fc.integer({ min: -1, max: 6 }) }),
  fc.record({ type: fc.constant('add-note' as const), text }),
  fc
    .record({
      type: fc.constant('record-test' as const),
      test: fc.constant({
        setup: KEY_ON,
        probe: { kind: 'volts' as const, plus: 'sensor.feed', minus: 'battery.negative' },
      }),
      expected: fc.constant(null),
      value: fc.option(volts),
    })
    .map(({ value, ...rest }) => ({
      ...rest,
      typed: typedOf(value),
      shown: { kind: 'number' as const, value, unit: 'V' as const },
    })),
  fc
    .record({
      type: fc.constant('record-retest' as const),
      step: fc.constantFrom('feed', 'pattern'),
      value: fc.constantFrom(5, null),
      look: fc.constantFrom('full' as const, 'flat-low' as const, null),
      outcome: fc.constantFrom('good', 'full'),
    })
    .map((one) => ({ ...one, typed: typedOf(one.value) })),
);
const move: fc.Arbitrary<Move> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ do: fc.constant('command' as const), command }) },
  {
    weight: 5,
    arbitrary: fc.record({
      do: fc.constant('answer' as const),
      value: reading,
      pick: fc.nat({ max: 5 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('crash' as const), power: fc.boolean() }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('full-disk' as const),
      partial: fc.boolean(),
      after: fc.constantFrom('retry' as const, 'next-part' as const),
    }),
  },
);

/** The program, its disk and its clock. */
class Bench {
  readonly disk: FaultyDisk;
  driver: SessionDriver;
  /** Tallies, to see that the sequences reach what they are for. */
  readonly seen = { saved: 0, refused: 0, crashes: 0, full: 0, concluded: 0 };
  private second = 0;

  constructor(seed: number) {
    this.disk = new FaultyDisk(seededRandom(seed));
    const made = createSession(this.disk, FOLDER, NAME, opened(STILL_TREE) as unknown as LogEvent);
    if (!made.ok) throw new Error(made.problem.words);
    const session = replay([opened(STILL_TREE)]);
    this.driver = driveSession({ writer: made.value, session, now: this.now, vehicle: null });
  }

  private readonly now = (): When => {
    this.second += 1;
    const at = new Date(Date.UTC(2031, 4, 6, 9) + this.second * 1000).toISOString();
    return { at, elapsed: this.second * 1000 };
  };

  /** Everything that is saved, over all parts; a later part repeats nothing. */
  private saved(): SessionEvent[] {
    const parts = this.disk.paths().filter((path) => path.endsWith('.jsonl'));
    const events = parts.flatMap((path) => readSessionLog(this.disk.read(path)).events);
    return events.sort((a, b) => a.seq - b.seq) as unknown as SessionEvent[];
  }

  /** The law: the state in hand is the replay of what is saved. */
  check(): void {
    same(this.driver.session(), replay(this.saved()));
  }

  /** A command; refused, it must leave state and disk as they were. */
  perform(wanted: Command): void {
    const before = this.driver.session();
    const bytes = this.bytes();
    const done = this.driver.perform(wanted);
    if (done.ok) {
      this.seen.saved += 1;
      if (done.session.status === 'concluded') this.seen.concluded += 1;
      expect(done.session).toBe(this.driver.session());
    } else {
      this.seen.refused += 1;
      expect(done.words).not.toBe('');
      expect(this.driver.session()).toBe(before);
      expect(this.bytes()).toBe(bytes);
    }
  }

  answer(value: number, pick: number): void {
    const session = this.driver.session();
    if (session.status === 'paused') {
      this.perform({ type: 'resume', program: 'ohmward test', by: 'person' });
      return;
    }
    const step = presentStep(session);
    if (!step) return;
    if (step.kind !== 'conclude' && step.cautions.length > 0)
      this.perform({ type: 'acknowledge-cautions' });
    if (step.kind === 'measure')
      this.perform({ type: 'record-reading', typed: typedOf(value), value });
    else if (step.kind === 'act') this.perform({ type: 'mark-done' });
    else if (step.kind === 'conclude') this.perform({ type: 'conclude' });
    else {
      const outcome = step.outcomes[pick % step.outcomes.length]!.name;
      this.perform({ type: 'choose-outcome', outcome });
    }
  }

  /** The process dies; what was acknowledged is there again, in the same state. */
  crash(power: boolean): void {
    const before = this.driver.session();
    const path = this.driver.path();
    this.disk.crash(power);
    const resumed = resumeSessionFile(this.disk, path, this.now(), [FOLDER]);
    if (!resumed.ok) throw new Error(resumed.problem.words);
    const { writer, session } = resumed.value;
    same(session, before);
    this.driver = driveSession({ writer, session, now: this.now, vehicle: null });
    this.seen.crashes += 1;
  }

  /** A note that the disk refuses leaves no trace; then it is saved, here or in a new part. */
  fullDisk(partial: boolean, after: 'retry' | 'next-part'): void {
    if (this.driver.session().status === 'paused') return;
    const before = this.driver.session();
    const bytes = this.bytes();
    this.disk.fault = {
      kind: 'ENOSPC',
      at: this.disk.operations + 1,
      persistent: false,
      partial,
      below: '/',
    };
    const note: Command = { type: 'add-note', text: 'while the disk was full' };
    const refused = this.driver.perform(note);
    expect(refused).toMatchObject({ ok: false, disk: true });
    expect(this.driver.session()).toBe(before);
    expect(this.bytes()).toBe(bytes);
    this.disk.fault = null;
    const folder = this.driver.path().slice(0, this.driver.path().lastIndexOf('/'));
    const done = after === 'retry' ? this.driver.perform(note) : this.driver.continueIn(folder);
    expect(done.ok).toBe(true);
    expect(this.driver.session().notes.length).toBe(before.notes.length + 1);
    this.seen.full += 1;
  }

  private bytes(): string {
    return this.disk
      .paths()
      .map((path) => `${path} ${Buffer.from(this.disk.read(path)).toString('latin1')}`)
      .join('\n');
  }
}

/** Equal but for what the log adds to an event: its number, its link, and events of its own. */
function same(found: Session, wanted: Session): void {
  const [is, should] = [bare(found), bare(wanted)];
  if (is !== should) expect(JSON.parse(is)).toEqual(JSON.parse(should));
}

const OF_THE_LOG = new Set(['recovered', 'segment-continued']);

function bare(session: Session): string {
  const events = session.events.filter(({ type }) => !OF_THE_LOG.has(type));
  const text = JSON.stringify({ ...session, events }, (key, value: unknown) =>
    key === 'seq' || key === 'prev' ? undefined : value,
  );
  return canonicalJson(JSON.parse(text));
}

it(
  'the state is the replay of the saved log after every move, and a refusal leaves no trace',
  () => {
    const sum = { saved: 0, refused: 0, crashes: 0, full: 0, concluded: 0 };
    fc.assert(
      fc.property(
        fc.array(move, { maxLength: COMMANDS_MAX, size: 'max' }),
        fc.nat({ max: 1e9 }),
        (moves, seed) => {
          const bench = new Bench(seed);
          bench.check();
          for (const one of moves) {
            if (one.do === 'command') bench.perform(one.command);
            else if (one.do === 'answer') bench.answer(one.value, one.pick);
            else if (one.do === 'crash') bench.crash(one.power);
            else bench.fullDisk(one.partial, one.after);
            bench.check();
          }
          for (const key of Object.keys(sum) as (keyof typeof sum)[]) sum[key] += bench.seen[key];
        },
      ),
      { numRuns: SEQUENCES, seed: SEED },
    );
    console.info(`sequences=${SEQUENCES} seed=${SEED} ${JSON.stringify(sum)}`);
    for (const count of Object.values(sum)) expect(count).toBeGreaterThan(SEQUENCES / 4);
  },
  TIME_MS,
);
