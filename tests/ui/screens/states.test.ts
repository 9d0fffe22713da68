/** The reducers behind the screens, by themselves. */
import { describe, expect, it } from 'vitest';
import { judgementWords } from '../../../src/circuit/judgement-words.ts';
import { STANDARD_SETTINGS } from '../../../src/files/settings.ts';
import { DRIVES, emptyJob } from '../../../src/procedure/job.ts';
import type { AskStep } from '../../../src/procedure/procedure.ts';
import type { SavedSession } from '../../../src/ui/app-services.ts';
import { bar, percentWords } from '../../../src/ui/parts/bar.ts';
import { BIG_ROWS, bigWords } from '../../../src/ui/parts/big-words.ts';
import { type Form, formAfter } from '../../../src/ui/parts/form-state.ts';
import {
  closestFirst,
  matching,
  PICK_LIST,
  pickListAfter,
} from '../../../src/ui/parts/pick-list-state.ts';
import { scrollBy } from '../../../src/ui/parts/scroll-text.tsx';
import { textField } from '../../../src/ui/parts/text-field-state.ts';
import {
  type Deliberate,
  deliberateAfter,
  HELD_MS,
  QUIET_MS,
} from '../../../src/ui/screens/deliberate-state.ts';
import {
  jobDoubts,
  jobOf,
  jobProblem,
  jobRemark,
  jobSheet,
} from '../../../src/ui/screens/job-sheet-state.ts';
import { helpParagraphs } from '../../../src/ui/screens/over-words.ts';
import { askedAt, freshAnswer } from '../../../src/ui/screens/prompt-state.ts';
import {
  type ReadingContext,
  type ReadingPrompt,
  readingPrompt,
  readingPromptAfter,
  remarkOf,
} from '../../../src/ui/screens/reading-prompt-state.ts';
import { SESSION_KEYS } from '../../../src/ui/screens/session-keys.ts';
import { settingsChange, settingsSheet } from '../../../src/ui/screens/settings-state.ts';
import { startMenu } from '../../../src/ui/screens/start-screen.tsx';
import { createKeyDecoder, type KeyEvent } from '../../../src/ui/term/key-decoder.ts';
import { fakeDriver, fakeSession } from './fake-services.ts';
import { SMALL_JOB, SMALL_PROCEDURE } from './small-procedure.ts';

function keysOf(text: string): KeyEvent[] {
  const decoder = createKeyDecoder();
  return [...decoder.push(new TextEncoder().encode(text)), ...decoder.flush()];
}

describe('deliberate keys', () => {
  const never = Number.POSITIVE_INFINITY;
  it.each<[string, Omit<Deliberate, 'shownMs'> & { shownMs?: number }, number, boolean, boolean]>([
    ['at once', { lastMs: 0, last: null, isFirst: true }, QUIET_MS - 1, false, false],
    ['after a pause', { lastMs: 0, last: null, isFirst: true }, QUIET_MS, true, true],
    ['after another key', { lastMs: 1000, last: 'x', isFirst: false }, 1299, true, false],
    ['a pause after another', { lastMs: 1000, last: 'x', isFirst: false }, 1300, true, true],
    [
      'before the screen',
      { shownMs: never, lastMs: never, last: null, isFirst: true },
      9e9,
      false,
      false,
    ],
    ['held, first repeat', { lastMs: 0, last: 'y', isFirst: true }, HELD_MS - 1, false, false],
    ['held, later repeat', { lastMs: 1000, last: 'y', isFirst: false }, 1033, false, false],
    ['pressed once more', { lastMs: 0, last: 'y', isFirst: true }, HELD_MS, true, true],
    ['and once more', { lastMs: 800, last: 'y', isFirst: false }, 1100, true, true],
  ])('%s', (_, before, now, isSeen, isDeliberate) => {
    const { shownMs = 0, ...rest } = before;
    const { state, timing } = deliberateAfter({ shownMs, ...rest }, now, 'y');
    expect(timing).toEqual({ isSeen, isDeliberate });
    expect(state).toEqual({ shownMs, lastMs: now, last: 'y', isFirst: false });
  });
});

