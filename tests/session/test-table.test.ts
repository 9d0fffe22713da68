/** The table of a session: made once, and open to tests of the person's own. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { testTable } from '../../src/session/test-table.ts';
import { setupOf } from '../circuit/setup.ts';
import { METER, modelOf } from '../circuit/shipped.ts';
import { TREE } from './sample-tree.ts';

const { circuit } = modelOf('hall-module-fed', 1);
const table = testTable(circuit, TREE, METER);
const FEED: Test = {
  setup: setupOf(),
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};
const OWN: Test = { ...FEED, probe: { ...FEED.probe, minus: 'module.ground' } as Test['probe'] };

describe('a table', () => {
  it('is made once for its circuit, procedure and meter', () => {
    expect(testTable(circuit, TREE, { ...METER })).toBe(table);
    expect(testTable(circuit, null, METER)).not.toBe(table);
    expect(testTable(circuit, TREE, { ...METER, inputOhms: 1e6 })).not.toBe(table);
    expect(testTable({ ...circuit }, TREE, METER)).not.toBe(table);
  });
  it('has the step for its test, whatever the order of the keys', () => {
    const { probe, setup } = FEED;
    expect(table.entryOf({ probe, setup: { ...setup } })).toBe(table.entries[0]);
    expect(table.entries[0]).toMatchObject({ step: 'feed' });
  });
  it("makes an entry for a test of the technician's own, once, and does not offer it", () => {
    const made = table.entryOf(OWN);
    expect(made).toMatchObject({ step: null, minutes: 1 });
    expect(table.entryOf({ ...OWN })).toBe(made);
    expect(table.entries).not.toContain(made);
  });
  it('knows a test of its own with the harness moved, and one of the person the same way', () => {
    const moved = table.entryOf({ ...FEED, wiggle: true });
    const [feed] = table.entries;
    expect(moved.words).toBe('Feed, moving the harness');
    expect(moved.minutes).toBe(feed!.minutes + 0.5);
    expect(table.entryOf({ ...OWN, wiggle: true })).toMatchObject({ minutes: 1.5, step: null });
  });
});
