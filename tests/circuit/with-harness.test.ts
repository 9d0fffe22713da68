/** A connector of this car in the signal wire: its sections and contact are suspects, and all else is as without it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Circuit, Fault } from '../../src/circuit/circuit.ts';
import { drawCircuit } from '../../src/circuit/draw-circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { copperOf } from '../../src/circuit/open-values.ts';
import { NOMINAL } from '../../src/circuit/samples.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Setup, Test } from '../../src/circuit/test.ts';
import { withHarness } from '../../src/circuit/with-harness.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { fitHarness } from '../../src/procedure/fit-harness.ts';
import type { HarnessSaid } from '../../src/procedure/job.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { harnessSaid, harnessText, readHarness } from '../../src/procedure/read-harness.ts';
import { fitNeighbours } from '../../src/procedure/read-neighbours.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { testEntries } from '../../src/suspects/test-entries.ts';
import { harnessRemark, harnessWrong } from '../../src/ui/screens/harness-field.ts';

const HALL = load('hall-module-fed');
const BULKHEAD: HarnessSaid = {
  connector: 'at the bulkhead',
  wires: ['feed', 'signal'],
  at: '1 m',
  minutes: 7,
};
const WIRE: HarnessSaid = { wire: 'signal', length: '4 m', size: '0.5 mm2' };

function load(name: string): Circuit {
  const text = readFileSync(`procedures/circuits/${name}.yaml`, 'utf8');
  return loadCircuit(text, name).value!;
}

function fitted(circuit: Circuit, ...said: HarnessSaid[]) {
  const { harness, problems } = readHarness(circuit, said);
  expect(problems).toEqual([]);
  return withHarness(circuit, harness);
}

const { circuit: CAR, becomes } = fitted(HALL, BULKHEAD, WIRE);
const of = (id: string): Fault => CAR.faults.find((one) => one.id === id)!;
const sum = (faults: readonly Fault[]) => faults.reduce((all, { weight }) => all + weight, 0);

describe('a connector in the signal and feed wires', () => {
  test('the wire becomes two sections with the connector between, a quarter and three quarters of its copper', () => {
    const [near, far] = CAR.wires.filter((one) => one.of === 'signal');
    expect([near!.from, near!.to]).toEqual(['sensor.signal', 'bulkhead.signal']);
    expect([far!.from, far!.to]).toEqual(['bulkhead.signal.pin', 'module.signal']);
    // 4 m of 0.5 mm2 stranded copper at 25 degC: 4/58/0.5 * 1.07 * (1 + 5 * 0.00393) ohm, by hand.
    const whole = (4 / 58 / 0.5) * 1.07 * (1 + 5 * 0.00393);
    expect(near!.ohms).toBeCloseTo(whole / 4, 9);
    expect(far!.ohms).toBeCloseTo((whole * 3) / 4, 9);
    // Known length and size leave the usual spread of 15 %.
    expect(copperOf(far!).high).toBeCloseTo(1.15 * far!.ohms, 9);
  });

  test('each fault of the whole wire is shared out among its sections, and no weight is lost', () => {
    for (const whole of HALL.faults) {
      const now = becomes.get(whole.id);
      if (!now || !whole.id.startsWith('wire.')) continue;
      const sections = now.map(of).filter(({ id }) => id.startsWith('wire.'));
      expect(sum(sections), whole.id).toBeCloseTo(whole.weight, 9);
    }
    const open = HALL.faults.find(({ id }) => id === 'wire.signal.open')!;
    expect(of('wire.signal.1.open').weight).toBeCloseTo(open.weight / 4, 9);
    expect(of('wire.signal.2.open').words).toBe(
      'the signal wire between the connector at the bulkhead and the engine control module is broken',
    );
    expect(of('wire.signal.2.open').repairWords).toBe(
      'Mend the signal wire between the connector at the bulkhead and the engine control module.',
    );
  });

  test('a contact of the connector is as likely as the one in the plug, and counts as a fault of the wire', () => {
    const plug = HALL.faults.find(({ id }) => id === 'contact.sensor.signal.resistive')!;
    const joint = of('contact.bulkhead.signal.resistive');
    expect(joint.weight).toBe(plug.weight);
    expect(joint.words).toBe('the signal contact of the connector at the bulkhead is corroded');
    expect(becomes.get('wire.signal.resistive')).toEqual([
      'wire.signal.1.resistive',
      'wire.signal.2.resistive',
      'contact.bulkhead.signal.resistive',
    ]);
  });

  test('wires touch only where they run beside one another', () => {
    const ids = becomes.get('wire.signal.short-to-feed')!;
    expect(ids).toEqual(['wire.signal.1.short-to-feed.1', 'wire.signal.2.short-to-feed.2']);
    expect(becomes.get('wire.signal.short-to-ground-wire')).toEqual([
      'wire.signal.1.short-to-ground-wire',
      'wire.signal.2.short-to-ground-wire',
    ]);
  });

  test('water between two pins of the plug stays a fault of the plug', () => {
    const leaks = HALL.faults.filter(({ id }) => id.includes('.leaks-to-'));
    expect(leaks.length).toBeGreaterThan(0);
    for (const whole of leaks) {
      const { effect: _, ...now } = of(whole.id);
      const { effect: __, ...before } = whole;
      expect(now).toEqual(before);
      expect(becomes.get(whole.id)).toEqual([whole.id]);
    }
    expect(of('contact.sensor.feed.leaks-to-signal').effect).toMatchObject({
      wire: 'feed.1',
      to: { wire: 'signal.1' },
    });
  });

  test('what is not of these wires stays as it is', () => {
    const kept = HALL.faults.filter(({ id }) => !becomes.has(id));
    expect(CAR.faults).toEqual(expect.arrayContaining(kept));
  });

  test('every test that there was is still there, and reads the same in a sound car', () => {
    const before = standardTests(HALL);
    const now = new Map(standardTests(CAR).map((one) => [one.id, one]));
    for (const { id, test: one } of before) expect(now.get(id)?.test, id).toEqual(one);
    const [old, fresh] = [HALL, CAR].map((circuit) => modelOf(circuit));
    for (const { id, test: one } of before.filter(({ family }) => family === 'signal')) {
      const shown = [old!, fresh!].map((model) => model.shows('healthy', one, NOMINAL));
      if (shown[0]!.kind === 'number')
        expect((shown[1] as { value: number }).value, id).toBeCloseTo(shown[0]!.value, 1);
    }
  });

  test('the sketch has the module at the other end of each wire', () => {
    const options = { width: 80, ascii: true };
    expect(drawCircuit(CAR, options)).toEqual(drawCircuit(HALL, options));
  });

  test('the whole sketch names the connectors of this car, and who shares its feed', () => {
    const named = fitNeighbours(HALL, [
      { name: 'oil pressure sensor', shares: ['feed', 'ground'] },
      { name: 'fan', shares: ['ground'] },
    ]);
    const { circuit } = fitted(named.circuit, BULKHEAD);
    const options = { width: 80, ascii: true, besides: true };
    expect(drawCircuit(circuit, options).slice(-3)).toEqual([
      ' in the harness: connector at the bulkhead (feed, signal), 1 m from the sensor',
      ' shares with it: oil pressure sensor (feed, ground)',
      ' shares with it: fan (ground)',
    ]);
    // The circuit file has a throttle position sensor, which nobody has named.
    expect(drawCircuit(circuit, options).join()).not.toContain('throttle');
  });
});

function modelOf(circuit: Circuit) {
  return createModel(circuit, { samples: 4, seed: 1, meter: STANDARD_SETTINGS.meter });
}

const PULLED: Setup = {
  state: 'key-on',
  unplugged: ['sensor'],
  bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: { ohms: 470 } }],
  sensor: 'fitted',
  target: 'still',
};
const at = (plus: string): Test => ({
  setup: PULLED,
  probe: { kind: 'volts', plus, minus: 'battery.negative' },
});

describe('under load at the connector', () => {
  const model = modelOf(CAR);
  const volts = (fault: string, test: Test, sample: number) =>
    (model.shows(fault, test, sample) as { value: number }).value;

  test('an open is told to lie on one side or the other, in every car', () => {
    for (const sample of [0, 1, 2, 3]) {
      // 470 ohm pulls a sound wire far down; nothing reaches it through an open.
      expect(volts('wire.signal.2.open', at('bulkhead.signal'), sample)).toBeCloseTo(0, 3);
      expect(volts('wire.signal.1.open', at('bulkhead.signal'), sample)).toBeGreaterThan(4);
      expect(
        volts('contact.bulkhead.signal.open', at('bulkhead.signal.pin'), sample),
      ).toBeGreaterThan(4);
      expect(volts('contact.bulkhead.signal.open', at('bulkhead.signal'), sample)).toBeCloseTo(
        0,
        3,
      );
    }
  });

  test('its minutes are those of the job sheet', () => {
    const entry = testEntries(CAR, null, STANDARD_SETTINGS.meter).find(
      ({ id }) => id === 'bulkhead.signal.loaded',
    );
    expect(entry?.access).toEqual({ bulkhead: 7 });
  });
});

test.each([
  'hall-relay-fed',
  'reluctor-two-wire',
  'throttle-potentiometer',
  'pedal-dual',
  'current-two-wire',
])('all wires of the sensor of %s can pass a connector', (name) => {
  const circuit = load(name);
  const sensor = circuit.parts.find(
    ({ kind }) => !['module', 'fuse', 'relay', 'neighbour', 'ground-point'].includes(kind),
  )!;
  const wires = circuit.wires
    .filter(({ from, to }) => [from, to].some((end) => end.startsWith(`${sensor.name}.`)))
    .map((wire) => wire.name);
  const car = fitted(circuit, { connector: 'at the bulkhead', wires }).circuit;
  const ids = new Set(standardTests(car).map(({ id }) => id));
  for (const { id } of standardTests(circuit)) expect(ids, id).toContain(id);
  expect([...ids].filter((id) => id.startsWith('bulkhead.')).length).toBeGreaterThan(wires.length);
});

describe('what a job sheet cannot mean is said with a way out', () => {
  test.each<[string, HarnessSaid[], RegExp]>([
    [
      'an unknown wire',
      [{ connector: 'at the bulkhead', wires: ['sgnal'] }],
      /no wire is called "sgnal"/,
    ],
    [
      "a wire that is not the sensor's",
      [{ connector: 'x', wires: ['throttle-feed'] }],
      /does not end at the sensor/,
    ],
    ['no wire', [{ connector: 'at the bulkhead' }], /no wire goes through/],
    ['a splice of two', [{ splice: 'here', wires: ['feed', 'signal'] }], /is of 2 wires/],
    [
      'the wrong order',
      [
        { ...BULKHEAD, at: '2 m' },
        { splice: 'taped', wires: ['signal'], at: '1 m' },
      ],
      /not farther from the sensor's connector/,
    ],
    [
      'a wire that ends before its connector',
      [BULKHEAD, { wire: 'signal', length: '0.9 m' }],
      /ends before/,
    ],
    ['a distance in ohms', [{ ...BULKHEAD, at: '3 ohm' }], /not a plausible length in a harness/],
  ])('%s', (_, said, words) => {
    const { problems } = readHarness(HALL, said);
    expect(problems).toHaveLength(1);
    expect(problems[0]!.words).toMatch(words);
    expect(problems[0]!.fix).not.toBe('');
  });
});

test('a whole wire that was replaced is as unlikely in each of its sections', () => {
  const chance = (replaced: readonly string[]) => {
    const prior = priorFor(CAR.faults, { replaced });
    return CAR.faults.reduce(
      (sum, { repair }, at) => (repair.startsWith('wire.signal.') ? sum + prior[at]! : sum),
      0,
    );
  };
  expect(chance(['wire.signal'])).toBeLessThan(chance([]) / 2);
});

test('what a tree concludes of a whole wire, it concludes of its sections and of the contacts on its way', () => {
  const end = { kind: 'conclude', faults: ['sensor.dead', 'wire.signal.open'] };
  const procedure = { steps: { end } } as unknown as Procedure;
  const { harness } = readHarness(HALL, [BULKHEAD]);
  expect(fitHarness(harness, { circuit: HALL, procedure }).procedure.steps['end']).toMatchObject({
    faults: [
      'sensor.dead',
      'wire.signal.1.open',
      'wire.signal.2.open',
      'contact.bulkhead.signal.open',
    ],
  });
});

test('the text of the sheet and the list of a job file are the same', () => {
  const said: HarnessSaid[] = [
    { ...BULKHEAD, minutes: 4 },
    { splice: 'under the tape', wires: ['signal'], at: '2 m' },
    WIRE,
  ];
  const text = harnessText(said);
  expect(text).toBe(
    'connector at the bulkhead: feed, signal, at 1 m, 4 min; splice under the tape: signal, at 2 m; wire signal: 4 m, 0.5 mm2',
  );
  expect(harnessSaid(text)).toEqual(said);
  expect(harnessRemark(text, HALL)).toMatch(
    /^Understood: connector at the bulkhead, 1 m from the sensor; splice/,
  );
  expect(harnessWrong('connector at the bulkhead: sgnal', HALL)).toMatch(/no wire is called/i);
});

test('joints have names of their own, whatever they are called', () => {
  const names = (...where: readonly string[]) =>
    readHarness(
      HALL,
      where.map((connector) => ({ connector, wires: ['signal'] })),
    ).harness.joints.map(({ name }) => name);
  expect(names('at the bulkhead', 'behind the sensor', 'на щите', '???')).toEqual([
    'bulkhead',
    'joint-2',
    'joint-3',
    'joint-4',
  ]);
  expect(names('at the bulkhead', 'at the bulkhead')).toEqual(['bulkhead']);
});
