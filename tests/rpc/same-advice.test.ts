/** One engine: what a program is told of the next tests and of the minutes is what session and drill have. */
import { expect, it } from 'vitest';
import type { Proposal } from '../../src/session/advisor.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { EVERYTHING } from '../session/walk-library.ts';
import { newDrill, newSession, type Served } from './served.ts';

type Told = Pick<Proposal, 'id' | 'minutes' | 'needs' | 'test'>;
const facts = ({ id, minutes, needs, test }: Told): Told => ({ id, minutes, needs, test });

/** What the program is told next, held against the session's own advisor and minutes. */
async function next(one: Served): Promise<readonly Told[]> {
  const told = (await one.result('next'))['proposals'] as readonly Proposal[];
  const session = one.opened.driver.session();
  expect(told.map(facts)).toEqual(one.opened.advisor!.nextTests(session).map(facts));
  const { minutes } = (await one.result('state')).state;
  expect(minutes).toBeCloseTo(spentMinutes(session), 1);
  return told.map(facts);
}

it('a session and a drill over it propose the same, and both what the advisor says', async () => {
  const session = newSession('hall-module-fed', 'wire.signal.open');
  await session.result('instruments', { instruments: EVERYTHING });
  const drill = newDrill('hall-module-fed', 'named', 7);
  const [first, second] = [await next(session), await next(drill)];
  expect(first.length).toBeGreaterThan(0);
  expect(second).toEqual(first);
  for (let round = 0; round < 2; round += 1) {
    const [best] = await next(session);
    const { cautions } = await session.result('prepare', { test: best!.test });
    const ids = (cautions as readonly { id: string }[]).map(({ id }) => id);
    if (ids.length > 0)
      await session.result('acknowledge', { test: best!.test, caution: ids, person: 'R. Example' });
    await session.result('test', { test: best!.test, take: true });
  }
  await next(session);
  expect(spentMinutes(session.opened.driver.session())).toBeGreaterThan(0);
});
