/**
 * Broken circuits, each a good one with a few words changed, and what is said about them, word for word. After a
 * change of words on purpose, read what `OHMWARD_GOLDEN=write npx vitest run tests/circuit/broken.test.ts` has written
 * to tests/circuit/broken.txt before you keep it.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { formatIssue } from '../../src/source/format-issue.ts';
import { knownText } from './known-car.ts';

const GOLDEN = 'tests/circuit/broken.txt';
type Edit = readonly [from: string | RegExp, to: string];
const faults = (text: string): Edit => [/$/, `faults:\n${text}`];

const CASES: readonly (readonly [string, string, ...Edit[]])[] = [
  ['a value no vehicle has', 'hall-module-fed', ['2.2 kohm', '2.2 Gohm']],
  ['a value below what a meter can show', 'hall-module-fed', ['8 mA', '8 nA']],
  ['no value at all', 'hall-module-fed', ['2.2 kohm +/- 5 %', 'some']],
  ['zero ohms', 'hall-module-fed', ['ohms: 2.2 kohm +/- 5 %', 'ohms: 0 ohm']],
  ['a wire without length', 'hall-module-fed', [/(feed: .*)length: 3 m/, '$1length: 0 m']],
  ['half an input', 'hall-module-fed', [', high-above: 3.5 V', '']],
  ['a swing against nothing', 'reluctor-two-wire', [', against: signal-minus', '']],
  ['a swing against no pin', 'reluctor-two-wire', ['against: signal-minus', 'against: minus']],
  ['thresholds crossed', 'hall-module-fed', ['low-below: 1.5 V', 'low-below: 3.5 V']],
  [
    'a pin joined to itself',
    'hall-module-fed',
    ['joined-to: reference', 'joined-to: throttle-reference'],
  ],
  ['a pull to nothing', 'hall-module-fed', ['to: reference, ohms', 'to: sky, ohms']],
  ['more than the whole track', 'throttle-potentiometer', ['open: 90 %', 'open: 99 %']],
  ['less than nothing of it', 'throttle-potentiometer', ['closed: 12 %', 'closed: 1 %']],
  ['a track without ends', 'pedal-dual', [/, closed: 7.5 % .* 1.5 %/, '']],
  ['a track with one end', 'pedal-dual', [/, open: 43 % .* 1.5 %/, '']],
  ['a track beside none', 'pedal-dual', [/closed: 7.5 % .* 1.5 %/, 'beside: track-9']],
  [
    'a track beside one that has no ends',
    'pedal-dual',
    [/closed: 7.5 % .* 1.5 %/, 'beside: track-1'],
    [/closed: 15 % .* 3 %/, 'beside: track-2'],
  ],
  ['a track with ends twice', 'pedal-dual', ['closed: 7.5 %', 'beside: track-1, closed: 7.5 %']],
  [
    'a track that runs nohow',
    'pedal-dual',
    [/closed: 7.5 % .* 1.5 %/, 'beside: track-1, runs: double'],
  ],
  [
    'several ways to run, one of them none',
    'pedal-dual',
    [/closed: 7.5 % .* 1.5 %/, 'beside: track-1, runs: "one of: half 50 %, oposite 50 %"'],
  ],
  [
    'a travel in volts',
    'throttle-potentiometer',
    ['low-below: 1.2 V', 'of: travel, low-below: 1.2 V'],
  ],
  [
    'two sensors, and a reserved name',
    'hall-module-fed',
    [/ {2}throttle-position:\n(.*\n){4}/, '  harness:\n    kind: reluctor\n'],
  ],
  ['a wire to nowhere', 'hall-module-fed', ['from: module.signal', 'from: module.singal']],
  ['two wires at one terminal', 'hall-relay-fed', ['to: fuse.in', 'to: relay.30']],
  [
    'two wires at a battery post are none too many',
    'hall-relay-fed',
    ['from: relay.87', 'from: battery.positive'],
  ],
  [
    'a splice of one wire',
    'hall-relay-fed',
    [
      'feed-trunk: { from: fuse.out, to: splice.feed',
      'feed-trunk: { from: fuse.out, to: splice.alone',
    ],
  ],
  ['no input on the wire', 'hall-module-fed', [/ {8}input: .*\n/, '']],
  [
    'a coil without a way to ground',
    'reluctor-two-wire',
    [/ {8}pull: .*\n/g, ''],
    ['signal-minus:\n', 'signal-minus: {}\n'],
  ],
  [
    'a wire that touches nothing',
    'hall-relay-fed',
    [
      'wires:\n',
      'wires:\n  loop: { from: splice.a, to: splice.b, size: 1 mm2, length: 1 m }\n  back: { from: splice.a, to: splice.b, size: 1 mm2, length: 1 m }\n',
    ],
  ],
  ['a fault nobody has', 'hall-module-fed', faults('  wire.signal.opne: { weight: 1 }\n')],
  [
    'a fault that changes nothing',
    'hall-relay-fed',
    faults('  wire.fuse-supply.short-to-ground: { weight: 1 }\n'),
  ],
  ['a fault that nothing shows', 'current-two-wire', [/$/, '  sensor.reversed: { weight: 1 }\n']],
  ['a size for a break', 'hall-module-fed', faults('  wire.feed.open: { ohms: 5 ohm }\n')],
  ['a size for what is dead', 'hall-module-fed', faults('  sensor.dead: { ohms: 5 ohm }\n')],
  ['a size of nothing', 'hall-module-fed', faults('  wire.feed.resistive: { ohms: 0 ohm }\n')],
];

test('what is said about broken circuits is as it was read last', () => {
  const said = CASES.map(([title, name, ...edits]) => {
    const good = knownText(name);
    const text = edits.reduce((so, [from, to]) => so.replace(from, to), good);
    expect(text, title).not.toBe(good);
    const { value, issues } = loadCircuit(text, `${name}.yaml`);
    const lines = issues.map((issue) => formatIssue(issue, text));
    return `# ${title}: ${value ? 'usable' : 'not usable'}\n\n${lines.join('\n') || 'nothing'}\n`;
  }).join('\n');
  if (process.env['OHMWARD_GOLDEN'] === 'write') writeFileSync(GOLDEN, said);
  expect(said).toBe(readFileSync(GOLDEN, 'utf8'));
});
