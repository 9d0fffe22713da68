/** A test that no step asked for is in every paper, wherever in a session it was made. */
import { describe, expect, it } from 'vitest';
import { exportRecord, FORMS, type PaperForm } from '../../src/records/export-record.ts';
import { AUDIENCES } from '../../src/records/record-for.ts';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import { readHtmlStrictly } from './readers/read-html-strictly.ts';
import { readMarkdownStrictly } from './readers/read-markdown-strictly.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { drillWalk } from './sample-drill.ts';
import { begin, fileOf, freeWalk, signalAt, type Walk, weighed } from './sample-session.ts';

/** What a reader of the form finds, without blanks. */
const READERS: Readonly<Record<PaperForm, (text: string) => string>> = {
  markdown: (text) => readMarkdownStrictly(text).join(' '),
  html: (text) =>
    readHtmlStrictly(text)
      .map((one) => one.text)
      .join(' '),
  pdf: (text) =>
    readPdfStrictly(text)
      .pages.flatMap((page) => [...page.columns.values()])
      .join(' '),
  csv: (text) => text,
  json: (text) => text,
};

const OWN = signalAt(3.217);
const FEED: readonly Command[] = [
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '0', value: 0 },
];
const WALKS: Readonly<Record<string, Walk>> = {
  'while the procedure asks for something else': begin().do(OWN),
  'and an answer came after it': begin().do(OWN, ...FEED),
  'at the conclusion, as evidence of it': begin().do(...FEED, OWN, {
    type: 'conclude',
    weighed: weighed(3, 4),
  }),
  'at the conclusion, beside the evidence': begin().do(...FEED, OWN, {
    type: 'conclude',
    weighed: weighed(3),
  }),
  'after the repair': begin().do(...FEED, { type: 'conclude', weighed: weighed(3) }, OWN),
  'after the repair and the tests that must pass': begin().do(
    ...FEED,
    { type: 'conclude', weighed: weighed(3) },
    { type: 'acknowledge-cautions', step: 'feed' },
    { type: 'record-retest', step: 'feed', typed: '5', value: 5, look: null, outcome: 'good' },
    OWN,
    { type: 'close', verdict: 'no-retest' },
  ),
  'in free order': begin({ procedure: null }).do(OWN),
  'in free order, after the repair': freeWalk().do(OWN),
  'in free order without a circuit': begin({ procedure: null, circuit: null }).do(OWN),
};

it('one that was made already says when, and what the person says of it', () => {
  const walk = begin().do({ ...OWN, made: '14:05', note: 'at the bench' } as Command);
  const record = recordOf(walk.session, fileOf(walk).head);
  for (const form of FORMS) {
    const shop = READERS[form](exportRecord(record, form, 'shop')).replace(/\s/g, '');
    expect(shop).toContain('14:05');
    expect(shop).toContain('atthebench');
  }
});

it.each(['markdown', 'html', 'pdf'] as const)('has its number before its time as %s', (form) => {
  const walk = begin().do(OWN);
  const record = recordOf(walk.session, fileOf(walk).head);
  const shop = READERS[form](exportRecord(record, form, 'shop')).replace(/\s/g, '');
  expect(shop).toMatch(/(?:Judgement|time)1·?08:30:20/);
});

describe.each(Object.entries(WALKS))('%s', (_, walk) => {
  const record = recordOf(walk.session, fileOf(walk).head);

  it.each(AUDIENCES.flatMap((audience) => FORMS.map((form) => [audience, form] as const)))(
    'for the %s as %s',
    (audience, form) => {
      const read = READERS[form](exportRecord(record, form, audience)).replace(/\s/g, '');
      expect(read).toContain('3.217V');
    },
  );
});

it.each(AUDIENCES.flatMap((audience) => FORMS.map((form) => [audience, form] as const)))(
  'and where it all comes from, for the %s as %s',
  (audience, form) => {
    const walk = drillWalk();
    const text = exportRecord(recordOf(walk.session, fileOf(walk).head), form, audience);
    const read = READERS[form](text).replace(/\s/g, '');
    expect(read).toContain('adrillonasimulatedvehicle;answersfromaperson');
  },
);
