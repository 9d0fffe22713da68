/** The tables of readings in the full report. */
import { compareMeasured } from '../session/compare-measured.ts';
import { spansLeastOf } from '../session/measure-capture.ts';
import { LAST_WORD } from '../session/retest.ts';
import type {
  RecordCapture,
  RecordLine,
  RecordReading,
  RecordTest,
  RetestRow,
  SessionRecord,
} from './record-form.ts';
import type { Block, Cell } from './report-form.ts';
import {
  driveWords,
  filled,
  isDriveDue,
  madeWords,
  passedCell,
  timeWords,
  todayWords,
  verdictWords,
} from './report-words.ts';

/** A cell of one or more texts, empty ones left out. */
export function cell(...parts: string[]): Cell {
  return { parts: parts.filter((part) => part !== '') };
}

/** Every answer, one row each. */
export function measurements(record: SessionRecord): Block[] {
  if (record.lines.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'All answers in the order they were given',
      heads: ['No., time', 'Test', 'Where, vehicle state', 'Expected', 'Found', 'Judgement'],
      widths: [10, 17, 23, 14, 12, 18],
      rows: gathered(record.lines).map(rowOf),
    },
  ];
}

/** Steps one after the other that were gone round for one connector come together. */
function gathered(lines: readonly RecordLine[]): RecordLine[][] {
  const runs: RecordLine[][] = [];
  for (const line of lines) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const isSame = last && isRound(line) && isRound(last) && line.by === last.by;
    if (run && isSame && line.standing === last.standing) run.push(line);
    else runs.push([line]);
  }
  return runs;
}

function isRound({ kind, by }: RecordLine): boolean {
  return kind === 'impossible' && by !== undefined;
}

/** Which steps they were stands under what could not be done. */
function rowOf(run: readonly RecordLine[]): Cell[] {
  const [first, last] = [run[0]!, run.at(-1)!];
  if (run.length === 1) return lineRow(first);
  const [time, , , , found, judgement] = lineRow(first);
  return [
    cell(`${first.number} to ${last.number}`, ...time!.parts.slice(1)),
    cell(`${run.length} steps were skipped`),
    ...[cell(''), cell('')],
    ...[found!, judgement!],
  ];
}

function lineRow(line: RecordLine): Cell[] {
  const struck = line.standing === 'standing' ? {} : { tone: 'struck' as const };
  return [
    cell(`${line.number}`, timeWords(line)),
    { ...cell(line.title, line.instrument), ...struck },
    cell(line.where, line.setup),
    cell(line.expected, line.expectedRange ? `from the ${line.expectedRange.from}` : ''),
    {
      ...cell(line.found, typedWords(line.reading, line.found), captureWords(line)),
      ...gauge(line),
    },
    {
      ...cell(
        line.standing === 'standing' ? '' : line.standing.toUpperCase(),
        line.verdict?.toUpperCase() ?? '',
        line.judgement,
        todayWords(line.today),
        line.outcome === line.found ? '' : line.outcome,
        line.reason,
      ),
      ...(line.standing === 'standing' ? toneOf(line) : {}),
    },
  ];
}

function captureWords({ capture }: { readonly capture?: RecordCapture }): string {
  return capture ? `from ${captureName(capture)}: ${capture.found}` : '';
}

function captureName({ name, from }: RecordCapture): string {
  return from === 'bench' ? 'a capture of the simulated vehicle' : `capture ${name}`.trim();
}

/** Each capture that answered something: its file, what was found, its picture; then before beside after. */
export function captures({ lines, tests, watched = [], retest: { rows } }: SessionRecord): Block[] {
  return [
    ...lines.flatMap(({ number, title, capture }) =>
      captureBlocks(`No. ${number}, ${title}`, capture),
    ),
    ...tests.flatMap(({ number, title, capture }) =>
      captureBlocks(`Test No. ${number}, ${title}`, capture),
    ),
    ...watched.flatMap(({ step, capture }) => captureBlocks(`While moved: ${step}`, capture)),
    ...rows.flatMap(({ title, capture, captureBefore }) => [
      ...captureBlocks(`After the repair: ${title}`, capture),
      ...(capture && captureBefore ? [beforeBesideAfter(title, captureBefore, capture)] : []),
    ]),
  ];
}

function captureBlocks(heading: string, capture: RecordCapture | undefined): Block[] {
  if (!capture) return [];
  const { channel, channels } = capture;
  return [
    {
      kind: 'facts',
      rows: filled([
        ['Answer', heading],
        ['Capture', captureName(capture)],
        [
          'Judged',
          channel === undefined
            ? ''
            : `channel ${channel} of ${channels.length}, ${channels[channel - 1]?.name ?? ''}`,
        ],
        ['SHA-256 of the file', capture.sha256],
        ...(capture.beside ?? []).map((file): [string, string] => [
          file.what === 'good' ? 'Known-good capture' : 'Second file of the same crank',
          [file.name, file.sha256 && `SHA-256 ${file.sha256}`].filter(Boolean).join(', '),
        ]),
        ['Measured', capture.found],
        ['Judgement', capture.words.join('; ') || 'nothing wrong with this signal'],
        ['Pairs', capture.pairs.join('; ')],
      ]),
    },
    { kind: 'picture', title: heading, channels, spansLeast: spansLeastOf(capture) },
  ];
}

