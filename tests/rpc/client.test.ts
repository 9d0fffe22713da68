/** The built program driven from outside: by a client in Python, and by lines that are odd. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  eventsOf,
  makePlace,
  type Place,
  PROGRAM,
  runProgram,
  sessionFiles,
  startProgram,
} from '../commands/program.ts';
import { QUICK } from '../quick-node.ts';

const CLIENT = resolve('tests/rpc/client.py');
/** A session or a drill by the program's own clock, on a machine with other work. */
const TIME_MS = 240_000;

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

interface Came {
  readonly [key: string]: unknown;
  readonly exit: number;
  readonly state: { readonly [key: string]: unknown; readonly file: string };
}

/** What a scenario of the client came to. Without Python this fails: another language is what is tested here. */
function clientRuns(scenario: string, ...args: string[]): Came {
  const command = [CLIENT, scenario, process.execPath, ...QUICK, PROGRAM, ...args, '--rpc'];
  const out = execFileSync('python3', command, {
    cwd: place.home,
    env: place.env,
    encoding: 'utf8',
  });
  return JSON.parse(out) as Came;
}

async function verified(path: string): Promise<string> {
  const { code, out, err } = await runProgram(place, ['records', 'verify', path]);
  expect([code, err]).toEqual([0, '']);
  return out;
}

describe('a client in Python', () => {
  it(
    'drives a session from the job sheet to the closed record',
    async () => {
      const came = clientRuns('session', 'run');
      expect(came).toMatchObject({
        exit: 0,
        before: 'no-session',
        early: 'not-concluded',
        caution: 'caution-first',
        captured: 'bench',
        suspect: 'wire.plus',
        concluded: { faults: expect.arrayContaining(['wire.plus.open']) },
        verdict: 'cured',
        state: { status: 'closed', closed: 'cured' },
      });
      const events = eventsOf(came.state.file);
      expect(events[0]).toMatchObject({
        by: 'program',
        job: { codes: ['P0335'], vehicle: { plate: 'EX 47 AM' } },
        vehicle: { kind: 'bench', fault: 'wire.plus.open' },
      });
      const read = events.filter(({ type }) => type === 'caution-acknowledged');
      expect(read.length).toBeGreaterThan(3);
      for (const event of read)
        expect(event).toMatchObject({ readBy: 'R. Example', cautions: [expect.anything()] });
      const types = new Set(events.map(({ type }) => type));
      for (const type of [
        'note-added',
        'instruments-changed',
        'step-reopened',
        'test-recorded',
        'concluded',
        'retest-recorded',
      ])
        expect(types).toContain(type);
      await verified(came.state.file);
    },
    TIME_MS,
  );

  it(
    'drives a session at a real vehicle, which stops where the input ends and is gone on with',
    async () => {
      const came = clientRuns('real', 'run', 'reluctor-no-signal');
      expect(came).toMatchObject({
        exit: 0,
        bulk: 'one-caution-a-call',
        nobody: -32602,
        silent: 'vehicle-silent',
        state: { status: 'open', vehicle: 'real' },
      });
      expect(eventsOf(came.state.file).at(-1)?.type).toBe('session-paused');
      const on = clientRuns('resumed', 'resume');
      expect(on).toMatchObject({
        exit: 0,
        step: (came.state['step'] as { id: string }).id,
        state: { status: 'concluded', file: came.state.file },
      });
      const resumed = eventsOf(came.state.file).find(({ type }) => type === 'session-resumed');
      expect(resumed).toMatchObject({ by: 'program' });
      await verified(came.state.file);
    },
    TIME_MS,
  );

  it(
    'makes the tests after a repair',
    async () => {
      const run = ['run', 'reluctor-no-signal', '--bench', 'wire.plus.open', '--unattended'];
      await runProgram(place, run);
      const came = clientRuns('retest', 'retest', 'last', '--bench', 'wire.plus.open');
      expect(came).toMatchObject({ exit: 0, state: { closed: 'not-cured' } });
      expect(came['lines']).toBeGreaterThan(0);
      await verified(came.state.file);
    },
    TIME_MS,
  );

  it(
    'drives a drill to its debrief',
    async () => {
      const came = clientRuns('drill', 'drill');
      expect(came).toMatchObject({
        exit: 0,
        typed: 'vehicle-answers',
        early: 'not-revealed',
        debrief: { right: true, repairs: [came['named']] },
        state: { status: 'closed', drill: { seed: 4, level: 'named' } },
      });
      const events = eventsOf(came.state.file);
      expect(events[0]).toMatchObject({ by: 'program', person: 'Ada Example' });
      expect(events.at(-1)?.type).toBe('answer-revealed');
      expect(await verified(came.state.file)).toMatch(/drill/);
    },
    TIME_MS,
  );
});

