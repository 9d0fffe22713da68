/** Papers say once that a connector could not be reached, with the steps that were gone round for it. */
import { expect, it } from 'vitest';
import type { Procedure } from '../../src/procedure/procedure.ts';
import type { AUDIENCES } from '../../src/records/record-for.ts';
import { reportOf } from '../../src/records/report.ts';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import { begin, fileOf, type Walk } from './sample-session.ts';

const REASON = 'the plug of the sensor sits behind the starter';
const OUT: Command = { type: 'set-connector-aside', part: 'sensor', aside: true, reason: REASON };
const ROUND: Command = { type: 'go-round', by: 2 };

/** Steps one after the other that all need the sensor's connector. */
function walked(steps: number, ...more: Command[]): Walk {
  const { procedure } = begin().session.opened;
  const feed = procedure!.steps['feed']!;
  const ids = Array.from({ length: steps }, (_, at) => `feed-${at + 1}`);
  const added = ids.map((id, at) => [
    id,
    { ...feed, id, title: `Feed ${at + 1}`, cannot: ids[at + 1] ?? 'feed' },
  ]);
  const longer = {
    ...procedure,
    start: 'feed-1',
    steps: { ...procedure!.steps, ...Object.fromEntries(added) },
  } as Procedure;
  return begin({ procedure: longer }).do(OUT, ...ids.map(() => ROUND), ...more);
}

const parts = (walk: Walk) => [walk.session, fileOf(walk).head] as const;
const words = (walk: Walk, audience: (typeof AUDIENCES)[number]) =>
  reportOf(recordOf(walk.session, fileOf(walk).head), audience).sections;

it('in the shop, where steps that were gone round are one row and one line', () => {
  const walk = walked(5);
  const sections = words(walk, 'shop');
  const under = (heading: string) =>
    JSON.stringify(sections.find((one) => one.heading === heading)?.blocks);
  expect(under('Could not be done')).toContain(
    '["The plug of the sensor sits behind the starter: Feed 1; Feed 2; Feed 3; Feed 4; Feed 5"]',
  );
  expect(under('Measurements')).toContain('1 to 5');
  expect(under('Measurements')).toContain('5 steps were skipped');
  expect(under('Measurements').match(/behind the starter/g)).toHaveLength(1);
  expect(under('Corrections and interruptions')).toMatch(
    /all that needs the connector of the [^"]* is set aside: the plug/,
  );
});

it('once more where it was said, with the connector named once', () => {
  const said = (reason: string) =>
    recordOf(...parts(begin().do({ ...OUT, reason } as Command))).interruptions.map(
      ({ words: one }) => one,
    );
  expect(said('the connector of the sensor could not be reached')).toEqual([
    'the connector of the sensor could not be reached: all that needs it is set aside',
  ]);
  expect(said('no room')[0]).toMatch(/^all that needs the connector of the .* set aside: no room$/);
});

it('for the customer', () => {
  const conclude: Command = { type: 'conclude' };
  const read: Command = { type: 'record-reading', typed: '0', value: 0 };
  const walk = walked(2, { type: 'acknowledge-cautions' }, read, conclude);
  const said = JSON.stringify(words(walk, 'customer'));
  expect(said).toContain(
    'The plug of the sensor sits behind the starter: Supply voltage, sensor feed',
  );
  expect(said.match(/behind the starter/g)).toHaveLength(1);
});

it('and say so when it could be reached after all; a step that was taken back is no gap', () => {
  const back: Command = { type: 'set-connector-aside', part: 'sensor', aside: false, reason: '' };
  const sections = words(walked(1, back, { type: 'go-back' }), 'shop');
  expect(sections.map(({ heading }) => heading)).not.toContain('Could not be done');
  expect(JSON.stringify(sections)).toContain('can be reached after all: the connector of the');
});

it('once that the vehicle could not be had in a state, and that it could after all', () => {
  const reason = 'the engine could not be cranked';
  const out: Command = { type: 'set-state-aside', state: 'cranking', aside: true, reason };
  const back: Command = { ...out, aside: false, reason: '' };
  const said = (...commands: Command[]) =>
    recordOf(...parts(begin().do(...commands))).interruptions.map(({ words: one }) => one);
  expect(said(out, back)).toEqual([
    'the engine could not be cranked: all that needs cranking or a running engine is set aside',
    'can be done after all: all that needs cranking or a running engine',
  ]);
  expect(said({ ...out, reason: 'the starter is out' })).toEqual([
    'all that needs cranking or a running engine is set aside: the starter is out',
  ]);
});
