/** The form of events: the schema says what the types say, and what does not fit is told with its place and a way out. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { FAULT_CLASSES } from '../../src/circuit/circuit.ts';
import { LOOKS, VEHICLE_STATES } from '../../src/circuit/test.ts';
import { checkEvents } from '../../src/log/check-events.ts';
import type { StoredEvent } from '../../src/log/event-line.ts';
import type { CheckedEvent } from '../../src/log/generated/session-event.mjs';
import validate from '../../src/log/generated/session-event.mjs';
import { CAPTURE_LEVELS, MEASURE_UNITS, SIGNAL_WORDS } from '../../src/procedure/procedure.ts';
import { UNITS } from '../../src/quantity/quantity.ts';
import { LEVEL_NAMES, REPAIR_VERDICTS, type SessionEvent } from '../../src/session/events.ts';
import { ENVELOPE_POINTS_MAX } from '../../src/waveform/envelope.ts';
import { SIGNAL_KINDS } from '../../src/waveform/measure-channel.ts';
import { shipped } from '../circuit/shipped.ts';
import { captureWith } from '../records/sample-capture.ts';
import { opened, sessionAfter, TREE, when } from '../session/sample-tree.ts';
import { CONCLUDED, EXTRA, RESUME } from '../session/shorthand.ts';

type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/**
 * The compiler's word that every event fits the schema's types. That what fits the schema is an event, it says in
 * `check-events.ts`, where no cast stands between the two.
 */
function asStored(event: SessionEvent, seq: number): Frozen<CheckedEvent> {
  return { ...event, seq, prev: seq === 1 ? null : '0'.repeat(64) };
}

function stored(events: readonly SessionEvent[]): StoredEvent[] {
  return events.map((event, at) => ({ ...asStored(event, at + 1) }));
}

function flawOf(events: readonly SessionEvent[], seq: number, part: object) {
  const changed = stored(events).map((event, at) => {
    const kept = Object.entries({ ...event, ...(at === seq - 1 ? part : {}) });
    return Object.fromEntries(kept.filter(([, value]) => value !== undefined));
  });
  const { events: good, flaw } = checkEvents(changed as unknown as StoredEvent[]);
  expect(good.length).toBeLessThan(events.length);
  return flaw;
}

const CIRCUIT = shipped('hall-module-fed');
const EVENTS = [...sessionAfter([...CONCLUDED, EXTRA, { type: 'pause' }, RESUME]).events];

it('events come out as they went in, without number and link', () => {
  expect(checkEvents(stored(EVENTS))).toEqual({ events: EVENTS, flaw: null });
});

describe('the words of the schema are those of the types', () => {
  const schema = JSON.parse(readFileSync('docs/schema/session-event.schema.json', 'utf8'));
  const definition = (name: string) => schema.definitions[name];
  test.each<[string, readonly string[], readonly string[]]>([
    ['looks', definition('Look').enum, [...new Set(Object.values(LOOKS).flat())]],
    ['vehicle states', definition('VehicleState').enum, VEHICLE_STATES],
    ['signal words', definition('SignalWord').enum, SIGNAL_WORDS],
    ['units of readings', definition('MeasureUnit').enum, MEASURE_UNITS],
    ['units', definition('Toleranced').properties.unit.enum, UNITS],
    ['fault classes', definition('Fault').properties.class.enum, FAULT_CLASSES],
    ['capture levels', definition('MeasureStep').properties.level.enum, CAPTURE_LEVELS],
    ['signal kinds', definition('CaptureMeasured').properties.kind.enum, SIGNAL_KINDS],
    ['drill levels', definition('DrillVehicle').properties.level.enum, LEVEL_NAMES],
    ['repair verdicts', definition('SessionClosed').properties.verdict.enum, REPAIR_VERDICTS],
  ])('%s', (_, inSchema, inTypes) => {
    expect([...inSchema].sort()).toEqual([...inTypes].sort());
  });

  it('points of a picture', () => {
    expect(definition('Envelope').properties.points.maxItems).toBe(ENVELOPE_POINTS_MAX);
  });
});

test.each(readdirSync('procedures/circuits'))(
  'the circuit in %s has the form that a session keeps',
  (file) => {
    const circuit = shipped(file.replace(/\.yaml$/, ''));
    expect(checkEvents(stored([opened(null, { circuit })])).flaw).toBeNull();
  },
);

