/** The picture of the wiring: readings at their places, the fault marked, after beside before, in HTML and PDF. */
import { beforeAll, describe, expect, it } from 'vitest';
import { drawnWires } from '../../src/circuit/draw-circuit.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { plainSentence } from '../../src/records/plain-sentence.ts';
import type {
  PictureFault,
  PictureReading,
  RecordLine,
  RecordPicture,
  SessionRecord,
} from '../../src/records/record-form.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { wiringShapes } from '../../src/records/wiring-shapes.ts';
import { presentConclusion } from '../../src/session/session.ts';
import { LIBRARY } from '../proof/library.ts';
import { after, type Shop, shopFor, walkOn } from '../session/walk-library.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { overlaps } from './wiring-overlaps.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

/** The record of a walk to its conclusion, with an open signal wire, and what was read again after the repair. */
function recordWith(fault: string, again: readonly number[] = []): SessionRecord {
  const walked = walkOn(shop, shop.begun, fault);
  const weighed = shop.advisor.weigh(walked, presentConclusion(walked)!.faults);
  let session = after(walked, { type: 'conclude', weighed });
  for (const value of again) {
    session = after(session, { type: 'acknowledge-cautions' });
    session = after(session, {
      type: 'record-retest',
      step: 'level/at-plug',
      typed: `${value} V`,
      value,
    } as never);
  }
  return recordOf(session, { seq: 1, hash: 'a'.repeat(64) });
}

