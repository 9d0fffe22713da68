import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import type { StoredEvent } from '../../src/log/event-line.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { conclusionWords } from '../../src/session/conclusion-words.ts';
import { decide } from '../../src/session/decide.ts';
import { RULES, SESSION_FORMAT, type SessionEvent } from '../../src/session/events.ts';
import { evolve, replay } from '../../src/session/evolve.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { LONG, shareOf } from '../campaign.ts';
import {
  eventsOf,
  makePlace,
  type Place,
  type Ran,
  runBuilt,
  runProgram,
  sessionFiles,
  startProgram,
  timeless,
} from './program.ts';

/** An open coil, on the circuit on which a session takes least; it is proven by the tree alone. */
const COIL = 'sensor.coil-open';
const BENCH = ['run', 'reluctor-no-signal', '--bench', COIL, '--vehicle', '7'];

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

/** What the built program does alone on that vehicle: several tests look at it, and none changes it. */
interface Reference {
  readonly ran: Ran;
  readonly path: string;
  readonly events: readonly StoredEvent[];
  readonly place: Place;
}
let reference: Reference;
beforeAll(() => {
  const own = makePlace();
  const ran = runBuilt(own, [...BENCH, '--unattended', '--json']);
  const path = sessionFiles(own)[0]!;
  reference = { ran, path, events: eventsOf(path), place: own };
});
afterAll(() => reference?.place.remove());

/** The file of the reference session, copied to where the test may change it. */
function copyOfReference(): string {
  const path = join(place.sessions, basename(reference.path));
  mkdirSync(place.sessions, { recursive: true });
  copyFileSync(reference.path, path);
  return path;
}

/** The answers file that repeats a session. */
function answersOf(events: readonly StoredEvent[]): string {
  const answers = events.flatMap((event): object[] => {
    switch (event.type) {
      case 'caution-acknowledged':
        return [{ step: event['step'], acknowledge: true }];
      case 'reading-recorded':
        return [{ step: event['step'], reading: event['typed'] }];
      case 'look-recorded':
        return [{ step: event['step'], choose: event['look'] ?? event['outcome'] }];
      case 'step-done':
        return [{ step: event['step'], done: true }];
      case 'concluded':
        return [{ conclude: true }];
      default:
        return [];
    }
  });
  return stringify({ answers });
}

/** What a person types, line by line, to do the same with the simulated vehicle. */
function linesFor(events: readonly StoredEvent[]): string[] {
  return events.flatMap((event) => {
    if (event.type === 'caution-acknowledged' || event.type === 'concluded') return ['yes'];
    if (event.type === 'step-done') return ['done'];
    return event.type === 'reading-recorded' || event.type === 'look-recorded' ? ['take'] : [];
  });
}

it('resume goes on with a session that has answers before a newer empty one', async () => {
  await runProgram(place, [...BENCH, '--plain'], 'yes\ndone\n');
  const [answered = ''] = sessionFiles(place);
  await runProgram(place, [...BENCH, '--plain'], '');
  expect((await runProgram(place, ['resume', '--plain'], '')).out).toContain(basename(answered));
  // The only ones there are, they are taken up again.
  rmSync(answered);
  expect((await runProgram(place, ['resume', '--plain'], '')).out).toContain('Saved:');
});

describe('a job whose fault comes and goes', () => {
  const job = resolve('procedures/jobs/rainy-camshaft.yaml');

  // What the simulated vehicle does when it is moved, and what the advisor makes of it, tests/session/intermittent.test.ts has.
  it.runIf(LONG)('reads like a healthy vehicle, and is woken by moving the plug', async () => {
    const ran = await runProgram(place, ['run', '--job', job, '--bench', 'job', '--unattended']);
    expect(ran).toMatchObject({ code: 0, err: '' });
    const events = eventsOf(sessionFiles(place)[0]!) as unknown as SessionEvent[];
    const session = replay(events);
    expect(session.opened.vehicle).toMatchObject({ kind: 'bench', intermittent: true });
    const waking = events.findIndex((event) => 'outcome' in event && event.outcome === 'plug');
    expect(waking).toBeGreaterThan(5);
    expect(session.concluded?.faults).toContain('contact.sensor.signal.open');
  });

  it('stays when the same fault is named by itself', async () => {
    const fault = 'contact.sensor.plus.open';
    const rainy = join(place.home, 'rainy.yaml');
    const text = [
      'job: rainy',
      'complaint: It dies in the rain.',
      'procedure: reluctor-no-signal',
      `simulated-fault: ${fault}`,
      'intermittent: true',
      '',
    ];
    writeFileSync(rainy, text.join('\n'));
    const ran = await runProgram(place, ['run', '--job', rainy, '--bench', fault, '--unattended']);
    expect(ran.out).toContain('Conclusion:');
    expect(ran.out).toMatch(/^Certainty: (NOT PROVEN: |proven by )/m);
    const events = eventsOf(sessionFiles(place)[0]!) as unknown as SessionEvent[];
    expect(replay(events).opened.vehicle).not.toHaveProperty('intermittent');
    expect(replay(events).concluded?.faults).toContain(fault);
  });
});

