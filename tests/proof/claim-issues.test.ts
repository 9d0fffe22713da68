/**
 * Sentences of a conclusion that some way to it does not bear out. The two texts of the Hall tree that were reported once
 * are among them: one look into a plug, and heat and wiggle, each with "neither is at fault" printed. That the shipped
 * trees have none is in tests/library/proof.test.ts.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import { claimsOf } from '../../src/proof/claims.ts';
import { proveProcedure } from '../../src/proof/prove-procedure.ts';
import { LIBRARY, modelFor, tree } from './library.ts';
import { base } from './small-tree.ts';

const CARS = 16;

/** Findings on claims with one text of a shipped tree changed. */
function found(name: string, from: string, to: string) {
  const text = readFileSync(`procedures/${name}.yaml`, 'utf8');
  expect(text).toContain(from);
  const { value } = linkProcedure(tree(text.replace(from, to)), LIBRARY, {
    drive: 'combustion',
    modelOf: (circuit) => modelFor(circuit, CARS),
  });
  const { issues } = proveProcedure(value!, modelFor(value!.circuit!, CARS));
  return issues.filter(({ code }) => code === 'unmeasured-claim');
}

describe('a planted sentence is told at its text, with a way that does not show it', () => {
  const HALL =
    'A contact in the connector of the crankshaft sensor does not carry current, or current leaks from one to the next.';
  test.each([
    ['The ground wire was tested and is good.', 'a step that reads or looks at that part'],
    ['A good sensor does not count either.', 'a step with a good sensor plugged in'],
    ['With the module unplugged it is the same.', 'a step with the module unplugged'],
    ['The pulses are uneven.', 'a scope picture or live data'],
    ['The plug is corroded.', 'a look at it'],
    ['The reference leaves the module.', "a reading at the module's terminals"],
    ['The ground is lifted at the sensor.', "a reading at the sensor's connector"],
  ])('%s', (sentence, needs) => {
    const issues = found('hall-no-signal', HALL, `${HALL} ${sentence}`);
    expect(issues.map(({ words }) => words).join('\n')).toContain(needs);
    expect(issues[0]).toMatchObject({ severity: 'error', at: { file: 'tree.yaml' } });
    expect(issues[0]!.notes?.[0]).toMatch(/^one such path: prepare, .*sensor-plug$/);
  });

  test('for the customer as well', () => {
    const told = 'The crankshaft sensor itself is at fault.';
    const issues = found('hall-no-signal', told, `${told} The wheel and its gap were tested.`);
    expect(issues[0]?.words).toMatch(/^"sensor-bad" says "were tested"/);
  });
});

test('what a conclusion stands for it cannot call good', () => {
  const text =
    'A contact in the connector of the crankshaft sensor does not carry current, or current leaks from one to the next.';
  const [issue] = found('hall-no-signal', text, `${text} The plug of the sensor was tested.`);
  expect(issue?.words).toBe('"sensor-plug" says "was tested" of what it names as the fault');
});

test('a sentence that every way shows may stand', () => {
  const told = 'customer: One wire to the camshaft sensor is damaged.';
  // The feed branch is told from the trunk by the neighbour's feed on every way.
  expect(
    found('hall-relay-no-signal', told, 'customer: The neighbour on the same trunk has its feed.'),
  ).toEqual([]);
});

describe('what a sentence states', () => {
  const circuit = LIBRARY.circuits.get('hall-module-fed')!;
  const needs = (text: string) => claimsOf(text, circuit, []).map((claim) => claim.needs);
  test.each([
    ['Without a good sensor to try, plug and gap cannot be told apart.'],
    ['Without unplugging the module its two wires cannot be told apart.'],
    ['A corroded contact and a dead input cannot be told apart from outside.'],
    ['Nothing that was measured is wrong now.'],
    ['The feed wire is at fault.'],
  ])('is nothing in "%s"', (text) => {
    expect(needs(text)).toEqual([]);
  });
});

test.each([
  ['With a temporary pull-up from outside the module counts.', 'a step with a bridge'],
  ["There is no pull-up at the sensor's connector.", "a reading at the sensor's connector"],
  ['The voltage at the sensor is negative.', "a reading at the sensor's connector"],
  ['There is a signal at the {module.signal}.', "a reading at the module's terminals"],
  ['There is no feed at the module.', "a reading at the module's terminals"],
  ['There is more than a reference on the feed.', 'a reading at a feed'],
  ['There is no signal.', 'a reading or a look at the signal'],
])('"%s" states what a step has to show', (text, needs) => {
  const circuit = LIBRARY.circuits.get('hall-module-fed')!;
  const said = claimsOf(text, circuit, []).map((claim) => claim.needs);
  expect(said.join('\n')).toContain(needs);
});

