import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import { gaugePlaces, gaugeSvg } from '../../src/records/gauge.ts';
import { escapeHtml, html, htmlOf } from '../../src/records/html.ts';
import type { Audience } from '../../src/records/record-for.ts';
import { reportOf } from '../../src/records/report.ts';
import { dateWords, durationWords, timeWords } from '../../src/records/report-words.ts';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import type { StepCapture } from '../../src/session/events.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { captureWith } from './sample-capture.ts';
import {
  begin,
  fileOf,
  finishedWalk,
  freeWalk,
  PROCEDURE,
  SAID,
  signalAt,
  type Walk,
  weighed,
} from './sample-session.ts';

/** Headings, and all words of the report. */
function read(walk: Walk, audience: Audience) {
  const report = reportOf(recordOf(walk.session, fileOf(walk).head), audience);
  return {
    warnings: report.warnings,
    headings: report.sections.map(({ heading }) => heading),
    words: JSON.stringify(report.sections),
  };
}

const concluded = begin().do(
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '0', value: 0 },
  { type: 'conclude', weighed: weighed(3) },
);

it.each([
  ['a red van', 'AB 12', '2031-05-06T09:00:00Z', 'a red van, 2031-05-06 09:00 (UTC)'],
  ['', 'AB 12', '2031-05-06T09:00:00Z', 'AB 12, 2031-05-06 09:00 (UTC)'],
  ['', '', '2031-05-06T09:00:00Z', `${PROCEDURE.title}, 2031-05-06 09:00 (UTC)`],
  ['a red van', '', '', 'a red van'],
])('the line below the title has the vehicle %j, the plate %j and the time %j', (...said) => {
  const [words, plate, startedAt, line] = said;
  const record = recordOf(concluded.session, fileOf(concluded).head);
  const vehicle = { ...record.job.vehicle, words, plate };
  const told = { ...record, startedAt, job: { ...record.job, vehicle } };
  expect(reportOf(told, 'shop').subtitle.join(', ')).toBe(line);
});

