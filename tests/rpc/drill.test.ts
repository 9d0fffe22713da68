/** A drill for another program: the vehicle answers by itself, and no more is told than the level shows. */
import { describe, expect, it } from 'vitest';
import { acknowledge, fillable, newDrill, PERSON } from './served.ts';

const FEED = { measure: 'volts sensor.plus battery.negative' };

describe('a level', () => {
  it('that shows everything shows the suspects, the next tests and what is good', async () => {
    const one = newDrill('reluctor-no-signal', 'named', 7);
    expect((await one.result('state')).state).toMatchObject({
      drill: { level: 'named', seed: 7, shows: { suspects: true, expected: true } },
      diagnosis: { leading: expect.any(Array) },
    });
    expect((await one.result('next'))['proposals']).toHaveLength(3);
    await one.result('suspects');
  });

  it('that shows nothing shows none of it, also not by what stands around it', async () => {
    const one = newDrill('reluctor-no-signal', 'blind', 7);
    const { state } = await one.result('state');
    expect(state['diagnosis']).toBeNull();
    for (const method of ['suspects', 'next']) expect(await one.refusal(method)).toBe('hidden');
    const cautions = (await one.result('prepare', { test: FEED }))['cautions'] as { id: string }[];
    await acknowledge(one, cautions, { test: FEED });
    const { events } = await one.result('measure', { test: FEED });
    expect(events).toMatchObject([{ type: 'test-recorded', expected: null, judgement: null }]);
    for (let count = 0; count < 4; count += 1) {
      const told = (await one.result('state')).state;
      await one
        .result('acknowledge', { caution: told.cautions.map(({ id }) => id), person: PERSON })
        .catch(() => {});
      const { state: after } = await one.result('follow');
      if (after.step.kind !== 'measure') continue;
      expect(after.step).toMatchObject({ good: null, why: '', test: { expected: null } });
      for (const outcome of after.step.outcomes)
        expect(Object.keys(outcome).sort()).toEqual(['name', 'words']);
      return;
    }
    throw new Error('no measurement came');
  });
});

it('a person’s answers have no place at the vehicle of a drill', async () => {
  const one = newDrill('reluctor-no-signal', 'named', 7);
  const before = one.opened.driver.head();
  const calls: [string, object?][] = [
    ['reading', { reading: '5 V' }],
    ['choose', { choose: 'circuit' }],
    ['done'],
    ['take'],
    ['cannot', { reason: 'none' }],
    ['test', { test: FEED, reading: '5 V' }],
    ['back'],
    ['instruments', {}],
    ['accept'],
    ['conclude', { faults: ['wire.plus.open'] }],
    ['retests'],
  ];
  for (const [method, params] of calls)
    expect(await one.refusal(method, params)).toBe('vehicle-answers');
  expect(one.opened.driver.head()).toEqual(before);
  const { methods } = await one.result('hello');
  expect(methods).not.toContain('reading');
});

it('a test that does damage is stopped, and preparing it does not tell', async () => {
  const one = newDrill('reluctor-no-signal', 'named', 7);
  const test = { measure: 'ohms sensor.plus battery.negative', state: 'key-on' };
  expect(await one.result('prepare', { test })).toMatchObject({ refused: null });
  const { error } = await one.call('measure', { test });
  expect(error?.data).toMatchObject({
    code: 'test-stopped',
    events: [{ type: 'test-stopped', hazard: 'ohms-on-live' }],
    state: { status: 'open' },
  });
});

it('cautions that are passed over come back with the refusal, and stand in the record', async () => {
  const one = newDrill('reluctor-no-signal', 'named', 7);
  const { error } = await one.call('measure', { test: FEED });
  expect(error?.data).toMatchObject({
    code: 'caution-passed-over',
    events: [{ type: 'caution-passed-over' }],
  });
  await acknowledge(one, error?.data?.['cautions'] as never, { test: FEED });
  expect((await one.result('measure', { test: FEED })).events).toHaveLength(1);
});

it('a capture counts at once, at any leads of the scope', async () => {
  const one = newDrill('reluctor-no-signal', 'named', 7);
  expect(await one.refusal('capture')).toBe('no-capture');
  const test = { capture: 'sensor.plus sensor.minus', state: 'cranking' };
  const cautions = (await one.result('prepare', { test }))['cautions'] as { id: string }[];
  await acknowledge(one, cautions, { test });
  const { events } = await one.result('capture', { test });
  expect(events).toMatchObject([{ type: 'test-recorded', capture: { from: 'bench' } }]);
});

it('the diagnosis ends it: a wrong name is refused, none gives it up, and the debrief tells all', async () => {
  const { desk, fill } = fillable();
  const one = newDrill('reluctor-no-signal', 'named', 7, desk);
  expect(await one.refusal('debrief')).toBe('not-revealed');
  expect(await one.refusal('diagnose', { repairs: ['wire.pluss'] })).toBe('no-such-repair');
  expect(await one.refusal('diagnose', { repairs: ['wire.plus', 'wire.minus'] })).toBe(
    'too-many-repairs',
  );
  // The disk refuses the diagnosis: where it goes on, the answer comes after it.
  fill(true);
  expect(await one.refusal('diagnose', { repairs: [] })).toBe('disk');
  expect(await one.refusal('move', { folder: '/elsewhere' })).toBe('disk');
  fill(false);
  const { state, events } = await one.result('move', { folder: '/elsewhere' });
  expect(events.map(({ type }) => type)).toEqual([
    'segment-continued',
    'concluded',
    'answer-revealed',
  ]);
  expect(state.status).toBe('closed');
  expect(await one.result('debrief')).toMatchObject({ right: false, points: expect.any(Number) });
  expect(await one.refusal('measure', { test: FEED })).toBe('not-open');
});
