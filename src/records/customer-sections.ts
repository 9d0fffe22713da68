/** The report for the owner of the vehicle: plain words, how it is known, prices where the shop has set its rates, and lines to sign. */

import { GAPS_WORDS } from '../session/gaps.ts';
import { isProvenToday, judgedByWords } from './judged-by.ts';
import { cell, undoneItems } from './measurement-tables.ts';
import { mayBeOffWords, plainSentence } from './plain-sentence.ts';
import { KEPT_AS, type RecordLine, type RecordTest, type SessionRecord } from './record-form.ts';
import type { Block, Cell, Section } from './report-form.ts';
import {
  dateWords,
  driveWords,
  filled,
  HAND_WARNINGS,
  isDriveDue,
  NOT_RULED_OUT,
  passedCell,
  proofGap,
  RIGHT_WHEN_TESTED,
  workWords,
} from './report-words.ts';

/** Sections for the customer, from what `recordForCustomer` gives; empty ones are left out. */
export function customerSections(record: SessionRecord): Section[] {
  const { conclusion: end } = record;
  const parts: [string, readonly Block[]][] = [
    ['Your vehicle', [vehicle(record)]],
    ['What you told us', complaint(record)],
    ['What we found', [...wiring(record), ...found(record)]],
    ['How we know', evidence(record)],
    [end?.nothingFound ? 'What nothing calls for now' : 'What is not needed', ruledOut(record)],
    ['What was not ruled out', notRuledOut(record)],
    ['What could not be tested', impossible(record)],
    ['What needs doing', end?.repair ? [text(end.repair)] : []],
    ['What it costs', prices(record)],
    ['After the repair', retest(record)],
    ['Your decision', decision(record)],
    [
      'About this report',
      [
        text(
          `Session ${record.id}. Control number ${record.head.hash}. The shop keeps the full record under this number.`,
        ),
      ],
    ],
  ];
  return parts
    .map(([heading, blocks]) => ({ heading, blocks }))
    .filter(({ blocks }) => blocks.length > 0);
}

function text(words: string): Block {
  return { kind: 'text', text: words };
}

function vehicle({ job, person, shop, startedAt, origin, by }: SessionRecord): Block {
  // Whom a file or a program names has not examined anything by that.
  const isPerson = by.every((hand) => HAND_WARNINGS[hand] === null);
  return {
    kind: 'facts',
    rows: filled([
      ['Vehicle', job.vehicle.words],
      ['Plate', job.vehicle.plate],
      ['VIN', job.vehicle.vin],
      ['Odometer', job.vehicle.odometer],
      ['Order', job.order],
      ['Customer', job.customer],
      ['Shop', shop],
      [isPerson ? 'Examined by' : 'Person named', person],
      ['Date', dateWords(startedAt)],
      ['Comes from', origin],
    ]),
  };
}

function complaint({ complaint: words, job }: SessionRecord): Block[] {
  const blocks: Block[] = words.trim() === '' ? [] : [text(words)];
  const kept = job.told.find(({ what }) => what === KEPT_AS)?.words.split(', ') ?? [];
  const codes = job.codes.map((code) => kept.find((one) => one.startsWith(`${code} `)) ?? code);
  if (codes.length > 0) blocks.push(text(`Trouble codes in the vehicle: ${codes.join(', ')}.`));
  for (const { words: done, outcome } of job.earlierRepairs)
    blocks.push(
      text(`Done before: ${done.replace(/\.$/, '')}${outcome === '' ? '' : `, ${outcome}`}.`),
    );
  return blocks;
}

/** What was found, where, and what is wrong, before any words of it. */
function wiring({ picture, conclusion, lines, tests, retest: { rows } }: SessionRecord): Block[] {
  if (!picture || !conclusion) return [];
  const made = new Map([...lines, ...tests].map((one) => [one.event, one]));
  const again = new Map(
    rows.flatMap((row) => (row.passed === null ? [] : [[row.step, row.after]])),
  );
  const readings = conclusion.evidence.flatMap(({ reading, test, found: shown }, at) => {
    const line = reading === null ? undefined : made.get(reading);
    if (reading === null || !line) return [];
    const after =
      'step' in line
        ? again.get(line.step)
        : tests.findLast((one) => one.afterRepair && one.title === line.title)?.found;
    const { expected } = line;
    return [{ number: at + 1, reading, found: shown, expected, after: after ?? '', test }];
  });
  const proven = isProvenToday(conclusion);
  return [{ kind: 'wiring', title: 'What was read, and where', picture, readings, proven }];
}