describe('for the customer', () => {
  it('a concluded session asks for the decision, with lines to sign and no price', () => {
    const { headings, words } = read(concluded, 'customer');
    expect(headings).toEqual([
      'Your vehicle',
      'What you told us',
      'What we found',
      'How we know',
      'What is not needed',
      'What was not ruled out',
      'What needs doing',
      'Your decision',
      'About this report',
    ]);
    expect(words).toContain('I authorise the work as described above.');
    expect(words).toContain('"Signature"');
    expect(words).toContain('A wire between the control unit and the sensor is broken.');
    expect(words).not.toMatch(/[€$£]|price/i);
  });

  it('a repaired one shows before and after and asks nothing any more', () => {
    const { headings, words } = read(finishedWalk(), 'customer');
    expect(headings).toContain('After the repair');
    expect(headings).not.toContain('Your decision');
    expect(words).toContain('The tests were repeated after the repair and passed.');
    expect(words).toContain('The last word is that the code stays away.');
    expect(read(finishedWalk(), 'shop').words).toContain('Clear the trouble codes and drive');
  });

  it('of a test made twice after the repair only the last is shown, and the decision is past', () => {
    const again = (value: number, outcome: string): Command => ({
      ...{ type: 'record-retest', step: 'feed', typed: String(value), look: null },
      ...{ value, outcome },
    });
    const walk = concluded.do(
      { type: 'acknowledge-cautions', step: 'feed' },
      again(0.3, 'low'),
      again(5, 'good'),
      { type: 'pause' },
    );
    const { warnings, words, headings } = read(walk, 'customer');
    expect(words).toContain('"5 V"');
    expect(words).not.toContain('0.3 V');
    expect(headings).not.toContain('Your decision');
    expect(warnings).toEqual([]);
    expect(read(walk, 'shop').words).toContain('0.3 V');
  });

  it('names the repairs that one reading ruled out beside it, once', () => {
    const by = [3];
    const said = { words: 'Replace the module.', by: 'Feed at the sensor: 0 V' };
    for (const ruledOut of [
      [
        { repair: 'wire.signal', by },
        { repair: 'wire.ground', by },
      ],
      // A file of an early version has only words.
      [{ repair: 'wire.signal', by }, { said }],
    ]) {
      const walk = begin().do(
        { type: 'acknowledge-cautions' },
        { type: 'record-reading', typed: '0', value: 0 },
        { type: 'conclude', weighed: { ...SAID, ruledOut } },
      );
      const report = reportOf(recordOf(walk.session, fileOf(walk).head), 'customer');
      const section = report.sections.find(({ heading }) => heading === 'What is not needed');
      const second =
        'said' in ruledOut[1]! ? 'Replace the module.' : 'Repair or replace the ground wire.';
      expect(section?.blocks[0]).toMatchObject({
        rows: [
          [
            { parts: ['Repair or replace the signal wire.', second] },
            { parts: ['Supply voltage, sensor feed: 0 V'] },
          ],
        ],
      });
    }
  });

  it.each([
    [
      'what points to the cause stands once, beside the other tests',
      freeWalk(),
      'Other tests that were done',
      1,
    ],
    [
      'without a conclusion every test outside stands there',
      begin().do(signalAt(0.02)),
      'Tests that were done',
      1,
    ],
  ] as const)('%s', (_, walk, caption, rows) => {
    const report = reportOf(recordOf(walk.session, fileOf(walk).head), 'customer');
    const blocks = report.sections.flatMap((section) => section.blocks);
    const table = blocks.find((block) => block.kind === 'table' && block.caption === caption);
    expect(table).toMatchObject({ rows: { length: rows } });
  });

  it('a drive that nobody stated is not stated, and none is assumed', () => {
    const { words } = read(begin({ job: emptyJob('stalls') }), 'shop');
    expect(words).toMatch(/"Drive".{0,40}not stated/);
    expect(words).not.toContain('combustion');
  });

  it('leaves out the complaint that nobody stated', () => {
    const { headings } = read(begin({ job: emptyJob('') }), 'customer');
    expect(headings).not.toContain('What you told us');
  });

  it('an unfinished one says so, and shows the tests made so far in plain words', () => {
    const walk = begin().do(
      { type: 'acknowledge-cautions' },
      { type: 'record-reading', typed: '5', value: 5 },
      { type: 'cannot-do', reason: 'no light here' },
    );
    const { warnings, words, headings } = read(walk, 'customer');
    expect(warnings).toEqual(['This diagnosis is not finished.']);
    expect(words).toContain('The tests have not led to a conclusion yet.');
    expect(words).toContain('"right"');
    expect(headings).toContain('What could not be tested');
    expect(headings).not.toContain('Your decision');
  });

  it.each([
    [weighed(3), 'Fewer than three independent tests agree on this so far'],
    [{ ...weighed(3), hangsOn: 3 }, 'This rests on one reading that was not repeated'],
    [
      { ...weighed(3, 3, 3), proven: false },
      'Another cause is not ruled out yet, or the test results do not all agree',
    ],
  ])('says why a conclusion is not proven: %#', (weighing, words) => {
    const walk = begin().do(
      { type: 'acknowledge-cautions' },
      { type: 'record-reading', typed: '0', value: 0 },
      { type: 'conclude', weighed: weighing },
    );
    expect(read(walk, 'customer').words).toContain(`${words}, so it is the best explanation`);
  });

  it('says that a conclusion without proof is no proof', () => {
    const walk = begin().do(
      { type: 'acknowledge-cautions' },
      { type: 'record-reading', typed: '0', value: 0 },
      { type: 'conclude', weighed: { ...weighed(3), proven: false } },
    );
    expect(read(walk, 'customer').words).toContain('the best explanation, not a proof');
  });
});

it('for the shop, empty sections are left out', () => {
  expect(read(begin(), 'shop').headings).toEqual([
    'Complaint, cause, correction',
    'Job',
    'Wiring',
    'Is this record genuine?',
  ]);
});