describe('reading prompt', () => {
  const context = (rest: Partial<ReadingContext> = {}): ReadingContext => ({
    expected: { unit: 'V', usual: { low: 4.75, high: 5.25 } },
    possible: () => null,
    judge: () => null,
    judged: (judgement, value) =>
      judgementWords(judgement, { value, unit: 'V' }, STANDARD_SETTINGS.meter),
    isDeliberate: true,
    offered: null,
    ...rest,
  });
  const typing = (text: string, rest: Partial<ReadingContext> = {}, from = readingPrompt()) => {
    let prompt: ReadingPrompt = from;
    let taken = null;
    for (const event of keysOf(text)) {
      const next = readingPromptAfter(prompt, event, context(rest));
      prompt = next.prompt;
      taken = next.taken ?? taken;
    }
    return { prompt, taken, remark: remarkOf(prompt, context(rest)) };
  };

  it.each([
    ['4.97', 'good', 'good', 'GOOD: within the'],
    ['4.7', 'low', 'off', 'LOW: below the'],
    ['5.4', 'high', 'off', 'HIGH: above the'],
    ['4.75', 'borderline', 'unsure', 'BORDERLINE: too close to the limit'],
    ['50', 'impossible', 'wrong', 'IMPOSSIBLE: 50 V is not possible'],
  ] as const)('%s judged %s says so by its tone and in words', (typed, verdict, tone, words) => {
    const judge = () => ({ verdict, chance: 0.5 });
    const { remark } = typing(typed, { judge });
    expect(remark.tone).toBe(tone);
    expect(remark.words).toContain(`is ${words}`);
  });

  it('asks about exchanged leads and an over-limit on volts before it takes them', () => {
    const judge = (value: number) => ({
      verdict: value > 4.8 && value < 5.2 ? ('good' as const) : ('low' as const),
      chance: 0,
    });
    const once = typing('-4.97\r', { judge });
    expect(once.taken).toBeNull();
    expect(once.remark.words).toBe(
      'Press Enter again if that is what the meter shows. -4.97 V: the leads look swapped: with red and black the other way round it would be good',
    );
    expect(typing('-4.97\r\r', { judge }).taken).toEqual({ typed: '-4.97', value: -4.97 });
    expect(typing('-4.97', { judge }).remark.words).toContain('the leads look swapped');
    expect(typing('OL\r', { judge }).taken).toBeNull();
    expect(typing('OL\r\r', { judge }).taken).not.toBeNull();
    // What a simulated vehicle shows is taken as it is.
    expect(
      typing('\t\r', { judge, offered: { typed: '-4.97 V', value: -4.97 } }).taken,
    ).not.toBeNull();
  });

  it('takes nothing from a paste with a line end; the paste is only typed', () => {
    const { prompt, taken } = typing('\x1b[200~4.97\r\n\x1b[201~');
    expect([prompt.field.text, taken]).toEqual(['4.97', null]);
  });

  it('takes an over-limit as infinite', () => {
    const rest = { expected: { unit: 'ohm' as const } };
    expect(typing('OL\r', rest).taken).toEqual({ typed: 'OL', value: Number.POSITIVE_INFINITY });
  });

  it('never takes what is no number in any vehicle, however often Enter is pressed', () => {
    const rest = { expected: { unit: 'ohm' as const, limit: { high: 1e6 } } };
    expect(typing('-5\r\r\r\r', rest).taken).toBeNull();
  });

  it('needs a second deliberate Enter where the judgement is impossible', () => {
    const judge = () => ({ verdict: 'impossible' as const, chance: 0 });
    expect(typing('50\r', { judge }).taken).toBeNull();
    expect(typing('50\r\r', { judge, isDeliberate: false }).taken).toBeNull();
    expect(typing('50\r\r', { judge }).taken).toEqual({ typed: '50', value: 50 });
  });

  it('forgets the confirmation when the text changes', () => {
    const judge = () => ({ verdict: 'impossible' as const, chance: 0 });
    expect(typing('50\r1\r', { judge }).taken).toBeNull();
  });

  it('empties on Esc, and keeps the text when Esc declines a confirmation', () => {
    const judge = () => ({ verdict: 'impossible' as const, chance: 0 });
    expect(typing('50\x1b').prompt.field.text).toBe('');
    expect(typing('50\r\x1b', { judge }).prompt).toMatchObject({
      mode: 'typing',
      field: { text: '50' },
    });
  });

  it('offers the simulated reading on Tab only', () => {
    expect(typing('\t', { offered: { typed: '4.98 V', value: 4.98 } }).prompt.field.text).toBe(
      '4.98 V',
    );
    expect(typing('\t').prompt.field.text).toBe('');
    expect(typing('\r', { offered: { typed: '4.98 V', value: 4.98 } }).taken).toBeNull();
  });

  it('asks for the meaning chosen to be confirmed when that is impossible', () => {
    const judge = (value: number) =>
      value > 1 ? { verdict: 'impossible' as const, chance: 0 } : null;
    const { prompt, taken } = typing('5 M\r2', { judge });
    expect([prompt.mode, prompt.field.text, taken]).toEqual(['confirm', '5 V', null]);
  });
});

