/** Which outcome of a step stands for what was shown after the repair. */
import { expect, it } from 'vitest';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { isOutcomeOf, passes, type RepeatableStep } from '../../src/session/retest.ts';

const to = (name: string, more: object) => ({ name, words: '', go: 'end', ...more });
const measure = {
  kind: 'measure',
  unit: 'V',
  expected: { low: 4, nominal: 5, high: 6 },
  outcomes: [to('low', { from: null, to: 4 }), to('good', { from: 4, to: null })],
} as unknown as RepeatableStep;
const look = {
  kind: 'look',
  expected: ['full'],
  outcomes: [to('good', { looks: ['full'] }), to('bad', { looks: ['weak', 'flat'] })],
} as unknown as RepeatableStep;
const ask = {
  kind: 'ask',
  outcomes: [to('nothing', { under: [] }), to('it comes', { under: ['wire.signal.open'] })],
} as unknown as RepeatableStep;

const of = (step: RepeatableStep, outcome: string, more: object) =>
  isOutcomeOf(step, { value: null, look: null, outcome, ...more } as never);

it('a number belongs to the range it falls into', () => {
  expect(of(measure, 'low', { value: 3.9 })).toBe(true);
  expect(of(measure, 'good', { value: 3.9 })).toBe(false);
  expect(of(measure, 'good', { value: 4 })).toBe(true);
  expect(of(measure, 'nothing like it', { value: 4 })).toBe(false);
});

it('no number is over the limit, and a number has no look', () => {
  expect(of(measure, 'good', {})).toBe(true);
  expect(of(measure, 'low', {})).toBe(false);
  expect(of(measure, 'good', { value: 5, look: 'full' })).toBe(false);
});

it('a look belongs to the outcome that has it; without one any outcome was said', () => {
  expect(of(look, 'bad', { look: 'flat' })).toBe(true);
  expect(of(look, 'good', { look: 'flat' })).toBe(false);
  expect(of(look, 'good', {})).toBe(true);
  expect(of(look, 'good', { look: 'full', value: 1 })).toBe(false);
});

it('an answer to a question has neither number nor look', () => {
  expect(of(ask, 'nothing', {})).toBe(true);
  expect(of(ask, 'nothing', { look: 'full' })).toBe(false);
  expect(of(ask, 'nothing', { value: 1 })).toBe(false);
});

it('a test passes where a healthy circuit would show the same', () => {
  const pass = (step: RepeatableStep, more: object) =>
    passes({ steps: {} } as unknown as Procedure, step, {
      value: null,
      look: null,
      outcome: 'good',
      ...more,
    } as never);
  expect([3.99, 4, 6, 6.01].map((value) => pass(measure, { value }))).toEqual([
    false,
    true,
    true,
    false,
  ]);
  expect(pass({ ...measure, expected: null } as RepeatableStep, { value: 5 })).toBe(false);
  expect(pass(look, { look: 'full' })).toBe(true);
  expect(pass(look, { look: 'weak' })).toBe(false);
  expect(pass(look, {})).toBe(false);
});
