/** Reading circuit files: everything that can be wrong, all at once, each at its line. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { knownCircuit, knownText } from './known-car.ts';
import { FOLDER, NAMES, textOf } from './shipped.ts';

const GOOD = knownText('hall-module-fed');

/** Issues as `line code fix`. */
function found(text: string): string[] {
  return loadCircuit(text, 'test.yaml').issues.map(
    ({ at, code, fix }) => `${at.line} ${code}${fix ? ` ${fix}` : ''}`,
  );
}

/** Line of the first text that holds `part`. */
function lineOf(text: string, part: string): number {
  return text.split('\n').findIndex((line) => line.includes(part)) + 1;
}

describe('free texts', () => {
  const withNotes = (length: number) =>
    GOOD.replace(/^notes: >-\n( {2}.*\n)+/m, `notes: ${'a'.repeat(length)}\n`);

  test('notes have 2,000 letters at most', () => {
    const text = withNotes(2000);
    expect(lineOf(text, 'notes: aaa')).toBeGreaterThan(0);
    expect(found(text)).toEqual([]);
    const long = withNotes(2001);
    const { issues } = loadCircuit(long, 'test.yaml');
    expect(issues.map(({ code, at, words }) => [code, at.line, words])).toEqual([
      ['out-of-bounds', lineOf(long, 'notes: aaa'), '"notes" must have at most 2000 letters'],
    ]);
  });
});

describe('all in one round', () => {
  const spoiled = (...edits: readonly (readonly [string, string])[]) =>
    edits.reduce((text, [from, to]) => {
      expect(text).toContain(from);
      return text.replace(from, to);
    }, GOOD);
  const codesOf = (text: string) =>
    loadCircuit(text, 'test.yaml')
      .issues.map(({ at, code }) => `${code} ${at.line}`)
      .sort();

  test('a mistyped key hides no value that is none, and no wire that ends nowhere', () => {
    const text = spoiled(
      ['teeth: 60', 'teeths: 60'],
      ['minimum: 3.8 V', 'minimum: 3,8 V'],
      ['to: sensor.signal, size', 'to: sensor.singal, size'],
    );
    expect(codesOf(text)).toEqual([
      `bad-value ${lineOf(text, '3,8 V')}`,
      `loose-pin ${lineOf(text, '  sensor:')}`,
      `unknown-key ${lineOf(text, 'teeths')}`,
      `unknown-terminal ${lineOf(text, 'sensor.singal')}`,
    ]);
  });

  test('a part that cannot be read hides no value elsewhere, and brings no mistake of its own', () => {
    const text = spoiled(['kind: neighbour', 'kind: plug'], ['minimum: 3.8 V', 'minimum: 3,8 V']);
    expect(codesOf(text)).toEqual([
      `bad-value ${lineOf(text, '3,8 V')}`,
      `unknown-choice ${lineOf(text, 'kind: plug')}`,
    ]);
  });

  test('a connector on the way is sent to the job sheet', () => {
    const text = spoiled(['kind: neighbour', 'kind: connector']);
    expect(found(text)).toEqual([
      `${lineOf(text, 'kind: connector')} unknown-choice a connector or splice in the middle of a wire is not a part: write the wire in one piece, and name it under "harness" of the job sheet`,
    ]);
  });

  test('a key that stands there twice hides neither', () => {
    const text = spoiled(
      ['minimum: 3.8 V', 'minimum: 3,8 V\n    minimum: 4 V'],
      ['teeth: 60', 'teeths: 60'],
    );
    expect(codesOf(text)).toEqual(
      [
        `repeated-key ${lineOf(text, 'minimum: 4 V')}`,
        `bad-value ${lineOf(text, '3,8 V')}`,
        `unknown-key ${lineOf(text, 'teeths')}`,
      ].sort(),
    );
  });

  test('a decimal comma is answered with the point', () => {
    const text = spoiled(['minimum: 3.8 V', 'minimum: 3,8 V']);
    expect(found(text)).toEqual([
      `${lineOf(text, '3,8 V')} bad-value write it with a point: 3.8 V`,
    ]);
  });
});

