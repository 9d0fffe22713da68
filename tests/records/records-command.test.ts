import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { readCsvStrictly } from './readers/read-csv-strictly.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { runRecords } from './run-records.ts';
import { begin, fileOf, finishedWalk, JOB, type Walk } from './sample-session.ts';
import { TRUE_PROCEDURE, trueWalk } from './true-walk.ts';

let home = '';
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'ohmward-records-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

function save(walk: Walk, n = 1): string {
  const name = sessionFileName(walk.session.opened.at, 'lab', n.toString(16).padStart(8, '0'));
  writeFileSync(join(home, name), fileOf(walk).text);
  return name;
}

const records = (positionals: string[], values: Record<string, string | boolean> = {}) =>
  runRecords(home, positionals, values);

it('a session file without a time in its name is found by that name, though no list has it', async () => {
  writeFileSync(join(home, 'sample-lab.jsonl'), fileOf(trueWalk()).text);
  for (const name of ['sample-lab', 'sample-lab.jsonl'])
    for (const verb of ['show', 'verify', 'export']) {
      const { exit, out } = await records([verb, name]);
      expect([verb, exit]).toEqual([verb, 0]);
      expect(out).not.toBe('');
    }
  expect((await records(['show', 'sample'])).err).toContain('no session "sample"');
});

