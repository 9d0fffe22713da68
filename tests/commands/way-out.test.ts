/**
 * The disk refuses in the middle of the work, in every front end: there is a way on, nothing that was acknowledged is
 * lost, and `Saved` is said of what is there.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile } from '../../src/log/read-session-file.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { begin, fileOf, weighed } from '../records/sample-session.ts';
import { TRUE_PROCEDURE } from '../records/true-walk.ts';
import { converse, makePlace, type Place, type Ran, runProgram, sessionFiles } from './program.ts';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => {
  vi.restoreAllMocks();
  place.remove();
});

/** A feed that is missing, and a conclusion from it. */
const CONCLUDED = [
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '0.02', value: 0.02 },
  { type: 'conclude', weighed: weighed(3) },
] as const;
const SESSION = ['run', 'hall-no-signal', '--bench', 'wire.signal.open', '--vehicle', '7'];
const DRILL = ['drill', 'hall-module-fed', '--level', 'blind', '--vehicle', '7'];

/** The folder of sessions goes away, as a memory stick does. */
const unplugged = (folder = place.sessions) => {
  rmSync(folder, { recursive: true });
};
/** The medium reports a fault once: what it then holds of the file nobody knows. */
const failsOnce = () => {
  vi.spyOn(nodeDisk, 'syncData').mockImplementationOnce(() => {
    throw Object.assign(new Error('sync'), { code: 'EIO' });
  });
};
/** Nothing can be written from now on. */
const full = () => {
  const refuse = () => {
    throw Object.assign(new Error('full'), { code: 'ENOSPC' });
  };
  vi.spyOn(nodeDisk, 'write').mockImplementation(refuse);
  vi.spyOn(nodeDisk, 'openNew').mockImplementation(refuse);
};
const then = (happens: () => void, line: string) => () => {
  happens();
  return line;
};

/** The notes in the file that is said to be saved; null where none is named, or it is not there or cannot be believed. */
function notesSaved(words: string): string[] | null {
  const path = /(?:^|\n)(?:Saved:|The session went on in) (\S+\.jsonl)/.exec(words)?.[1];
  if (path === undefined || !existsSync(path)) return null;
  const read = readSessionFile(nodeDisk, path, [place.sessions]);
  return read.ok ? notesOf(read.events) : null;
}

function notesOf(events: readonly SessionEvent[]): string[] {
  return events.flatMap((event) => (event.type === 'note-added' ? [event.text] : []));
}

const FRONT_ENDS: readonly (readonly [name: string, args: readonly string[]])[] = [
  ['a session in lines', [...SESSION, '--plain']],
  ['a drill in lines', [...DRILL, '--plain']],
];

