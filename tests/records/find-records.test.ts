import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { findRecords, nearWords, type Query } from '../../src/records/find-records.ts';
import { sessionAtPath, sessionInIndex } from '../../src/records/find-session.ts';
import { indexPath, openIndex, type RecordIndex } from '../../src/records/record-index.ts';
import { Unworkable } from '../../src/source/unworkable.ts';
import { asNobody } from '../files/as-nobody.ts';
import { drillWalk } from './sample-drill.ts';
import { begin, fileOf, finishedWalk, freeWalk, JOB, type Walk } from './sample-session.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-find-'));
  save(1, finishedWalk({ id: 'lab-1' }));
  save(
    2,
    begin(
      {
        id: 'lab-2',
        person: 'Núria Ferrís',
        job: job({ plate: 'TR-9 XY', order: 'B-7', notes: 'Brake dust everywhere' }),
      },
      60 * 24,
    ),
  );
  save(3, finishedWalk({ id: 'other-3', job: job({ codes: ['P0340', 'U0100'] }) }, 60 * 48));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function job(change: { plate?: string; order?: string; notes?: string; codes?: string[] }) {
  const { plate = JOB.vehicle.plate, ...more } = change;
  return { ...JOB, ...more, vehicle: { ...JOB.vehicle, plate } };
}

function save(n: number, walk: Walk): string {
  const name = sessionFileName(walk.session.opened.at, 'lab', n.toString(16).padStart(8, '0'));
  writeFileSync(join(folder, name), fileOf(walk).text);
  return name;
}

function open(): RecordIndex {
  const opened = openIndex(nodeDisk, folder, join(folder, 'cache', 'the.index'));
  if ('words' in opened) throw new Error(opened.words);
  return opened.index;
}

function ids(query: Query): string[] {
  return findRecords(open(), query).rows.map(({ id }) => id);
}

describe('find', () => {
  it.each<[string, Query, string[]]>([
    ['everything, newest first', {}, ['other-3', 'lab-2', 'lab-1']],
    ['a plate however it is spaced', { plate: 'tr9xy' }, ['lab-2']],
    ['part of a VIN', { vin: 'tsxaa00' }, ['other-3', 'lab-2', 'lab-1']],
    ['an order', { order: 'b7' }, ['lab-2']],
    ['a code', { code: 'u0100' }, ['other-3']],
    ['the beginning of a code', { code: 'P034' }, ['other-3']],
    ['words of the conclusion', { conclusion: 'feed open' }, ['other-3', 'lab-1']],
    ['a technician without accents', { person: 'nuria' }, ['lab-2']],
    ['a customer', { customer: 'brennvik' }, ['other-3', 'lab-2', 'lab-1']],
    ['a month', { since: '2026-03', until: '2026-03' }, ['other-3', 'lab-2', 'lab-1']],
    ['a day', { since: '2026-03-05', until: '2026-03-05' }, ['lab-2']],
    ['a status', { status: 'open' }, ['lab-2']],
    ['a verdict', { verdict: 'cured' }, ['other-3', 'lab-1']],
    ['free words in any order', { words: 'dust BRAKE' }, ['lab-2']],
    ['a word of a note', { words: 'green' }, ['other-3', 'lab-1']],
    ['words and a field', { words: 'green', code: 'U' }, ['other-3']],
    ['nothing that fits', { words: 'zeppelin' }, []],
  ])('%s', (_, query, wanted) => {
    expect(ids(query)).toEqual(wanted);
  });

  it('takes a misspelled word for the one that occurs, and says so', () => {
    const found = findRecords(open(), { words: 'brkae dsut' });
    expect(found.rows.map(({ id }) => id)).toEqual(['lab-2']);
    expect(found.respelled.map(({ typed, taken }) => [typed, taken[0]])).toEqual([
      ['brkae', 'brake'],
      ['dsut', 'dust'],
    ]);
  });

  it('says nothing of a word beside it that occurs as it was typed', () => {
    const found = findRecords(open(), { words: 'brkae dust' });
    expect(found.rows.map(({ id }) => id)).toEqual(['lab-2']);
    expect(found.respelled.map(({ typed }) => typed)).toEqual(['brkae']);
    // Too short for a slip: it is there, and nothing was taken for it.
    const short = findRecords(open(), { words: 'brkae b-7' });
    expect(short.respelled.map(({ typed }) => typed)).toEqual(['brkae']);
  });

  it('takes one slip from four letters on, two from eight, a swap as one', () => {
    const words = ['connector', 'ground', 'cam', 'feed'];
    expect(nearWords('conector', words)).toEqual(['connector']);
    expect(nearWords('conetcor', words)).toEqual(['connector']); // one left out, two swapped
    expect(nearWords('gronud', words)).toEqual(['ground']);
    expect(nearWords('gruond', words)).toEqual(['ground']);
    expect(nearWords('grnd', words)).toEqual([]);
    expect(nearWords('can', words)).toEqual([]);
  });
});

