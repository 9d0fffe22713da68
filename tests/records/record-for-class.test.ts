import { describe, expect, it } from 'vitest';
import { exportRecord, FORMS } from '../../src/records/export-record.ts';
import { maskPersonal } from '../../src/records/mask-personal.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { fullWalk } from './full-walk.ts';
import { readHtmlStrictly } from './readers/read-html-strictly.ts';
import { fileOf, finishedWalk } from './sample-session.ts';

/** What must be gone, each with the spellings people use for it. */
const CANARIES: Readonly<Record<string, readonly string[]>> = {
  person: ['Ilvy Tarrant', 'ilvy', 'TARRANT'],
  shop: ['Workshop Quern & Daughters', 'Quern'],
  customer: ['Odalys Brennvik', 'Brennvik', 'odalys'],
  plate: ['QX 47 ZUM', 'QX47ZUM', 'qx-47-zum', 'QX·47·ZUM'],
  vin: ['1ZZTESTSXAA000702', '1ZZTE STSXA A0007 02', '1zztestsxaa000702'],
  order: ['A-20441', 'A20441', 'a 20441'],
  odometer: ['84 500 km', '84500 km'],
  mail: ['odalys.b@post.example', 'someone@firm.example'],
  telephone: ['+44 20 7946 0018', '0207 946 0018', '(020) 7946-0018', '02079460018'],
  'another VIN': ['ZZ9ZZZ1JZXW000001'],
};
const ALL = Object.values(CANARIES).flat();

describe('a copy for a class', () => {
  const walk = fullWalk((field) => {
    const known: Readonly<Record<string, string>> = {
      person: 'Ilvy Tarrant',
      shop: 'Workshop Quern & Daughters',
      customer: 'Odalys Brennvik',
      plate: 'QX 47 ZUM',
      vin: '1ZZTESTSXAA000702',
      order: 'A-20441',
      odometer: '84 500 km',
    };
    return known[field] ?? `${field}: ${ALL.join('; ')}.`;
  });
  const record = recordOf(walk.session, fileOf(walk).head);

  it.each(FORMS)('holds no canary as %s, whatever field it was planted in', (form) => {
    const words = (text: string) =>
      form === 'html'
        ? readHtmlStrictly(text)
            .map((one) => one.text)
            .join(' ')
        : text;
    const whole = words(exportRecord(record, form, 'shop'));
    const copy = words(exportRecord(record, form, 'class'));
    const flat = (text: string) =>
      text
        .normalize('NFKC')
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]/gu, '');
    for (const canary of ALL) {
      if (form !== 'pdf') expect(flat(whole), canary).toContain(flat(canary));
      expect(flat(copy), canary).not.toContain(flat(canary));
    }
    // In a PDF the words stand as hexadecimal codes.
    const hex = (text: string) => Buffer.from(text, 'latin1').toString('hex').toUpperCase();
    if (form === 'pdf') {
      for (const name of [
        'Ilvy',
        'Tarrant',
        'Quern',
        'Odalys',
        'Brennvik',
        '1ZZTESTSXAA000702',
        '20441',
      ]) {
        expect(whole, name).toContain(hex(name));
        expect(copy, name).not.toContain(hex(name));
      }
    }
  });

  it('holds no wall-clock time', () => {
    for (const form of ['markdown', 'html', 'csv', 'json'] as const) {
      expect(exportRecord(record, form, 'shop')).toMatch(/2026-03[\s\S]*08:3\d/);
      expect(exportRecord(record, form, 'class')).not.toMatch(/2026-03|08:3\d/);
    }
  });

  it('leaves the diagnosis as it was', () => {
    const plain = finishedWalk();
    const whole = recordOf(plain.session, fileOf(plain).head);
    const copy = recordForClass(whole);
    expect(copy.complaint).toBe(whole.complaint);
    expect(copy.cause).toBe(whole.cause);
    expect(copy.lines.map(({ found, verdict, where }) => [found, verdict, where])).toEqual(
      whole.lines.map(({ found, verdict, where }) => [found, verdict, where]),
    );
    expect(copy.retest.rows.map(({ after }) => after)).toEqual(['4.99 V', 'the light is bright']);
  });

  it('keeps only what is on the list: a field that nobody allowed stays away', () => {
    const more = { ...record, telephone: 'CANARY', job: { ...record.job, mail: 'CANARY' } };
    expect(JSON.stringify(recordForClass(more))).not.toContain('CANARY');
  });
});

it('does not take readings and terms for personal data', () => {
  const plain = finishedWalk();
  const mask = maskPersonal(recordOf(plain.session, fileOf(plain).head));
  const texts = [
    '4.97 V to 5.25 V, 10.2 kΩ, 12.6 V',
    'P0335 stored at 1,800 rpm after 84 minutes',
    'The tarragon was not the cause',
    'sensor feed, pin 1 (RD/BU) to battery negative',
    '60-2 wheel, 720 degrees, 0.5 mm², 3 m',
  ];
  for (const text of texts) expect(mask(text)).toBe(text);
});

it('a name with marks or in another script is found', () => {
  const walk = finishedWalk({
    person: 'Þóra Ólafsdóttir',
  });
  const record = recordOf(walk.session, fileOf(walk).head);
  const greek = { ...record, job: { ...record.job, customer: 'Ελένη Παππά' } };
  const mask = maskPersonal(greek);
  expect(mask('ask þóra')).toBe('ask [removed]');
  expect(mask('η Ελένη λέει')).toBe('η [removed] λέει');
  expect(mask('O\u0301lafsdo\u0301ttir')).toBe('[removed]');
});