function found({ conclusion: end, lines, retest }: SessionRecord): Block[] {
  if (!end) return [text('The tests have not led to a conclusion yet.')];
  const blocks: Block[] = [text(end.title)];
  if (end.customer) blocks.push(text(end.customer));
  if (end.place !== '') blocks.push(text(`Where: ${end.place}.`));
  if (gaps(lines).length > 0 && !end.customer.includes(GAPS_WORDS)) blocks.push(text(GAPS_WORDS));
  // Where the cause is open there is nothing to be sure of.
  if (end.proven !== null && !end.leavesOpen)
    blocks.push(
      text(
        isProvenToday(end)
          ? 'At least three independent tests agree on this.'
          : `${end.proven ? PROVEN_THEN : PLAIN_GAPS[proofGap(end)]}, so it is the best explanation, not a proof.`,
      ),
    );
  if (isProvenToday(end) && !end.leavesOpen && end.nothingFound !== true && !retest.verdict)
    blocks.push(text(NOTHING_ELSE));
  const judged = judgedByWords(end.judgedBy);
  if (judged !== '') blocks.push(text(`This was ${judged}.`));
  return blocks;
}

/** A fault may hide another one that lies behind it. */
const NOTHING_ELSE =
  'Whether it was the only fault shows when the vehicle is tested again after the repair.';

const PROVEN_THEN =
  "By the rules of that time at least three independent tests agreed on this; today's have not borne it out";
const PLAIN_GAPS = {
  'one-reading': 'This rests on one reading that was not repeated',
  'few-pieces': 'Fewer than three independent tests agree on this so far',
  'not-sure': 'Another cause is not ruled out yet, or the test results do not all agree',
} as const;

function evidence({ conclusion: end, lines, tests }: SessionRecord): Block[] {
  const before = tests.filter(({ afterRepair }) => !afterRepair);
  if (end && end.evidence.length > 0) {
    const made = new Map<number | null, RecordLine | RecordTest>(
      [...lines, ...tests].map((one) => [one.event, one]),
    );
    // Early versions kept only the words of the evidence.
    const told = new Set(
      end.evidence.map(({ reading, test, found: shown }) => reading ?? `${test}: ${shown}`),
    );
    const isTold = (one: RecordLine | RecordTest) =>
      told.has(one.event) || told.has(`${one.title}: ${one.found}`);
    return [
      {
        kind: 'table',
        caption: 'What points to it',
        heads: ['No.', 'Test', 'Should be', 'Found', 'What it says'],
        widths: [1, 5, 4, 3, 5],
        rows: end.evidence.map((one, at) => {
          const line = made.get(one.reading);
          return [
            cell(`${at + 1}`),
            cell(one.test),
            cell(line?.expected || 'no fixed value'),
            cell(one.found, line ? mayBeOffWords(line) : ''),
            cell(line ? plainSentence(line) : ''),
          ];
        }),
      },
      ...(end.evidence.some((one) => isNothingWrong(made.get(one.reading)))
        ? [text(WHY_NOTHING_WRONG)]
        : []),
      ...plainTable(
        'Other tests that were done',
        [...answersOf(lines), ...before].filter((one) => !isTold(one)),
      ),
    ];
  }
  const taken = lines.filter(
    (line) => line.standing === 'standing' && (line.kind === 'reading' || line.kind === 'look'),
  );
  return plainTable('Tests that were done', [...taken, ...answersOf(lines), ...before]);
}

/** What was seen, where that is no reading: what the procedure concluded from, and what was moved or warmed in vain. */
function answersOf(lines: readonly RecordLine[]): RecordLine[] {
  return lines.filter(({ kind, standing }) => kind === 'answer' && standing === 'standing');
}

/** Each piece of evidence speaks against the best other explanation that was left (`gather-evidence.ts`). */
const WHY_NOTHING_WRONG =
  'A test with nothing wrong in it stands here because its result speaks against another explanation.';

function isNothingWrong(one: RecordLine | RecordTest | undefined): boolean {
  return one?.verdict === 'good' || one?.verdict === 'as expected';
}

function plainTable(caption: string, made: readonly (RecordLine | RecordTest)[]): Block[] {
  if (made.length === 0) return [];
  const rows = [...made].sort((a, b) => a.event - b.event).map(plainRow);
  const heads = ['Test', 'Should be', 'Is', 'Result'];
  return [{ kind: 'table', caption, heads, widths: [4, 3, 2, 3], rows }];
}

function plainRow(line: RecordLine | RecordTest): Cell[] {
  const right = line.verdict === 'good' || line.verdict === 'as expected';
  const said = 'outcome' in line ? line.outcome : '';
  const isSaid = said !== '' && said !== line.found;
  const result = line.verdict !== null ? (right ? 'right' : 'not right') : isSaid ? said : '';
  const unsure = line.verdict === 'borderline';
  return [
    cell(line.title),
    cell(line.expected || 'no fixed value'),
    cell(line.found, mayBeOffWords(line)),
    cell(unsure ? 'too close to tell' : result),
  ];
}

