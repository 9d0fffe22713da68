/** The verbs of `ohmward records`: what each takes, says of itself and does. */
import { openSettings } from '../../files/settings.ts';
import { callMinutes, callPrices } from '../../records/call-words.ts';
import { debriefFrom, withDebrief } from '../../records/drill-record.ts';
import { exportRecord, FORMS } from '../../records/export-record.ts';
import { readRates } from '../../records/read-rates.ts';
import { AUDIENCES } from '../../records/record-for.ts';
import type { SessionRecord } from '../../records/record-form.ts';
import { REPAIR_VERDICTS } from '../../session/events.ts';
import type { Session } from '../../session/session.ts';
import { type Arguments, EXIT, type Io, type Option, optionText, type Verb } from '../command.ts';
import { COMPARE_FORMS, compare, verifyRecords } from './check-records.ts';
import { listRecords } from './list-records.ts';
import { deliver, oneSession, optionChoice, readNamed, Stop } from './record-arguments.ts';
import { showRecord } from './show-record.ts';

type VerbOptions = Readonly<Record<string, Option>>;

const WHERE: VerbOptions = {
  folder: { type: 'string', value: 'FOLDER', help: 'look for sessions here' },
  shared: { type: 'boolean', help: 'look in the shared database of the shop' },
};
const JSON_ANSWER: VerbOptions = { json: { type: 'boolean', help: 'answer as JSON' } };
const OUTPUT: VerbOptions = {
  output: {
    type: 'string',
    short: 'o',
    value: 'FILE',
    help: 'write to this file; - is standard output',
  },
  force: { type: 'boolean', short: 'f', help: 'replace the file if it is there' },
};
const FINDING: VerbOptions = {
  plate: { type: 'string', value: 'TEXT', help: 'part of the plate, however it is spaced' },
  vin: { type: 'string', value: 'TEXT', help: 'part of the identification number' },
  order: { type: 'string', value: 'TEXT', help: 'part of the order number' },
  code: { type: 'string', value: 'CODE', help: 'a trouble code, or its beginning' },
  conclusion: { type: 'string', value: 'TEXT', help: 'words of the conclusion' },
  person: { type: 'string', value: 'NAME', help: 'who did it' },
  customer: { type: 'string', value: 'NAME', help: 'whose vehicle it is' },
  status: {
    type: 'string',
    value: 'WORD',
    help: 'open, paused, concluded, closed, damaged, unreadable',
  },
  verdict: { type: 'string', value: 'WORD', help: REPAIR_VERDICTS.join(', ') },
  since: { type: 'string', value: 'DAY', help: 'from this day on, like 2026-03-04 or 2026-03' },
  until: { type: 'string', value: 'DAY', help: 'up to this day' },
  limit: { type: 'string', value: 'N', help: 'at most this many; 50 when left out' },
};