describe('pick list', () => {
  const items = [
    { text: 'Three-wire sensor', also: 'P0335 crankshaft' },
    { text: 'Pedal sensor', also: 'P2122' },
    { text: 'Two-wire sensor', also: 'P0340' },
  ];
  it.each([
    ['', 3],
    ['sensor', 3],
    ['WIRE', 2],
    ['p03', 2],
    ['wire p0340', 1],
    ['crank', 1],
    ['xyz', 0],
  ])('"%s" finds %d', (filter, count) => {
    expect(matching(items, filter)).toHaveLength(count);
  });

  it.each([
    ['the very words', 'replace the cam sensor', 'Replace the cam sensor.'],
    ['the very name', 'sensor.clean', 'Clean, refit or replace the terminals of the cam sensor.'],
    ['the beginning', 'clean', 'Clean, refit or replace the terminals of the cam sensor.'],
    ['a whole phrase, the earlier first', 'cam sensor', 'Replace the cam sensor.'],
    ['a phrase before words apart', 'the replace', 'Replace the camshaft wheel.'],
    ['words before parts of words', 'lead', 'Mend the lead.'],
  ])('puts the closest first: %s', (_, filter, first) => {
    const repairs = [
      {
        text: 'Clean, refit or replace the terminals of the cam sensor.',
        also: 'sensor.clean',
      },
      { text: 'Replace the camshaft wheel.', also: 'the replace' },
      { text: 'Replace the cam sensor.', also: 'sensor.replace' },
      { text: 'Find the misleading wire.', also: 'wire' },
      { text: 'Mend the lead.', also: 'lead' },
    ];
    expect(closestFirst(repairs, filter)[0]!.text).toBe(first);
    expect(new Set(closestFirst(repairs, filter))).toEqual(new Set(matching(repairs, filter)));
    expect(closestFirst(repairs, '')).toEqual(repairs);
  });

  it('keeps the marked line inside the list, and starts again at its top when the search changes', () => {
    const context = { items, rows: 5 };
    let list = PICK_LIST;
    for (const event of keysOf('\x1b[B\x1b[B\x1b[B\x1b[B'))
      list = pickListAfter(list, event, context);
    expect(list.chosen).toBe(2);
    for (const event of keysOf('w')) list = pickListAfter(list, event, context);
    expect([list.chosen, list.filter.text]).toEqual([0, 'w']);
  });
});