const message = (id: number, method: string, params?: object) =>
  JSON.stringify({ jsonrpc: '2.0', id, method, ...(params ? { params } : {}) });
const answersOf = (out: string) =>
  out
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line));

describe('lines', () => {
  it('of the page on formats do what it says', async () => {
    const page = readFileSync('docs/formats.md', 'utf8');
    const lines = /```json\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
    const { code, out, err } = await runProgram(place, ['run', '--rpc'], lines);
    expect([code, err]).toEqual([0, '']);
    const answers = answersOf(out);
    expect(answers.map(({ id, error }) => [id, error])).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((id) => [id, undefined]),
    );
  });

  it('that are blank, too long, no text or without an end are told apart', async () => {
    const long = `${message(1, 'hello')}${' '.repeat(1_000_000)}`;
    const input = `\n  \n${long}\nnonsense\n${message(2, 'hello')}`;
    const { code, out, err } = await runProgram(place, ['run', '--rpc'], input);
    expect([code, err]).toEqual([0, '']);
    expect(answersOf(out)).toMatchObject([
      { id: null, error: { code: -32600 } },
      { id: null, error: { code: -32700 } },
      { id: 2, result: { begun: false } },
    ]);
    expect(sessionFiles(place)).toEqual([]);
  });

  it('of a batch are answered in one line, notifications not at all', async () => {
    const note = '{"jsonrpc":"2.0","method":"note","params":{"text":"unasked"}}';
    const input = `[${message(1, 'state')},${note},${message(2, 'events', { from: 2 })}]\n${note}\n`;
    const args = ['run', 'reluctor-no-signal', '--bench', 'healthy', '--rpc'];
    const answers = answersOf((await runProgram(place, args, input)).out);
    expect(answers).toMatchObject([
      [{ id: 1 }, { id: 2, result: { events: [{ seq: 2, text: 'unasked' }] } }],
    ]);
    const [path] = sessionFiles(place);
    expect(eventsOf(path!).filter(({ type }) => type === 'note-added')).toHaveLength(2);
  });
});

describe('what begins a session', () => {
  const begun = async (args: readonly string[], params: object) => {
    const { out } = await runProgram(place, [...args, '--rpc'], `${message(1, 'begin', params)}\n`);
    return answersOf(out)[0];
  };

  it.each<[string, readonly string[], object, string]>([
    ['no procedure', ['run'], {}, 'cannot-begin'],
    ['one that is not there', ['run'], { procedure: 'hall-no-sinal' }, 'cannot-begin'],
    [
      'a fault that is not there',
      ['run'],
      { procedure: 'reluctor-no-signal', bench: { fault: 'wire.plsu' } },
      'cannot-begin',
    ],
    ['twice', ['run', 'reluctor-no-signal', '--no-sheet'], {}, 'already-begun'],
    ['a drill on nothing', ['drill'], {}, 'cannot-begin'],
  ])('%s is refused', async (_, args, params, code) => {
    expect(await begun(args, params)).toMatchObject({ error: { code: -32000, data: { code } } });
  });

  it.each<[string, readonly string[], object, string]>([
    [
      'a procedure named again',
      ['run', 'reluctor-no-signal'],
      { procedure: 'x' },
      '/params/procedure',
    ],
    ['a level of no drill', ['run'], { level: 'blind' }, '/params/level'],
    ['a job sheet of a drill', ['drill'], { job: { complaint: 'x' } }, '/params/job'],
    ['a job without complaint', ['run'], { job: {} }, '/params/job'],
    [
      'a code that is none',
      ['run'],
      { job: { complaint: 'x', codes: ['X1'] } },
      '/params/job/codes/0',
    ],
  ])('%s is a wrong parameter', async (_, args, params, at) => {
    expect(await begun(args, params)).toMatchObject({
      error: { code: -32602, data: { issues: [{ at }] } },
    });
    expect(sessionFiles(place)).toEqual([]);
  });

  it('a job sheet names the procedure, and what its vehicle has when it is simulated', async () => {
    const job = {
      complaint: 'x',
      procedure: 'reluctor-no-signal',
      'simulated-fault': 'wire.plus.open',
      intermittent: true,
    };
    await begun(['run'], { job, bench: { fault: 'job', seed: 3 } });
    expect(eventsOf(sessionFiles(place)[0]!)[0]).toMatchObject({
      vehicle: { kind: 'bench', fault: 'wire.plus.open', seed: 3, intermittent: true },
      procedure: { name: 'reluctor-no-signal' },
    });
  });

  it('a preview keeps nothing', async () => {
    const args = ['run', 'reluctor-no-signal', '--preview', '--rpc'];
    const [state] = answersOf((await runProgram(place, args, `${message(1, 'state')}\n`)).out);
    expect(state).toMatchObject({ result: { state: { status: 'open', file: null } } });
    expect(sessionFiles(place)).toEqual([]);
  });

  it('options by which somebody else answers do not go with it', async () => {
    for (const other of ['--plain', '--json', '--unattended'])
      expect(await runProgram(place, ['run', '--rpc', other])).toMatchObject({ code: 2, out: '' });
    expect(await runProgram(place, ['drill', '--rpc', '--json'])).toMatchObject({
      code: 2,
      out: '',
    });
    expect(await runProgram(place, ['resume', '--rpc', '--json'])).toMatchObject({
      code: 2,
      out: '',
    });
  });
});

describe('the end', () => {
  it.each(['SIGTERM', 'SIGINT'] as const)('by %s pauses the session and saves it', async (name) => {
    const child = startProgram(place, ['run', 'reluctor-no-signal', '--no-sheet', '--rpc']);
    const ended = new Promise<number | null>((done) => child.on('close', done));
    await new Promise((heard) => {
      child.stdout.once('data', heard);
      child.stdin.write(`${message(1, 'hello')}\n`);
    });
    child.kill(name);
    expect(await ended).toBe(name === 'SIGTERM' ? 0 : 130);
    expect(eventsOf(sessionFiles(place)[0]!).at(-1)?.type).toBe('session-paused');
  });

  it('when nobody reads the answers any more pauses the session too', async () => {
    const child = startProgram(place, ['run', 'reluctor-no-signal', '--no-sheet', '--rpc']);
    const ended = new Promise((done) => child.on('exit', done));
    await new Promise((heard) => {
      child.stdout.once('data', heard);
      child.stdin.write(`${message(1, 'hello')}\n`);
    });
    child.stdout.destroy();
    child.stdin.write(`${message(2, 'state')}\n`);
    await ended;
    expect(eventsOf(sessionFiles(place)[0]!).at(-1)?.type).toBe('session-paused');
  });

  it('runs the program that the settings name', async () => {
    const kept = join(place.home, 'kept');
    mkdirSync(kept);
    const command = JSON.stringify([
      '/bin/sh',
      '-c',
      `cat > ${join(kept, 'record.json')}; echo noise`,
    ]);
    await runProgram(place, ['settings', 'afterSession', command]);
    const args = ['run', 'reluctor-no-signal', '--no-sheet', '--rpc'];
    const { code, out } = await runProgram(place, args, `${message(1, 'hello')}\n`);
    expect(code).toBe(0);
    expect(answersOf(out)).toHaveLength(1);
    const record = JSON.parse(readFileSync(join(kept, 'record.json'), 'utf8'));
    expect(record).toMatchObject({ by: ['program'], status: 'paused' });
  });
});
