/** A test that no step asked for stands in the record with what was expected and how it was judged. */
import { expect, it } from 'vitest';
import { readingsCsv } from '../../src/records/readings-csv.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { after, shopFor, walkOn } from '../session/walk-library.ts';
import { begin, fileOf, PROCEDURE } from './sample-session.ts';

it.each(
  Object.values(PROCEDURE.steps).flatMap((step) =>
    (step.kind === 'measure' || step.kind === 'look') && step.probe
      ? [[step.title, step] as const]
      : [],
  ),
)('without a circuit it is called as the step that asks for the same: %s', (title, step) => {
  const test = { setup: step.setup, probe: step.probe! };
  const shown =
    step.kind === 'look'
      ? ({ kind: 'look', look: 'lit' } as const)
      : ({ kind: 'number', value: 0.01, unit: 'V' } as const);
  const typed = step.kind === 'look' ? '' : '0.01 V';
  const command = { type: 'record-test', test, typed, expected: null, shown } as const;
  const walk = begin({ circuit: null }).do(command);
  expect(recordOf(walk.session, fileOf(walk).head).tests).toMatchObject([{ title }]);
});

it('as the screen showed it', () => {
  const shop = shopFor('hall-no-signal');
  // The scope not at hand, the sensor is not proven yet.
  const unproven = walkOn(shop, shop.begun, 'sensor.dead', { 'picture/scope': 'cannot' });
  const { wouldProve } = shop.advisor.weigh(unproven, ['sensor.dead']);
  const look = wouldProve.find(({ test }) => test.probe.kind === 'counts')!;
  let session = walkOn(shop, shop.begun, 'wire.signal.open');
  const wire = shop.advisor.nextTests(session).find(({ unit }) => unit === 'ohm')!;
  for (const [{ test, expected }, typed, shown] of [
    [wire, 'OL', { kind: 'number', value: null, unit: 'ohm' }],
    [look, '', { kind: 'look', look: 'follows' }],
  ] as const)
    session = after(session, { type: 'record-test', test, expected, typed, shown });
  const record = recordOf(session, { seq: 1, hash: '' });
  expect(record.tests).toMatchObject([
    {
      title: wire.words,
      expected: wire.healthy,
      verdict: 'high',
      judgement: 'above the expected range',
      found: 'OL',
    },
    {
      title: look.words,
      expected: expect.stringContaining('the live data follows'),
      verdict: 'as expected',
    },
  ]);
  expect(record.tests[0]!.expectedRange).toMatchObject({ from: 'circuit' });
  const row = readingsCsv(record)
    .split('\r\n')
    .find((line) => line.includes('"test"') && line.includes('"OL"'));
  expect(row).toContain('"high"');
  expect(row).toContain(`"${wire.healthy}"`);
});