describe('a session with an open coil', () => {
  it('ends at that coil, saved, whole and readable', () => {
    const { ran, path } = reference;
    expect(ran).toMatchObject({ code: 0, err: '' });
    const log = readSessionLog(readFileSync(path));
    expect(log.verdict).toBe('whole');
    const session = replay(log.events as unknown as SessionEvent[]);
    expect(session.concluded?.faults).toContain(COIL);
    const transcript = readFileSync(path.replace('.jsonl', '.md'), 'utf8');
    expect(transcript).toContain(conclusionWords(session)!.title);
    expect(transcript).toContain(log.head!);
  });

  it('is the same by lines and by an answers file, but for times', async () => {
    const lines = `${linesFor(reference.events).join('\n')}\n`;
    const typed = await runProgram(place, [...BENCH, '--plain'], lines);
    expect(typed.code).toBe(0);
    expect(typed.out).toContain('Conclusion:');
    expect(typed.out).toMatch(/^Certainty: (NOT PROVEN: |proven by )/m);
    const file = join(place.home, 'answers.yaml');
    writeFileSync(file, answersOf(reference.events));
    expect((await runProgram(place, [...BENCH, '--answers', file])).code).toBe(0);
    const files = sessionFiles(place);
    expect(files).toHaveLength(2);
    for (const path of files) expect(timeless(eventsOf(path))).toEqual(timeless(reference.events));
  });

  it('is printed as JSON where that is asked for', () => {
    const record = JSON.parse(reference.ran.out) as { conclusion: { faults: { id: string }[] } };
    expect(record.conclusion.faults.map(({ id }) => id)).toContain(COIL);
  });

  it('killed with SIGKILL after an event, it goes on where it stopped and ends the same', async () => {
    const { events } = reference;
    const end = events.at(-1)!;
    const lines = linesFor(events);
    // After every event in the long form, after two of them in an ordinary run.
    const counts = shareOf([...events.keys()].slice(1), 18);
    expect(counts.length).toBeGreaterThan(0);
    for (const kept of counts) {
      const own = makePlace();
      try {
        await killAfter(own, lines.slice(0, kept - 1), kept);
        const path = sessionFiles(own)[0]!;
        const before = eventsOf(path);
        expect(before).toHaveLength(kept);
        const again = linesAfterResume(events, kept);
        const resumed = await runProgram(own, ['resume', path, '--plain'], `${again.join('\n')}\n`);
        expect(resumed.code, `resumed after ${kept} events: ${resumed.out}${resumed.err}`).toBe(0);
        const after = eventsOf(path);
        expect(timeless(after.slice(0, kept))).toEqual(timeless(events.slice(0, kept)));
        expect(after.at(-1)).toMatchObject({
          type: 'concluded',
          conclusion: end['conclusion'],
        });
        expect(evidenceOf(after)).toEqual(evidenceOf(events));
        expect(readSessionLog(readFileSync(path)).verdict).toBe('whole');
      } finally {
        own.remove();
      }
    }
  }, 240_000);
});

/** The steps whose readings speak for the conclusion, in its order: the numbers of events move with each resume. */
function evidenceOf(events: readonly StoredEvent[]): unknown[] {
  const lines = events.at(-1)!['evidence'] as { reading: number; counted: boolean }[];
  expect(lines.length).toBeGreaterThan(0);
  return lines.map(({ reading, counted }) => [
    events.find(({ seq }) => seq === reading)!['step'],
    counted,
  ]);
}

/** What is typed from there on: after a resume all cautions are asked for anew, each once. */
function linesAfterResume(events: readonly StoredEvent[], kept: number): string[] {
  const all = events as unknown as SessionEvent[];
  let session = replay([...all.slice(0, kept), RESUMED]);
  const lines: string[] = [];
  for (const event of all.slice(kept)) {
    if (event.type === 'caution-acknowledged') continue;
    const step = 'step' in event ? session.opened.procedure?.steps[String(event.step)] : undefined;
    if (step && pendingCautions(session, step).length > 0) {
      const read = decide(session, { type: 'acknowledge-cautions', step: step.id }, NOW);
      if (!read.ok) throw new Error('guided-session: what is pending can be acknowledged');
      for (const one of read.events) session = evolve(session, one);
      lines.push('yes');
    }
    lines.push(...linesFor([event as unknown as StoredEvent]));
    session = evolve(session, event);
  }
  return lines;
}
const NOW = { at: '2026-03-02T09:00:00.000+00:00', elapsed: 0 };
const RESUMED: SessionEvent = {
  type: 'session-resumed',
  program: 'ohmward test',
  by: 'pipe',
  format: SESSION_FORMAT,
  rules: RULES,
  ...NOW,
};

