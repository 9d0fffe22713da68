/** `ohmward records`: the shop's side of what was done. */

import { exportRecord, FORMS } from '../records/export-record.ts';
import { AUDIENCES } from '../records/report.ts';
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import { type Arguments, type Command, EXIT, type Io, textOf } from './command.ts';
import { compare, verifyRecords } from './records/check-records.ts';
import { listRecords } from './records/list-records.ts';
import { choiceOf, deliver, oneOf, readNamed, Stop } from './records/shelf.ts';
import { showRecord } from './records/show-record.ts';

type Verb = (names: readonly string[], args: Arguments, io: Io) => Promise<number>;

const VERBS: Readonly<Record<string, Verb>> = {
  list: (names, args, io) => {
    if (names.length > 0)
      throw new Stop(
        EXIT.wrongUse,
        'list takes no words',
        `ohmward records find ${names.join(' ')}`,
      );
    return listRecords([], args, io);
  },
  find: listRecords,
  show: showRecord,
  export: exportOne,
  verify: (names, args, io) => {
    if (names.length === 0)
      throw new Stop(EXIT.wrongUse, 'verify what?', 'ohmward records verify SESSION');
    return verifyRecords(names, args, io);
  },
  compare,
  share: async (names, args, io) => {
    if (args.values['shared'] === true)
      throw new Stop(EXIT.wrongUse, 'share sends, --shared looks', 'leave --shared out');
    const { shareRecords } = await import('./records/share-records.ts');
    return shareRecords(names, args, io);
  },
};

export const command: Command = {
  name: 'records',
  summary: 'finished sessions and drills: list, find, show, export, verify, compare, share',
  usage: 'records list|find|show|export|verify|compare|share [SESSION or words] [options]',
  examples: [
    'ohmward records list --since 2026-03',
    'ohmward records find --plate "QX 47" cold start',
    'ohmward records show last',
    'ohmward records show --class FOLDER --html results.html',
    'ohmward records export last --as pdf --for customer --output report.pdf',
    'ohmward records verify SESSION --head 64-DIGITS-FROM-A-REPORT',
    'ohmward records compare BEFORE AFTER',
    'ohmward records share',
    'ohmward records find --shared --plate "QX 47"',
  ],
  options: {
    as: {
      type: 'string',
      value: 'FORM',
      help: `export, compare: ${FORMS.join(', ')}; markdown when left out`,
    },
    for: {
      type: 'string',
      value: 'READER',
      help: 'export: shop (everything), customer (plain words, lines to sign), class (no personal data)',
    },
    output: {
      type: 'string',
      short: 'o',
      value: 'FILE',
      help: 'export, compare: write to this file; - is standard output',
    },
    force: { type: 'boolean', short: 'f', help: 'replace the file if it is there' },
    bom: {
      type: 'boolean',
      help: 'export --as csv: begin with the mark some spreadsheet programs want',
    },
    class: { type: 'string', value: 'FOLDER', help: "show: all students' drills in a folder" },
    assignment: { type: 'string', value: 'FILE', help: 'show --class: against what was set' },
    csv: { type: 'boolean', help: 'show --class: CSV instead of the table' },
    html: { type: 'string', value: 'FILE', help: 'show --class: write a page with pictures' },
    head: { type: 'string', value: 'HASH', help: 'verify: the head printed on a report' },
    folder: { type: 'string', value: 'FOLDER', help: 'look for sessions here' },
    shared: { type: 'boolean', help: 'look in the shared database of all carts' },
    json: { type: 'boolean', help: 'answer as JSON' },
    limit: { type: 'string', value: 'N', help: 'list, find: so many at most; 50 when left out' },
    plate: { type: 'string', value: 'TEXT', help: 'find: part of the plate, however it is spaced' },
    vin: { type: 'string', value: 'TEXT', help: 'find: part of the identification number' },
    order: { type: 'string', value: 'TEXT', help: 'find: part of the order number' },
    code: { type: 'string', value: 'CODE', help: 'find: a trouble code, or its beginning' },
    conclusion: { type: 'string', value: 'TEXT', help: 'find: words of the conclusion' },
    person: { type: 'string', value: 'NAME', help: 'find: who did it' },
    customer: { type: 'string', value: 'NAME', help: 'find: whose vehicle it is' },
    status: {
      type: 'string',
      value: 'WORD',
      help: 'find: open, paused, concluded, closed, damaged, unreadable',
    },
    verdict: { type: 'string', value: 'WORD', help: 'find: cured, not-cured, changed, no-retest' },
    since: {
      type: 'string',
      value: 'DAY',
      help: 'find: from this day on, like 2026-03-04 or 2026-03',
    },
    until: { type: 'string', value: 'DAY', help: 'find: up to this day' },
  },
  run: async (args, io) => {
    const [word = 'list', ...names] = args.positionals;
    try {
      const verb = Object.hasOwn(VERBS, word) ? VERBS[word] : undefined;
      if (!verb) {
        const near = nearestName(word, Object.keys(VERBS));
        const fix = near ? `did you mean "${near}"?` : `one of: ${Object.keys(VERBS).join(', ')}`;
        throw new Stop(EXIT.wrongUse, `records cannot "${word}"`, fix);
      }
      return await verb(names, args, io);
    } catch (error) {
      if (!(error instanceof Stop)) throw error;
      io.err(`ohmward: ${safeText(error.message, { lines: true })}\n`);
      return error.exit;
    }
  },
};

async function exportOne(names: readonly string[], args: Arguments, io: Io): Promise<number> {
  const form = choiceOf(args, 'as', FORMS, args.values['json'] === true ? 'json' : 'markdown');
  const audience = choiceOf(args, 'for', AUDIENCES, 'shop');
  const name = oneOf(names, 'export');
  if (form === 'pdf' && textOf(args, 'output') === undefined)
    throw new Stop(EXIT.wrongUse, 'a PDF needs a file', 'add --output report.pdf');
  const { record } = await readNamed(name, args, io);
  deliver(exportRecord(record, form, audience, { bom: args.values['bom'] === true }), args, io);
  if (audience === 'class')
    io.err(
      'Read it before you hand it out: nicknames and misspelled names can only be found by a reader.\n',
    );
  return EXIT.done;
}