describe('form', () => {
  const form: Form = {
    at: 0,
    fields: [
      { kind: 'text', key: 'a', label: 'A', hint: '', field: textField('x') },
      { kind: 'check', key: 'b', label: 'B', hint: '', on: false },
      {
        kind: 'choice',
        key: 'c',
        label: 'C',
        hint: '',
        options: ['one', 'two', 'three'],
        chosen: 0,
      },
    ],
  };
  const typed = (text: string) => keysOf(text).reduce(formAfter, form);

  it('types into texts, ticks boxes, turns choices, and stops at both ends', () => {
    const end = typed('y \r \r\x1b[C\x1b[C\r\r\r');
    expect(end.at).toBe(2);
    expect(end.fields).toMatchObject([{ field: { text: 'xy ' } }, { on: true }, { chosen: 2 }]);
    expect(typed('\x1b[A').at).toBe(0);
  });

  it('turns a choice round at its ends', () => {
    expect(typed('\r\r\x1b[D').fields[2]).toMatchObject({ chosen: 2 });
    expect(typed('\r\r\x1b[C\x1b[C\x1b[C').fields[2]).toMatchObject({ chosen: 0 });
  });
});

describe('job sheet', () => {
  const terminals = [
    { id: 'sensor.feed', words: 'sensor feed' },
    { id: 'sensor.ground', words: 'sensor ground' },
  ];
  const parts = [
    { id: 'sensor', words: 'crankshaft sensor' },
    { id: 'connector.sensor', words: 'connector of the crankshaft sensor' },
  ];
  const filled = (texts: Record<string, string>) => {
    const sheet = jobSheet(emptyJob(''), terminals);
    return {
      ...sheet,
      fields: sheet.fields.map((field) =>
        field.kind === 'text' ? { ...field, field: textField(texts[field.key] ?? '') } : field,
      ),
    };
  };

  it('gives back the job it was filled with', () => {
    expect(jobOf(jobSheet(SMALL_JOB, terminals), SMALL_JOB, parts)).toEqual(SMALL_JOB);
    for (const drive of DRIVES) {
      const job = { ...SMALL_JOB, vehicle: { ...SMALL_JOB.vehicle, drive } };
      expect(jobOf(jobSheet(job, terminals), job, parts)).toEqual(job);
    }
    const options = jobSheet(SMALL_JOB, terminals).fields.flatMap((field) =>
      field.kind === 'choice' && field.key === 'drive' ? field.options : [],
    );
    expect(options).toEqual(['combustion', 'hybrid', 'electric', 'not stated']);
  });

  it('reads codes in any spelling and keeps what is none', () => {
    const job = jobOf(
      filled({ complaint: 'x', codes: 'p0335, P 0340;maker7' }),
      emptyJob(''),
      parts,
    );
    expect(job.codes).toEqual(['P0335', 'P', '0340', 'MAKER7']);
  });

  it.each([
    ['1 RD/BU', { pin: '1', colour: 'RD/BU' }],
    ['1 rd-bu', { pin: '1', colour: 'RD/BU' }],
    ['A3', { pin: 'A3', colour: '' }],
    ['12', { pin: '12', colour: '' }],
    ['bk', { pin: '', colour: 'BK' }],
  ])('reads the terminal "%s"', (text, terminal) => {
    const job = jobOf(
      filled({ complaint: 'x', 'terminal sensor.feed': text }),
      emptyJob(''),
      parts,
    );
    expect(job.terminals).toEqual({ 'sensor.feed': terminal });
  });

  it('knows a replaced part by its name and a colon', () => {
    const texts = { complaint: 'x', repairs: 'Sensor: new last week; harness taped; module:' };
    const job = jobOf(filled(texts), emptyJob(''), parts);
    expect(job.earlierRepairs).toEqual([
      { words: 'new last week', part: 'sensor' },
      { words: 'harness taped', part: null },
      { words: 'module:', part: null }, // no part of the sheet's terminals
    ]);
  });

  it('wants a complaint and nothing else', () => {
    expect(jobProblem(filled({}))).not.toBeNull();
    expect(jobProblem(filled({ complaint: '   ' }))).not.toBeNull();
    expect(jobProblem(filled({ complaint: 'stalls' }))).toBeNull();
  });

  it('says what it understood of a code while it is typed', () => {
    const sheet = { ...filled({ codes: 'P0335 P033' }), at: 1 };
    expect(jobRemark(sheet, parts)).toMatch(/^P0335: .*P033: a trouble code is/);
  });

  it('says what it understood of earlier repairs, pins and colours', () => {
    const remarkAt = (key: string, text: string) => {
      const sheet = filled({ [key]: text });
      const at = sheet.fields.findIndex((field) => field.key === key);
      return jobRemark({ ...sheet, at }, parts);
    };
    expect(remarkAt('repairs', 'Crank sensor replaced; harness taped')).toBe(
      'Understood: the crankshaft sensor was replaced. Kept as a note only: "harness taped" names no part of this circuit as replaced.',
    );
    expect(remarkAt('terminal sensor.feed', '5 white/black')).toBe(
      'Understood: pin 5, colour WH/BK (white with black).',
    );
  });

  it('gathers what is doubtful, wherever the cursor is', () => {
    const texts = {
      complaint: 'x',
      codes: 'P0335 XYZ P03401',
      vin: '1ZZTESTSXAA000703', // a made-up number with its last digit changed
      'terminal sensor.ground': '3 light green',
    };
    const doubts = jobDoubts(filled(texts));
    expect(doubts.map(({ at, words }) => [at, words.split(/[;,]/)[0]])).toEqual([
      [1, expect.stringContaining('Trouble codes: XYZ:')],
      [1, expect.stringContaining('Trouble codes: P03401:')],
      [12, expect.stringContaining('VIN: position 9 should be')],
      [20, expect.stringContaining('sensor ground: No wire colour recognised')],
    ]);
    expect(jobDoubts(filled({ complaint: 'x', codes: 'P0335' }))).toEqual([]);
  });
});

