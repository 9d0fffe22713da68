/** Rounds of moving through a file of answers and through lines: the same events, and the record tells of them. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { eventsOf, makePlace, type Place, runProgram, sessionFiles } from './program.ts';

const AT_WIGGLE = ['run', 'hall-no-signal', '--bench', 'healthy', '--from', 'wake-second'];

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

const ROUND = {
  type: 'waking-watched',
  place: 'plug',
  unit: 'V',
  least: 2.4,
  most: 2.6,
  drops: 0,
  minutes: 3,
};

it('a round is taken from a file of answers and from a line', async () => {
  writeFileSync(
    join(place.home, 'answers.yaml'),
    'answers:\n  - acknowledge: true\n  - watched: "plug: 2.4 V to 2.6 V, 0 drops, 3 min"\n',
  );
  await runProgram(place, [...AT_WIGGLE, '--answers', 'answers.yaml', '--unattended']);
  const lines = ['yes', 'watch plug: 2.4 V to 2.6 V, no drops, 3 min', 'watch roof: 5 V', 'pause'];
  const ran = await runProgram(place, [...AT_WIGGLE, '--plain'], `${lines.join('\n')}\n`);
  expect(ran.out).toContain('In the record: plug: 2.4 V to 2.6 V, no drop, 3 min.');
  expect(ran.out).toContain('there is no place "roof" here');
  const files = sessionFiles(place);
  expect(files).toHaveLength(2);
  for (const file of files)
    expect(eventsOf(file).find(({ type }) => type === 'waking-watched')).toMatchObject(ROUND);
});