/** Types the lines, waits until `count` events are in the file, and kills the program without warning. */
async function killAfter(own: Place, lines: readonly string[], count: number): Promise<void> {
  const child = startProgram(own, [...BENCH, '--plain']);
  const gone = new Promise((resolve) => child.once('exit', resolve));
  for (const line of lines) child.stdin.write(`${line}\n`);
  while (true) {
    const [path] = sessionFiles(own);
    if (path && eventsOf(path).length >= count) break;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  child.kill('SIGKILL');
  await gone;
}

describe('what is refused', () => {
  it.each<[string, string[], number, RegExp]>([
    ['an unknown command', ['rnu'], 2, /did you mean "run"/],
    ['an unknown option', ['run', '--bnech', 'x'], 2, /--help/],
    [
      'an unknown procedure',
      ['run', 'hall-no-signl', '--unattended', '--bench', 'healthy'],
      1,
      /did you mean "hall-no-signal"/,
    ],
    [
      'an unknown fault',
      ['run', 'hall-no-signal', '--unattended', '--bench', 'wire.x.open'],
      1,
      /has no fault/,
    ],
    [
      'a vehicle that is none',
      ['run', 'hall-no-signal', '--unattended', '--bench', 'healthy', '--vehicle=-1'],
      1,
      /not a vehicle number/,
    ],
    [
      'a missing answers file',
      ['run', 'hall-no-signal', '--answers', 'nowhere.yaml'],
      1,
      /nowhere.yaml/,
    ],
    ['unattended without a vehicle', ['run', 'hall-no-signal', '--unattended'], 2, /--bench/],
    ['resuming where there is nothing', ['resume'], 1, /no unfinished session/],
    ['a fault without --bench', ['run', 'hall-no-signal', 'wire.signal.open'], 2, /too many/],
    ['half a name', ['settings', 'person', 'R.', 'Example'], 2, /"Example"[\s\S]*quotes/],
    ['a session there is none of', ['retest', 'nope'], 1, /no session "nope"[\s\S]*records list/],
  ])('%s', async (_, args, code, words) => {
    const ran = await runProgram(place, args);
    expect(ran.code).toBe(code);
    expect(ran.err).toMatch(words);
  });

  it('an answer to another step, with its place in the file', async () => {
    const file = join(place.home, 'answers.yaml');
    writeFileSync(file, 'answers:\n  - { step: elsewhere, done: true }\n');
    const ran = await runProgram(place, [...BENCH, '--answers', file]);
    expect(ran.code).toBe(1);
    expect(ran.err).toMatch(/answers.yaml:2:5: error\[other-step\]/);
    expect(sessionFiles(place)).toHaveLength(1);
  });
});

describe('after the repair', () => {
  const retest = async (bench: string) => {
    return await runProgram(
      place,
      ['retest', copyOfReference(), '--bench', bench],
      'yes\ntake\n'.repeat(20).replace(/\n$/, '\n'),
    );
  };

  it('a good repair is cured and closes the record', async () => {
    const ran = await retest('healthy');
    expect(ran.out).toMatch(/Verdict: cured/);
    expect(ran.code).toBe(0);
  });

  it('no repair is not cured', async () => {
    const ran = await retest(COIL);
    expect(ran.out).toMatch(/Verdict: not cured/);
    expect(ran.code).toBe(1);
  });

  it('a fault that the circuit has not is asked for, and nothing is recorded', async () => {
    const ran = await retest('sensor.coil-opn');
    expect(ran.err).toMatch(
      /has no fault "sensor.coil-opn"\n {2}did you mean "sensor.coil-open"\?/,
    );
    expect(ran.code).toBe(1);
    expect(readFileSync(sessionFiles(place)[0]!, 'utf8')).not.toContain('session-resumed');
  });

  it('a real vehicle is tested again, not a simulated one', async () => {
    const ran = await runProgram(place, [
      'retest',
      resolve('sessions/sample-silent-crankshaft.jsonl'),
      '--bench',
      'healthy',
    ]);
    expect(ran.err).toMatch(/real vehicle[\s\S]*leave --bench out/);
    expect(ran.code).toBe(1);
  });
});

describe('words about the program', () => {
  it('version and help go to the output with code 0', async () => {
    expect(runBuilt(place, ['--version']).out).toMatch(/^ohmward \d+\.\d+\.\d+\n$/);
    expect((await runProgram(place, ['--help'])).out).toContain('resume');
    expect((await runProgram(place, ['run', '--help'])).out).toContain('--bench');
  });

  it('each verb of records has a page of its own: usage, options, examples and exit codes', async () => {
    const page = (await runProgram(place, ['records', 'verify', '--help'])).out;
    expect(page).toBe(
      [
        'ohmward records verify last',
        'ohmward records verify SESSION --head 64-DIGITS-FROM-A-REPORT',
        '',
        'check that sessions and drills are as the program wrote them',
        '',
        'Usage: ohmward records verify SESSION... [options]',
        '',
        'Options',
        '  --head HASH      the head printed on a report',
        '  --folder FOLDER  look for sessions here',
        '  --shared         look in the shared database of the shop',
        '  --json           answer as JSON',
        '',
        'Exit codes: 0 done, 1 one of them was changed, 2 used wrongly, 130 interrupted.',
        '',
      ].join('\n'),
    );
    expect((await runProgram(place, ['help', 'records', 'verify'])).out).toBe(page);
    const whole = (await runProgram(place, ['records', '--help'])).out;
    expect(whole).toContain('  compare  two sessions side by side');
    expect(whole).toContain('  -o, --output FILE  export, compare: write to this file');
  });

  it('help on no command is told so', async () => {
    const ran = await runProgram(place, ['help', 'recrods']);
    expect(ran.err).toContain('no command or topic "recrods"; nearest: records');
    expect(ran.code).toBe(2);
  });
});

it('a finished record that is only opened stays as it is, by the name lists give it too', async () => {
  const path = copyOfReference();
  const before = readFileSync(path, 'utf8');
  const stem = basename(path, '.jsonl');
  for (const named of [path, basename(path), stem, stem.slice(0, 9), 'last']) {
    const ran = await runProgram(place, ['resume', named, '--plain'], '');
    expect(ran.out).toContain('records export');
    expect(readFileSync(path, 'utf8')).toBe(before);
  }
  expect((await runProgram(place, ['resume'])).err).toMatch(/no unfinished session/);
});

it('what is printed to go on with works as it is printed, wherever the session was kept', async () => {
  // As a shell takes it apart: words, of which one may be quoted.
  const goOn = (out: string) => {
    const [, command, word] = /^Continue with: ohmward (\w+) (.*)$/m.exec(out)!;
    return [command!, word!.replace(/^'(.*)'$/, '$1').replaceAll("'\\''", "'")];
  };
  const named = goOn((await runProgram(place, BENCH, '')).out);
  expect(named).toEqual(['resume', basename(sessionFiles(place)[0]!, '.jsonl')]);
  const other = join(place.home, "the other's folder");
  const apart = goOn((await runProgram(place, [...BENCH, '--sessions', other], '')).out);
  expect(apart[1]!.startsWith(`${other}/`)).toBe(true);
  for (const command of [named, apart]) {
    const ran = await runProgram(place, [...command, '--plain'], '');
    expect(ran.err).toBe('');
    expect(goOn(ran.out).at(0)).toBe('resume');
  }
});

describe('the job sheet in lines', () => {
  it('comes before the first test at a real vehicle, and stands in the record', async () => {
    const lines = ['no start when hot', 'P0335', 'begin', 'pause'];
    const ran = await runProgram(
      place,
      ['run', 'hall-no-signal', '--plain'],
      `${lines.join('\n')}\n`,
    );
    expect(ran.out).toContain('Complaint: no start when hot');
    const [path] = sessionFiles(place);
    expect(eventsOf(path!)[0]).toMatchObject({
      job: { complaint: 'no start when hot', codes: ['P0335'] },
      vehicle: { kind: 'real' },
    });
  });
  it('left unfinished leaves nothing behind', async () => {
    const ran = await runProgram(place, ['run', 'hall-no-signal', '--plain'], 'no start\n');
    expect(ran).toMatchObject({ code: 130 });
    expect(ran.out).toMatch(/No session was started\.\n$/);
    expect(sessionFiles(place)).toEqual([]);
  });
  it('is not asked for where the command says so', async () => {
    const ran = await runProgram(place, ['run', 'hall-no-signal', '--plain', '--no-sheet'], '');
    expect(ran.out).not.toContain('job sheet');
    expect(sessionFiles(place)).toHaveLength(1);
  });
});
