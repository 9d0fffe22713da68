/** Limits that the meter cannot tell, limits that let a bad wire pass, and work that no caution speaks of. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { proveProcedure } from '../../src/proof/prove-procedure.ts';
import { LIBRARY, link, modelFor, TREES } from './library.ts';

const CARS = 32;

/** A tree of the library with each of these texts in one of its files changed, linked. */
function changed(tree: string, file: string, from: string, to: string) {
  const path = file === tree ? `procedures/${file}.yaml` : `procedures/families/${file}.yaml`;
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  const parsed = parseProcedure(text.replaceAll(from, to), path).value!;
  const procedures = new Map([...LIBRARY.procedures, [file, parsed]]);
  const library = { procedures, circuits: LIBRARY.circuits, cautions: LIBRARY.cautions };
  return linkProcedure(procedures.get(tree)!, library, {
    drive: 'combustion',
    modelOf: (circuit) => modelFor(circuit, CARS),
  });
}

test.each(TREES)('no work in %s as it ships lacks its caution', (_, parsed) => {
  expect(link(parsed, CARS).issues).toEqual([]);
});

describe('a limit for a wire that carries', () => {
  const withLimit = (limit: string) => {
    const { value } = changed('throttle-position', 'end-to-end', '5 ohm,', `${limit},`);
    const { issues } = proveProcedure(value!, modelFor(value!.circuit!, CARS));
    return issues.filter(({ code }) => code.startsWith('limit-too-'));
  };
  // A wire and two contacts have some tenths of an ohm; a 6000-count meter may be 0.3 ohm off there.
  test('inside what the meter may be off is told', () => {
    const issues = withLimit('0.2 ohm');
    expect(issues.map(({ code }) => code)).toContain('limit-too-fine');
    expect(issues[0]!.words).toMatch(/closer to a limit of "(good|high)" than a meter can resolve/);
    expect(issues[0]!.fix).toMatch(/can be off by 0\.3\d* Ω here/);
  });
  test('that lets a wire of kilohms pass is told', () => {
    const issues = withLimit('5 kohm');
    expect(issues.map(({ code }) => code)).toContain('limit-too-far');
    expect(issues.map(({ words }) => words).join('\n')).toMatch(/"good" of ".*" also holds wire\./);
  });
});

// Of what has electronics in it ohms say nothing, and can damage it: common practice, no source.
describe('ohms that meet electronics are told with the line and the way out', () => {
  test.each<[tree: string, file: string, from: string, to: string, part: string]>([
    [
      'hall-relay-no-signal',
      'hall-relay-no-signal',
      'unplug: [fuse, sensor, speed-sensor]',
      'unplug: [fuse, sensor]',
      'speed-sensor',
    ],
    [
      'hall-relay-no-signal',
      'hall-relay-no-signal',
      'unplug: [fuse, sensor, speed-sensor]',
      'unplug: [fuse, speed-sensor]',
      'sensor',
    ],
    ['throttle-position', 'track-from-module', 'unplug: [$module]', 'unplug: []', 'module'],
    [
      'throttle-position',
      'throttle-position',
      'unplug: [module, pressure-sensor, sensor]',
      'unplug: [module, sensor]',
      'pressure-sensor',
    ],
  ])('%s, %s: %s', (tree, file, from, to, part) => {
    const { issues } = changed(tree, file, from, to);
    const refused = issues.filter(({ code }) => code === 'refused-test');
    expect(refused.map(({ fix }) => fix)).toContain(`add "${part}" to "unplug"`);
    const words = `unplug "${part}" first: resistance is measured with nothing electronic in the circuit`;
    const told = refused.find((issue) => issue.words.includes(words))!;
    const path = file === tree ? `procedures/${file}.yaml` : `procedures/families/${file}.yaml`;
    expect(told.at.file).toBe(path);
    const line = readFileSync(path, 'utf8').split('\n')[told.at.line - 1];
    expect(line).toContain('measure: { ohms:');
  });
});

describe('a caution that is taken away', () => {
  test.each<string[]>([
    ['throttle-position', 'throttle-position', 'cautions: [throttle-snaps]', 'moves a throttle'],
    ['pedal-position', 'live-value', 'cautions: [throttle-snaps]', 'moves a throttle'],
    ['pedal-position', 'pedal-position', 'cautions: [airbag-near]', 'works under the dash'],
    [
      'wheel-speed-current',
      'wheel-speed-current',
      'cautions: [raised-wheel]',
      'raises the vehicle',
    ],
    ['wheel-speed-current', 'scope-by-hand', 'cautions: [raised-wheel]', 'turns a wheel'],
    ['throttle-position', 'wake-by-hand', 'cautions: [hot-air]', 'works with hot air'],
    ['wheel-speed-current', 'look-at-ring', 'cautions: [raised-wheel]', 'turns a wheel'],
    ['hall-no-signal', 'timing-first', 'cautions: [timing-first]', 'whether the timing has moved'],
    ['hall-no-signal', 'look-at-wheel', 'cautions: [turned-by-hand]', 'turns the engine by hand'],
    [
      'hall-no-signal',
      'timing-first',
      'cautions: [timing-first, turned-by-hand]',
      'turns the engine by hand',
    ],
    ['hall-no-signal', 'look-at-connector', 'cautions: [unplug-key-off]', 'opens a connector'],
    [
      ...['hall-no-signal', 'timing-first', 'cautions: [timing-first, turned-by-hand]'],
      ...['this step turns the engine by hand, and', 'cautions: [timing-first]'],
    ],
    ['hall-no-signal', 'look-at-wheel', 'cautions: [turned-by-hand]', 'turns the engine by hand'],
  ])('in %s (%s) is told: %s', (tree, file, caution, words, left = 'cautions: []') => {
    const { issues } = changed(tree!, file!, caution!, left);
    expect(issues.map(({ code }) => code)).toContain('missing-caution');
    expect(issues.map((issue) => issue.words).join('\n')).toContain(words);
  });
});
