/** Where a record comes from stands on every page of every paper, for every reader. */
import { describe, expect, it } from 'vitest';
import { exportRecord } from '../../src/records/export-record.ts';
import { AUDIENCES } from '../../src/records/record-for.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { HANDS, type Hand, type SessionVehicle } from '../../src/session/events.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { fileOf, finishedWalk } from './sample-session.ts';

const WORDS: Readonly<Record<Hand, { words: string; warning: RegExp | null }>> = {
  person: { words: 'answers from a person', warning: null },
  'answers-file': { words: 'answers from a file of answers', warning: /come from a file, not/ },
  program: { words: 'answers from a program', warning: /were given by a program/ },
  pipe: { words: 'answers from a pipe', warning: /came through a pipe/ },
  'not-stated': { words: 'answers from an unstated source', warning: /did not record who/ },
};

function recordBy(by: Hand, vehicle: SessionVehicle = { kind: 'real' }) {
  const walk = finishedWalk({ by, vehicle });
  return recordOf(walk.session, fileOf(walk).head);
}

describe.each(HANDS)('answers from: %s', (by) => {
  const { words, warning } = WORDS[by];
  const record = recordBy(by);
  const origin = `a real vehicle, as stated; ${words}`;

  it('is told in the record', () => {
    expect(record).toMatchObject({ vehicle: 'real', by: [by], origin });
  });

  it.each(AUDIENCES)(
    'for the %s: in every form, and at the top where no person gave them',
    (reader) => {
      for (const form of ['markdown', 'html', 'csv', 'json'] as const) {
        const text = exportRecord(record, form, reader);
        expect(text).toContain(origin);
        if (form === 'markdown' || form === 'html') {
          if (warning) expect(text).toMatch(warning);
          else expect(text).not.toMatch(/Answers in this record/);
        }
      }
    },
  );

  it('at the foot of each page of a PDF', () => {
    const { pages } = readPdfStrictly(exportRecord(record, 'pdf', 'shop'));
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages)
      expect([...page.columns.values()].join(' ').replace(/\s/g, '')).toContain(
        `From${origin}`.replace(/\s/g, ''),
      );
  });

  it('and nobody but a person at a terminal is said to have examined the vehicle', () => {
    const text = exportRecord(record, 'markdown', 'customer');
    expect(text.includes('**Examined by:** Ilvy Tarrant')).toBe(by === 'person');
    expect(text.includes('**Person named:** Ilvy Tarrant')).toBe(by !== 'person');
  });
});

it('a simulated vehicle and a file are both told', () => {
  const record = recordBy('answers-file', { kind: 'bench', fault: 'wire.feed.open', seed: 1 });
  const text = exportRecord(record, 'markdown', 'customer');
  expect(text).toContain('Practice: these readings come from a simulated vehicle');
  expect(text).toContain('Answers in this record come from a file');
});
