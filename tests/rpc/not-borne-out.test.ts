/** A program that accepts a conclusion which the readings do not bear out is told what is better. */
import { expect, it } from 'vitest';
import { type Better, firstTest, type Weighed } from '../../src/session/advisor.ts';
import { goTo, newSession, type Served, served } from './served.ts';

/** The tree's conclusion on a bad signal wire, weighed as `as` has it. */
async function concludedAs(as: (weighed: Weighed) => Partial<Weighed>): Promise<Served> {
  const one = newSession('hall-no-signal', 'wire.signal.resistive');
  await goTo(one, 'none');
  const { advisor } = one.opened;
  if (!advisor) throw new Error('a session of a circuit has an advisor');
  const weigh: typeof advisor.weigh = (session, faults) => {
    const weighed = advisor.weigh(session, faults);
    return { ...weighed, hangsOn: null, better: ACCEPT, support: 'borne-out', ...as(weighed) };
  };
  return served({ ...one.opened, advisor: { ...advisor, weigh } });
}

const ACCEPT: Better = { kind: 'accept' };

it('is refused the conclusion with the test that tells most, unless it is sure', async () => {
  // the test of the one reading that this conclusion really hangs on
  const one = await concludedAs(({ better }) => ({
    ...{ chance: 0.2, support: 'unlikely' },
    better: { kind: 'first', proposal: firstTest(better)! },
  }));
  const { error } = await one.call('accept');
  expect(error?.data).toMatchObject({ code: 'not-borne-out', instead: null });
  expect(error?.data).toMatchObject({ first: { words: expect.any(String) } });
  expect(error?.message).toContain('20 %');
  expect(one.lastEvent().type).not.toBe('concluded');
  const { state } = await one.result('accept', { sure: true });
  expect(state).toMatchObject({ status: 'concluded' });
});

it('is refused it with the repair that they speak for instead, unless it is sure', async () => {
  const faults = [{ id: 'wire.ground.open', words: 'the ground wire is broken', chance: 0.9 }];
  const row = { repair: 'wire.ground', words: 'Mend the ground wire.', chance: 0.9, faults };
  const one = await concludedAs(() => ({ chance: 0.1, better: { kind: 'instead', row } }));
  const { error } = await one.call('accept');
  expect(error?.data).toMatchObject({
    code: 'not-borne-out',
    first: null,
    instead: { repair: 'wire.ground', faults: ['wire.ground.open'] },
  });
  expect(error?.message).toContain('They point to: Mend the ground wire (90 %)');
  expect((await one.result('accept', { sure: true })).state.status).toBe('concluded');
});

it('is refused it with the answer to take back, which its repeats contradict, unless it is sure', async () => {
  let answer = 0;
  const one = await concludedAs(() => ({
    chance: 0.1,
    better: { kind: 'take-back', overturned: { place: 3, answer, by: answer } },
  }));
  answer = one.opened.driver.session().events.findIndex((event) => 'typed' in event) + 1;
  const { error } = await one.call('accept');
  expect(error?.data).toMatchObject({
    code: 'not-borne-out',
    overturned: { place: 3, answer },
    first: null,
    instead: null,
  });
  expect(error?.message).toContain('Repeated, it showed');
  expect(JSON.stringify(error?.data)).toContain('place 3');
  expect((await one.result('accept', { sure: true })).state.status).toBe('concluded');
});

it('may accept it where nothing is better', async () => {
  const one = await concludedAs(() => ({}));
  expect((await one.result('accept')).state.status).toBe('concluded');
});

it.each([
  [false, 'rests-on-one-reading', 'This rests on one reading:'],
  [true, 'not-borne-out', 'One reading does not fit the rest:'],
])('is refused it with a reading to repeat, which does not fit: %s', async (isOdd, code, words) => {
  let reading = 0;
  const one = await concludedAs(({ better }) => ({
    better: { kind: 'repeat', proposal: firstTest(better)!, reading, isOdd },
  }));
  reading = one.opened.driver.session().events.findIndex((event) => 'typed' in event) + 1;
  const { error } = await one.call('accept');
  expect(error?.data).toMatchObject({ code, restsOn: isOdd ? null : reading });
  expect(error?.data).toMatchObject({ first: { words: expect.any(String) } });
  expect(error?.message).toContain(words);
});