describe('shipped circuits', () => {
  test.each(NAMES)('%s loads without any issue, and is called like its file', (name) => {
    const { value, issues } = loadCircuit(textOf(name), `${name}.yaml`);
    expect(issues).toEqual([]);
    expect(value?.name).toBe(name);
  });

  test('there are the six families', () => {
    expect(
      readdirSync(FOLDER)
        .sort()
        .map((file) => file.replace('.yaml', '')),
    ).toEqual([
      'current-two-wire',
      'hall-module-fed',
      'hall-relay-fed',
      'pedal-dual',
      'reluctor-two-wire',
      'throttle-potentiometer',
    ]);
  });
});

test('every fault says what it is, what mends it, how likely it is and where it sits', () => {
  // Loaded here and not beside the tests, so that what is computed belongs to this one.
  const { faults } = knownCircuit('hall-module-fed');
  for (const { id, words, repair, repairWords, weight, subject, visibleChance } of faults) {
    expect(words, id).toMatch(/^the /);
    expect(repair, id).toMatch(/^[a-z-]+(\.[a-z-]+)*$/);
    expect(repairWords, id).toMatch(/\.$/);
    expect(weight, id).toBeGreaterThan(0);
    expect(subject.length, id).toBeGreaterThan(0);
    expect(visibleChance, id).toBeGreaterThanOrEqual(0);
    expect(visibleChance, id).toBeLessThanOrEqual(1);
  }
  const of = (kind: string) => faults.filter((fault) => fault.class === kind).map(({ id }) => id);
  // each contact of the module and of the sensor is open or corroded, in the order of the pins
  const contacts = ['module.reference', 'module.signal', 'module.ground'].concat([
    'sensor.feed',
    'sensor.signal',
    'sensor.ground',
  ]);
  expect(of('connector')).toEqual([
    ...contacts.flatMap((pin) => [`contact.${pin}.open`, `contact.${pin}.resistive`]),
    'contact.sensor.signal.leaks-to-ground',
    'sensor.feed.swapped-with-signal',
    'sensor.feed.swapped-with-ground',
    'sensor.signal.swapped-with-ground',
  ]);
  expect(of('wire')).toEqual([
    'wire.feed.open',
    'wire.feed.resistive',
    'wire.feed.short-to-ground',
    'wire.feed.short-to-battery',
    'wire.feed.short-to-ground-wire',
    'wire.signal.open',
    'wire.signal.resistive',
    'wire.signal.short-to-ground',
    'wire.signal.short-to-battery',
    'wire.signal.short-to-feed',
    'wire.signal.short-to-ground-wire',
    'wire.ground.open',
    'wire.ground.resistive',
    'wire.throttle-feed.short-to-ground',
    'wire.throttle-feed.short-to-battery',
  ]);
  const total = (kind: string) =>
    faults.reduce((sum, fault) => sum + (fault.class === kind ? fault.weight : 0), 0);
  expect(['connector', 'wire', 'sensor', 'module'].map(total)).toEqual(
    [5, 3, 3, 0.3].map((weight) => expect.closeTo(weight, 9)),
  );
  const contact = faults.find(({ id }) => id === 'contact.sensor.feed.open')!;
  expect(contact).toMatchObject({
    repair: 'connector.sensor',
    subject: ['contact.sensor.feed', 'connector.sensor'],
    effect: { kind: 'contact-open', terminal: 'sensor.feed' },
  });
  const short = faults.find(({ id }) => id === 'wire.signal.short-to-feed')!;
  expect(short).toMatchObject({
    repair: 'wire.signal',
    subject: ['wire.signal', 'harness', 'wire.feed'],
    effect: { kind: 'wire-short', wire: 'signal', to: { wire: 'feed' } },
  });
});

