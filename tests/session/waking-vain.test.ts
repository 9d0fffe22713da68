/** What waking in vain is worth: the same suspects before and after, and the rule for when to stop. */
import { expect, test } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import type { Advisor } from '../../src/session/advisor.ts';
import type { Command } from '../../src/session/command.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { decide } from '../../src/session/decide.ts';
import { deriveAgain } from '../../src/session/derive-again.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { checkHistory } from '../../src/session/history.ts';
import type { Session } from '../../src/session/session.ts';
import { lastVain, vainWords } from '../../src/session/vain-words.ts';
import { withVain } from '../../src/session/waking-vain.ts';
import { shipped } from '../library/shipped.ts';
import { opened, when } from './sample-tree.ts';
import { EVERYTHING } from './walk-library.ts';

const { linked, model } = shipped('hall-no-signal');
const { procedure, circuit } = linked;
const ACK: Command = { type: 'acknowledge-cautions' };
const choose = (outcome: string): Command => ({ type: 'choose-outcome', outcome });

function after(session: Session, command: Command): Session {
  const decision = decide(session, command, when(1));
  if (!decision.ok) throw new Error(decision.refusal.code);
  return decision.events.reduce(evolve, session);
}
/** At the step that moves the harness, its cautions read; with this code on the sheet. */
function atWiggle(code: string): { session: Session; advisor: Advisor } {
  const job = { ...emptyJob('cuts out'), codes: [code] };
  const start = { ...procedure, start: 'wake-second/wiggle' };
  const first = openSession(opened(start, { job, circuit, instruments: EVERYTHING }));
  const advisor = createAdvisor(model, { procedure: start, job, vehicle: first.opened.vehicle });
  return { session: after(first, ACK), advisor };
}

test('of a fault that comes and goes the chance falls, and what fell is kept and found again', () => {
  // SAE J2012: P0339 intermittent
  const { session, advisor } = atWiggle('P0339');
  const command = withVain(session, choose('nothing'), advisor, when(1));
  const vain = command.type === 'choose-outcome' ? command.vain : undefined;
  // by the tree: the step takes six minutes
  expect(vain?.minutes).toBe(6);
  const { before, after: left } = vain!;
  // By Bayes on the waking chance of 0.6, were all of it one suspect: p (1 - 0.6) / (1 - 0.6 p). What stays falls less.
  expect(left).toBeLessThan(before);
  expect(left).toBeGreaterThanOrEqual((before * 0.4) / (1 - 0.6 * before) - 0.01);
  const told = after(session, command);
  expect(lastVain(told)).toContain(`fell from ${Math.round(before * 100)} % to`);
  expect(checkHistory(told.events).flaw).toBeNull();
  // Its tree is opened without cautions, which is told of the first event.
  expect(deriveAgain(told.events).filter(({ seq }) => seq > 1)).toEqual([]);
  const forged = told.events.map((event) =>
    event.type === 'look-recorded' ? { ...event, vain: { ...vain!, after: 0.01 } } : event,
  );
  expect(deriveAgain(forged).find(({ seq }) => seq > 1)?.words).toContain(
    'another worth to the attempts that brought nothing on',
  );
});

test('the minutes are those of the rounds where somebody said them', () => {
  const { session, advisor } = atWiggle('P0339');
  const round = { unit: null, least: null, most: null, drops: 0, typed: '', place: null } as const;
  const rounds = [4, 7].reduce(
    (now, minutes) => after(now, { type: 'watch-waking', ...round, minutes }),
    session,
  );
  expect(withVain(rounds, choose('nothing'), advisor, when(1))).toMatchObject({
    vain: { minutes: 11 },
  });
});

test.each([
  ['nobody speaks of one that comes and goes', 'P0335', 'nothing'],
  ['something was woken', 'P0339', 'plug'],
])('nothing is said where %s', (_, code, outcome) => {
  const { session, advisor } = atWiggle(code);
  const command = choose(outcome);
  expect(withVain(session, command, advisor, when(1))).toBe(command);
});

test('the rule says when to stop', () => {
  // by hand: odds 2/3 to 1/4, so that 69 % can be woken, 18.5 % of what is left; 0.25 * (1 - 0.9 * 0.185) are odds of 17 %
  expect(vainWords({ minutes: 10, before: 0.4, after: 0.2 })).toBe(
    'Nothing in 10 minutes of trying to bring it on: the chance that it is there fell from 40 % to 20 %. The same again would leave 17 %: stop trying there.',
  );
  // odds 9 to 1: all but one in ninety can be woken, and nine in ten of what is left
  expect(vainWords({ minutes: 6, before: 0.9, after: 0.5 })).toMatch(
    /leave 17 %: worth it where nothing else tells more\.$/,
  );
  // nothing fell: no hand wakes it
  expect(vainWords({ minutes: 6, before: 0.2, after: 0.2 })).toMatch(/leave 20 %: stop/);
});
