/** One engine: a session and a drill on one circuit, with the same readings, get the same advice in the same minutes. */
import { describe, expect, it } from 'vitest';
import { keptOf } from '../../src/circuit/shown-of.ts';
import { createBench } from '../../src/drill/bench.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import type { Proposal } from '../../src/session/advisor.ts';
import type { Command } from '../../src/session/command.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import type { DrillVehicle, SessionVehicle } from '../../src/session/events.ts';
import { openSession } from '../../src/session/evolve.ts';
import type { Session } from '../../src/session/session.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { shipped } from '../library/shipped.ts';
import { opened } from './sample-tree.ts';
import { after as afterCommand, EVERYTHING } from './walk-library.ts';

// The circuit on which a session takes least.
const { linked, model } = shipped('reluctor-no-signal');
const WIRE = 'wire.plus.open';
const DRILL: DrillVehicle = {
  ...{ kind: 'drill', level: 'unnamed', seed: 3, commitment: 'sealed' },
  ...{ earlierRepair: null, assignment: null },
};

function begun(vehicle: SessionVehicle, procedure: typeof linked.procedure | null): Session {
  const job = emptyJob('no start');
  const { circuit } = linked;
  return openSession(opened(procedure, { job, circuit, instruments: EVERYTHING, vehicle }));
}

describe.each([
  ['along a procedure', linked.procedure],
  ['in free order', null],
])('a session and a drill %s', (_, procedure) => {
  it('get the same suspects, next tests, minutes and evidence for the same readings', () => {
    const pair = [begun({ kind: 'real' }, procedure), begun(DRILL, procedure)] as const;
    const advisors = pair.map((session) => createAdvisor(model, session.opened));
    const bench = createBench(model, WIRE, 5);
    let [session, drill]: readonly [Session, Session] = pair;
    for (let round = 0; round < 3; round += 1) {
      const ofSession = advisors[0]!.diagnosis(session);
      const ofDrill = advisors[1]!.diagnosis(drill);
      expect(ofDrill.suspects).toEqual(ofSession.suspects);
      expect(ofDrill.nextTests).toEqual(ofSession.nextTests);
      expect(spentMinutes(drill)).toBe(spentMinutes(session));
      const [weighed, inDrill] = [ofSession, ofDrill].map((one) => one.weigh([WIRE]));
      expect(inDrill!.evidence).toEqual(weighed!.evidence);
      expect(inDrill!.wouldProve).toEqual(weighed!.wouldProve);
      const next: Proposal | undefined = ofSession.nextTests[0] ?? weighed!.wouldProve[0];
      if (!next) break;
      const { test, expected } = next;
      const shown = keptOf(bench.shows(test));
      const command: Command = { type: 'record-test', test, typed: '', shown, expected };
      session = afterCommand(session, command);
      drill = afterCommand(drill, command);
    }
    expect(session.tests.length).toBeGreaterThan(2);
    expect(spentMinutes(session)).toBeGreaterThan(0);
  });
});