describe('faults follow from the structure', () => {
  const circuit = knownCircuit('hall-module-fed');
  const ids = circuit.faults.map((fault) => fault.id);

  test.each([
    'wire.feed.open',
    'wire.feed.resistive',
    'wire.feed.short-to-ground',
    'wire.feed.short-to-battery',
    'wire.signal.short-to-feed',
    'contact.sensor.feed.open',
    'contact.module.signal.resistive',
    'sensor.dead',
    'sensor.stuck-low',
    'sensor.stuck-high',
    'sensor.weak-pull-down',
    'module.reference.dead',
    'module.reference.low',
    'module.signal.pull-missing',
    'module.signal.input-dead',
    'module.ground.open',
    'throttle-position.shorted',
    'target.damaged',
    'target.displaced',
    'target.gap-wide',
  ])('%s', (id) => {
    expect(ids).toContain(id);
  });

  test('a ground wire has no short to ground, and no fault is without a symptom', () => {
    expect(ids).not.toContain('wire.ground.short-to-ground');
    // An open ground of the neighbour changes nothing for this sensor.
    expect(ids).not.toContain('wire.throttle-ground.open');
    const current = knownCircuit('current-two-wire').faults.map((fault) => fault.id);
    // The feed carries battery voltage anyway.
    expect(current).not.toContain('wire.feed.short-to-battery');
  });
});

describe('the author changes faults', () => {
  const load = (faults: string) => loadCircuit(`${GOOD}faults:\n${faults}`, 'test.yaml');
  const fault = (circuit: Circuit | null, id: string) =>
    circuit?.faults.find((one) => one.id === id);

  test('weight, words, repair and size', () => {
    const { value, issues } = load(
      '  wire.feed.resistive: { weight: 9, words: green crimp, repair: crimp, repair-words: Crimp anew., ohms: 500 ohm .. 900 ohm }\n',
    );
    expect(issues).toEqual([]);
    expect(fault(value, 'wire.feed.resistive')).toMatchObject({
      weight: 9,
      words: 'green crimp',
      repair: 'crimp',
      repairWords: 'Crimp anew.',
      effect: { ohms: { low: 500, high: 900 } },
    });
  });

  test('what is not said stays as it was', () => {
    const before = fault(knownCircuit('hall-module-fed'), 'wire.feed.open')!;
    const { value } = load('  wire.feed.open: { weight: 2 }\n');
    expect(fault(value, 'wire.feed.open')).toEqual({ ...before, weight: 2 });
    const worded = load('  wire.feed.open: { words: green crimp }\n').value;
    expect(fault(worded, 'wire.feed.open')).toEqual({ ...before, words: 'green crimp' });
    // and so does every other fault
    expect(fault(value, 'wire.signal.open')).toEqual(
      fault(knownCircuit('hall-module-fed'), 'wire.signal.open'),
    );
  });

  test('without weight it is left out', () => {
    expect(fault(load('  wire.feed.open: { weight: 0 }\n').value, 'wire.feed.open')).toBe(
      undefined,
    );
  });

  test.each<[string, string, object]>([
    ['hall-module-fed', 'wire.signal.resistive', { ohms: { low: 5, high: 7 } }],
    ['hall-module-fed', 'wire.signal.short-to-ground', { ohms: { low: 5, high: 7 } }],
    ['hall-module-fed', 'contact.sensor.signal.resistive', { ohms: { low: 5, high: 7 } }],
    ['hall-module-fed', 'sensor.weak-pull-down', { size: { low: 5, high: 7 } }],
    ['reluctor-two-wire', 'sensor.coil-resistive', { size: { low: 5, high: 7 } }],
    ['hall-relay-fed', 'relay.contact-resistive', { size: { low: 5, high: 7 } }],
  ])('of the %s the size of %s', (name, id, effect) => {
    const text = `${knownText(name)}faults:\n  ${id}: { ohms: 5 ohm .. 7 ohm }\n`;
    const { value, issues } = loadCircuit(text, 'test.yaml');
    expect(issues).toEqual([]);
    const before = fault(knownCircuit(name), id)!;
    expect(fault(value, id)).toEqual({ ...before, effect: { ...before.effect, ...effect } });
  });

  test('ruled out with a reason', () => {
    expect(
      fault(
        load('  sensor.stuck-low: { ruled-out: this make has no such part }\n').value,
        'sensor.stuck-low',
      ),
    ).toBeUndefined();
  });

  test('a mistyped fault is named with the nearest one', () => {
    const text = `${GOOD}faults:\n  wire.fed.open: { weight: 1 }\n`;
    expect(found(text)).toEqual([
      `${lineOf(text, 'wire.fed.open')} unknown-fault did you mean "wire.feed.open"?`,
    ]);
  });

  test('a size for a fault that has none', () => {
    expect(load('  wire.feed.open: { ohms: 5 ohm }\n').issues.map((issue) => issue.code)).toEqual([
      'no-size',
    ]);
  });

  test('a size for a shorted neighbour, which has its own in the part', () => {
    const text = `${knownText('throttle-potentiometer')}faults:\n  pressure-sensor.shorted: { ohms: 1 ohm }\n`;
    const { issues } = loadCircuit(text, 'test.yaml');
    expect(issues).toMatchObject([{ code: 'no-size', fix: expect.stringContaining('"shorted"') }]);
  });
});