function ruledOut({ conclusion: end }: SessionRecord): Block[] {
  if (!end || end.ruledOut.length === 0) return [];
  const repairsBy = new Map<string, string[]>();
  for (const one of end.ruledOut) {
    repairsBy.set(one.by, [...(repairsBy.get(one.by) ?? []), one.words]);
  }
  const isNothing = end.nothingFound === true;
  return [
    ...(isNothing ? [text(RIGHT_WHEN_TESTED)] : []),
    {
      kind: 'table',
      caption: isNothing
        ? 'Repairs that no test calls for now'
        : 'Repairs that the tests have ruled out',
      heads: [isNothing ? 'Not called for now' : 'Not needed', 'Shown by'],
      widths: [5, 4],
      rows: [...repairsBy].map(([by, repairs]) => [cell(...repairs), cell(by)]),
    },
  ];
}

function notRuledOut({ conclusion: end }: SessionRecord): Block[] {
  if (!end || end.notRuledOut.length === 0) return [];
  return [text(`${NOT_RULED_OUT}:`), { kind: 'list', items: end.notRuledOut }];
}

function prices({ prices: told = [] }: SessionRecord): Block[] {
  if (told.length === 0) return [];
  return [text('By the rates of the shop:'), { kind: 'list', items: told }];
}

function gaps(lines: readonly RecordLine[]): RecordLine[] {
  return lines.filter((line) => line.kind === 'impossible' && line.standing === 'standing');
}

function impossible({ lines }: SessionRecord): Block[] {
  const items = undoneItems(gaps(lines));
  return items.length === 0 ? [] : [{ kind: 'list', items }];
}

const PLAIN_VERDICT = {
  cured: 'The tests were repeated after the repair and passed.',
  'not-cured': 'The fault is still there after the repair.',
  changed: 'The vehicle behaves differently after the repair, but is still not right.',
  'not-shown':
    'The tests that could be done after the repair passed. One could not be done, so it is not proven that the fault is gone.',
  'no-retest': 'No test was done after the repair.',
} as const;

const NOT_ALL_REPEATED =
  'Not all tests were repeated after the repair, so it is not proven that the fault is gone.';

const CAME_BACK = 'So the fault is not gone, whatever the tests in the shop have shown.';

const PLAIN_LAST_WORD =
  "The trouble codes have to be cleared and the vehicle driven as its maker's procedure says. The last word is that the code stays away.";

function retest(record: SessionRecord): Block[] {
  const { tests, retest: done } = record;
  const { rows, missing, verdict, drives } = done;
  const blocks: Block[] = [];
  if (rows.length > 0)
    blocks.push({
      kind: 'table',
      caption: 'The same tests before and after',
      heads: ['Test', 'Should be', 'Before', 'After', 'Result'],
      widths: [4, 3, 2, 2, 2],
      rows: rows.map((row) => [
        cell(row.title),
        cell(row.expected || 'no fixed value'),
        cell(row.before || 'not taken'),
        cell(row.after),
        passedCell(row.passed),
      ]),
    });
  blocks.push(
    ...plainTable(
      'Other tests that were done after it',
      tests.filter(({ afterRepair }) => afterRepair),
    ),
  );
  if (verdict === 'no-retest' && rows.length > 0) blocks.push(text(NOT_ALL_REPEATED));
  else if (verdict) blocks.push(text(PLAIN_VERDICT[verdict]));
  if (rows.length > 0 && missing.length > 0)
    blocks.push(text(`Not tested again after the repair: ${missing.join('; ')}.`));
  for (const one of drives) blocks.push(text(`Test drive after the repair. ${driveWords(one)}.`));
  if (drives.at(-1)?.code === 'came-back') blocks.push(text(CAME_BACK));
  if (isDriveDue(record)) blocks.push(text(PLAIN_LAST_WORD));
  return blocks;
}

/** Asked until it is answered, or until the first test or drive after the repair. */
function decision(record: SessionRecord): Block[] {
  const { conclusion, work, retest: done } = record;
  const { rows, verdict, drives } = done;
  const said = work.at(-1);
  if (said) return [text(workWords(said))];
  if (!conclusion || verdict !== null || rows.length > 0 || drives.length > 0) return [];
  return [
    text('I have read what was found and what it takes. I authorise the work as described above.'),
    {
      kind: 'sign',
      labels: [
        'Agreed cost or limit (to be filled in by the shop)',
        'Name',
        'Signature',
        'Date and time',
        'Authorised in person, by telephone or in writing',
        'Received for the shop by',
      ],
    },
  ];
}
