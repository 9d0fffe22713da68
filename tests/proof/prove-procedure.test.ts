/** The proof on the worked example: silent on the tree as it is, and at the right place when it is spoiled. */
import { describe, expect, test } from 'vitest';
import { CIRCUIT, CIRCUIT_TEXT, checkExample, checkWithCircuit, TREE_TEXT } from './example.ts';

/** `code line` of each issue, and the line of the text that `near` stands in. */
function found(...changes: readonly (readonly [string, string])[]): string[] {
  return checkExample(...changes).issues.map(({ code, at }) => `${code} ${at.line}`);
}

function lineOf(near: string): number {
  return TREE_TEXT.slice(0, TREE_TEXT.indexOf(near)).split('\n').length;
}

test('the worked example is proved without a finding', () => {
  const { issues, proof } = checkExample();
  expect(issues).toEqual([]);
  expect(proof!.rows.map(({ fault }) => fault)).toEqual([
    'healthy',
    ...CIRCUIT.faults.map(({ id }) => id),
  ]);
  for (const { fault, ends } of proof!.rows) {
    expect(
      ends.reduce((sum, { share }) => sum + share, 0),
      fault,
    ).toBeCloseTo(1, 12);
    expect(
      ends.every(({ verdict }) => verdict === 'right' || verdict === 'inseparable'),
      fault,
    ).toBe(true);
  }
  // A bad contact and shorted turns that are only just noticed while the wheel turns read like nothing at rest.
  for (const { share } of proof!.inseparable) expect(share).toBeLessThan(0.05);
});

test('a fault ends where one follows the tree by hand', () => {
  const ends = new Map(checkExample().proof!.rows.map((row) => [row.fault, row]));
  // By hand: an open low wire lifts the bias (high), the loop is open (high), the coil and the high wire are right.
  expect(ends.get('wire.low.open')).toMatchObject({
    ends: [{ step: 'low-broken', share: 1 }],
    steps: 5,
    // bias: 0.5 for the key, 0.5 to walk, 6 to get at the module, 1 to read. loop: 1 for the key and the walk, 1 to
    // unplug, 2 to read. coil: 1 for the other plug, 3 to get at the sensor, 2 to read. high-wire: 2. low-wire: 1
    minutes: 8 + 4 + 6 + 2 + 1,
  });
  expect(ends.get('healthy')).toMatchObject({
    ends: [{ step: 'no-fault', share: 1 }],
    steps: 4,
    // bias as above; the scope 3, and 0.5 to turn the wheel by hand; then live data 1 and the position 4
    minutes: 8 + 3.5 + 1 + 4,
  });
});

test('the proof is the same each time', () => {
  expect(JSON.stringify(checkExample().proof)).toBe(JSON.stringify(checkExample().proof));
});

