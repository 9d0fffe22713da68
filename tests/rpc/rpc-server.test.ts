/** A session for another program: what it is told, what it can do, what is refused. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Drive, emptyJob, type Job } from '../../src/procedure/job.ts';
import { generateWheels } from '../../src/waveform/generate.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';
import {
  acknowledge,
  fillable,
  goTo,
  newDrill,
  newSession,
  PERSON,
  type Served,
  type ToldState,
} from './served.ts';

const FEED = { measure: 'volts sensor.feed battery.negative' };

/** Past the battery, which the tree reads first, and the timing to the question about the code. */
async function toCode(one: Served): Promise<ToldState> {
  await acknowledge(one, (await one.result('state')).state.cautions);
  const { state } = await one.result('done');
  expect(state.step.id).toBe('battery/battery');
  await acknowledge(one, state.cautions);
  const asked = (await one.result('reading', { reading: '12.6 V' })).state;
  expect(asked.step.id).toBe('timing/signs');
  await acknowledge(one, asked.cautions);
  return (await one.result('choose', { choose: 'none' })).state;
}

describe('the state', () => {
  it('has the present step with its test as the session file has it', async () => {
    const one = newSession('hall-no-signal', null);
    await toCode(one);
    await one.result('choose', { choose: 'low-or-high' });
    const { state } = await one.result('state');
    const { procedure } = one.opened.driver.session().opened;
    const step = procedure?.steps[state.step.id];
    if (step?.kind !== 'measure') throw new Error('the tree asks for something else here');
    const { setup, probe, unit, minutes, expected } = step;
    expect(state.step.test).toEqual({
      setup,
      probe,
      unit,
      minutes,
      expected: { kind: 'number', low: expected?.low, high: expected?.high },
    });
    expect(state.step.outcomes).toEqual(
      step.outcomes.map(({ name, words, from, to }) => ({ name, words, from, to })),
    );
    expect(state['path']).toEqual([
      { step: 'prepare', event: expect.any(Number) },
      { step: 'battery/battery', event: expect.any(Number) },
      { step: 'timing/signs', event: expect.any(Number) },
      { step: 'code', event: one.opened.driver.session().events.length },
      { step: state.step.id, event: null },
    ]);
    expect(state['head']).toEqual(one.opened.driver.head());
  });

  it("has texts with this vehicle's pins, and what a code of the job sheet answers", async () => {
    const job = {
      ...emptyJob('stalls'),
      codes: ['P0335'],
      terminals: { 'sensor.feed': { pin: '1', colour: 'RD/BU' } },
    };
    const one = newSession('hall-no-signal', null, { job });
    const state = await toCode(one);
    expect(state.step['said']).toEqual({ code: 'P0335', outcome: 'circuit' });
    await one.result('choose', { choose: 'low-or-high' });
    expect((await one.result('state')).state.step['say']).toContain('pin 1 (RD/BU)');
  });

  it('warns of high voltage where nobody has said what drives the vehicle, and not where it burns fuel', async () => {
    const warned = async (job: Job) => {
      const { state } = await newSession('hall-no-signal', null, { job }).result('state');
      return state.cautions.map(({ id }) => id);
    };
    const none = emptyJob('stalls');
    const said = (drive: Drive) => warned({ ...none, vehicle: { ...none.vehicle, drive } });
    expect(await warned(none)).toEqual(['drive-not-stated', 'ready-moves', 'circuit-energised']);
    expect(await said('hybrid')).toContain('high-voltage-drive');
    expect(await said('electric')).toContain('ready-moves');
    expect(await said('combustion')).toEqual(['circuit-energised']);
  });

  it('in free order asks for no step, and tests are made all the same', async () => {
    const one = newSession('hall-module-fed', 'wire.feed.open');
    expect((await one.result('state')).state).toMatchObject({ procedure: null, step: null });
    expect(await one.refusal('reading', { reading: '5 V' })).toBe('wrong-kind');
    const prepared = await one.result('prepare', { test: FEED });
    await acknowledge(one, prepared['cautions'] as never, { test: FEED });
    const { state } = await one.result('test', { test: FEED, take: true });
    expect(state['minutes']).toBeGreaterThan(0);
    expect(one.lastEvent()).toMatchObject({ type: 'test-recorded', judgement: { verdict: 'low' } });
  });
});