describe('the picture of a reading', () => {
  it('puts the mark inside the bar for a good reading and outside for a bad one', () => {
    const good = gaugePlaces({ low: 4.75, high: 5.25, value: 5 });
    expect(good.mark).toBeGreaterThan(good.from);
    expect(good.mark).toBeLessThan(good.to);
    const low = gaugePlaces({ low: 4.75, high: 5.25, value: 0 });
    expect(low.mark).toBeLessThan(low.from);
  });

  it('an open end reaches the edge, OL stands at the right edge', () => {
    expect(gaugePlaces({ low: null, high: 0.1, value: 0.05 }).from).toBe(0);
    expect(gaugePlaces({ low: 10_000, high: null, value: null })).toMatchObject({ to: 1, mark: 1 });
  });

  it('holds only finite numbers, whatever the range', () => {
    for (const low of [null, 0, -1e-9, 5, 1e300])
      for (const high of [null, 0, 5, -1e300])
        for (const value of [null, 0, 5, -1e12])
          expect(gaugeSvg({ low, high, value })).not.toMatch(/NaN|Infinity|undefined/);
  });
});

it('html`` escapes texts and leaves markup', () => {
  expect(html`<b>${'<i>'}${html`<u>${'&'}</u>`}</b>`.source).toBe('<b>&lt;i&gt;<u>&amp;</u></b>');
  expect(escapeHtml(`<a b="c" d='e'>&\u001b`)).toBe(
    '&lt;a b=&quot;c&quot; d=&#39;e&#39;&gt;&amp;␛',
  );
});

it('times are as the clock of the shop showed them', () => {
  expect(dateWords('2026-03-04T08:30:15.250+01:00')).toBe('2026-03-04 08:30 (+01:00)');
  expect(dateWords('2026-03-04T08:30:15Z')).toBe('2026-03-04 08:30 (UTC)');
  expect(timeWords({ at: '2026-03-04T08:30:15-05:00', workedMs: 0 })).toBe('08:30:15');
  expect(timeWords({ at: '', workedMs: 61_999 })).toBe('+1:01');
  expect([45_000, 750_000, 3_900_000].map(durationWords)).toEqual([
    '45 s',
    '12 min 30 s',
    '1 h 05 min',
  ]);
});

describe('the picture of a capture', () => {
  /** The picture in the report of a session that one capture answered a test of. */
  function pictureOf(capture: StepCapture) {
    const walk = begin().do({
      type: 'record-test',
      test: {
        setup: { ...KEY_ON, target: 'moving' },
        probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
      },
      typed: '',
      shown: { kind: 'look', look: 'uneven' },
      expected: null,
      capture,
    });
    const report = reportOf(recordOf(walk.session, fileOf(walk).head), 'shop');
    const blocks = report.sections.flatMap((section) => section.blocks);
    const picture = blocks.find((block) => block.kind === 'picture');
    if (!picture) throw new Error('no picture');
    return { report, picture };
  }

  it('of a flat line is flat: its noise of 20 mV takes a hundredth of an axis of 2 V', () => {
    const points = Array.from({ length: 100 }, (_, i) => 4.9 + (i % 2) * 0.02);
    const { report } = pictureOf(captureWith('steady', [{ unit: 'V', points }]));
    const curve = /class="c" d="([^"]+)"/.exec(htmlOf(report))?.[1] ?? '';
    const heights = [...curve.matchAll(/ ([\d.]+)/g)].map(([, y]) => Number(y));
    expect(heights.length).toBeGreaterThan(50);
    // The curve has 90 of the band's 140: 0.9, to a tenth.
    expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(1.1);
  });

  it('gives each channel what its axis covers at least: the judged one by its kind, others by unit', () => {
    const points = [0, 5, 0];
    const channels = (['V', 'A', 'V'] as const).map((unit) => ({ unit, points }));
    const { picture } = pictureOf({ ...captureWith('steady', channels), channel: 2 });
    // Flat lines get 20 mA; ten times the flicker of volts, 30 mV, for who was not judged.
    expect(picture.spansLeast).toEqual([expect.closeTo(0.3), 0.02, expect.closeTo(0.3)]);
  });
});