describe('mistakes, each at its place', () => {
  test.each([
    // what, from, to, code, fix
    ['unknown key', 'title:', 'titel:', 'unknown-key', 'did you mean "title"?'],
    [
      'unknown kind',
      'kind: hall-switch',
      'kind: hall-swich',
      'unknown-choice',
      'did you mean "hall-switch"?',
    ],
    ['unknown key in a part', 'draws: 8 mA', 'drows: 8 mA', 'unknown-key', 'did you mean "draws"?'],
    [
      'unknown terminal',
      'to: sensor.feed',
      'to: sensor.fed',
      'unknown-terminal',
      'did you mean "sensor.feed"?',
    ],
    [
      'unknown pin',
      'to: reference, ohms',
      'to: referense, ohms',
      'unknown-pin',
      'did you mean "reference"?',
    ],
    [
      'no unit',
      'ohms: 2.2 kohm +/- 5 %',
      'ohms: "2200"',
      'bad-value',
      'write it like 2.2 kohm +/- 5 %',
    ],
    ['wrong unit', 'minimum: 3.8 V', 'minimum: 3.8 A', 'bad-value', 'write it like 5 V +/- 2 %'],
    ['number instead of text', 'ohms: 4 kohm +/- 20 %', 'ohms: 4', 'wrong-type', null],
    [
      'not positive',
      'size: 0.5 mm2, length: 2 m }\ntarget',
      'size: 0 mm2, length: 2 m }\ntarget',
      'not-positive',
      null,
    ],
    ['a battery the wrong way round', 'battery: 12.6 V', 'battery: -12.6 V', 'not-positive', null],
    ['thresholds crossed', 'low-below: 1.5 V', 'low-below: 4.5 V', 'bad-thresholds', null],
  ])('%s', (_what, from, to, code, fix) => {
    const text = GOOD.replace(from, to);
    expect(text).not.toBe(GOOD);
    const issues = loadCircuit(text, 'test.yaml').issues;
    const first = issues.find((issue) => issue.code === code);
    expect(first, JSON.stringify(issues)).toBeDefined();
    expect(first!.at.line).toBe(lineOf(text, to.split('\n')[0]!));
    if (fix !== null) expect(first!.fix).toBe(fix);
    expect(loadCircuit(text, 'test.yaml').value).toBeNull();
  });

  test('a part without its kind is told once, with the kinds there are', () => {
    const text = GOOD.replace('    kind: hall-switch\n', '');
    expect(found(text)).toEqual([
      `${lineOf(text, '  sensor:')} missing-key one of: module, hall-switch, reluctor, potentiometer, current-switch, fuse, relay, ground-point, neighbour`,
    ]);
  });

  test('names in capitals', () => {
    expect(found(GOOD.replace('circuit: hall-module-fed', 'circuit: Hall'))).toEqual([
      '2 bad-form use small letters, digits and hyphens',
    ]);
    expect(found(GOOD.replace('  sensor:\n', '  Sensor:\n')).join()).toContain(
      'bad-name use small letters, digits and hyphens',
    );
  });

  test('several at once', () => {
    const text = GOOD.replace('to: sensor.feed', 'to: sensor.fed')
      .replace('draws: 8 mA +/- 40 %', 'draws: 8 lamps')
      .replace('to: reference, ohms', 'to: refrence, ohms');
    expect(loadCircuit(text, 'test.yaml').issues.map((issue) => issue.code)).toEqual(
      expect.arrayContaining(['unknown-terminal', 'bad-value', 'unknown-pin', 'loose-pin']),
    );
  });

  test('two wires at one terminal, a splice with one wire, a pin without one', () => {
    const taken = GOOD.replace('to: sensor.signal', 'to: sensor.feed');
    expect(found(taken)).toContain(
      `${lineOf(taken, 'signal: { from: module.signal')} terminal-taken join wires at a splice, for example splice.feed`,
    );
    expect(found(taken).join()).toContain('loose-pin');
    expect(found(GOOD.replace('from: module.reference', 'from: splice.feed')).join()).toContain(
      'lonely-splice',
    );
  });

  test('a coil that nothing joins to ground is named before anything is solved', () => {
    const text = knownText('reluctor-two-wire')
      .replace(/ {8}pull: .*\n/g, '')
      .replace('signal-minus:\n', 'signal-minus: {}\n');
    const issues = loadCircuit(text, 'test.yaml').issues;
    expect(issues.map((issue) => issue.code)).toEqual(['no-path-to-ground']);
    expect(issues[0]!.words).toMatch(/^"(module|sensor)\.[a-z-]+" has no path to ground$/);
    expect(issues[0]!.at.line).toBe(
      lineOf(text, issues[0]!.words.includes('module') ? '  module:' : '  sensor:'),
    );
  });

  test.each(['battery: -1 V', 'cranking: -2 V', 'running: -3 V', 'ohms: -4 ohm'])(
    'a supply with "%s" is told at that line',
    (line) => {
      const text = GOOD.replace(/^supply:\n( {2}.*\n)*/m, `supply:\n  # as measured\n  ${line}\n`);
      expect(text).toContain(line);
      expect(found(text).join()).toMatch(new RegExp(`^${lineOf(text, line)} `));
    },
  );

  test('no sensor, two modules, a reserved name', () => {
    expect(
      found(
        GOOD.replace('kind: hall-switch', 'kind: ground-point').replace(
          / {4}(draws|minimum|on|off|limit): .*\n/g,
          '',
        ),
      ).join(),
    ).toContain('one-sensor');
    expect(
      found(
        GOOD.replace('parts:\n', 'parts:\n  second:\n    kind: module\n    pins: { a: {} }\n'),
      ).join(),
    ).toContain('one-module');
    expect(
      found(GOOD.replace('parts:\n', 'parts:\n  battery:\n    kind: relay\n')).join(),
    ).toContain('reserved-name');
  });

  test('empty, a list, and no YAML at all', () => {
    expect(loadCircuit('', 'test.yaml').value).toBeNull();
    expect(found('')).toEqual(['1 wrong-type']);
    expect(found('- a\n').join()).toContain('wrong-type');
    expect(found('a: [').join()).toContain('yaml-syntax');
  });
});