describe.each(FRONT_ENDS)('%s', (_, args) => {
  const acks = args[0] === 'run' ? ['yes'] : [];

  it('goes on in a folder that is named, with what was kept before', async () => {
    const other = join(place.home, 'stick two');
    const { out, code } = await converse(place, args, [
      ...[...acks, 'note first'],
      ...[then(unplugged, 'note second'), 'folder ~/stick two', 'note third'],
      ...['pause'],
    ]);
    expect(out).toContain('Type "again" to retry, "folder" and a path to continue there');
    expect(out).toContain(`Saved in ${other}`);
    expect(notesSaved(out.replace('stick two', 'stick%20two'))).toBeNull();
    expect(code).toBe(0);
    expect(existsSync(place.sessions)).toBe(false);
    const path = /\nSaved: (.*\.jsonl)/.exec(out)![1]!;
    const read = readSessionFile(nodeDisk, path);
    expect(read.ok && notesOf(read.events)).toEqual(['first', 'second', 'third']);
  });

  it('tries again where the person has made room', async () => {
    const { out, code } = await converse(place, args, [
      ...[...acks, then(full, 'note first'), 'again'],
      then(() => vi.restoreAllMocks(), 'again'),
      'pause',
    ]);
    expect(out.match(/The disk is full/g)).toHaveLength(2);
    expect(notesSaved(out)).toEqual(['first']);
    expect(code).toBe(0);
  });

  it.each([
    ['one sync failed', failsOnce],
    ['the folder is gone', unplugged],
  ])(
    'tries again in the next part where the file itself takes nothing more: %s',
    async (_, happens) => {
      const { out, code } = await converse(place, args, [
        ...[...acks, 'note first', then(happens, 'note second'), 'again', 'note third', 'pause'],
      ]);
      expect(out).toContain('try again or go on in another folder');
      expect(out.match(/Not saved yet/g)).toHaveLength(1);
      expect(notesSaved(out)).toEqual(['first', 'second', 'third']);
      expect(code).toBe(0);
    },
  );

  it('leaves out what the person gives up, and says so', async () => {
    const { out } = await converse(place, args, [
      ...[...acks, then(full, 'note first'), 'leave'],
      then(() => vi.restoreAllMocks(), 'note second'),
      'pause',
    ]);
    expect(out).toContain('That was not saved.');
    expect(notesSaved(out)).toEqual(['second']);
  });

  it.each([
    ['the folder is gone', unplugged],
    ['one sync failed', failsOnce],
  ])('at the end of the input everything is written beside: %s', async (_what, happens) => {
    const { out, err } = await converse(place, args, [
      ...[...acks, 'note first', then(happens, 'note second')],
    ]);
    expect(err).toBe('');
    expect(notesSaved(out)).toEqual(['first', 'second']);
  });

  it('a folder that went away unnoticed is written anew at the end', async () => {
    const { out } = await converse(place, args, [...acks, 'note first', then(unplugged, 'help')]);
    expect(notesSaved(out)).toEqual(['first']);
  });

  it('where the file is gone and nothing can be written, nothing is called held or gone on with', async () => {
    const gone = () => {
      unplugged();
      full();
    };
    const { out, err, code } = await converse(place, args, [
      ...[...acks, 'note first', then(gone, 'note second')],
    ]);
    expect(out).not.toMatch(/Saved:|Go on with|Continue with/);
    expect(err).toContain('What was in it alone is lost.\n  Write down what you measured');
    expect(err).not.toMatch(/still held|Leave this program running/);
    expect(code).toBe(1);
  });

  it('where nothing can be written, it is not called saved', async () => {
    const { out, err, code } = await converse(place, args, [
      ...[...acks, 'note first', then(full, 'note second')],
    ]);
    expect(out).not.toContain('Saved:');
    expect(err).toMatch(/not everything is saved\. The disk is full/);
    expect(code).toBe(1);
    vi.restoreAllMocks();
    const [path = ''] = sessionFiles({ ...place, sessions: folderOf(args) });
    const read = readSessionFile(nodeDisk, path);
    expect(read.ok && notesOf(read.events)).toEqual(['first']);
  });
});

function folderOf([command]: readonly string[]): string {
  return command === 'drill' ? join(place.sessions, 'drills') : place.sessions;
}

it('a session goes on in its usual place when its own folder takes no more', async () => {
  const { openNew } = nodeDisk;
  const stick = join(place.home, 'stick');
  const { out } = await converse(
    place,
    [...SESSION, '--plain', '--sessions', stick],
    [
      ...['yes', 'note first'],
      then(() => {
        unplugged(stick);
        vi.spyOn(nodeDisk, 'openNew').mockImplementation((path) => {
          if (dirname(path) !== stick) return openNew(path);
          throw Object.assign(new Error('gone'), { code: 'EROFS' });
        });
      }, 'note second'),
    ],
  );
  expect(notesSaved(out)).toEqual(['first', 'second']);
  expect(out).toContain(`Saved: ${join(place.home, '.local', 'share', 'ohmward', 'sessions')}`);
});

it('the tests after the repair ask for the way on, too', async () => {
  mkdirSync(place.sessions);
  const name = '20260304T083000Z-lab-00000001.jsonl';
  writeFileSync(
    join(place.sessions, name),
    fileOf(begin({ procedure: TRUE_PROCEDURE }).do(...CONCLUDED)).text,
  );
  const other = join(place.home, 'other');
  const { out, code } = await converse(
    place,
    ['retest', 'last', '--plain'],
    ['yes', then(unplugged, 'note at the retest'), `folder ${other}`, 'pause'],
  );
  expect(out).toContain(`Saved in ${other}`);
  expect(notesSaved(out)).toEqual(['at the retest']);
  expect(code).toBe(130);
});

