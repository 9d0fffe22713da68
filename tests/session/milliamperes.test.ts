/** A step that reads milliamperes: linked, told, judged, kept and handed on as one of volts is; by hand from 7 mA +/- 20 %. */
import { describe, expect, it } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { sessionReadings } from '../../src/session/session-readings.ts';
import type { SuspectSpace } from '../../src/session/suspect-space.ts';
import { canDo } from '../../src/suspects/test-cost.ts';
import { testEntries } from '../../src/suspects/test-entries.ts';
import { after, beginWith } from './walk-library.ts';

const TREE = `
procedure: by-current
title: By its current
circuit: current-two-wire
start: feed-current
steps:
  feed-current:
    title: Current in the feed
    test: signal
    state: key-on
    unplug: [sensor]
    bridge: { from: sensor.signal, to: sensor.signal.pin, through: lead }
    why: What the sensor draws.
    measure: { amps: [sensor.feed, sensor.feed.pin] }
    expect: computed
    outcomes:
      low: { go: not-fed }
      good: { go: none }
      high: { go: shorted }
  not-fed: { conclude: ["wire.*"], say: Found., repair: Mend it., retest: [feed-current] }
  shorted: { conclude: ["sensor.shorted"], say: Found., repair: Replace it., retest: [feed-current] }
  none: { conclude: [], say: Nothing found., repair: Nothing. }
`;

const library = loadLibrary('procedures');
const { meter } = STANDARD_SETTINGS;
const model = createModel(library.circuits.get('current-two-wire')!, {
  samples: 32,
  seed: 1,
  meter,
});
const { value: linked, issues } = linkProcedure(
  parseProcedure(TREE, 'by-current.yaml').value!,
  library,
  { drive: 'combustion', modelOf: () => model },
);
const begun = beginWith(linked!);
const step = linked!.procedure.steps['feed-current']!;

describe('a step of milliamperes', () => {
  it('has its limits from the circuit, its leads said and its caution', () => {
    expect(issues).toEqual([]);
    if (step.kind !== 'measure') throw new Error('no number');
    expect(step.unit).toBe('A');
    // 32 cars come near both ends: 5.6 and 16.8 mA.
    expect(step.expected!.low).toBeCloseTo(0.0056, 4);
    expect(step.expected!.high).toBeCloseTo(0.0168, 3);
    expect(step.say).toContain(
      'Meter on milliamperes, in series. Red lead: {sensor.feed}. Black lead: {sensor.feed.pin}.',
    );
    expect(step.cautions.map(({ id }) => id)).toContain('amperes-in-series');
  });

  it('is judged by the accuracy of that function, kept in amperes and handed on to be weighed', () => {
    const read = after(acknowledged(), { type: 'record-reading', typed: '0.02 mA', value: 2e-5 });
    const event = read.events.at(-1)!;
    expect(event).toMatchObject({ unit: 'A', value: 2e-5, judgement: { verdict: 'low' } });
    const space = { placeOf: () => 0, testAt: () => ({ words: '' }) } as unknown as SuspectSpace;
    expect(sessionReadings(read, space)).toMatchObject([
      { test: 0, shown: { kind: 'number', value: 2e-5, unit: 'A' }, found: '0.02 mA' },
    ]);
  });
});

it('is proposed only where such a meter is at hand', () => {
  const entry = testEntries(model.circuit, null, meter).find(
    ({ id }) => id === 'sensor.feed.amps',
  )!;
  const means = (...has: string[]) => ({ has, helper: false, without: [] });
  expect(canDo(entry, means('meter', 'lead'))).toMatchObject({
    ...{ can: false, missing: ['milliammeter'] },
  });
  expect(canDo(entry, means('meter', 'lead', 'milliammeter')).can).toBe(true);
});

function acknowledged() {
  return after(begun, { type: 'acknowledge-cautions' });
}