describe('settings', () => {
  const at = (key: string) =>
    settingsSheet(STANDARD_SETTINGS).fields.findIndex((field) => field.key === key);
  const changed = (key: string, text: string) => {
    const sheet = settingsSheet(STANDARD_SETTINGS);
    const fields = sheet.fields.map((field) =>
      field.key === key && field.kind === 'text' ? { ...field, field: textField(text) } : field,
    );
    return settingsChange({ ...sheet, fields }, at(key), STANDARD_SETTINGS);
  };

  it('as they stand change nothing', () => {
    const sheet = settingsSheet(STANDARD_SETTINGS);
    const all = sheet.fields.map((_, place) => settingsChange(sheet, place, STANDARD_SETTINGS));
    expect(all.filter(({ change, problem }) => change !== null || problem !== null)).toEqual([]);
  });

  it.each([
    ['volts-percent', '0,25', { volts: { ofReading: 0.0025 } }],
    ['ohms-digits', '5', { ohms: { digits: 5 } }],
    ['amps-percent', '1.2', { amps: { ofReading: 0.012, digits: 3 } }],
    ['counts', '20000', { volts: { counts: 20000 }, ohms: { counts: 20000 } }],
    ['input-megohms', '1', { inputOhms: 1e6 }],
    ['meter-name', 'Old faithful', { name: 'Old faithful' }],
  ])('%s "%s" changes the meter', (key, text, meter) => {
    expect(changed(key, text).change).toMatchObject({ key: 'meter', value: meter });
  });

  it.each([
    ['volts-percent', ''],
    ['volts-percent', '21'],
    ['volts-digits', '2.5'],
    ['counts', '0'],
    ['input-megohms', 'ten'],
    ['scope-time', '1'],
    ['meter-name', ''],
  ])('%s "%s" is refused', (key, text) => {
    const { change, problem } = changed(key, text);
    expect(change).toBeNull();
    expect(problem).not.toBeNull();
  });
});

describe('keys', () => {
  it('of a session are unique and never a letter, digit or sign of a reading', () => {
    const all = SESSION_KEYS.flatMap(({ keys }) => keys);
    expect(new Set(all).size).toBe(all.length);
    expect(all.filter((key) => [...key].length === 1)).toEqual(['?']);
  });

  it('leave the text field its own: ctrl a, d, e, k, u, w, and those that are Enter, Tab and Backspace', () => {
    const all = SESSION_KEYS.flatMap(({ keys }) => keys);
    for (const letter of 'adekuwhijmc') expect(all).not.toContain(`ctrl-${letter}`);
  });

  it('each have a line on the help page, which lists the second key too', () => {
    const text = helpParagraphs({ advisor: null, drill: null }).map((line) => line.text);
    for (const { show, other, words } of SESSION_KEYS)
      expect(
        text.some((line) => line.startsWith(`${show}, ${other}`) && line.endsWith(words)),
      ).toBe(true);
  });
});