describe('cautions', () => {
  it('at a real vehicle are acknowledged one a call, with the name of the person', async () => {
    const one = newSession('hall-no-signal', null);
    const { cautions } = (await one.result('state')).state;
    const ids = cautions.map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(0);
    expect(await one.refusal('done')).toBe('caution-first');
    const told = (await one.call('done')).error?.data;
    expect(told?.['cautions']).toEqual(cautions);
    for (const caution of [ids, [ids[0]]])
      expect(await one.refusal('acknowledge', { caution, person: PERSON })).toBe(
        'one-caution-a-call',
      );
    for (const person of ['', ' ', undefined])
      expect(await one.refusal('acknowledge', { caution: ids[0], person })).toBe(-32602);
    expect(await one.refusal('acknowledge', { caution: 'all', person: PERSON })).toBe('no-caution');
    const before = one.opened.driver.session().events.length;
    await acknowledge(one, cautions);
    const events = one.opened.driver.session().events.slice(before);
    expect(events.map((event) => 'cautions' in event && event.cautions)).toEqual(
      cautions.map(({ id, word, text }) => [{ id, word, text }]),
    );
    expect(events.every((event) => 'readBy' in event && event.readBy === PERSON)).toBe(true);
    expect((await one.result('done')).state.status).toBe('open');
  });

  it('each of several has to be acknowledged, in any order, before the step is answered', async () => {
    const one = newSession('hall-no-signal', null);
    const test = { capture: 'sensor.signal battery.negative', state: 'cranking' };
    const cautions = (await one.result('prepare', { test }))['cautions'] as { id: string }[];
    expect(cautions.length).toBeGreaterThan(1);
    const left = async () =>
      ((await one.result('prepare', { test }))['cautions'] as { id: string }[]).map(({ id }) => id);
    for (const [index, { id }] of [...cautions].reverse().entries()) {
      expect(await one.refusal('test', { test, choose: 'full' })).toBe('caution-first');
      expect(await left()).toHaveLength(cautions.length - index);
      await acknowledge(one, [{ id }], { test });
    }
    await one.result('test', { test, choose: 'full' });
    expect(one.lastEvent()).toMatchObject({ shown: { kind: 'look', look: 'full' }, typed: '' });
  });

  it('of a simulated vehicle may be acknowledged together', async () => {
    const one = newSession('hall-no-signal', 'healthy');
    const caution = (await one.result('state')).state.cautions.map(({ id }) => id);
    const { state } = await one.result('acknowledge', { caution, person: PERSON });
    expect(state.cautions).toEqual([]);
  });
});

describe('readings', () => {
  const atFeed = async () => {
    const one = newSession('hall-no-signal', 'healthy');
    await toCode(one);
    const { state } = await one.result('choose', { choose: 'low-or-high' });
    await acknowledge(one, state.cautions);
    return one;
  };

  it.each<[string, unknown, string | number]>([
    ['nonsense', 'five or so', 'not-a-reading'],
    ['half a reading', '4.', 'unfinished-reading'],
    ['another quantity', '5 ohm', 'wrong-dimension'],
    ['more than the vehicle has', '90 V', 'impossible-value'],
    ['the leads swapped', '-5 V', 'doubtful-reading'],
    ['over limit on a range of volts', 'OL', 'doubtful-reading'],
    ['thousandths of what would be good', '4.98 mV', 'doubtful-reading'],
    ['a list', [5], -32602],
  ])('%s is refused', async (_, reading, code) => {
    const one = await atFeed();
    const before = one.opened.driver.head();
    expect(await one.refusal('reading', { reading })).toBe(code);
    expect(one.opened.driver.head()).toEqual(before);
  });

  it('what looks like a slip is taken when the program is sure', async () => {
    const one = await atFeed();
    await one.result('reading', { reading: '-5 V', sure: true });
    expect(one.lastEvent()).toMatchObject({ type: 'reading-recorded', value: -5, typed: '-5 V' });
  });

  it('a number is in the unit that is asked for', async () => {
    const one = await atFeed();
    await one.result('reading', { reading: 4.98 });
    expect(one.lastEvent()).toMatchObject({ typed: '4.98', value: 4.98, unit: 'V' });
  });

  it('a step is answered in its own way only', async () => {
    const one = await atFeed();
    expect(await one.refusal('choose', { choose: 'good' })).toBe('wrong-kind');
    expect(await one.refusal('done')).toBe('wrong-kind');
    expect(await one.refusal('accept')).toBe('not-concluded');
  });
});