describe('what does not fit is told where it stands', () => {
  // 1 opened, 2 done, 3 cautions, 4 feed, 5 cautions, 6 pattern, 7 concluded, 8 test, 9 paused, 10 resumed
  const capture = captureWith('switched', [{ unit: 'V', points: [0, 5] }]);
  test.each<[string, number, object, string]>([
    ['an unknown type', 4, { type: 'price-set' }, 'is of the unknown type "price-set"'],
    ['no type', 4, { type: 5 }, 'is of the unknown type "5"'],
    ['a missing key', 4, { typed: undefined }, 'lacks "typed"'],
    ['a missing key inside', 4, { judgement: { verdict: 'good' } }, 'lacks "judgement.chance"'],
    ['a key too many', 4, { words: 'fine' }, 'has "words", which no event has'],
    [
      'a key too many inside',
      4,
      { judgement: { verdict: 'good', chance: 1, words: '' } },
      'has "judgement.words", which no event has',
    ],
    ['a text for a number', 4, { value: '5' }, 'has no valid "value"'],
    ['an unknown word', 4, { unit: 'furlong' }, 'has no valid "unit"'],
    [
      'a chance above one',
      4,
      { judgement: { verdict: 'good', chance: 1.5 } },
      'has no valid "judgement.chance"',
    ],
    ['a group for a text', 4, { step: {} }, 'has no valid "step"'],
    ['a list for a group', 8, { test: [] }, 'has no valid "test"'],
    [
      'an unknown probe',
      8,
      { test: { ...(EXTRA as { test: object }).test, probe: { kind: 'nose' } } },
      'has no valid "test.probe.kind"',
    ],
    [
      'an event number of nought',
      7,
      { evidence: [{ counted: true, reading: 0 }] },
      'has no valid "evidence[0].reading"',
    ],
    [
      'evidence that is neither',
      7,
      { evidence: [{ counted: true }] },
      'has no valid "evidence[0]"',
    ],
    [
      'a step of an unknown kind',
      1,
      { procedure: { ...TREE, steps: { feed: { kind: 'magic' } } } },
      'has no valid "procedure.steps.feed.kind"',
    ],
    [
      'a step name that is a path',
      1,
      { procedure: { ...TREE, steps: { 'plug/look': { kind: 'magic' } } } },
      'has no valid "procedure.steps.plug/look.kind"',
    ],
    [
      'a part of an unknown kind',
      1,
      { circuit: { ...CIRCUIT, parts: [{ kind: 'magic' }] } },
      'has no valid "circuit.parts[0].kind"',
    ],
    [
      'a resistance of nothing',
      1,
      { circuit: { ...CIRCUIT, wires: [{ ...CIRCUIT.wires[0], ohms: 0 }] } },
      'has no valid "circuit.wires[0].ohms"',
    ],
    [
      'too many points',
      6,
      {
        capture: {
          ...capture,
          channels: [{ ...capture.channels[0], points: Array(ENVELOPE_POINTS_MAX + 1).fill(0) }],
        },
      },
      'has no valid "capture.channels[0].points"',
    ],
    [
      'a digest that is none',
      6,
      { capture: { ...capture, sha256: 'x' } },
      'has no valid "capture.sha256"',
    ],
    ['another format', 1, { format: 0 }, 'has no valid "format"'],
    ['a step into format 1', 10, { format: 1 }, 'has no valid "format"'],
    ['a resumption that says half', 10, { rules: undefined }, 'lacks "rules"'],
    ['a gap in the numbers', 4, { seq: 9 }, 'should be event 4'],
  ])('%s', (_, seq, part, words) => {
    const flaw = flawOf(EVENTS, seq, part);
    expect(flaw?.words).toBe(words);
    expect(flaw?.fix).toMatch(/look for a copy/);
  });

  it('a first event that opens nothing, and a second one that does', () => {
    expect(flawOf(EVENTS, 1, { ...when(1), type: 'session-paused' })).not.toBeNull();
    expect(checkEvents(stored([{ type: 'session-paused', ...when(0) }])).flaw?.words).toBe(
      'does not open the session',
    );
    expect(checkEvents(stored([opened(), opened()])).flaw).toMatchObject({
      seq: 2,
      words: 'opens the session a second time',
    });
  });

  it('a newer format is told before anything else is looked at', () => {
    for (const [seq, part] of [
      [1, { format: 3 }],
      [10, { format: 4 }],
    ] as const) {
      const { events, flaw } = checkEvents(
        stored(EVENTS).map((event) => (event.seq === seq ? { ...event, ...part } : event)),
      );
      expect(events).toEqual([]);
      expect(flaw).toMatchObject({
        seq,
        words: `was written by a newer version of this program (format ${part.format})`,
      });
      expect(flaw?.fix).toContain('go on with that version');
    }
  });
});

it('a file of a hundred thousand mistakes gives one finding', () => {
  const evidence = Array(100_000).fill({ counted: 'no' });
  expect(validate({ ...EVENTS[6], seq: 7, prev: '0'.repeat(64), evidence })).toBe(false);
  expect(validate.errors!.length).toBeLessThan(10);
});