describe('what is said of a reading is shown by a step that reads it', () => {
  const circuit = LIBRARY.circuits.get('hall-module-fed')!;
  const spare = (probe: object) =>
    ({ ...looking(probe), setup: { ...base.setup, sensor: 'spare' } }) as ReturnType<
      typeof looking
    >;
  const clipped = (from: string) =>
    ({
      ...looking({ kind: 'volts', plus: from, minus: 'battery.negative' }),
      setup: { ...base.setup, bridges: [{ from, to: 'battery.negative', through: 330 }] },
    }) as unknown as ReturnType<typeof looking>;
  const watching = (probe: object) =>
    ({ ...base, id: 'step', kind: 'ask', watched: [probe], outcomes: [] }) as unknown as ReturnType<
      typeof looking
    >;
  const volts = (plus: string) => looking({ kind: 'volts', plus, minus: 'battery.negative' });
  const pattern = { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' };
  const counts = { kind: 'counts', input: 'module.signal' };
  const ohms = { kind: 'ohms', plus: 'sensor.feed', minus: 'sensor.ground' };
  test.each([
    ['The signal is weak with a good sensor too.', 'is said of it', spare(pattern), spare(counts)],
    [
      'A good crank sensor gives the same weak signal.',
      'is said of it',
      spare(pattern),
      looking(pattern),
    ],
    ['Nor does it where a good one draws current.', 'is said of it', spare(pattern), spare(counts)],
    ["The loop's ohms jump when it is moved.", 'in ohms', watching(ohms), watching(pattern)],
    [
      'The signal cannot be pulled down.',
      'pulls at the signal',
      clipped('sensor.signal'),
      clipped('sensor.feed'),
    ],
    [
      'It takes away the bias of one side.',
      'of the bias',
      volts('module.signal'),
      volts('module.reference'),
    ],
    [
      'The sensor is starved.',
      "sensor's own supply",
      volts('sensor.feed'),
      volts('module.reference'),
    ],
  ])('%s', (text, needs, shows, elsewhere) => {
    const claim = claimsOf(text, circuit, []).find((one) => one.needs.includes(needs));
    expect(claim!.isShownBy!(shows)).toBe(true);
    expect(claim!.isShownBy!(elsewhere)).toBe(false);
  });
});

describe('what is called good is shown by a step at that very thing', () => {
  const circuit = LIBRARY.circuits.get('hall-module-fed')!;
  const looked = (of: string) => looking({ kind: 'inspect', of });
  const read = (plus: string) => looking({ kind: 'volts', plus, minus: 'battery.negative' });
  test.each([
    ['The wheel was tested.', looked('target'), looked('connector.sensor')],
    ['The ring was tested.', looked('target'), looked('sensor')],
    ['The sensor was tested.', read('sensor.signal'), read('module.signal')],
    ['The plug of the sensor was tested.', looked('connector.sensor'), looked('target')],
    ['The feed wire was tested.', read('sensor.feed'), read('sensor.signal')],
    ['The feed wire was tested.', looked('wire.feed'), looked('wire.signal')],
  ])('%s', (text, shows, elsewhere) => {
    const [claim] = claimsOf(text, circuit, []);
    expect(claim!.isShownBy!(shows)).toBe(true);
    expect(claim!.isShownBy!(elsewhere)).toBe(false);
  });
});

test('a part that is called by its name alone is meant, and no other with a plug', () => {
  const circuit = LIBRARY.circuits.get('hall-module-fed')!;
  const unplugging = (part: string) =>
    ({
      ...looking({ kind: 'inspect', of: 'target' }),
      setup: { ...base.setup, unplugged: [part] },
    }) as ReturnType<typeof looking>;
  const [claim] = claimsOf('With the sensor unplugged it is the same.', circuit, []);
  expect(claim!.needs).toBe('a step with that part unplugged');
  expect(claim!.isShownBy!(unplugging('sensor'))).toBe(true);
  const other = circuit.parts.find(({ kind }) => kind === 'neighbour')!.name;
  expect(claim!.isShownBy!(unplugging(other))).toBe(false);
});

function looking(probe: object) {
  return { ...base, id: 'step', kind: 'look', probe, outcomes: [] } as unknown as Exclude<
    Step,
    { kind: 'conclude' }
  >;
}
