/** An answer that led the tree astray, and that its repeats contradict, is offered to be taken back. */
import { beforeAll, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { answeringTest } from '../../src/session/answering-test.ts';
import { overturnedAnswer } from '../../src/session/overturned.ts';
import { presentStep, type Session } from '../../src/session/session.ts';
import { after, type Shop, shopFor, walkOn } from './walk-library.ts';

const FAULT = 'wire.signal.open';
const STEP = 'feed/across';
let shop: Shop;
/** The feed is whole, and was read as dead by a slip: the tree went to look for what is wrong with it. */
let astray: Session;
let test: Test;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
  astray = walkOn(shop, shop.begun, FAULT, { [STEP]: 0 });
  test = testOf(astray.opened.procedure!.steps[STEP]!)!;
});

function again(session: Session, value: number): Session {
  return after(session, {
    ...{ type: 'record-test', test, typed: `${value} V`, expected: null },
    shown: { kind: 'number', value, unit: 'V' },
  });
}

it('is none while nothing was made again, and none where the repeat agrees', () => {
  expect(presentStep(astray)?.kind).toBe('conclude');
  expect(overturnedAnswer(astray)).toBeNull();
  expect(overturnedAnswer(again(astray, 0.001))).toBeNull();
});

it('is the answer on the way that the last repeat contradicts', () => {
  const once = again(astray, 4.98);
  const found = overturnedAnswer(once)!;
  expect(once.trail[found.place]?.step).toBe(STEP);
  expect(once.events[found.answer - 1]).toMatchObject({ type: 'reading-recorded', value: 0 });
  expect(found.by).toBe(once.events.length);
});

it('is none where most readings are as the answer was', () => {
  expect(overturnedAnswer(again(again(astray, 0.001), 4.98))).toBeNull();
  expect(overturnedAnswer(again(again(astray, 4.98), 0.001))).toBeNull();
  expect(overturnedAnswer(again(again(astray, 4.98), 4.97))).not.toBeNull();
});

it('comes before every other test where the conclusion is not borne out, and not for another conclusion', () => {
  const { advisor } = shop;
  const step = presentStep(astray);
  const faults = step?.kind === 'conclude' ? step.faults : [];
  const twice = again(again(astray, 4.98), 4.97);
  const weighed = advisor.weigh(twice, faults);
  expect(weighed.chance).toBeLessThan(0.8);
  expect(weighed.better).toEqual({ kind: 'take-back', overturned: overturnedAnswer(twice) });
  expect(advisor.weigh(twice, [FAULT]).better.kind).not.toBe('take-back');
});

it('is answered by its repeat once it is taken back, and the tree goes on from there', () => {
  const twice = again(again(astray, 4.98), 4.97);
  const { place, by } = overturnedAnswer(twice)!;
  const back = after(twice, { type: 'go-back', to: place });
  expect(presentStep(back)?.id).toBe(STEP);
  expect(answeringTest(back)).toBe(by);
  const on = after(back, { type: 'answer-by-test', by });
  expect(presentStep(on)?.kind).not.toBe('conclude');
  expect(overturnedAnswer(on)).toBeNull();
  const end = walkOn(shop, on, FAULT);
  const concluded = presentStep(end);
  expect(concluded?.kind === 'conclude' && concluded.faults).toContain(FAULT);
});

it('asks for the test anew where the answer by the repeat is taken back in turn', () => {
  const once = again(astray, 4.98);
  const { place, by } = overturnedAnswer(once)!;
  const on = after(after(once, { type: 'go-back', to: place }), { type: 'answer-by-test', by });
  expect(answeringTest(after(on, { type: 'go-back', to: place }))).toBeNull();
});
