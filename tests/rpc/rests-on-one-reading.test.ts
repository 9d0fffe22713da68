/** A program that accepts a conclusion resting on one reading is told to make it again first. */
import { expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { acknowledge, goTo, newSession, type Served } from './served.ts';

/** A session that has come to the feed wire, which one reading decides. */
async function atConclusion(): Promise<Served> {
  const one = newSession('hall-no-signal', 'wire.ground.resistive');
  const { step } = await goTo(one, 'none');
  expect(step).toMatchObject({ kind: 'conclude', restsOn: expect.any(Number) });
  expect(step['first']).toMatchObject({ words: expect.any(String), minutes: expect.any(Number) });
  return one;
}

it('is refused to accept it or a conclusion of its own, unless it is sure; the record then says so', async () => {
  const one = await atConclusion();
  expect(await one.refusal('accept')).toBe('rests-on-one-reading');
  expect(await one.refusal('conclude', { faults: ['wire.ground.resistive'] })).toBe(
    'rests-on-one-reading',
  );
  const { state } = await one.result('accept', { sure: true });
  const { restsOn } = state['concluded'] as { readonly restsOn: number };
  expect(one.opened.driver.session().events[restsOn - 1]?.type).toMatch(/-recorded$/);
  expect(one.lastEvent()).toMatchObject({ type: 'concluded', restsOn });
});

it('makes it again with the test that the state gives', async () => {
  const one = await atConclusion();
  const { state } = await one.result('state');
  const { test } = state.step['first'] as { readonly test: Test };
  const before = state.step['restsOn'];
  const { cautions } = await one.result('prepare', { test });
  await acknowledge(one, cautions as readonly { readonly id: string }[], { test });
  const after = await one.result('test', { test, take: true });
  expect(after.state.step['restsOn']).not.toBe(before);
});