describe('bars, big words, scrolling', () => {
  it.each([
    [0, '0 %', '..........'],
    [0.004, '<1 %', '-.........'],
    [0.02, '2 %', '-.........'],
    [0.08, '8 %', '#.........'],
    [0.13, '13 %', '#-........'],
    [0.5, '50 %', '#####.....'],
    [0.995, '>99 %', '##########'],
    [1, '100 %', '##########'],
  ])('a share of %d reads %s', (share, words, drawn) => {
    expect([percentWords(share), bar(share, 10, true)]).toEqual([words, drawn]);
  });

  it.each(['DANGER', 'WARNING', 'CAUTION', 'NOTICE'])(
    '%s has all its letters in blocks, 50 columns at most',
    (word) => {
      const lines = bigWords(word, true);
      expect(lines).toHaveLength(BIG_ROWS);
      expect(lines.join('')).toMatch(/^[# ]*$/);
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(50);
    },
  );

  it.each([
    ['page-down', 0, 8],
    ['page-down', 25, 31],
    ['page-up', 5, 0],
    ['a', 5, null],
  ])('%s from %d of 40 lines in 10 rows goes to %s', (label, top, to) => {
    expect(scrollBy(label, { count: 40, rows: 10, top })).toBe(to);
  });
});

describe('a question that the trouble code answers', () => {
  const code: AskStep = {
    ...(SMALL_PROCEDURE.steps['follows'] as AskStep),
    id: 'code',
    outcomes: [
      { name: 'circuit', words: 'circuit', codeKinds: ['circuit'], go: 'feed' },
      { name: 'range', words: 'range or performance', codeKinds: ['range'], go: 'light' },
    ],
  };
  const tree = { ...SMALL_PROCEDURE, start: 'code', steps: { ...SMALL_PROCEDURE.steps, code } };
  const at = (codes: string[]) => {
    const driver = fakeDriver({ ...SMALL_JOB, codes }, false, tree);
    const session = driver.session();
    const opened = { ...fakeSession().opened, driver };
    const half = freshAnswer(session, code);
    const { standing } = askedAt(opened, session, code, half);
    return { marked: half.marked, standing };
  };

  it('has that answer marked, and says why', () => {
    expect(at(['P0336'])).toEqual({
      marked: 1,
      standing: 'Marked: what P0336 on the job sheet says. Confirm it or change it.',
    });
  });

  it('begins at its first answer when no code is known', () => {
    expect(at([])).toEqual({ marked: 0, standing: null });
  });
});

describe('the start menu', () => {
  const saved = (rest: Partial<SavedSession>): SavedSession => ({
    path: 'sessions/a.jsonl',
    words: 'Three-wire Hall sensor, no signal',
    when: '2031-05-06 14:20',
    status: 'paused',
    simulated: false,
    begun: true,
    ...rest,
  });

  it('tells sessions apart by time and vehicle; one in which nothing was done comes last', () => {
    const empty = saved({ when: '2031-05-07 09:00', begun: false });
    const sessions = [empty, saved({ simulated: true }), saved({ words: 'B 12, stalls' })];
    const lines = startMenu(sessions, 3, []).filter(({ words }) => words.startsWith('Go on'));
    expect(lines.map(({ words }) => words)).toEqual([
      'Go on: 05-06 14:20 simulated, Three-wire Hall sensor, no signal',
      'Go on: 05-06 14:20 B 12, stalls',
      'Go on: 05-07 09:00 Three-wire Hall sensor, no signal',
    ]);
    expect(lines[2]?.about).toContain('nothing done yet');
  });
});