describe('the index', () => {
  it('reads only what changed, and forgets what is gone', () => {
    expect(open().fresh).toBe(3);
    expect(open().fresh).toBe(0);
    const name = save(4, begin({ id: 'lab-4' }, 90));
    expect(open().fresh).toBe(1);
    writeFileSync(
      join(folder, name),
      fileOf(begin({ id: 'lab-4' }, 90).do({ type: 'add-note', text: 'zinc' })).text,
    );
    expect(ids({ words: 'zinc' })).toEqual(['lab-4']);
    rmSync(join(folder, name));
    expect(open().rows).toHaveLength(3);
    expect(ids({ words: 'zinc' })).toEqual([]);
  });

  it('sees a change that keeps the size', () => {
    const name = save(5, begin({ id: 'lab-5', shop: 'AAAA' }, 95));
    open();
    writeFileSync(join(folder, name), fileOf(begin({ id: 'lab-5', shop: 'BBBB' }, 95)).text);
    utimesSync(join(folder, name), 1e9, 1e9);
    expect(ids({ words: 'bbbb' })).toEqual(['lab-5']);
  });

  it.each([
    ['thrown away', () => ''],
    ['cut off', (text: string) => text.slice(0, text.length / 2)],
    ['of another version', (text: string) => text.replace('index 3', 'index 1')],
    ['full of rubbish', () => '\u0000\u0001{]'],
    ['with a row of too many fields', (text: string) => text.replace('\t', '\t\t')],
  ])('is made anew when it is %s', (_, damage) => {
    const before = open();
    const path = join(folder, 'cache', 'the.index');
    writeFileSync(path, damage(readFileSync(path, 'utf8')));
    const after = open();
    expect(after.fresh).toBe(3);
    expect(after.rows).toEqual(before.rows);
    expect(after.texts).toEqual(before.texts);
  });

  it('keeps fields that hold tabs and line ends in their places', () => {
    save(6, begin({ id: 'lab-6', person: 'a\tb\nc', job: job({ codes: ['P 1'] }) }, 99));
    open();
    const row = open().rows.find(({ id }) => id === 'lab-6');
    expect(row).toMatchObject({ person: 'a b c', codes: ['P1'], plate: 'QX 47 ZUM' });
  });

  it('shows a damaged session with what stands before the damage, and an unreadable one', () => {
    const text = fileOf(finishedWalk({ id: 'lab-7' }, 200)).text;
    const name = sessionFileName('2026-03-04T12:00:00Z', 'bad', '00000007');
    writeFileSync(join(folder, name), text.replace('the light is on loan', 'the light is on LOAN'));
    writeFileSync(
      join(folder, sessionFileName('2026-03-04T13:00:00Z', 'bad', '00000008')),
      'rubbish\n',
    );
    expect(ids({ status: 'damaged' })).toEqual(['lab-7']);
    expect(findRecords(open(), { status: 'unreadable' }).rows[0]?.at).toBe('2026-03-04T13:00:00Z');
  });

  it('of a folder that is not there is empty, and one that cannot be kept only warns', () => {
    const nowhere = openIndex(nodeDisk, join(folder, 'nowhere'), join(folder, 'cache', 'n.index'));
    expect(nowhere).toMatchObject({ index: { rows: [] } });
    writeFileSync(join(folder, 'file'), '');
    const blocked = openIndex(nodeDisk, folder, join(folder, 'file', 'the.index'));
    expect(blocked).toMatchObject({
      index: { fresh: 3, warning: expect.stringContaining('could not be kept') },
    });
  });

  it('holds the drills of the folder beside it, as the sessions they are', () => {
    mkdirSync(join(folder, 'drills'));
    const walk = drillWalk({}, { id: 'drill-8' });
    const name = sessionFileName('2026-03-04T09:00:00Z', 'drill', '00000008');
    writeFileSync(join(folder, 'drills', name), fileOf(walk).text);
    for (const fresh of [1, 0]) {
      const index = open();
      expect(index.fresh).toBe(fresh === 1 ? 4 : 0);
      expect(index.rows.find(({ id }) => id === 'drill-8')).toMatchObject({
        file: join('drills', name),
        source: 'drill',
        real: false,
        status: 'closed',
        conclusion: 'The signal wire is broken',
      });
      expect(findRecords(index, { words: 'spring term' }).rows.map(({ id }) => id)).toEqual([
        'drill-8',
      ]);
      expect(sessionInIndex(index, 'drill-8')).toEqual({
        ok: true,
        path: join(folder, 'drills', name),
      });
    }
  });

  it('calls a session in free order by its circuit', () => {
    save(6, freeWalk({ id: 'lab-6' }));
    expect(findRecords(open(), { words: 'free order' }).rows).toMatchObject([
      { id: 'lab-6', procedure: 'Free order of tests: Invented sensor circuit' },
    ]);
  });

  it('lies in the cache folder under a name of its own for each folder', () => {
    const env = { HOME: '/home/x', XDG_CACHE_HOME: '/cache' };
    expect(indexPath(env, '/a')).toMatch(/^\/cache\/ohmward\/records-[0-9a-f]{16}\.index$/);
    expect(indexPath(env, '/a')).not.toBe(indexPath(env, '/b'));
    expect(indexPath({ HOME: '/home/x' }, '/a')).toMatch(/^\/home\/x\/\.cache\/ohmward\//);
  });
});

describe('which session is meant', () => {
  it.each([
    ['its file name', '20260304T083000Z-lab-00000001.jsonl'],
    ['its name without ending', '20260304T083000Z-lab-00000001'],
    ['the beginning of its name', '20260304'],
    ['its id', 'lab-1'],
  ])('%s', (_, name) => {
    const path = join(folder, '20260304T083000Z-lab-00000001.jsonl');
    expect(sessionInIndex(open(), name)).toEqual({ ok: true, path });
  });

  it('"last" is the newest', () => {
    expect(sessionInIndex(open(), 'last')).toMatchObject({
      path: expect.stringContaining('00000003'),
    });
  });

  it('a beginning that fits several is refused with their names', () => {
    expect(sessionInIndex(open(), 'lab-')).toMatchObject({
      ok: false,
      words: expect.stringContaining('fits 2 sessions'),
    });
    expect(sessionInIndex(open(), 'nothing')).toMatchObject({ ok: false });
  });

  it('a path is taken as it is; an earlier part leads to the last', () => {
    expect(sessionAtPath(nodeDisk, folder, '20260304T083000Z-lab-00000001.jsonl')).not.toBeNull();
    mkdirSync(join(folder, 'sub'));
    writeFileSync(join(folder, 'sub', '20260304T083000Z-lab-00000009.jsonl'), '');
    writeFileSync(join(folder, 'sub', '20260304T083000Z-lab-00000009.part2.jsonl'), '');
    expect(sessionAtPath(nodeDisk, folder, 'sub/20260304T083000Z-lab-00000009.jsonl')).toMatch(
      /part2\.jsonl$/,
    );
    expect(sessionAtPath(nodeDisk, folder, 'sub')).toBeNull();
    expect(sessionAtPath(nodeDisk, folder, 'lab-1')).toBeNull();
  });
});

it('a folder that nobody may go into is told, and is no bug of the program', () => {
  chmodSync(folder, 0o000);
  const look = () => sessionAtPath(nodeDisk, folder, 'session.jsonl');
  expect(() => asNobody(look)).toThrow(Unworkable);
  expect(() => asNobody(look)).toThrow(`reading is not allowed there (${folder}`);
  chmodSync(folder, 0o700);
});
