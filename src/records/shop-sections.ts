/** The full report: everything the session file knows, in the order a shop reads it. */

import { drillSections } from './drill-sections.ts';
import {
  captures,
  cell,
  measurements,
  ownTestsTable,
  retestTables,
  undoneItems,
} from './measurement-tables.ts';
import type { SessionRecord } from './record-form.ts';
import type { Block, Section } from './report-form.ts';
import {
  dateWords,
  durationWords,
  filled,
  NOT_RULED_OUT,
  provenWords,
  RIGHT_WHEN_TESTED,
  timeWords,
  verdictWords,
} from './report-words.ts';

/** Sections of the full report; empty ones are left out. */
export function shopSections(record: SessionRecord): Section[] {
  return [
    summary(record),
    ...drillSections(record),
    jobSection(record),
    section('Known about this car', known(record)),
    section('Wiring', wiring(record)),
    section('Measurements', measurements(record)),
    section('Captures', captures(record)),
    section(record.procedure ? 'Tests outside the procedure' : 'Tests', ownTestsTable(record)),
    section('Wiggled and heated', moved(record)),
    section('Location of a short', shorts(record)),
    conclusion(record),
    section('What to say on the phone', told(record)),
    section('What the customer said about the work', work(record)),
    section('After the repair', retestTables(record)),
    section('Could not be done', impossible(record)),
    section('Notes', notes(record)),
    section('Cautions shown and acknowledged', cautions(record)),
    section('Corrections and interruptions', changes(record)),
    verification(record),
  ].filter((one) => one.blocks.length > 0);
}

function section(heading: string, blocks: readonly Block[]): Section {
  return { heading, blocks };
}

/** The sketch is a help to the eye; the words of each test say the same. */
function wiring({ wiring: lines, circuit }: SessionRecord): Block[] {
  return lines.length === 0 ? [] : [{ kind: 'drawing', title: circuit ?? '', lines }];
}

function summary(record: SessionRecord): Section {
  const { conclusion: end } = record;
  return section('Complaint, cause, correction', [
    {
      kind: 'facts',
      rows: [
        ['Complaint', record.complaint || 'none recorded'],
        ['Cause', record.cause || 'not concluded yet'],
        ['Correction', record.correction || (end ? 'none recorded' : 'not concluded yet')],
        ...filled([
          ['Certainty', provenWords(record)],
          ['After the repair', repaired(record)],
        ]),
      ],
    },
  ]);
}

/** A drill ends with its answer. */
function repaired({ conclusion: end, vehicle, retest: { verdict } }: SessionRecord): string {
  return end && vehicle !== 'drill' ? verdictWords(verdict) : '';
}

function jobSection(record: SessionRecord): Section {
  const { job } = record;
  const { vehicle } = job;
  const blocks: Block[] = [
    {
      kind: 'facts',
      rows: filled([
        ['Vehicle', vehicle.words],
        ['Plate', vehicle.plate],
        ['VIN', vehicle.vin],
        ['Odometer', vehicle.odometer],
        ['Drive', vehicle.drive.replace('-', ' ')],
        ['Trouble codes', job.codes.join(', ')],
        ['Order', job.order],
        ['Customer', job.customer],
        ['Job sheet', job.name],
        ['Job notes', job.notes],
        ['Person', record.person],
        ['Shop', record.shop],
        ['Comes from', record.origin],
        ['Procedure', record.title],
        ['Circuit', record.circuit ?? 'none'],
        ['Instruments', record.instruments.join(', ')],
        ['Meter', record.meter],
        ['Started', dateWords(record.startedAt)],
        ['Last entry', dateWords(record.endedAt)],
        ['Time worked', durationWords(record.workedMs)],
        [
          'Standard time',
          record.minutes === null
            ? ''
            : `${Math.round(record.minutes)} min for the tests up to the conclusion`,
        ],
      ]),
    },
  ];
  if (job.earlierRepairs.length > 0)
    blocks.push({
      kind: 'list',
      items: job.earlierRepairs.map(
        ({ words, part, outcome }) =>
          `Done before: ${words}${part ? ` (${part})` : ''}${outcome ? `, ${outcome}` : ''}`,
      ),
    });
  if (job.told.length > 0)
    blocks.push({
      kind: 'list',
      items: job.told.map(
        ({ what, words, moved }) => `${what}: ${words}${moved ? ` (${moved})` : ''}`,
      ),
    });
  if (job.harness.length > 0)
    blocks.push({ kind: 'list', items: job.harness.map((line) => `Harness: ${line}`) });
  if (job.terminals.length > 0)
    blocks.push({
      kind: 'table',
      caption: 'Pins and wire colours of this vehicle',
      heads: ['Terminal', 'Pin', 'Colour'],
      widths: [5, 2, 2],
      rows: job.terminals.map(({ words, pin, colour }) => [cell(words), cell(pin), cell(colour)]),
    });
  return section('Job', blocks);
}