describe('any other test', () => {
  it('is the same in words and in the form of the session file', async () => {
    const one = newSession('hall-module-fed', 'healthy');
    const { test, id, good } = await one.result('prepare', { test: FEED });
    expect(await one.result('prepare', { test: test as object })).toMatchObject({ id, good });
    const all = (await one.result('tests'))['tests'] as { id: string; test: object }[];
    const standard = all.find((entry) => entry.id === id);
    expect(standard?.test).toEqual(test);
    expect(await one.result('prepare', { test: { test: id } })).toMatchObject({ test, id });
  });

  it.each<[string, object, string | number]>([
    ['ohms on a live circuit', { measure: 'ohms sensor.feed battery.negative' }, 'test-refused'],
    ['a place that is not there', { measure: 'volts sensor.fed battery.negative' }, 'test-refused'],
    ['no measurement', { measure: 'henries sensor.feed battery.negative' }, -32602],
    ['no test', { state: 'key-on' }, -32602],
    ['half a test', { probe: { kind: 'inspect', of: 'target' } }, -32602],
    ['a probe with one lead', { setup: {}, probe: { kind: 'volts', plus: 'a.b' } }, -32602],
  ])('%s is refused', async (_, test, code) => {
    const one = newSession('hall-module-fed', 'healthy');
    expect(await one.refusal('test', { test, take: true })).toBe(code);
  });

  it('in words and in form at once is refused, and so are two answers', async () => {
    const one = newSession('hall-module-fed', 'healthy');
    const { test } = await one.result('prepare', { test: FEED });
    const both = { ...(test as object), ...FEED };
    expect(await one.refusal('prepare', { test: both })).toBe(-32602);
    expect(await one.refusal('test', { test: FEED, take: true, reading: '5 V' })).toBe(-32602);
    expect(await one.refusal('test', { test: FEED })).toBe(-32602);
    await acknowledge(one, (await one.result('prepare', { test: FEED }))['cautions'] as never, {
      test: FEED,
    });
    expect(await one.refusal('test', { test: FEED, choose: 'lit' })).toBe('not-a-number');
    expect(await one.refusal('test', { test: FEED, reading: 'OL' })).toBe('doubtful-reading');
  });
});

