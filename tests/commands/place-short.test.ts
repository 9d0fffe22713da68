/** Location of a short by every front end: the same event, whoever gives the drops. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import {
  converse,
  eventsOf,
  makePlace,
  type Place,
  runProgram,
  sessionFiles,
  timeless,
} from './program.ts';

const JOB = `complaint: no start
vehicle: { drive: combustion }
harness:
  - { connector: at the bulkhead, wires: [signal], at: 1.2 m, minutes: 2 }
  - { wire: signal, length: 3 m }
`;
const STRETCH = ['signal', 'ground', 'sensor.signal', 'bulkhead.signal'] as const;
const DROPS = '4.1 mV, 4.7 mV';
const NAMED = { wire: STRETCH[0], touches: STRETCH[1], from: STRETCH[2], to: STRETCH[3] };

let place: Place;
let job: string;
beforeEach(() => {
  place = makePlace();
  job = join(place.home, 'job.yaml');
  writeFileSync(job, JOB);
});
afterEach(() => place.remove());

const RUN = ['run', 'guided-hall-module-fed', '--no-sheet'];

/** What was recorded, without when. */
function placed() {
  const events = sessionFiles(place).flatMap(eventsOf);
  return timeless(events.filter(({ type }) => type === 'short-placed'));
}

const DUE = [
  {
    type: 'short-placed',
    stretch: { wire: 'signal', touches: 'battery.negative', from: STRETCH[2], to: STRETCH[3] },
    unplugged: ['module', 'sensor'],
    typed: DROPS,
    drops: {
      fedFromVolts: 0.0041,
      fedToVolts: 0.0047,
      fedFromAmps: null,
      fedToAmps: null,
      lengthMetres: null,
    },
    place: expect.objectContaining({ metres: 0.5591, lengthMetres: 1.2, told: true }),
  },
];

test('in the dialogue of lines', async () => {
  const { out } = await converse(
    place,
    [...RUN, '--job', job, '--plain'],
    [
      'place',
      `place signal touching ground from ${STRETCH[2]} to ${STRETCH[3]}`,
      'yes',
      DROPS,
      'place signal touching brake',
    ],
  );
  expect(out).toMatch(/Unplug everything on both wires: engine control module, crankshaft/);
  expect(out).toMatch(/An ohmmeter can't do this/);
  expect(out).toMatch(/Saved\. 0\.\d+ to 0\.\d+ m from the sensor's connector\./);
  expect(out).toMatch(/cannot touch "brake"/);
  expect(placed()).toEqual(DUE);
});

test('by a file of answers', async () => {
  const file = join(place.home, 'answers.yaml');
  const said = `{ wire: signal, touches: ground, from: ${STRETCH[2]}, to: ${STRETCH[3]}, drops: "${DROPS}", unplugged: [module, sensor] }`;
  writeFileSync(file, `answers:\n  - { place: ${said}, acknowledge: true }\n`);
  await runProgram(place, [...RUN, '--job', job, '--answers', file]);
  expect(placed()).toEqual(DUE);
});

test('by another program, which is told how first', async () => {
  const call = (id: number, method: string, params: object) =>
    JSON.stringify({ jsonrpc: '2.0', id, method, params });
  let out = '';
  const cautions = () =>
    out
      .split('\n')
      .filter((line) => line.startsWith('{'))
      .map((line) => JSON.parse(line))
      .find(({ id }) => id === 1)?.result;
  // The vehicle is simulated, so that one call acknowledges all.
  const args = [...RUN, '--job', job, '--bench', 'healthy', '--rpc'];
  const first = await converse(place, args, [call(1, 'prepare-place', NAMED)]);
  out = first.out;
  const { unplug, steps, test: fed, cautions: due } = cautions();
  expect(unplug).toEqual(['module', 'sensor']);
  expect(steps.join(' ')).toContain('tips on the terminals themselves');
  const ids = due.map(({ id }: { id: string }) => id);
  expect(ids).toContain('fed-wire');
  const told = await converse(place, args, [
    call(2, 'place', { ...NAMED, drops: DROPS, unplugged: unplug }),
    call(3, 'acknowledge', { caution: ids, person: 'Odalys', test: fed }),
    call(4, 'place', { ...NAMED, drops: DROPS, unplugged: ['sensor'] }),
    call(5, 'place', { ...NAMED, drops: DROPS, unplugged: unplug }),
  ]);
  const answers = new Map(
    told.out
      .split('\n')
      .filter((line) => line.startsWith('{'))
      .map((line) => JSON.parse(line))
      .map((one) => [one.id, one]),
  );
  expect(answers.get(2).error.data.code).toBe('caution-first');
  expect(answers.get(4).error.data.code).toBe('still-plugged');
  expect(answers.get(5).result.events.at(-1).type).toBe('short-placed');
  expect(placed()).toEqual(DUE);
});
