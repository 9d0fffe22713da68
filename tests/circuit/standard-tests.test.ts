/** The tests that the rules give. */
import { describe, expect, test } from 'vitest';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { TEST_FAMILIES } from '../../src/circuit/test-list.ts';
import { modelOf, NAMES, shipped } from './shipped.ts';

describe.each(NAMES)('%s', (name) => {
  const options = standardTests(shipped(name));

  test('none is refused, ids are unique, each has words, minutes and needs', () => {
    const circuit = shipped(name);
    expect(new Set(options.map((option) => option.id)).size).toBe(options.length);
    for (const option of options) {
      expect(refuseTest(circuit, option.test), option.id).toBeNull();
      expect(option.words.length).toBeGreaterThan(10);
      expect(option.minutes).toBeGreaterThan(0);
      expect(option.needs.length).toBeGreaterThan(0);
      expect([...option.test.setup.unplugged]).toEqual([...option.test.setup.unplugged].sort());
    }
  });

  test('there are signal, pattern, spare, bypass, continuity and inspection tests', () => {
    const families = new Set(options.map((option) => option.family));
    for (const family of [
      'signal',
      'pattern',
      'spare',
      'bypass',
      'continuity',
      'inspection',
    ] as const)
      expect(families).toContain(family);
  });

  test('the pull-down or pull-up of an injection moves the module over its threshold', () => {
    const model = modelOf(name, 8);
    for (const { test: one, family } of options) {
      if (family !== 'injection') continue;
      const pull = model.pullsLow(one);
      if (pull) expect(pull.pulls).toBe(true);
    }
  });
});

test('the module-fed Hall circuit has every family', () => {
  const families = new Set(
    standardTests(shipped('hall-module-fed')).map((option) => option.family),
  );
  expect([...families].sort()).toEqual([...TEST_FAMILIES].sort());
});
