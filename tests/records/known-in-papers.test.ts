/** What was known of the car, and from where, stands in the shop's papers and not in the customer's. */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { memoryDisk } from '../../src/log/memory-disk.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { verifySession } from '../../src/records/verify-session.ts';
import type { Command } from '../../src/session/command.ts';
import { readSaid } from '../../src/session/read-known.ts';
import { CIRCUIT, fileOf } from './sample-session.ts';
import { trueWalk } from './true-walk.ts';

function said(what: string, is: string, from: string) {
  const read = readSaid(CIRCUIT, { what, is, from });
  if (!('quantity' in read)) throw new Error(read.words);
  return read;
}

function sets(what: string, is: string, from: string): Command {
  return { type: 'set-value', ...said(what, is, from) };
}

const EIGHT = sets('module.feed.volts', '8 V +/- 3 %', 'label on the lid of Odalys Brennvik');
const WALK = trueWalk({ known: [said('battery at rest', '12.6 V', 'maker')] }, [
  EIGHT,
  sets('battery at rest', '12.4 V', 'measured'),
  sets('pull-up', '1 kohm', 'other: heard'),
  { type: 'go-back' },
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '7.98 V', value: 7.98 },
  { type: 'choose-outcome', outcome: 'weak', look: 'dim' },
  { type: 'conclude' },
]);
const RECORD = recordOf(WALK.session, fileOf(WALK).head);

describe('what was known of the car', () => {
  it('is in the record with its source, set aside or not', () => {
    expect(
      RECORD.known.map(({ words, is, from, of, standing }) => [words, is, from, of, standing]),
    ).toEqual([
      ['battery at rest', '12.3 to 12.9 V', "the maker's value", 'job sheet', 'said anew'],
      [
        "voltage of the module's feed",
        '7.76 to 8.24 V',
        'from a label: on the lid of Odalys Brennvik',
        'session',
        'standing',
      ],
      ['battery at rest', '12.2 to 12.6 V', 'measured', 'session', 'standing'],
      [
        "pull-up of the module's signal input",
        '0.98 to 1.02 kΩ',
        'known otherwise: heard',
        'session',
        'taken back',
      ],
    ]);
  });

  it('moves what the record says is good, with the judgement beside it', () => {
    const [line] = RECORD.lines;
    expect(line).toMatchObject({ found: '7.98 V', verdict: 'good' });
    expect(line?.expectedRange?.low).toBeGreaterThan(7);
  });

  it('is in the shop papers and left out of the customer papers', () => {
    for (const form of ['markdown', 'html'] as const) {
      const shop = exportRecord(RECORD, form, 'shop');
      for (const words of [
        'Known about this car',
        '7.76 to 8.24 V',
        'on the job sheet',
        'taken back',
      ])
        expect(shop).toContain(words);
      const customer = exportRecord(RECORD, form, 'customer');
      for (const words of ['Known about this car', 'said anew', 'heard'])
        expect(customer).not.toContain(words);
    }
  });

  it('is shown to a class without names and times', () => {
    const shown = recordForClass(RECORD).known;
    expect(shown.map(({ at }) => at)).toEqual(['', '', '', '']);
    expect(shown[1]?.from).toMatch(/^from a label: on the lid of/);
    expect(JSON.stringify(shown)).not.toContain('Brennvik');
  });

  it('has the published form, and the file verifies', () => {
    const schema: object = JSON.parse(readFileSync('docs/schema/record.schema.json', 'utf8'));
    const fits = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(fits(JSON.parse(exportRecord(RECORD, 'json', 'shop')))).toBe(true);
    const { text, head } = fileOf(WALK);
    const disk = memoryDisk();
    const file = disk.openNew('/known.jsonl');
    disk.write(file, Buffer.from(text));
    disk.close(file);
    const { genuine, checks } = verifySession(disk, '/known.jsonl', head);
    expect(genuine, JSON.stringify(checks)).toBe(true);
  });
});