function shorts({ shorts: made }: SessionRecord): Block[] {
  if (made.length === 0) return [];
  return [
    {
      kind: 'table',
      caption:
        'Drops along the wire, fed at the near end and at the far end, everything on it unplugged',
      heads: ['Stretch', 'Touches', 'Drops', 'Found', 'At'],
      widths: [8, 4, 5, 6, 4],
      rows: made.map((one) => [
        cell(one.stretch),
        cell(one.touches),
        cell(one.typed),
        cell(one.found),
        cell(timeWords(one)),
      ]),
    },
  ];
}

function conclusion(record: SessionRecord): Section {
  const end = record.conclusion;
  if (!end) return section('Conclusion', []);
  const blocks: Block[] = [
    {
      kind: 'facts',
      rows: filled([
        ['Conclusion', `${end.title}${ownWords(record)}`],
        ['Faults', end.faults.map(({ words, id }) => `${words} [${id}]`).join('; ')],
        ['Where', end.place],
        ['Repair', end.repair],
        ['Certainty', provenWords(record)],
        ['Comes out otherwise today', (end.judgedBy?.differs ?? []).join('; ')],
        ['Rests on one reading', end.restsOn ? `${end.restsOn.words}; it was not repeated` : ''],
        ['Concluded at', timeWords(end)],
      ]),
    },
  ];
  if (end.evidence.length > 0)
    blocks.push({
      kind: 'table',
      caption: 'Evidence',
      heads: ['Test', 'Where', 'Found', 'Points to'],
      widths: [16, 26, 18, 26],
      rows: end.evidence.map((one) => [
        cell(one.test),
        cell(one.where),
        cell(one.found),
        cell(one.pointsTo, one.counted ? '' : 'not a separate piece'),
      ]),
    });
  const isNothing = end.nothingFound === true;
  if (end.ruledOut.length > 0 && isNothing) blocks.push({ kind: 'text', text: RIGHT_WHEN_TESTED });
  if (end.ruledOut.length > 0)
    blocks.push({
      kind: 'table',
      caption: isNothing ? 'Not called for now' : 'Ruled out',
      heads: ['Repair', isNothing ? 'Shown by' : 'Ruled out by'],
      widths: [1, 1],
      rows: end.ruledOut.map(({ words, by }) => [cell(words), cell(by)]),
    });
  if (end.notRuledOut.length > 0)
    blocks.push(
      { kind: 'text', text: `${NOT_RULED_OUT}:` },
      { kind: 'list', items: end.notRuledOut },
    );
  return section('Conclusion', blocks);
}

/** Whose conclusion it is, where that is not the procedure. */
function ownWords({ conclusion: end, procedure }: SessionRecord): string {
  if (!end?.own) return '';
  return procedure ? " (the technician's own, not the procedure's)" : " (the technician's own)";
}