describe('list and find', () => {
  it('gives two lines a session: what it is, and its name for the other verbs', async () => {
    save(finishedWalk());
    const { exit, out } = await records(['list']);
    expect(exit).toBe(0);
    expect(out).toBe(
      '2026-03-04 08:30 (+00:00)  QX 47 ZUM, Lindorf Kestrel 2.0, 2019  [cured]  The feed sensor feed, pin 1 (RD/BU) is open\n' +
        '    20260304T083000Z-lab-00000001\n',
    );
    expect((await records([])).out).toBe(out);
  });

  it('looks in the folder that is named, from where one stands, and not in the usual one', async () => {
    mkdirSync(join(home, 'stick'));
    save(finishedWalk());
    expect((await records(['list'], { folder: 'stick', json: true })).out).toContain(
      '"sessions": []',
    );
  });

  it('answers as JSON that a program can read', async () => {
    save(finishedWalk());
    const { out } = await records(['find', 'green'], { json: true, plate: 'qx47' });
    expect(JSON.parse(out)).toMatchObject({
      schemaVersion: 1,
      sessions: [{ id: 'lab-0001', verdict: 'cured', codes: ['P0335'] }],
    });
  });

  it('lets nothing of a session reach the terminal', async () => {
    const vehicle = { ...JOB.vehicle, plate: '\u001b]0;PWNED\u0007', words: '\u202eEVIL' };
    save(begin({ job: { ...JOB, vehicle } }));
    for (const json of [false, true]) {
      const { out } = await records(['list'], json ? { json } : {});
      expect(out.replace(/\n/g, '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
      expect(out).toContain('PWNED');
    }
  });

  it('exits with 1 when nothing fits, and says what a misspelled word was taken for', async () => {
    save(finishedWalk());
    expect(await records(['find', 'zeppelin'])).toMatchObject({
      exit: 1,
      out: '',
      err: 'no session matches\n',
    });
    const { exit, err } = await records(['find', 'grene']);
    expect([exit, err]).toEqual([0, 'there is no "grene"; taken for: green\n']);
  });

  it('shows so many as asked for and tells of the rest', async () => {
    for (let n = 1; n <= 3; n += 1) save(begin({}, n), n);
    const { out, err } = await records(['list'], { limit: '2' });
    expect(out.split('\n')).toHaveLength(5);
    expect(err).toContain('1 more');
  });
});

describe('show and export', () => {
  it('prints the transcript of a session by name, beginning, id, path, and last', async () => {
    const name = save(trueWalk());
    const { out } = await records(['show', name]);
    expect(out).toMatch(/^# Diagnosis record\n/);
    for (const other of ['20260304', 'lab-0001', join(home, name), 'last'])
      expect((await records(['show', other])).out).toBe(out);
  });

  it('says that showing recomputes nothing, and what does', async () => {
    const name = save(trueWalk());
    const told = `Shown as its file has it; nothing was recomputed. To have it recomputed: ohmward records verify ${name}\n`;
    expect((await records(['show', name])).err).toBe(told);
    const json = await records(['show', name], { json: true });
    expect(json.err).toBe(told);
    expect(JSON.parse(json.out).format).toBe(2);
    // A report is made of what was recomputed.
    expect((await records(['export', name])).err).toBe('');
  });

  it('writes each form, and a PDF only into a file', async () => {
    save(trueWalk());
    const csv = await records(['export', 'last'], { as: 'csv', bom: true });
    expect(csv.out.startsWith('\ufeff')).toBe(true);
    expect(readCsvStrictly(csv.out.slice(1))).toHaveLength(1 + 6 + 1 + 2);
    expect((await records(['export', 'last'], { as: 'html', for: 'customer' })).out).toContain(
      '<h1>Diagnosis of your vehicle</h1>',
    );
    expect(await records(['export', 'last'], { as: 'pdf' })).toMatchObject({ exit: 2, out: '' });
    expect((await records(['export', 'last'], { as: 'pdf', output: 'a.pdf' })).exit).toBe(0);
    expect(
      readPdfStrictly(readFileSync(join(home, 'a.pdf'), 'latin1')).pages.length,
    ).toBeGreaterThan(1);
  });

  it('replaces no file without --force', async () => {
    save(trueWalk());
    writeFileSync(join(home, 'a.md'), 'mine');
    expect(await records(['export', 'last'], { output: 'a.md' })).toMatchObject({
      exit: 1,
      err: 'ohmward: a.md is there already\n  choose another name, or add --force\n',
    });
    expect(readFileSync(join(home, 'a.md'), 'utf8')).toBe('mine');
    expect((await records(['export', 'last'], { output: 'a.md', force: true })).exit).toBe(0);
    expect(readFileSync(join(home, 'a.md'), 'utf8')).toMatch(/^# Diagnosis record/);
  });

  it('refuses an option of another verb: a record shown whole for a class would be read as masked', async () => {
    save(trueWalk());
    expect(await records(['show', 'last'], { for: 'class' })).toEqual({
      exit: 2,
      out: '',
      err: 'ohmward: "show" takes no --for\n  see what it takes: ohmward records show --help\n',
    });
    expect((await records([], { as: 'pdf' })).err).toContain('"list" takes no --as');
  });

  it('for a class, asks a person to read it first', async () => {
    save(trueWalk());
    const { out, err } = await records(['export', 'last'], { for: 'class' });
    expect(out).not.toMatch(/Brennvik|Tarrant|QX 47/);
    expect(err).toContain('Read it before you hand it out');
  });

  it('of a damaged session shows what stands before the damage, with a warning', async () => {
    const name = save(trueWalk());
    const text = readFileSync(join(home, name), 'utf8');
    writeFileSync(join(home, name), text.replace('The plug was green', 'The plug was clean'));
    const { exit, out, err } = await records(['show', 'last']);
    expect(exit).toBe(1);
    expect(out).toContain('feed present');
    expect(err).toContain(`${name}:10: line 10 was changed after it was written`);
    expect(err).toContain('This session is damaged: what is shown ends before that line.');
    expect(await records(['export', 'last'])).toMatchObject({ exit: 1, out: '' });
  });
});

describe('verify and compare', () => {
  it('0 for a whole session, 1 for one that was changed, with the line', async () => {
    const walk = trueWalk();
    const name = save(walk);
    const { head, text } = fileOf(walk);
    const good = await records(['verify', name], { head: head.hash });
    expect(good.exit).toBe(0);
    expect(good.out).toContain(`head: event ${head.seq}, ${head.hash}`);
    writeFileSync(join(home, name), text.replace('on loan', 'on LOAN'));
    const bad = await records(['verify', name]);
    expect(bad.exit).toBe(1);
    expect(bad.out).toContain(`first bad line: ${join(home, name)}:4 `);
  });

  it('puts two sessions side by side', async () => {
    save(trueWalk({ id: 'left' }), 1);
    save(begin({ id: 'right', procedure: TRUE_PROCEDURE }, 60), 2);
    const { exit, out } = await records(['compare', 'left', 'right']);
    expect(exit).toBe(0);
    expect(out).toContain(
      '| Feed at the sensor | 4.81 to 5.18 V | 0.02 V, LOW | not asked | DIFFERENT |',
    );
    expect(out).toContain('| Plate | QX 47 ZUM | QX 47 ZUM | same |');
  });

  it('puts one session beside itself after the repair', async () => {
    save(trueWalk());
    const { out } = await records(['compare', 'last']);
    expect(out).toContain('| 4.81 to 5.18 V | 0.02 V | 4.99 V | PASSED |');
    save(begin({ procedure: TRUE_PROCEDURE }, 60), 2);
    expect((await records(['compare', 'last'])).exit).toBe(1);
  });
});

it.each<[string, string[], Record<string, string>, RegExp]>([
  ['an unknown verb', ['shwo'], {}, /did you mean "show"/],
  ['no session', ['show'], {}, /show which session/],
  ['a form there is none of', ['export', 'last'], { as: 'pfd' }, /did you mean "pdf"/],
  ['a reader there is none of', ['export', 'last'], { for: 'me' }, /shop, customer, class/],
  ['a head that is none', ['verify', 'last'], { head: 'abc' }, /64 digits/],
  ['a day that is none', ['find'], { since: 'yesterday' }, /2026-03-04/],
  ['a limit of nothing', ['list'], { limit: '0' }, /whole number/],
  ['words for list', ['list', 'green'], {}, /records find green/],
  ['three sessions', ['compare', 'a', 'b', 'c'], {}, /one or two/],
])('%s is used wrongly: 2, with the way out', async (_, positionals, values, words) => {
  save(trueWalk());
  const { exit, out, err } = await records(positionals, values);
  expect([exit, out]).toEqual([2, '']);
  expect(err).toMatch(words);
});

it('a session that is not there: 1', async () => {
  expect(await records(['show', 'nothing'])).toMatchObject({ exit: 1, out: '' });
  expect(existsSync(join(home, '.config'))).toBe(false); // looking something up leaves no settings behind
});
