/** Another program writes down a test that was made already, and sets one aside that cannot be made. */
import { expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { touchesConnector } from '../../src/circuit/touched-connectors.ts';
import { connectorsOfStep } from '../../src/session/out-of-reach.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { presentStep } from '../../src/session/session.ts';
import { newSession, type Served } from './served.ts';

interface Next {
  readonly proposals: readonly { readonly id: string; readonly test: object }[];
  readonly further: readonly { readonly id: string }[];
  readonly aside: readonly object[];
}

it('what is set aside is proposed no more, until it can be made after all', async () => {
  const one = newSession('reluctor-two-wire', null);
  const next = async () => (await one.result('next')) as unknown as Next;
  const first = await next();
  expect(first.further.length).toBeGreaterThan(0);
  const { id } = first.proposals[0]!;
  await one.result('aside', { test: { test: id } });
  expect(one.lastEvent()).toMatchObject({ type: 'test-set-aside', aside: true });
  const without = await next();
  const ids = [...without.proposals, ...without.further].map((each) => each.id);
  expect(ids).not.toContain(id);
  expect(without.aside).toEqual([first.proposals[0]!.test]);
  await one.result('aside', { test: { test: id }, aside: false });
  expect(one.lastEvent()).toMatchObject({ type: 'test-set-aside', aside: false });
});

it('a test that was made already asks for no caution, and keeps when it was and a note', async () => {
  const one = newSession('reluctor-two-wire', null);
  const test = { measure: 'volts battery.positive battery.negative', state: 'key-on' };
  const { events } = await one.result('test', {
    ...{ test, reading: '12.4 V', made: '14:05', note: 'on the charger' },
  });
  expect(events).toMatchObject([
    { type: 'test-recorded', typed: '12.4 V', made: '14:05', note: 'on the charger' },
  ]);
});

it('a connector that cannot be reached is said once: nothing that needs it is proposed, and steps are gone round', async () => {
  const one = newSession('reluctor-no-signal', null);
  const next = async () => (await one.result('next')) as unknown as NextAt;
  const { circuit } = one.opened.driver.session().opened;
  const needs = ({ proposals, further }: NextAt) =>
    [...proposals, ...further].filter(({ test }) => touchesConnector(circuit!, test, 'sensor'));
  expect(needs(await next()).length).toBeGreaterThan(0);
  expect((await one.result('aside', { connector: 'sensor' })).events).toMatchObject([
    { type: 'connector-set-aside', part: 'sensor', aside: true },
  ]);
  const without = await next();
  expect(needs(without)).toEqual([]);
  expect(without.unreached).toEqual(['sensor']);
  const { cannot } = await walkTo(one, 'sensor');
  const round = one.lastEvent();
  expect(round).toMatchObject({
    type: 'step-impossible',
    go: cannot,
    reason: expect.stringMatching(/^the connector of the .* could not be reached$/),
  });
  const { state } = await one.result('back');
  expect(state.step.id).toBe('step' in round ? round.step : '');
  await one.result('aside', { connector: 'sensor', aside: false });
  expect((await next()).unreached).toEqual([]);
  expect(await one.refusal('aside', { connector: 'lambda' })).toBe('no-such-connector');
  expect(await one.refusal('aside', {})).toBe(-32602);
  expect(await one.refusal('aside', { connector: 'sensor', test: { test: 'x' } })).toBe(-32602);
});

it('a state that the vehicle cannot be had in is said once, and taken back', async () => {
  const one = newSession('reluctor-no-signal', null);
  const next = async () => (await one.result('next')) as unknown as NextAt;
  const turning = ({ proposals, further }: NextAt) =>
    [...proposals, ...further].filter(({ test }) => test.setup.state === 'cranking');
  expect(turning(await next()).length).toBeGreaterThan(0);
  const sent = { state: 'cranking', reason: 'the starter is out' };
  expect((await one.result('aside', sent)).events).toMatchObject([
    { type: 'state-set-aside', aside: true, ...sent },
  ]);
  const without = await next();
  expect(turning(without)).toEqual([]);
  expect([without.unreached, without.statesOut]).toEqual([[], ['cranking']]);
  await one.result('aside', { state: 'cranking', aside: false });
  expect((await next()).statesOut).toEqual([]);
  expect(await one.refusal('aside', { state: 'key-off' })).toBe(-32602);
  expect(await one.refusal('aside', { state: 'cranking', connector: 'sensor' })).toBe(-32602);
});

interface NextAt extends Omit<Next, 'proposals' | 'further'> {
  readonly proposals: readonly { readonly test: Test }[];
  readonly further: readonly { readonly test: Test }[];
  readonly unreached: readonly string[];
  readonly statesOut: readonly string[];
}

/** Answers as the tree wants it until a step was gone round for a connector of this part; that step. */
async function walkTo(one: Served, part: string): Promise<{ readonly cannot: string | null }> {
  const driver = one.opened.driver;
  for (let count = 0; count < 30; count += 1) {
    const step = presentStep(driver.session());
    if (!step || step.kind === 'conclude') break;
    const cautions = pendingCautions(driver.session()).map(({ id }) => id);
    for (const caution of cautions)
      await one.result('acknowledge', { caution, person: 'R. Example' });
    if (step.kind === 'act') await one.result('done');
    else if (step.kind === 'ask')
      await one.result('choose', { choose: step.usual ?? step.outcomes[0]!.name });
    else if (step.cannot === null) throw new Error(`${step.id} has no way round`);
    else await one.result('cannot', { reason: 'no time' });
    const last = one.lastEvent();
    if (last.type === 'step-impossible' && last.by !== undefined) {
      const { circuit, procedure } = driver.session().opened;
      const round = procedure!.steps[last.step]!;
      expect(connectorsOfStep(circuit!, round)).toContain(part);
      return { cannot: 'cannot' in round ? round.cannot : null };
    }
  }
  throw new Error('nothing was gone round');
}