describe('a spoiled tree is told at the place of the slip', () => {
  test('swapped targets: at the outcomes, and the fix names the right target', () => {
    const { issues } = checkExample(
      [
        'good: { words: the coil is right, go: high-wire }',
        'good: { words: the coil is right, go: coil-bad }',
      ],
      [
        'high: { words: open or resistance too high, go: coil-bad }',
        'high: { words: open or resistance too high, go: high-wire }',
      ],
    );
    const wrong = issues.filter(({ code }) => code === 'wrong-conclusion');
    expect(wrong.map(({ at, fix }) => [at.line, fix])).toEqual([
      [
        lineOf('good: { words: the coil is right'),
        'let it lead to "high-wire": everything that leaves by it then ends right',
      ],
      [
        lineOf('high: { words: open or resistance too high, go: coil-bad'),
        'let it lead to "coil-bad": everything that leaves by it then ends right',
      ],
    ]);
    expect(wrong[0]!.severity).toBe('error');
    expect(wrong[0]!.words).toContain('wire.high.open (256 of 256 cars, 100 %)');
  });

  test('a limit in the wrong decade: the step, with what is read', () => {
    // A good wire of 4 m has 0.11 to 0.21 ohm, cold or hot (predicted), so "good below 0.1 ohm" calls it bad.
    const { issues } = checkExample(
      [
        'good: { below: 2 ohm, words: good, go: low-wire }',
        'good: { below: 0.1 ohm, words: good, go: low-wire }',
      ],
      [
        'high: { from: 2 ohm, words: open or resistive, go: high-broken }',
        'high: { from: 0.1 ohm, words: open or resistive, go: high-broken }',
      ],
    );
    const narrow = issues.find(({ code }) => code === 'good-too-narrow')!;
    expect(narrow.at.line).toBe(lineOf('good: { below: 2 ohm, words: good, go: low-wire }'));
    expect(narrow.severity).toBe('error');
    expect(narrow.words).toMatch(/reads 0\.1\d+ to 0\.2\d/);
    expect(issues.some(({ code }) => code === 'wrong-conclusion')).toBe(true);
  });

  test('a limit that lets a fault pass as good', () => {
    // A resistive wire has 6.5 kohm and more (predicted); with a limit of 1 Mohm it passes for good.
    const { issues } = checkExample(
      [
        'good: { below: 2 ohm, words: good, go: low-wire }',
        'good: { below: 1 Mohm, words: good, go: low-wire }',
      ],
      [
        'high: { from: 2 ohm, words: open or resistive, go: high-broken }',
        'high: { from: 1 Mohm, words: open or resistive, go: high-broken }',
      ],
    );
    const wide = issues.find(({ code }) => code === 'good-too-wide')!;
    expect(wide.at.line).toBe(lineOf('good: { below: 2 ohm, words: good, go: low-wire }'));
    expect(wide.words).toContain('wire.high.resistive');
    const lost = issues.find(({ code }) => code === 'wrong-conclusion')!;
    expect(lost.fix).toMatch(/move the limit between the two/);
  });

  test('a limit that lies between good and lost readings already is not to be moved', () => {
    // A good loop has 428 to 894 ohm and an open one reads OL (predicted): no limit parts them better.
    const { issues } = checkExample(
      [
        `why: Right here means that the break is on the controller's side of its connector.
    measure: { ohms: [module.pickup-high, module.pickup-low] }
    expect: computed`,
        `why: Right here means that the break is on the controller's side of its connector.
    measure: { ohms: [module.pickup-high, module.pickup-low] }`,
      ],
      [
        `low: { words: resistance too low, go: shorted-turns }
      good: { words: coil and wires are right, go: controller-ground }
      high: { words: open or resistance too high, go: coil }`,
        `low: { below: 400 ohm, words: resistance too low, go: shorted-turns }
      good: { from: 400 ohm, to: 1 kohm, words: coil and wires are right, go: controller-ground }
      high: { from: 1 kohm, words: open or resistance too high, go: high-broken }`,
      ],
      [
        'good: { words: the coil is right, go: high-wire }',
        'good: { words: the coil is right, go: coil-bad }',
      ],
    );
    const fixes = issues
      .filter(
        ({ code, words }) => code === 'wrong-conclusion' && words.includes('"high" of "loop"'),
      )
      .map(({ fix }) => fix);
    expect(fixes).toHaveLength(1);
    expect(fixes[0]).not.toMatch(/move the limit/);
    expect(fixes[0]).toMatch(/tells them apart|stand for it too/);
  });

  test('a conclusion that forgets its faults', () => {
    const { issues } = checkExample([
      'conclude: [wire.low.open, wire.low.resistive]',
      'conclude: [sensor.leads-swapped]',
    ]);
    expect(issues.map(({ code, at }) => `${code} ${at.line}`)).toContain(
      `uncovered-fault ${lineOf('conclude: [wire.low.open, wire.low.resistive]')}`,
    );
  });

  test('a conclusion that says nothing was found', () => {
    const { issues } = checkExample([
      'conclude: [wire.low.open, wire.low.resistive]',
      'conclude: []',
    ]);
    const missed = issues.find(({ code }) => code === 'uncovered-fault')!;
    expect(missed.words).toContain('wire.low.open');
    expect(missed.fix).toContain('this test shows it:');
  });

  test('no conclusion for a healthy circuit', () => {
    const { issues } = checkExample(['conclude: []', 'conclude: [target.displaced]']);
    const blamed = issues.find(({ code }) => code === 'healthy-blamed')!;
    expect(blamed.at.line).toBe(lineOf('conclude: []'));
    expect(blamed.fix).toContain('conclude: []');
  });

  test('a healthy circuit that is blamed', () => {
    expect(
      found([
        'in-step: { words: in step, go: no-fault }',
        'in-step: { words: in step, go: gap-wide }',
      ]),
    ).toContain(`healthy-blamed ${lineOf('in-step:')}`);
  });

  test('a way without end', () => {
    const { issues } = checkExample([
      'in-step: { words: in step, go: no-fault }',
      'in-step: { words: in step, go: picture }',
    ]);
    expect(issues.find(({ code }) => code === 'endless-walk')?.at.line).toBe(lineOf('  picture:'));
  });

  test('leads the wrong way round', () => {
    const { issues } = checkExample([
      'measure: { volts: [module.pickup-high, battery.negative] }',
      'measure: { volts: [battery.negative, battery.positive] }',
    ]);
    const codes = issues.map(({ code, at }) => `${code} ${at.line}`);
    expect(codes).toContain(`reversed-leads ${lineOf('measure: { volts')}`);
    expect(codes).toContain(`separates-nothing ${lineOf('  bias:')}`);
  });

  test('a branch that nothing comes to', () => {
    expect(found(['battery: { from: 5 V,', 'battery: { from: 40 V,'])).toContain(
      `never-reached ${lineOf('battery: { from: 5 V')}`,
    );
  });

  test('a retest that passes before the repair', () => {
    const { issues } = checkExample([
      'must learn it.\n    retest: [picture]',
      'must learn it.\n    retest: [bias]',
    ]);
    expect(issues.map(({ code }) => code)).toEqual(['blind-retest']);
    expect(issues[0]!.words).toContain('target.damaged');
  });
});

