import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { classCsv } from '../../src/commands/drill/class-csv.ts';
import { type ClassReport, classReport } from '../../src/commands/drill/class-report.ts';
import { loadAssignment, seedFor } from '../../src/drill/assignment.ts';
import { commitmentOf, hideFault } from '../../src/drill/hidden-fault.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import { cautionsFor } from '../../src/procedure/cautions.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { drillText, writeDrill } from './drill-files.ts';
import { SHORT } from './short-procedure.ts';
import {
  type DrillAsk,
  type DrillInTest,
  hash,
  knowing,
  library,
  measure,
  newDrill,
  partsChanger,
  testIn,
} from './students.ts';

/** What ends a drill. */
const ENDS: readonly SessionEvent['type'][] = ['concluded', 'answer-revealed'];

/** The events with another first one. */
function begunAs(events: readonly SessionEvent[], more: object): SessionEvent[] {
  const [first, ...rest] = events;
  return [{ ...first!, ...more } as SessionEvent, ...rest];
}

const folder = mkdtempSync(join(tmpdir(), 'ohmward-class-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const EVIL = '<script>alert(1)</script>';

/** The drill of a student, who may leave it before its end. */
function play(seed: number, student: string, how: (begun: DrillInTest) => void) {
  const assignment = { name: 'week-3', part: 1, limitMinutes: 30 };
  const begun = newDrill(seed, { student, assignment });
  how(begun);
  return begun.driver.session().events;
}
/** Makes one test and leaves. */
const beginning = (begun: DrillInTest) => {
  measure(begun, testIn(begun, 'sensor.feed.volts'));
};
const good = play(17, 'Ada Example', knowing);

function makeReport(): ClassReport {
  const own = play(18, EVIL, partsChanger);
  writeDrill(join(folder, 'ada', 'one.jsonl'), good);
  writeDrill(join(folder, 'bo', 'copy-of-ada.jsonl'), good);
  writeDrill(join(folder, 'bo', 'own.jsonl'), own);
  writeDrill(join(folder, 'cy', 'one.jsonl'), play(23, '=cmd|calc', partsChanger));
  writeDrill(join(folder, 'cy', 'two.jsonl'), play(19, '=cmd|calc', beginning));
  const again = newDrill(23, { student: '=CMD|calc' });
  knowing(again);
  writeDrill(join(folder, 'cy', 'zwei.jsonl'), again.driver.session().events);
  // Edited by hand, the chain left as it was.
  const ofDi = begunAs(own, { person: 'Di Example', id: 'di' });
  const whole = drillText(ofDi);
  const edited = whole.replace('Di Example', 'Ed Example');
  expect(edited).not.toBe(whole);
  writeFileSync(join(folder, 'edited.jsonl'), edited);
  // Edited and the chain computed anew.
  writeDrill(
    join(folder, 'clever.jsonl'),
    ofDi.map((event) =>
      event.type === 'answer-revealed' ? { ...event, points: 100, right: true } : event,
    ),
  );
  writeFileSync(join(folder, 'notes.jsonl'), '{"type":"something-else"}\n');
  writeFileSync(join(folder, 'read-me.txt'), 'not looked at');
  const made = classReport(folder);
  if ('words' in made) throw new Error(made.words);
  return made;
}

const report = makeReport();

const kindOf = (file: string) => report.doubtful.find((one) => one.file === file)?.kind ?? null;

test('copies, edits, second tries and strangers are named; the rest counts', () => {
  expect(kindOf(join('bo', 'copy-of-ada.jsonl'))).toBe('repeated');
  expect(kindOf('edited.jsonl')).toBe('altered');
  expect(kindOf('clever.jsonl')).toBe('altered');
  expect(kindOf(join('cy', 'zwei.jsonl'))).toBe('second-try');
  expect(kindOf('notes.jsonl')).toBe('no-drill');
  expect(kindOf(join('ada', 'one.jsonl'))).toBeNull();
  const { summary } = report;
  expect(summary.rows.map(({ file }) => file).sort()).toEqual(
    ['ada/one.jsonl', 'bo/own.jsonl', 'cy/one.jsonl', 'cy/two.jsonl', 'cy/zwei.jsonl'].map((file) =>
      join(...file.split('/')),
    ),
  );
  expect(summary.students).toBe(3);
  expect(summary.finished).toBe(4);
  expect(summary.bins.reduce((a, b) => a + b, 0)).toBe(4);
  const points = summary.rows.flatMap((row) => (row.points === null ? [] : [row.points]));
  expect(summary.meanPoints).toBeCloseTo(points.reduce((a, b) => a + b, 0) / 4, 9);
  const counted = summary.misses.reduce((sum, { total }) => sum + total, 0);
  expect(counted).toBe(4);
});

test('the CSV of a class holds nothing that a terminal or a spreadsheet would obey', () => {
  const student = '\u001b]0;PWNED\u0007Ada \u202eExample';
  const { rows } = report.summary;
  const csv = classCsv(
    { ...report.summary, rows: [{ ...rows[0]!, student, truth: ' =cmd|calc' }] },
    [{ file: rows[0]!.file, kind: 'second-try', words: '=cmd|calc' }],
  );
  expect(csv).toContain('PWNED');
  expect(csv.replace(/\r\n/g, '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  expect(csv).toContain("' =cmd");
});

test('with the assignment and the library at hand, a drill of one’s own making is named', () => {
  const own = join(folder, '..', `${folder.split(/[/\\]/).at(-1)}-own`);
  const assignment = loadAssignment(
    'assignment: week-3\ndrills:\n  - { procedure: hall-module-fed, level: unnamed }\n',
    'week.yaml',
  ).value!;
  const note = { name: 'week-3', part: 1, limitMinutes: null };
  const begin = (name: string, seed: number, more: DrillAsk = { assignment: note }) => {
    const begun = newDrill(seed, more);
    writeDrill(join(own, `${name}.jsonl`), begun.driver.session().events);
    return begun;
  };
  const seed = seedFor(assignment, 1, 'Ada Example', hash);
  const asSet = begin('as-set', seed);
  asSet.drill.act({ type: 'diagnose', repairs: [] });
  writeDrill(join(own, 'as-set.jsonl'), asSet.driver.session().events);
  // What was not set is told as soon as it is begun.
  begin('easy-seed', seed + 1);
  begin('no-assignment', seed, {});
  const hall = library.circuits.get('hall-module-fed')!;
  const easy = { ...hall, faults: hall.faults.slice(0, 1) };
  const { answer, salt } = hideFault(easy, levelNamed('unnamed'), seed, hash)!;
  const commitment = commitmentOf(answer, salt, hash);
  const { events } = newDrill(seed, { assignment: note }).driver.session();
  const [first] = events;
  if (first?.type !== 'session-opened') throw new Error('a drill begins with its opening');
  const vehicle = { ...first.vehicle, commitment };
  expect(answer.faults).toHaveLength(1);
  expect(salt).not.toBe('');
  writeDrill(join(own, 'own-circuit.jsonl'), begunAs(events, { circuit: easy, vehicle }));
  const followed = { ...SHORT, title: 'A title of the student' };
  const { feed } = SHORT.steps;
  if (feed?.kind !== 'measure') throw new Error('its first step measures');
  const place = {
    drive: 'not-stated' as const,
    setup: feed.setup,
    probes: [feed.probe],
    circuit: hall,
  };
  const cautions = cautionsFor(first.cautionRules, place, []);
  const careful = { ...followed, steps: { ...SHORT.steps, feed: { ...feed, cautions } } };
  begin('own-procedure', seed, { assignment: note, procedure: careful });
  // One without the cautions that its step needs, as no tree is linked.
  writeDrill(join(own, 'forged-procedure.jsonl'), begunAs(events, { procedure: followed }));
  const lax = {
    ...{ id: 'lax', word: 'CAUTION', say: 'Nothing to mind.', hazards: ['energised-circuit'] },
    ...{ states: ['key-on'], drives: [], when: [] },
  };
  writeDrill(join(own, 'own-cautions.jsonl'), begunAs(events, { cautionRules: [lax] }));
  const checked = classReport(own, {
    circuits: library.circuits,
    assignment,
    procedureOf: () => SHORT,
    cautions: first.cautionRules,
  });
  rmSync(own, { recursive: true, force: true });
  if ('words' in checked) throw new Error(checked.words);
  const kinds = (file: string) =>
    checked.doubtful.filter((one) => one.file === `${file}.jsonl`).map(({ kind }) => kind);
  expect(kinds('as-set')).toEqual([]);
  expect(kinds('easy-seed')).toEqual(['other-drill']);
  expect(kinds('no-assignment')).toContain('other-drill');
  expect(kinds('own-circuit')).toContain('other-circuit');
  expect(kinds('own-procedure')).toContain('other-procedure');
  expect(kinds('forged-procedure')).toEqual(['altered']);
  expect(kinds('own-cautions')).toContain('other-cautions');
});

test('the table fits a terminal and names the doubtful files', () => {
  for (const line of report.table.split('\n').filter((one) => !one.includes(': ')))
    expect([...line].length).toBeLessThanOrEqual(80);
  expect(report.table).toContain('Look at these files:');
  expect(report.table).toContain('clever.jsonl');
});

test('the CSV has a line a drill, and no cell a spreadsheet would run', () => {
  const lines = report.csv.split('\r\n');
  // Five that count, four that do not: a copy, two altered ones, and notes; and the empty end.
  expect(lines).toHaveLength(1 + 5 + 4 + 1);
  expect(lines[0]).toContain('"student","assignment","part"');
  expect(report.csv).toContain("'=cmd|calc");
  expect(report.csv).not.toMatch(/(^|,)=/m);
});

test('the CSV tells vehicle, circuit, date, how it was done, and what there is to remark', () => {
  const [heads, ...lines] = cells(report.csv);
  const at = (line: string[], head: string) => line[heads!.indexOf(head)];
  const one = lines.find((line) => at(line, 'file') === join('ada', 'one.jsonl'))!;
  expect([at(one, 'circuit'), at(one, 'vehicle'), at(one, 'date')]).toEqual([
    'hall-module-fed',
    '17',
    '2031-05-06T09:00:00.000Z',
  ]);
  expect(at(one, 'from_actions')).toBe('no');
  expect(at(one, 'remarks')).toBe('');
  const remarks = (...file: string[]) =>
    at(lines.find((line) => at(line, 'file') === join(...file))!, 'remarks');
  expect(remarks('cy', 'zwei.jsonl')).toMatch(/^second-try: /);
  expect(remarks('bo', 'copy-of-ada.jsonl')).toMatch(/^repeated: /);
  expect(remarks('clever.jsonl')).toMatch(/^altered: /);
});

function cells(csv: string): string[][] {
  return csv
    .split('\r\n')
    .filter(Boolean)
    .map((line) =>
      [...line.matchAll(/(?:"((?:[^"]|"")*)"|([^,]*))(?:,|$)/g)].map(
        ([, quoted, bare]) => quoted ?? bare ?? '',
      ),
    );
}

describe('a copy under another name', () => {
  const copies = mkdtempSync(join(tmpdir(), 'ohmward-copies-'));
  afterAll(() => rmSync(copies, { recursive: true, force: true }));
  const kindsIn = (name: string, drills: Record<string, readonly SessionEvent[]>) => {
    for (const [file, drill] of Object.entries(drills))
      writeDrill(join(copies, name, `${file}.jsonl`), drill);
    const made = classReport(join(copies, name));
    if ('words' in made) throw new Error(made.words);
    return made.doubtful.map(({ file, kind, words }) => `${file} ${kind} ${words}`);
  };
  /** The good drill as somebody else's: whole where it says so, else its tests, which are verified in half the time. */
  const as = (person: string, id: string, pace = 1, isWhole = false) => {
    const events = isWhole ? good : good.filter(({ type }) => !ENDS.includes(type));
    return begunAs(events, { id, person }).map((event) => ({
      ...event,
      elapsed: Math.round(event.elapsed * pace),
    }));
  };

  test('is told by its id, on both', () => {
    const told = kindsIn('id', { a: as('Ada', 'one'), b: as('Bo', 'one', 1.1) });
    expect(told).toEqual([
      'a.jsonl copied it has the id of b.jsonl; one of them is a copy',
      'b.jsonl copied it has the id of a.jsonl; one of them is a copy',
    ]);
  });

  test('is told by its actions at the same times, even where its id was changed and its end is another', () => {
    const whole = as('Ada', 'one', 1, true);
    const cut = as('Bo', 'two').slice(0, 6);
    expect(kindsIn('times', { a: whole, b: cut })).toEqual([
      'a.jsonl copied its actions and their times are those of b.jsonl; one of them is a copy',
      'b.jsonl copied its actions and their times are those of a.jsonl; one of them is a copy',
    ]);
  });

  test('is no honest student at the same vehicle, nor two runs of one file of actions', () => {
    expect(kindsIn('honest', { a: as('Ada', 'one'), b: as('Bo', 'two', 1.001) })).toEqual([]);
    expect(kindsIn('runs', { a: as('Ada', 'one', 1e-4), b: as('Bo', 'two', 1e-4) })).toEqual([]);
  });
});

describe('the page', () => {
  test('is one file without script, link or anything from outside', () => {
    const { html } = report;
    expect(html).toContain(
      'content="default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;;',
    );
    expect(html).not.toMatch(/<script/i);
    expect(html).toContain('&lt;script&gt;alert(1)');
    expect(html).not.toMatch(/\b(?:src|href)=/);
    expect(html).not.toMatch(/https?:/);
    expect(html.match(/<svg/g)).toHaveLength(3);
    expect(html.match(/class="(right|wrong)"/g)).toHaveLength(4);
    expect(html).toContain('prefers-color-scheme:dark');
    expect(html).toContain('@media print');
    // Every element that is opened is closed.
    for (const name of ['svg', 'table', 'section', 'g', 'text', 'ul', 'tr'])
      expect(html.split(`<${name}`).filter((part) => /^[\s>]/.test(part)).length, name).toBe(
        html.split(`</${name}>`).length - 1,
      );
  });

  const browser = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
    existsSync,
  );
  test.skipIf(browser === undefined)(
    'opens in a browser with no message on its console, in light and dark',
    () => {
      const page = join(folder, 'class.html');
      writeFileSync(page, report.html);
      const bad = join(folder, 'bad.html');
      writeFileSync(bad, report.html.replace('</main>', '<script>1</script></main>'));
      // A page with a script in it does give a message, so silence means something.
      expect(messagesOf(browser!, bad, [])).toMatch(/CONSOLE/);
      expect(messagesOf(browser!, page, [])).toBe('');
      expect(messagesOf(browser!, page, ['--blink-settings=preferredColorScheme=0'])).toBe('');
    },
    120_000,
  );
});

function messagesOf(browser: string, page: string, more: string[]): string {
  const profile = mkdtempSync(join(tmpdir(), 'ohmward-browser-'));
  try {
    const flags = [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--enable-logging=stderr',
      '--v=0',
    ];
    const command = [
      ...flags,
      `--user-data-dir=${profile}`,
      ...more,
      '--dump-dom',
      `file://${page}`,
    ];
    const all = execFileSync('sh', ['-c', '"$0" "$@" 2>&1 >/dev/null', browser, ...command], {
      encoding: 'utf8',
    });
    return all
      .split('\n')
      .filter((line) => line.includes('CONSOLE'))
      .join('\n');
  } finally {
    rmSync(profile, { recursive: true, force: true });
  }
}
