/** Chances of code kinds from what the module's input sees: the shares are our assumptions, as the source says. */
import { describe, expect, test } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { Look, Test } from '../../src/circuit/test.ts';
import { codeChance } from '../../src/session/code-chance.ts';

/** A model that shows these looks at the inputs a and b, and counts how often it is asked. */
function seeing(looks: Readonly<Record<string, Look>>, timing: Look = 'in-step') {
  const asked: Test[] = [];
  const shows = (_: string, test: Test, sample: number) => {
    expect(sample).toBe(-1); // the nominal circuit
    asked.push(test);
    const plus = 'plus' in test.probe ? test.probe.plus : '';
    return { kind: 'look', look: test.probe.kind === 'timing' ? timing : looks[plus] };
  };
  return { model: { shows } as unknown as Model, asked };
}

describe('a code', () => {
  test.each<[Look, 'low' | 'high' | 'circuit' | 'range' | 'intermittent' | 'correlation', number]>([
    ['flat-low', 'low', 0.8],
    ['flat-low', 'high', 0.05],
    ['flat-low', 'circuit', 0.8],
    ['flat-high', 'high', 0.8],
    ['flat-high', 'low', 0.05],
    ['flat-middle', 'low', 0.3],
    ['weak', 'range', 0.7],
    ['uneven', 'intermittent', 0.6],
    ['full', 'correlation', 0.1],
  ])('of an input that looks %s is of kind %s with chance %d', (look, kind, chance) => {
    expect(codeChance(seeing({ 'm.a': look }).model, ['m.a'])('fault', kind)).toBe(chance);
  });

  test('of timing is thought of when the pattern is full and shifted', () => {
    expect(
      codeChance(seeing({ 'm.a': 'full' }, 'shifted').model, ['m.a'])('f', 'correlation'),
    ).toBe(0.9);
    expect(codeChance(seeing({ 'm.a': 'weak' }, 'shifted').model, ['m.a'])('f', 'range')).toBe(0.7);
  });

  test('comes from the input where the fault shows', () => {
    const { model } = seeing({ 'm.a': 'full', 'm.b': 'flat-low' });
    expect(codeChance(model, ['m.a', 'm.b'])('f', 'low')).toBe(0.8);
    expect(codeChance(model, ['m.a'])('f', 'low')).toBe(0.1);
  });

  test('is looked for while the engine cranks, once for each fault', () => {
    const { model, asked } = seeing({ 'm.a': 'flat-low' });
    const chance = codeChance(model, ['m.a']);
    for (const kind of ['low', 'high', 'range'] as const) chance('f', kind);
    expect(asked).toEqual([
      {
        setup: {
          state: 'cranking',
          unplugged: [],
          bridges: [],
          sensor: 'fitted',
          target: 'moving',
        },
        probe: { kind: 'pattern', plus: 'm.a', minus: 'battery.negative' },
      },
    ]);
  });
});