test('a fault that ends where only its repair is named', () => {
  // Both conclusions stand for a new pickup, so nothing is repaired wrongly; what is said there is wrong.
  const { issues } = checkExample(
    ['conclude: [sensor.shorted-turns]', 'conclude: [sensor.coil-open]'],
    [
      'conclude: [sensor.coil-open, sensor.coil-resistive]',
      'conclude: [sensor.shorted-turns, sensor.coil-resistive]',
    ],
  );
  expect(issues.map(({ code, severity, at }) => [code, severity, at.line])).toEqual([
    ['named-elsewhere', 'warning', lineOf('conclude: [sensor.shorted-turns]')],
    ['named-elsewhere', 'warning', lineOf('conclude: [sensor.coil-open, sensor.coil-resistive]')],
  ]);
});

test('a question without a usual answer is answered every way', () => {
  const { proof, issues } = checkExample(
    ['start: bias', 'start: hint'],
    [
      'steps:\n',
      'steps:\n  hint:\n    say: Was the ring of teeth just off?\n    why: It may have slipped.\n    outcomes:\n      ring-was-off: { go: shifted-signal }\n      ring-stayed-on: { go: bias }\n',
    ],
  );
  const healthy = proof!.rows[0]!;
  expect(healthy.ends.map(({ step, share }) => [step, share])).toEqual([
    ['shifted-signal', 0.5],
    ['no-fault', 0.5],
  ]);
  expect(issues.some(({ code }) => code === 'healthy-blamed')).toBe(true);
  const usual = checkExample(
    ['start: bias', 'start: hint'],
    [
      'steps:\n',
      'steps:\n  hint:\n    say: Was the ring of teeth just off?\n    why: It may have slipped.\n    usual: ring-stayed-on\n    outcomes:\n      ring-was-off: { go: shifted-signal }\n      ring-stayed-on: { go: bias }\n',
    ],
  );
  // By that answer nobody has seen whether the signal is good, which the conclusion says.
  expect(usual.issues.map(({ code, at }) => `${code} ${at.line}`)).toEqual([
    'answer-loses 12',
    'unmeasured-claim 201',
  ]);
  const declared = checkExample(
    ['start: bias', 'start: hint'],
    [
      'steps:\n',
      'steps:\n  hint:\n    say: Was the ring of teeth just off?\n    why: It may have slipped.\n    usual: ring-stayed-on\n    outcomes:\n      ring-was-off: { only-with: [target.displaced, sensor.leads-swapped], because: Work on it shifts it., go: shifted-signal }\n      ring-stayed-on: { go: bias }\n',
    ],
  );
  // The answer is true of these faults now, and still nobody has seen the signal.
  expect(declared.issues.map(({ code }) => code)).toEqual(['unmeasured-claim']);
});

describe('how much of a fault goes wrong', () => {
  const small = (ohms: string) =>
    CIRCUIT_TEXT.replace(
      'faults:\n',
      `faults:\n  contact.sensor.plus.resistive: { ohms: ${ohms} }\n`,
    );

  test('a fault that no instrument can tell from a healthy circuit may end at "no fault found", and is listed', () => {
    // 10 milliohm in series with a coil of 600 ohm: a part in 60,000, below every meter's last digit.
    const { issues, proof } = checkWithCircuit(small('10 mohm .. 12 mohm'));
    expect(issues.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'warning like-healthy',
    ]);
    expect(issues[0]?.words).toBe(
      'no instrument tells contact.sensor.plus.resistive (100 %) from a healthy circuit, so "no-fault" is where it ends',
    );
    expect(proof!.inseparable).toContainEqual({ fault: 'contact.sensor.plus.resistive', share: 1 });
    const row = proof!.rows.find(({ fault }) => fault === 'contact.sensor.plus.resistive')!;
    expect(row.ends).toEqual([{ step: 'no-fault', verdict: 'inseparable', share: 1 }]);
  });
});