export const VERBS: Readonly<Record<string, Verb>> = {
  list: {
    summary: 'the sessions, newest first',
    usage: 'records list [options]',
    examples: [
      'ohmward records list --since 2026-03',
      'ohmward records list --status paused --limit 10',
    ],
    options: { ...FINDING, ...WHERE, ...JSON_ANSWER },
    failure: 'no session matches',
    run: async (args, io) => {
      const words = args.positionals.join(' ');
      if (words !== '')
        throw new Stop(EXIT.wrongUse, 'list takes no words', `ohmward records find ${words}`);
      return listRecords(args, io);
    },
  },
  find: {
    summary: 'find sessions by words and by what is known about them, misspellings included',
    usage: 'records find [WORDS...] [options]',
    examples: [
      'ohmward records find --plate "QX 47" cold start',
      'ohmward records find --code P03 --verdict not-cured',
      'ohmward records find --shared --plate "QX 47"',
    ],
    options: { ...FINDING, ...WHERE, ...JSON_ANSWER },
    failure: 'no session matches',
    run: listRecords,
  },
  show: {
    summary: "a session's full record, a drill's debrief, or the drills of a class",
    usage: 'records show SESSION [options]',
    examples: [
      'ohmward records show last',
      'ohmward records show 20260304T083000Z-bay-3-00000001',
      'ohmward records show --class FOLDER --html results.html',
    ],
    options: {
      class: { type: 'string', value: 'FOLDER', help: "all students' drills in a folder" },
      assignment: { type: 'string', value: 'FILE', help: 'with --class, against what was set' },
      csv: { type: 'boolean', help: 'with --class, CSV instead of the table' },
      html: { type: 'string', value: 'FILE', help: 'with --class, write a page with pictures' },
      ...WHERE,
      ...JSON_ANSWER,
    },
    failure: 'there is no such session, it cannot be read, or a drill of the class was altered',
    run: showRecord,
  },
  export: {
    summary: 'a session for the customer, the shop or a class',
    usage: 'records export SESSION [options]',
    examples: [
      'ohmward records export last --as pdf --for customer --output report.pdf',
      'ohmward records export last --as csv --bom --output readings.csv',
      'ohmward records export last --for class',
    ],
    options: {
      as: { type: 'string', value: 'FORM', help: `${FORMS.join(', ')}; markdown when left out` },
      for: {
        type: 'string',
        value: 'READER',
        help: 'shop (everything), customer (plain words, lines to sign), class (no personal data)',
      },
      bom: {
        type: 'boolean',
        help: 'with --as csv, begin with a byte order mark, which some spreadsheet programs need',
      },
      ...OUTPUT,
      ...WHERE,
      json: { type: 'boolean', help: 'the same as --as json' },
    },
    failure: 'there is no such session, or the file cannot be written',
    run: exportOne,
  },
  verify: {
    summary: 'check that sessions and drills are as the program wrote them',
    usage: 'records verify SESSION... [options]',
    examples: [
      'ohmward records verify last',
      'ohmward records verify SESSION --head 64-DIGITS-FROM-A-REPORT',
    ],
    options: {
      head: { type: 'string', value: 'HASH', help: 'the head printed on a report' },
      ...WHERE,
      ...JSON_ANSWER,
    },
    failure: 'one of them was changed',
    run: verifyRecords,
  },
  compare: {
    summary: 'two sessions side by side, or one before and after its repair',
    usage: 'records compare SESSION [SESSION] [options]',
    examples: [
      'ohmward records compare BEFORE AFTER',
      'ohmward records compare last --as html --output before-and-after.html',
    ],
    options: {
      as: {
        type: 'string',
        value: 'FORM',
        help: `${COMPARE_FORMS.join(', ')}; markdown when left out`,
      },
      ...OUTPUT,
      ...WHERE,
    },
    failure: 'there is no such session, or nothing was tested after the repair',
    run: compare,
  },
  keep: {
    summary: 'keep the captures after a repair as known-good ones, for vehicles like this',
    usage: 'records keep SESSION [options]',
    examples: ['ohmward records keep last', 'ohmward records keep 20260304T083000Z-bay-3-00000001'],
    options: { folder: WHERE['folder']!, ...JSON_ANSWER },
    failure: 'there is no such session, or there is nothing to keep',
    run: async (args, io) => (await import('./keep-captures.ts')).keepCaptures(args, io),
  },
  share: {
    summary: 'send sessions to the shared database of the shop',
    usage: 'records share [SESSION...] [options]',
    examples: [
      'ohmward records share         what is not there yet',
      'ohmward records share last    this one',
    ],
    options: {
      folder: { type: 'string', value: 'FOLDER', help: 'look for sessions here' },
      ...JSON_ANSWER,
    },
    failure: 'something is different there, cannot be read here, or has to wait',
    run: async (args, io) => (await import('./share-records.ts')).shareRecords(args, io),
  },
};

async function exportOne(args: Arguments, io: Io): Promise<number> {
  const form = optionChoice(args, 'as', FORMS, args.values['json'] === true ? 'json' : 'markdown');
  const audience = optionChoice(args, 'for', AUDIENCES, 'shop');
  const name = oneSession(args, 'export');
  if (form === 'pdf' && optionText(args, 'output') === undefined)
    throw new Stop(EXIT.wrongUse, 'a PDF needs a file', 'add --output report.pdf');
  const { record: plain, session } = await readNamed(name, args, io);
  const prices = await pricesOf(session, plain, io);
  const record = { ...withDebrief(plain, debriefFrom(session)), ...prices };
  deliver(exportRecord(record, form, audience, { bom: args.values['bom'] === true }), args, io);
  if (audience === 'class')
    io.err(
      'Read it before you hand it out: only a reader can spot nicknames and misspelled names.\n',
    );
  return EXIT.done;
}

/** The price lines of a session that has come to a conclusion, where the shop has set its rates. */
async function pricesOf(
  session: Session,
  record: SessionRecord,
  io: Io,
): Promise<Pick<SessionRecord, 'prices'>> {
  if (!session.concluded || session.opened.vehicle.kind !== 'real') return {};
  const opened = await openSettings(io.env);
  const rates = 'problem' in opened ? null : readRates(opened.store.values.rates);
  const prices = callPrices(
    callMinutes(session, record),
    rates && 'fix' in rates ? null : rates,
    record,
  );
  return prices.length > 0 ? { prices } : {};
}
