/** The battery's volts on the job sheet stand at the step that reads them. */
import { expect, it } from 'vitest';
import { emptyJob, type KnownSaid } from '../../src/procedure/job.ts';
import type { MeasureStep, Step } from '../../src/procedure/procedure.ts';
import { openSession } from '../../src/session/evolve.ts';
import { sheetReading } from '../../src/session/sheet-reading.ts';
import { freshAnswer } from '../../src/ui/screens/prompt-state.ts';
import { sessionAfter, TREE } from './sample-tree.ts';

const SAID: KnownSaid = { what: 'battery at rest', is: '12.4 V', from: 'measured' };
const FEED = TREE.steps['feed'] as MeasureStep;
const BATTERY = {
  ...FEED,
  probe: { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' },
} as Step;
const cranking = { ...BATTERY, setup: { ...FEED.setup, state: 'cranking' } } as Step;

function standing(known: readonly KnownSaid[], step = BATTERY, vehicle: object = { kind: 'real' }) {
  const { opened } = sessionAfter([], null);
  const job = { ...emptyJob('stalls'), known };
  const session = openSession({ ...opened, job, vehicle } as typeof opened);
  const { prompt } = freshAnswer(session, step);
  expect(prompt.field.text).toBe(sheetReading(step, session)?.typed ?? '');
  return sheetReading(step, session);
}

it('as it was measured, in the state in which it is read', () => {
  expect(standing([SAID])).toEqual({ typed: '12.4 V', value: 12.4 });
  expect(standing([{ ...SAID, what: 'battery while cranking', is: '10.1 V' }], cranking)).toEqual({
    typed: '10.1 V',
    value: 10.1,
  });
});

it('and nothing else does', () => {
  expect(standing([])).toBeNull();
  expect(standing([SAID], cranking)).toBeNull();
  expect(standing([SAID], FEED)).toBeNull();
  expect(standing([{ ...SAID, from: 'wiring diagram' }])).toBeNull();
  expect(standing([{ ...SAID, is: '12.2 to 12.6 V' }])).toBeNull();
  // It shows by itself what it gives.
  expect(standing([SAID], BATTERY, { kind: 'bench', fault: 'healthy', seed: 1 })).toBeNull();
});