/** What was measured of the same signal before and after the repair. */
function beforeBesideAfter(title: string, before: RecordCapture, after: RecordCapture): Block {
  const rows = compareMeasured(before.measures, after.measures);
  return {
    kind: 'table',
    caption: `The captures before and after the repair: ${title}`,
    heads: ['Measured', 'Before', 'After', 'Change'],
    widths: [14, 16, 16, 16],
    rows: [
      ...rows.map((row) => [cell(row.name), cell(row.before), cell(row.after), cell(row.change)]),
      [
        cell('wrong with the signal'),
        cell(...(before.words.length > 0 ? before.words : ['nothing'])),
        cell(...(after.words.length > 0 ? after.words : ['nothing'])),
        cell(''),
      ],
    ],
  };
}

/** What was typed, where it is not what is shown. */
function typedWords(reading: RecordReading | null, shown: string): string {
  const typed = reading?.typed ?? '';
  return typed === '' || typed === shown ? '' : `typed: ${typed}`;
}

function gauge({
  reading,
  expectedRange,
}: RecordLine | RecordTest | RetestRow): Pick<Cell, 'gauge'> {
  if (!reading || !expectedRange) return {};
  return { gauge: { low: expectedRange.low, high: expectedRange.high, value: reading.value } };
}

function toneOf({ verdict }: RecordLine | RecordTest): Pick<Cell, 'tone'> {
  switch (verdict) {
    case null:
      return {};
    case 'good':
    case 'as expected':
      return { tone: 'good' };
    case 'borderline':
      return { tone: 'unsure' };
    case 'low':
    case 'high':
    case 'impossible':
    case 'not as expected':
      return { tone: 'bad' };
  }
}

/** Tests outside the procedure, before the repair. */
export function ownTestsTable({ tests }: SessionRecord): Block[] {
  return testTable(
    'Chosen by the technician or suggested by the program',
    tests.filter(({ afterRepair }) => !afterRepair),
  );
}

/** The same after the repair. */
function ownTestsAfter({ tests }: SessionRecord): Block[] {
  return testTable(
    'Other tests done after the repair',
    tests.filter(({ afterRepair }) => afterRepair),
  );
}

function testTable(caption: string, tests: readonly RecordTest[]): Block[] {
  if (tests.length === 0) return [];
  return [
    {
      kind: 'table',
      caption,
      heads: ['No., time', 'Test', 'Where, vehicle state', 'Expected', 'Found', 'Judgement'],
      widths: [10, 17, 23, 14, 12, 18],
      rows: tests.map((test) => [
        cell(`${test.number}`, timeWords(test)),
        cell(test.title, test.instrument, madeWords(test)),
        cell(test.where, test.setup),
        cell(test.expected),
        {
          ...cell(test.found, typedWords(test.reading, test.found), captureWords(test)),
          ...gauge(test),
        },
        {
          ...cell(test.verdict?.toUpperCase() ?? '', test.judgement, todayWords(test.today)),
          ...toneOf(test),
        },
      ]),
    },
  ];
}

/** The same tests before and after the repair, and what they came to. */
export function retestTables(record: SessionRecord): Block[] {
  const { rows, missing, verdict, today, drives } = record.retest;
  if (rows.length === 0 && verdict === null && !record.conclusion) return [];
  // The answer of a drill ends it: nothing is repaired.
  if (record.vehicle === 'drill' && rows.length === 0 && verdict === null)
    return ownTestsAfter(record);
  const blocks: Block[] = [];
  if (rows.length > 0)
    blocks.push({
      kind: 'table',
      caption: 'The same tests before and after the repair',
      heads: ['Time', 'Test', 'Expected', 'Before', 'After', 'Result'],
      widths: [11, 24, 15, 14, 14, 10],
      rows: rows.map((row) => [
        cell(timeWords(row)),
        cell(row.title, row.where),
        cell(row.expected),
        cell(row.before || 'not taken'),
        {
          ...cell(row.after, typedWords(row.reading, row.after), captureWords(row)),
          ...gauge(row),
        },
        passedCell(row.passed),
      ]),
    });
  blocks.push(...ownTestsAfter(record), {
    kind: 'facts',
    rows: filled([
      ['Verdict', verdictWords(verdict)],
      ['Today', todayWords(today)],
      ['Still to be repeated', missing.join('; ')],
      ...drives.map((one): [string, string] => ['Test drive', driveWords(one)]),
      ['Still to be done', isDriveDue(record) ? LAST_WORD : ''],
    ]),
  });
  return blocks;
}

/** What could not be done, a line each: `step: reason`; steps of one reason come together behind it. */
export function undoneItems(lines: readonly Pick<RecordLine, 'title' | 'reason'>[]): string[] {
  const byReason = new Map<string, string[]>();
  for (const { title, reason } of lines)
    byReason.set(reason, [...(byReason.get(reason) ?? []), title]);
  return [...byReason].map(([reason, titles]) =>
    titles.length === 1
      ? `${titles[0]}: ${reason}`
      : `${reason.charAt(0).toUpperCase()}${reason.slice(1)}: ${[...new Set(titles)].join('; ')}`,
  );
}