function impossible(record: SessionRecord): Block[] {
  const lines = record.lines.filter(
    (line) => line.kind === 'impossible' && line.standing !== 'taken back',
  );
  if (lines.length === 0) return [];
  return [{ kind: 'list', items: undoneItems(lines) }];
}

/** What was set aside of it says so in words. */
function known(record: SessionRecord): Block[] {
  if (record.known.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Values the readings were weighed with',
      heads: ['Value', 'Is', 'From', 'Said'],
      widths: [30, 20, 20, 16],
      rows: record.known.map((one) => [
        cell(one.words, one.standing === 'standing' ? '' : one.standing),
        cell(one.is, `typed: ${one.typed}`),
        cell(one.from),
        cell(one.of === 'job sheet' ? 'on the job sheet' : timeWords(one)),
      ]),
    },
  ];
}

/** Rounds of moving and warming, in the order they were made. */
function moved({ watched = [] }: SessionRecord): Block[] {
  if (watched.length === 0) return [];
  const items = watched.map((round) => `${timeWords(round)}, ${round.step}: ${round.found}`);
  return [{ kind: 'list', items }];
}

function notes(record: SessionRecord): Block[] {
  if (record.notes.length === 0) return [];
  return [
    {
      kind: 'list',
      items: record.notes.map((note) => {
        const at = note.step === '' ? '' : `, at "${note.step}"`;
        return `${timeWords(note)}${at}: ${note.text}`;
      }),
    },
  ];
}

function cautions(record: SessionRecord): Block[] {
  if (record.cautions.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'The text as it was shown',
      heads: ['Time', 'Word', 'Text', 'At step'],
      widths: [10, 12, 46, 18],
      rows: record.cautions.map((one) => [
        cell(timeWords(one), one.readBy === '' ? '' : `read by ${one.readBy}`),
        cell(one.word),
        cell(one.text, one.earlier ? earlierWords(one.earlier) : ''),
        cell(ownStep(one.step)),
      ]),
    },
  ];
}

/** A caution that was not asked for again. */
function earlierWords(earlier: NonNullable<SessionRecord['cautions'][number]['earlier']>): string {
  return `in short: read ${timeWords(earlier)}, at ${ownStep(earlier.step)}`;
}

function ownStep(title: string): string {
  return title || "a test of the technician's own";
}

function told({ call, prices = [] }: SessionRecord): Block[] {
  return [...call, ...prices].map((text) => ({ kind: 'text', text }));
}

function work({ work: answers }: SessionRecord): Block[] {
  if (answers.length === 0) return [];
  const said = (one: SessionRecord['work'][number]) =>
    [`${timeWords(one)}: ${one.answer} by ${one.by}`, one.words].filter(Boolean).join('; ');
  return [{ kind: 'list', items: answers.map(said) }];
}

function changes(record: SessionRecord): Block[] {
  const lines = [
    ...record.corrections.map((one) => ({
      one,
      words: `answer ${one.line} of "${one.step}" was taken back (it was: ${one.found})`,
    })),
    ...record.interruptions.map((one) => ({ one, words: one.words })),
  ].sort((a, b) => a.one.workedMs - b.one.workedMs);
  if (lines.length === 0) return [];
  return [{ kind: 'list', items: lines.map(({ one, words }) => `${timeWords(one)}: ${words}`) }];
}

function verification(record: SessionRecord): Section {
  return section('Is this record genuine?', [
    {
      kind: 'facts',
      rows: [
        ['Session', record.id],
        ['Events', `${record.head.seq}`],
        ['Head (SHA-256 of the last event)', record.head.hash],
        ['Program', `${record.program}, rules ${record.rules}`],
        ['To check it', record.howToVerify],
      ],
    },
    {
      kind: 'text',
      text: 'Each event holds the hash of the one before, so no event in the session file can be changed without breaking the chain, and this hash shows whether the file ends where it did when this report was written. It does not show who wrote it. The maker’s service information, local rules and qualified practice come first.',
    },
  ]);
}
