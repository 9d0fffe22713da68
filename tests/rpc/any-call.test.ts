/** Whatever is sent is answered: with a result or a refusal of the published form, never by falling over. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';
import { newDrill, newSession, PERSON, type Served } from './served.ts';

const METHODS = JSON.parse(readFileSync('docs/schema/rpc.schema.json', 'utf8'))[
  'x-choices'
] as readonly string[];
const RUNS = LONG ? 3000 : 30;
/** The runner's own limit, far above what it takes. */
const TIME_MS = LONG ? 3_600_000 : 240_000;

const place = fc.constantFrom(
  'sensor.feed',
  'sensor.signal',
  'battery.negative',
  'module.signal.pin',
  'x',
  '__proto__',
);
const text = fc.oneof(
  fc.string({ maxLength: 20 }),
  place,
  fc.constantFrom('feed', 'prepare', 'constructor'),
);
const test = fc.oneof(
  fc.record(
    {
      measure: fc.oneof(
        fc
          .tuple(
            fc.constantFrom(
              'volts',
              'ohms',
              'light',
              'lamp',
              'pattern',
              'timing',
              'counts',
              'inspect',
            ),
            place,
            place,
          )
          .map((words) => words.join(' ')),
        text,
      ),
      state: fc.constantFrom('key-off', 'key-on', 'cranking', 'running'),
      unplug: fc.array(fc.constantFrom('sensor', 'module', 'x'), { maxLength: 2 }),
      bridges: fc.array(
        fc
          .tuple(place, place, fc.constantFrom('lead', 'lamp', '470 ohm', 'x'))
          .map((words) => words.join(' ')),
        { maxLength: 2 },
      ),
      wiggle: fc.boolean(),
    },
    { requiredKeys: [] },
  ),
  fc.record({
    setup: fc.record({
      state: fc.constantFrom('key-off', 'key-on', 'cranking', 'running'),
      unplugged: fc.array(fc.constantFrom('sensor', 'module', 'x'), { maxLength: 2 }),
      bridges: fc.constant([]),
      sensor: fc.constantFrom('fitted', 'spare'),
      target: fc.constantFrom('still', 'moving'),
    }),
    probe: fc.oneof(
      fc.record({
        kind: fc.constantFrom('volts', 'ohms', 'light', 'pattern'),
        plus: place,
        minus: place,
      }),
      fc.record({ kind: fc.constant('counts'), input: place }),
      fc.record({
        kind: fc.constant('inspect'),
        of: fc.oneof(place, fc.constant('connector.sensor')),
      }),
    ),
  }),
);
/** Keys of the schema with values that often fit, and now and then anything else. */
const params = fc.record(
  {
    reading: fc.constantFrom<unknown>('5 V', 4.98, 'OL', '1e999', '', '-5 V'),
    choose: fc.constantFrom('circuit', 'low-or-high', 'full', 'lit', 'x'),
    reason: text,
    text,
    words: text,
    faults: fc.array(fc.constantFrom('wire.signal.open', 'x'), { maxLength: 2 }),
    caution: fc.constantFrom<unknown>('circuit-energised', ['circuit-energised'], 'x', []),
    person: fc.constant(PERSON),
    step: text,
    test,
    take: fc.boolean(),
    sure: fc.boolean(),
    record: fc.boolean(),
    to: fc.nat(5),
    from: fc.nat(5),
    file: text,
    channel: fc.nat(3),
    folder: text,
    line: fc.oneof(text, fc.constantFrom('wire', 'wire --size 0.5mm2', 'divider --upper x')),
    columns: fc.nat(100),
    repairs: fc.array(fc.constantFrom('wire.signal', 'x'), { maxLength: 1 }),
    instruments: fc.array(fc.constantFrom('meter', 'scope', 'x'), { maxLength: 3 }),
    procedure: text,
    anything: fc.jsonValue({ maxDepth: 2 }),
  },
  { requiredKeys: [] },
);
/** Of all these keys only those that the method knows, most of the time. */
const KEYS = new Map<string, readonly string[]>(
  METHODS.map((name) => {
    const { definitions } = JSON.parse(readFileSync('docs/schema/rpc.schema.json', 'utf8'));
    return [name, Object.keys(definitions[name].properties.params.properties ?? {})];
  }),
);
const call = fc
  .tuple(fc.constantFrom(...METHODS), params, fc.boolean())
  .map(([method, all, strict]) => ({
    method,
    params: strict
      ? Object.fromEntries(Object.entries(all).filter(([key]) => KEYS.get(method)?.includes(key)))
      : all,
  }));

describe.each<[string, () => Served]>([
  ['a session at a real vehicle', () => newSession('reluctor-no-signal', null)],
  [
    'a session in free order on a simulated one',
    () => newSession('reluctor-two-wire', 'wire.plus.open'),
  ],
  ['a drill', () => newDrill('reluctor-no-signal', 'named', 7)],
])('%s', (_, begin) => {
  it(
    'answers any calls in any order',
    async () => {
      const told = new Set<string>();
      await fc.assert(
        fc.asyncProperty(fc.array(call, { minLength: 1, maxLength: 12 }), async (calls) => {
          const one = begin();
          for (const { method, params: sent } of calls) {
            const before = one.opened.driver.head().seq;
            const { error } = await one.call(method, sent);
            if (!error) told.add(method);
            // A mistake in the message changes nothing.
            if (error && error.code !== -32000) expect(one.opened.driver.head().seq).toBe(before);
          }
        }),
        { numRuns: RUNS },
      );
      // The calls came through often enough to mean something.
      expect(told.size).toBeGreaterThan(8);
    },
    TIME_MS,
  );
});
