/** Measures as programs read them: within one version of the document no key goes. */
import { expect, test } from 'vitest';
import type { Finding } from '../../src/waveform/finding.ts';
import { generateSweep, generateWheels } from '../../src/waveform/generate.ts';
import { judgeChannel } from '../../src/waveform/judge-channel.ts';
import { measureCapture } from '../../src/waveform/measure-phase.ts';
import { measuresJson } from '../../src/waveform/measures-json.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

const HALL = { sensor: 'hall', low: 0.2, high: 5 } as const;
const TURNING = generateWheels(
  [
    { ...HALL, name: 'crank', teeth: 36, missing: 1 },
    { ...HALL, name: 'cam', teeth: 4, missing: 1, ratio: 0.5 },
  ],
  { rateHz: 20_000, seconds: 0.8, rpm: 800, random: seededRandom(1) },
);

test('pairs are told by the names of their channels', () => {
  const { phases } = measuresJson(measureCapture(TURNING), []);
  expect(phases).toMatchObject([{ reference: 'crank', channel: 'cam', cycleDegrees: 720 }]);
});

test('every finding has its kind, its words and its places', () => {
  const measures = measureCapture(TURNING);
  const finding: Finding = { kind: 'noisy', noise: 0.5, swing: 5, unit: 'V' };
  expect(measuresJson(measures, [[finding], []])).toMatchObject({
    channels: [
      {
        findings: [
          {
            kind: 'noisy',
            noise: 0.5,
            swing: 5,
            unit: 'V',
            words: 'crank is noisy: 0.5 V on a swing of 5 V',
            seconds: [],
          },
        ],
      },
      { findings: [] },
    ],
  });
});

test('lost contact of a sweep is a drop-out with its places', () => {
  const sweep = measureCapture(
    generateSweep({
      rateHz: 1000,
      seconds: 4,
      closedVolts: 0.5,
      openVolts: 4.5,
      dropOuts: [{ at: 0.4, seconds: 0.02, volts: 0 }],
      random: seededRandom(2),
    }),
  );
  const findings = sweep.channels.map((channel) => judgeChannel(channel));
  // by hand: at four tenths of two seconds up, and of two seconds down
  expect(measuresJson(sweep, findings)).toMatchObject({
    channels: [
      {
        findings: [{ kind: 'drop-out', seconds: [expect.closeTo(0.8, 1), expect.closeTo(3.2, 1)] }],
      },
    ],
  });
});