describe('the picture of an open signal wire', () => {
  it('has the fault along that wire, and each reading where its red lead was', () => {
    const { picture, conclusion, lines } = recordWith('wire.signal.open');
    const signal = picture!.wires.findIndex(({ words }) => words === 'signal wire');
    expect(picture!.faults).toEqual([
      expect.objectContaining({ wire: signal, at: 'along', touches: null }),
    ]);
    expect(picture!.readings.map(({ reading }) => reading).sort()).toEqual(
      conclusion!.evidence.map(({ reading }) => reading).sort(),
    );
    const placed = new Map(picture!.readings.map((one) => [one.reading, one]));
    // From end to end of the wire, and at the sensor's plug.
    const along = lines.find(({ step }) => step === 'far-end/along')!;
    expect(placed.get(along.event)).toMatchObject({ wire: signal, at: 'along' });
    const plug = lines.find(({ step }) => step === 'level/at-plug')!;
    expect(placed.get(plug.event)).toMatchObject({ wire: signal, at: 'right' });
  });

  it('is drawn on the PDF as well: a stroke for each of its lines, and every text', () => {
    const record = recordWith('wire.signal.open');
    const strokes = (pdf: string) => pdf.match(/ l S Q$/gm)?.length ?? 0;
    const pdf = exportRecord(record, 'pdf', 'customer');
    const without = exportRecord({ ...record, picture: null }, 'pdf', 'customer');
    const [svg] = /<svg .*<\/svg>/.exec(exportRecord(record, 'html', 'customer'))!;
    expect(strokes(pdf) - strokes(without)).toBe(svg.match(/<line /g)!.length);
    const texts = [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text);
    const onPages = readPdfStrictly(pdf).pages.flatMap(({ lines }) =>
      lines.map(({ text }) => text),
    );
    expect(texts.length).toBeGreaterThan(5);
    expect(onPages).toEqual(expect.arrayContaining(texts));
  });

  it('stands first under what was found, in HTML as lines and texts', () => {
    const record = recordWith('wire.signal.open');
    const html = exportRecord(record, 'html', 'customer');
    const [, found] = html.split('<h2>What we found</h2>');
    expect(found!.trimStart()).toMatch(/^<svg [^>]*aria-label="What was read, and where"/);
    expect(found).toContain('FAULT HERE');
    for (const [at, { found: value }] of record.conclusion!.evidence.entries())
      expect(found).toContain(`(${at + 1}) ${value}`);
    // No colour carries anything: a grey print says the same.
    const [svg] = /<svg .*<\/svg>/.exec(found!)!;
    expect([...svg.matchAll(/(?:stroke|fill)="([^"]*)"/g)].map(([, colour]) => colour)).toEqual(
      expect.arrayContaining(['currentColor']),
    );
    expect(svg).not.toMatch(/#[0-9a-f]{3}|rgb/i);
  });

  it('says beside each reading what the meter may be off, and what it says', () => {
    const text = exportRecord(recordWith('wire.signal.open'), 'markdown', 'customer');
    expect(text).toMatch(/\| No\. \| Test \| Should be \| Found \| What it says \|/);
    expect(text).toMatch(/meter: ± [\d.]+ mV/);
    expect(text).toContain('Less voltage than there should be.');
  });
});

describe('what was read again after the repair', () => {
  it('stands beside what was read before', () => {
    const { picture } = recordWith('wire.signal.open');
    const [reading] = picture!.readings;
    const shown = { number: 1, reading: reading!.reading, test: 'Level', expected: '4.7 to 5.1 V' };
    const { shapes } = wiringShapes(
      picture!,
      [{ ...shown, found: '0.1 mV', after: '4.93 V' }],
      true,
    );
    const texts = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(texts).toContain('(1) 0.1 mV');
    expect(texts).toContain('after the repair: 4.93 V');
    expect(texts).toContain('FAULT HERE');
    // The mark stands out from what was read.
    const bold = shapes.flatMap((one) => (one.kind === 'text' && one.bold ? [one.text] : []));
    expect(bold).toContain('FAULT HERE');
    expect(bold).not.toContain('after the repair: 4.93 V');
  });
});

describe('a sentence says what was read', () => {
  const line = (part: Partial<RecordLine>) =>
    ({ verdict: null, reading: null, found: '', outcome: '', setup: '', ...part }) as RecordLine;
  const volts = { typed: '', value: 0, overLimit: false, unit: 'V' } as const;
  it.each([
    [line({ verdict: 'low', reading: volts }), 'Less voltage than there should be.'],
    [
      line({ verdict: 'good', reading: volts }),
      'The voltage is in the range that it should be in.',
    ],
    [
      line({ verdict: 'high', reading: { ...volts, unit: 'ohm', value: null, overLimit: true } }),
      'No current gets through.',
    ],
    [line({ verdict: 'borderline', reading: volts }), 'Too close to the limit to tell.'],
    [
      line({ verdict: 'not as expected', found: 'the light stays off' }),
      'No current comes through. That is not as it should be.',
    ],
    [
      line({
        verdict: 'not as expected',
        found: 'shifted from the known-good one, 18.0 degrees late',
      }),
      'The signal is in the wrong position. That is not as it should be.',
    ],
    [line({ outcome: 'the wire carries', found: '0.2 Ω' }), 'The wire carries.'],
    [line({ outcome: 'dry', found: 'dry' }), ''],
    [
      line({
        family: 'wiggle',
        outcome: 'it drops out at the plug',
        found: 'it drops out at the plug',
      }),
      'This is what showed while the harness and its connectors were wiggled.',
    ],
    // by hand, at no step: nothing is expected of a value that is watched
    [
      line({ setup: 'engine running; harness moved', found: '0.2 V', reading: volts }),
      'This is what showed while the harness and its connectors were wiggled.',
    ],
    [
      line({ family: 'wiggle', verdict: 'low', reading: volts }),
      'Less voltage than there should be.',
    ],
  ])('%#', (one, sentence) => {
    expect(plainSentence(one)).toBe(sentence);
  });
});

describe.each([...LIBRARY.circuits.keys()])('%s', (name) => {
  it('is drawn without words over words, whatever was read and named', () => {
    const circuit = LIBRARY.circuits.get(name)!;
    const drawn = drawnWires(circuit);
    const places = [
      ...drawn.flatMap((_, wire) =>
        (['left', 'along', 'right'] as const).map((at) => ({ wire, at })),
      ),
      { wire: null, at: 'left' },
      { wire: null, at: 'right' },
      { wire: null, at: 'elsewhere' },
    ] as const;
    const base = {
      left: circuit.parts.find(({ kind }) => kind === 'module')!.words,
      right: 'left front wheel speed sensor',
      wires: drawn.map(({ wire, there, left, right }) => ({
        words: `${wire.name} wire`,
        left,
        right,
        module: there.startsWith('module.'),
      })),
    };
    for (const marked of places) {
      const words = 'the two wires of the crankshaft position sensor are swapped';
      const faults: PictureFault[] = [{ ...marked, words, touches: null }];
      const readings = places.flatMap((place, at): PictureReading[] => [
        { ...place, reading: 2 * at + 1, against: 'signal 2' },
        { ...place, reading: 2 * at + 2, against: '' },
      ]);
      const picture: RecordPicture = { ...base, readings, faults };
      const shown = readings.map(({ reading }) => ({
        number: reading,
        reading,
        test: 'Supply voltage',
        found: reading % 2 === 0 ? 'shifted from the known-good one' : '4.91 V',
        expected: '0.0735 to 3.02 V',
        after: '4.93 V',
      }));
      for (const proven of [true, false])
        expect(overlaps(wiringShapes(picture, shown, proven).shapes)).toEqual([]);
    }
  });
});