describe('a capture', () => {
  const atPicture = async () => {
    const one = newSession('hall-no-signal', 'healthy');
    await toCode(one);
    const { state } = await one.result('choose', { choose: 'range' });
    expect(state.step['capture']).toBe(true);
    await acknowledge(one, state.cautions);
    return one;
  };

  it('is measured first, and taken as the answer when the program says so', async () => {
    const one = await atPicture();
    const before = one.opened.driver.head();
    const measured = await one.result('capture');
    expect(one.opened.driver.head()).toEqual(before);
    expect(measured['answer']).toEqual({ outcome: expect.any(String), look: 'full' });
    await one.result('capture', { record: true });
    expect(one.lastEvent()).toMatchObject({
      type: 'look-recorded',
      look: 'full',
      capture: { from: 'bench' },
    });
  });

  it('with two channels is judged by the one that is named', async () => {
    const one = await atPicture();
    const folder = mkdtempSync(join(tmpdir(), 'ohmward-channels-'));
    try {
      const file = join(folder, 'both.csv');
      const wheel = { sensor: 'hall', low: 0.2, high: 4.9 } as const;
      const wheels = [
        { ...wheel, name: 'cam', teeth: 4, missing: 1, ratio: 0.5 },
        { ...wheel, name: 'crank', teeth: 60, missing: 2 },
      ] as const;
      const taken = { rateHz: 20_000, seconds: 1.2, rpm: 240, random: seededRandom(3) };
      writeFileSync(file, csvOfCapture(generateWheels(wheels, taken)));
      for (const judged of [1, 2])
        expect(await one.result('capture', { file, channel: judged })).toMatchObject({
          capture: { channel: judged },
          channels: { names: ['cam', 'crank'], judged },
        });
      expect(await one.refusal('capture', { file, channel: 3 })).toBe('no-capture');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('that is no file, has no such channel, or answers nothing is refused', async () => {
    const one = await atPicture();
    expect(await one.refusal('capture', { file: '/nonexistent.csv' })).toBe('no-capture');
    expect(await one.refusal('capture', { channel: 2 })).toBe('no-channel');
    expect(await one.refusal('capture', { test: FEED })).toBe('no-capture');
    expect(await one.refusal('capture', { step: 'feed', test: FEED })).toBe(-32602);
    // What is named need not be there: it may be a file that is still to be written.
    expect(await one.result('captures', { folder: 'tests/rpc', name: 'none.csv' })).toEqual({
      file: expect.stringMatching(/none\.csv$/),
    });
  });
});

describe('the record', () => {
  it('says that a program sent it, and who has read the cautions', async () => {
    const one = newSession('hall-no-signal', null);
    expect(one.opened.driver.session().opened.by).toBe('program');
    await one.result('pause');
    expect(await one.refusal('note', { text: 'later' })).toBe('not-open');
    await one.result('resume');
    expect(one.lastEvent()).toMatchObject({ type: 'session-resumed', by: 'program' });
    expect(await one.refusal('resume')).toBe('not-paused');
  });

  it('goes back to any place of the path', async () => {
    const one = newSession('hall-no-signal', 'healthy');
    await goTo(one, 'level/at-plug');
    const { state } = await one.result('back', { to: 3 });
    expect(state.step.id).toBe('code');
    expect(await one.refusal('back', { to: 40 })).toBe('nothing-to-take-back');
  });

  it('events come with their numbers, from any of them on', async () => {
    const one = newSession('hall-no-signal', null);
    const { events } = await one.result('note', { text: 'a remark' });
    expect(events).toMatchObject([{ seq: 2, type: 'note-added', text: 'a remark' }]);
    expect((await one.result('events', { from: 2 })).events).toEqual(events);
    expect((await one.result('events')).events[0]).toMatchObject({ seq: 1, format: 2 });
  });

  it('a conclusion of one’s own names faults of the circuit, or says what is wrong', async () => {
    const faults = ['wire.signal.open'];
    const one = newSession('hall-no-signal', null);
    expect(await one.refusal('conclude', { faults: ['wire.sgnal.open'] })).toBe('no-such-fault');
    expect(await one.refusal('conclude', {})).toBe(-32602);
    const weighed = await one.result('weigh', { faults });
    expect(weighed).toMatchObject({ proven: false, missing: 3, evidence: [] });
    // Nothing was read: that it is this wire, only a program that is sure may say.
    const { error } = await one.call('conclude', { faults });
    expect(error?.data).toMatchObject({
      code: 'not-borne-out',
      first: { words: expect.any(String), test: expect.any(Object) },
      instead: null,
    });
    expect(one.opened.driver.session().status).toBe('open');
    const { state } = await one.result('conclude', { faults, sure: true });
    expect(state).toMatchObject({ status: 'concluded', concluded: { faults, proven: false } });
    await one.result('back').catch(() => {});
    const other = newSession('hall-no-signal', null);
    await other.result('conclude', { words: 'A mouse has been here.' });
    expect(other.lastEvent()).toMatchObject({ ownWords: 'A mouse has been here.', proven: null });
  });

  it('after the repair each test that must pass is made again, and then it is closed', async () => {
    const one = newSession('reluctor-no-signal', 'wire.plus.open');
    expect(await one.refusal('retests')).toBe('not-concluded');
    await goTo(one, '');
    await one.result('accept', { sure: true });
    const lines = (await one.result('retests'))['retests'] as {
      readonly step: { readonly id: string; readonly kind: string };
      readonly cautions: readonly { readonly id: string }[];
    }[];
    const [first] = lines;
    const step = first!.step.id;
    expect(await one.refusal('retest', { step: 'prepare', take: true })).toBe('wrong-kind');
    expect(await one.refusal('retest', { step: 'none', take: true })).toBe('no-such-step');
    expect(await one.refusal('retest', { step })).toBe(-32602);
    expect(await one.refusal('retest', { step, take: true })).toBe('caution-first');
    await acknowledge(one, first!.cautions, { step });
    await one.result('retest', { step, take: true });
    expect(one.lastEvent()).toMatchObject({ type: 'retest-recorded', step, passed: true });
    await one.result('retest', { step, cannot: 'it began to rain' });
    const { state } = await one.result('close');
    expect(state).toMatchObject({ status: 'closed', step: null });
    expect(await one.refusal('close')).toBe('not-open');
  });
});

it('when the disk refuses nothing has changed, and another folder is a way out', async () => {
  const { desk, fill } = fillable();
  const one = newSession('hall-no-signal', null, { desk });
  fill(true);
  const before = (await one.result('state')).state;
  const { error } = await one.call('note', { text: 'a remark' });
  expect(error?.data).toMatchObject({ code: 'disk', fix: expect.stringContaining('"move"') });
  expect((await one.result('state')).state).toEqual(before);
  expect(await one.refusal('move', { folder: '/elsewhere' })).toBe('disk');
  fill(false);
  const { events } = await one.result('move', { folder: '/elsewhere' });
  expect(events.map(({ type }) => type)).toEqual(['segment-continued', 'note-added']);
  expect(one.opened.driver.path()).toContain('/elsewhere/');
});

describe('methods', () => {
  const schema = (name: string) =>
    JSON.parse(readFileSync(`docs/schema/${name}.schema.json`, 'utf8'));
  const named = schema('rpc')['x-choices'] as string[];

  it('each is there, has a form of its answer, and stands on the page of formats', async () => {
    const lists = [newSession('hall-no-signal', null), newDrill('hall-no-signal', 'named', 7)];
    const there = await Promise.all(
      lists.map(async (one) => (await one.result('hello'))['methods']),
    );
    expect([...new Set(there.flat() as string[])].sort()).toEqual([...named].sort());
    expect(Object.keys(schema('rpc-answer').definitions.results.properties)).toEqual(
      [...named].sort(),
    );
    const page = readFileSync('docs/formats.md', 'utf8');
    expect(named.filter((name) => !page.includes(`| \`${name}\` |`))).toEqual([]);
  });

  it('that are not there are told, and so is a version of the protocol', async () => {
    const one = newSession('hall-no-signal', null);
    for (const method of ['nope', 'constructor', '__proto__', 'toString'])
      expect(await one.refusal(method)).toBe(-32601);
    expect(await one.refusal('hello', { protocol: 2 })).toBe('other-protocol');
    expect(await one.refusal('begin', {})).toBe('already-begun');
  });

  it('mistakes in parameters are told all at once, each at its place', async () => {
    const one = newSession('hall-no-signal', null);
    const { error } = await one.call('acknowledge', { caution: '', persn: 'A', step: 3 });
    expect(error?.code).toBe(-32602);
    expect(error?.data?.['issues']).toMatchObject([
      { at: '/params', code: 'missing-key' },
      { at: '/params', code: 'unknown-key', fix: 'did you mean "person"?' },
      { at: '/params/caution', code: 'out-of-bounds' },
      { at: '/params/step', code: 'wrong-type' },
    ]);
  });
});