it('a session that was left among the tests after its repair goes on with them', async () => {
  mkdirSync(place.sessions);
  const name = '20260304T083000Z-lab-00000001.jsonl';
  writeFileSync(
    join(place.sessions, name),
    fileOf(begin({ procedure: TRUE_PROCEDURE }).do(...CONCLUDED)).text,
  );
  await converse(place, ['retest', 'last', '--plain'], ['pause']);
  const left = await converse(place, ['resume', 'last', '--plain'], ['yes', 'note seen']);
  expect(left.out).toContain('After the repair:');
  expect(left.out).toContain('Feed at the sensor');
  expect(left.code).toBe(130);
  const again = await converse(
    place,
    ['resume', 'last', '--plain'],
    [...['yes', 'cannot no lead', 'cannot no lamp']],
  );
  expect(again.out).toMatch(/Verdict: /);
  expect(again.code).toBe(1);
  // What is closed is only told.
  expect((await converse(place, ['resume', 'last', '--plain'], [])).code).toBe(0);
});

describe('another program', () => {
  const call = (id: number, method: string, params?: object) =>
    JSON.stringify({ jsonrpc: '2.0', id, method, ...(params ? { params } : {}) });
  const rpc = (args: readonly string[], ...turns: readonly (string | (() => string))[]) =>
    converse(place, [...args, '--rpc'], turns);
  const told = ({ out, err }: Ran) => `${out}\n${err}`;

  it.each([
    ['a session', SESSION],
    ['a drill', DRILL],
  ])('%s goes on where the program moves it', async (_, args) => {
    const other = join(place.home, 'other');
    const ran = await rpc(
      args,
      call(1, 'note', { text: 'first' }),
      then(() => unplugged(), call(2, 'note', { text: 'second' })),
      call(3, 'move', { folder: other }),
    );
    expect(ran.out).toContain('call \\"move\\"');
    expect(ran).toMatchObject({ code: 0, err: '' });
    const [path = ''] = sessionFiles({ ...place, sessions: other }).slice(-1);
    const read = readSessionFile(nodeDisk, path);
    expect(read.ok && notesOf(read.events)).toEqual(['first', 'second']);
  });

  it.each([
    ['a session', SESSION],
    ['a drill', DRILL],
  ])('%s that it leaves there is written beside, and where is told', async (_, args) => {
    const ran = await rpc(
      args,
      call(1, 'note', { text: 'first' }),
      then(() => unplugged(), call(2, 'note', { text: 'second' })),
    );
    expect(notesSaved(told(ran))?.[0]).toBe('first');
    expect(ran.code).toBe(0);
  });
});

describe('without a person', () => {
  it('an answers file that the disk refuses is told, and what came before is kept', async () => {
    const answers = join(place.home, 'answers.yaml');
    writeFileSync(answers, 'answers:\n  - acknowledge: true\n  - note: first\n');
    let syncs = 0;
    const { syncData } = nodeDisk;
    vi.spyOn(nodeDisk, 'syncData').mockImplementation((file) => {
      syncs += 1;
      if (syncs === 3) throw Object.assign(new Error('sync'), { code: 'EIO' });
      syncData(file);
    });
    const ran = await runProgram(place, [...SESSION, '--answers', answers]);
    expect(ran.code).toBe(1);
    expect(ran.err).toContain('The disk reported a fault');
    expect(notesSaved(ran.out)).toEqual(['first']);
  });
});

it('a file that another program put in its place is not called saved', async () => {
  const { out } = await converse(
    place,
    [...SESSION, '--plain'],
    [
      ...['yes', 'note first'],
      then(() => {
        const [path = ''] = sessionFiles(place);
        renameSync(path, `${path}.away`);
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(path, readFileSync(`${path}.away`));
      }, 'help'),
    ],
  );
  expect(notesSaved(out)).toEqual(['first']);
  expect(/\nSaved: (.*)/.exec(out)![1]).toMatch(/part|\.3\.|-3|3\.jsonl/);
});
