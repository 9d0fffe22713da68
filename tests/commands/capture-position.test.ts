/** The position of a signal by one capture of both, or by two files, through lines and through a file of answers. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { generateWheels } from '../../src/waveform/generate.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';
import { eventsOf, makePlace, type Place, runProgram, sessionFiles } from './program.ts';

const AT_POSITION = ['run', 'hall-no-signal', '--bench', 'healthy', '--from', 'position'];

let place: Place;
beforeEach(() => {
  place = makePlace();
  const levels = { sensor: 'hall', low: 0.1, high: 5, onTooth: 'low' } as const;
  const crank = { ...levels, name: 'crank', teeth: 60, missing: 2 };
  const cam = (late: number) =>
    ({
      ...levels,
      name: 'cam',
      teeth: 4,
      missing: 1,
      ratio: 0.5,
      atDegrees: 20 - late / 2,
    }) as const;
  const turning = { rateHz: 8000, seconds: 1.2, rpm: 200, random: seededRandom(1) };
  const save = (name: string, wheels: Parameters<typeof generateWheels>[0]) =>
    writeFileSync(join(place.home, name), csvOfCapture(generateWheels(wheels, turning)));
  save('good.csv', [crank, cam(0)]);
  save('both.csv', [crank, cam(24)]);
  save('crank.csv', [crank]);
  save('cam.csv', [cam(24)]);
});
afterEach(() => place.remove());

const answered = () =>
  eventsOf(sessionFiles(place)[0]!).find(({ type }) => type === 'look-recorded') as
    | Record<string, unknown>
    | undefined;

it('is measured against a known-good capture, and stands in record and report', async () => {
  const lines = [
    'yes',
    'capture both.csv',
    '',
    'capture both.csv against good.csv',
    'yes',
    'pause',
  ];
  const ran = await runProgram(place, [...AT_POSITION, '--plain'], `${lines.join('\n')}\n`);
  expect(ran.out).toContain('nothing says where its edges should be; give a known-good capture');
  expect(ran.out).toContain(
    'Position: cam stands 24.0 degrees late in the turn of crank; 5 are allowed (against a known-good capture)',
  );
  expect(answered()).toMatchObject({
    look: 'shifted',
    capture: { shiftDegrees: expect.closeTo(24, 0), against: { kind: 'good', name: 'good.csv' } },
  });
  const [file] = sessionFiles(place);
  const json = (await runProgram(place, ['records', 'export', file!, '--as', 'json'])).out;
  const { capture, found } = JSON.parse(json).lines.find(
    (line: { capture?: object }) => line.capture,
  );
  expect(found).toBe('shifted from the known-good one, 24.0 degrees late');
  expect(capture.pairs.at(-1)).toContain('24.0 degrees late');
  expect(capture.beside).toMatchObject([{ what: 'good', name: 'good.csv' }]);
});

it('is measured of two files of one crank, from a file of answers', async () => {
  writeFileSync(
    join(place.home, 'answers.yaml'),
    'answers:\n  - acknowledge: true\n  - captured: { file: crank.csv, second: cam.csv, against: good.csv }\n',
  );
  const ran = await runProgram(place, [
    ...AT_POSITION,
    '--answers',
    'answers.yaml',
    '--unattended',
  ]);
  expect(ran.err).toBe('');
  expect(answered()).toMatchObject({
    look: 'shifted',
    capture: { name: 'crank.csv', second: { name: 'cam.csv' } },
  });
});
