/** Papers of sessions as no plan has them say nothing that their events do not bear out. More of them: `npm run bench odd-ways`. */
import { describe, expect, it } from 'vitest';
import { stepOf } from '../../src/procedure/procedure.ts';
import type { Concluded } from '../../src/session/events.ts';
import type { Session } from '../../src/session/session.ts';
import { LONG, SEED, shareOf } from '../campaign.ts';
import { TREES } from '../proof/library.ts';
import { oddSession, untrueSentences } from './odd-ways.ts';

const SESSIONS = LONG ? 20 : 1;

/** Every other tree in an ordinary run. */
const tried = shareOf(
  TREES.map(([name]) => name),
  2,
);

describe.each(tried)('%s', (name) => {
  it('has no sentence without its reading', () => {
    for (let at = 0; at < SESSIONS; at += 1)
      expect([at, ...untrueSentences(oddSession(name, 100 * SEED + at))]).toEqual([at]);
  });
});

// Sessions whose papers once said more than they had, or named a place as files do.
it.each([
  ['wheel-speed-current', 7101],
  ['hall-relay-no-signal', 7101],
  ['hall-relay-no-signal', 7102],
])('nor has %s, %i', (name, seed) => {
  expect(untrueSentences(oddSession(name, seed))).toEqual([]);
});

describe('a sentence without its reading is found', () => {
  const honest = concludedSession();
  const told = (change: Partial<Concluded>): string[] => {
    const concluded = { ...honest.concluded!, ...change };
    const events = honest.events.map((event) => (event === honest.concluded ? concluded : event));
    return untrueSentences({ ...honest, concluded, events });
  };

  it('of three tests that agree, which nobody made', () => {
    expect(told({ proven: true, evidence: [] }).join()).toMatch(
      /three independent.* on 0 readings/,
    );
  });
  it('of a repair that is ruled out by no reading', () => {
    const [repair] = honest.opened.circuit!.faults.map((fault) => fault.repair);
    expect(told({ ruledOut: [{ repair: repair!, by: [1] }] }).join()).toMatch(/which do not stand/);
  });
  it('of a repair that is good, where a test after it fails or was not made', () => {
    const closed = { type: 'session-closed', verdict: 'cured', at: '', elapsed: 0 } as const;
    const events = [...honest.events, closed];
    expect(untrueSentences({ ...honest, retests: [], closed, events }).join()).toMatch(
      /the repair is said to be good/,
    );
  });
  it('of something seen, where the step that shows it was not answered', () => {
    const procedure = honest.opened.procedure!;
    const end = stepOf(procedure, honest.concluded!.conclusion!);
    if (end.kind !== 'conclude') throw new Error('a conclusion is concluded on');
    const customer = 'With both ends unplugged the lent pull-up stands at the module.';
    const steps = { ...procedure.steps, [end.id]: { ...end, customer } };
    const opened = { ...honest.opened, procedure: { ...procedure, steps } };
    const events = [opened, ...honest.events.slice(1)];
    expect(untrueSentences({ ...honest, opened, events }).join()).toMatch(/without/);
  });
});

/** The first one of the lightest circuit that has come to a conclusion. */
function concludedSession(): Session {
  for (let seed = 1; ; seed += 1) {
    const session = oddSession('reluctor-no-signal', seed);
    if (session.concluded?.conclusion) return session;
  }
}
