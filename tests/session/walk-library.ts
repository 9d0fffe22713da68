/** Sessions of the shipped procedures, walked by a simulated vehicle up to the conclusion, with some answers set. */
import { createModel, type Model } from '../../src/circuit/model.ts';
import { keptOf } from '../../src/circuit/shown-of.ts';
import { createBench } from '../../src/drill/bench.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { INSTRUMENTS, STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { type LinkedProcedure, linkProcedure } from '../../src/procedure/link-procedure.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import type { Advisor, Proposal } from '../../src/session/advisor.ts';
import type { Command } from '../../src/session/command.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { decide } from '../../src/session/decide.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { presentStep, type Session } from '../../src/session/session.ts';
import { opened, when } from './sample-tree.ts';

export interface Shop {
  readonly linked: LinkedProcedure;
  readonly model: Model;
  readonly advisor: Advisor;
  readonly begun: Session;
}

const library = loadLibrary('procedures');
const shops = new Map<string, Shop>();

/** One procedure of the library, its circuit, and a session that was just opened: the same for all tests of a process. */
export function shopFor(name: string): Shop {
  const shop = shops.get(name) ?? openShop(name);
  shops.set(name, shop);
  return shop;
}

function openShop(name: string): Shop {
  let model: Model | undefined;
  const { value: linked } = linkProcedure(library.procedures.get(name)!, library, {
    drive: 'combustion',
    modelOf: (circuit) => {
      model = createModel(circuit, { samples: 64, seed: 1, meter: STANDARD_SETTINGS.meter });
      return model;
    },
  });
  if (!linked || !model) throw new Error(`no procedure ${name}`);
  const begun = beginWith(linked);
  const advisor = createAdvisor(model, begun.opened);
  return { linked, model, advisor, begun };
}

/** A session just opened on a real vehicle, of nobody in particular. */
export function beginWith(
  { procedure, circuit }: LinkedProcedure,
  job: Job = emptyJob('no start'),
  instruments: readonly string[] = EVERYTHING,
): Session {
  return openSession(opened(procedure, { job, instruments, circuit }));
}

/** What a person has who can do any test, alone. */
export const EVERYTHING: readonly string[] = INSTRUMENTS.filter((name) => name !== 'helper');

/** The session after a command, which must be taken. */
export function after(session: Session, command: Command): Session {
  const decision = decide(session, command, when(1));
  if (!decision.ok) throw new Error(decision.refusal.code);
  return decision.events.reduce(evolve, session);
}

/** An answer that the vehicle does not give: volts, `cannot`, or the name of an outcome. */
export type SetAnswers = Readonly<Record<string, number | string>>;

/** From `from` on to the conclusion, by a vehicle with `fault`; `seed` draws its tolerances and the size of the fault. */
export function walkOn(
  { model }: Shop,
  from: Session,
  fault: string,
  set: SetAnswers = {},
  seed = 1,
): Session {
  const bench = createBench(model, fault, seed);
  let session = from;
  for (let steps = 0; steps < 100; steps += 1) {
    const step = presentStep(session)!;
    if (step.kind === 'conclude') return session;
    const wanted = set[step.id];
    if (wanted === 'cannot') {
      session = after(session, { type: 'cannot-do', reason: 'no room' });
      continue;
    }
    if (pendingCautions(session).length > 0)
      session = after(session, { type: 'acknowledge-cautions' });
    session = after(session, commandAt(step, wanted, bench));
  }
  throw new Error('no conclusion');
}

function commandAt(
  step: Step,
  wanted: number | string | undefined,
  bench: ReturnType<typeof createBench>,
): Command {
  if (step.kind === 'act') return { type: 'mark-done' };
  if (typeof wanted === 'number')
    return { type: 'record-reading', typed: `${wanted} V`, value: wanted };
  if (step.kind === 'conclude') throw new Error('a conclusion is no step to answer');
  if (wanted !== undefined) return { type: 'choose-outcome', outcome: wanted };
  const usual = step.kind === 'ask' ? (step.usual ?? step.outcomes[0]!.name) : '';
  if (step.kind === 'ask' || step.probe === null) return { type: 'choose-outcome', outcome: usual };
  const shown = bench.shows({ setup: step.setup, probe: step.probe });
  if (shown.kind === 'number') {
    const typed = Number.isFinite(shown.value) ? `${Number(shown.value.toFixed(3))} V` : 'OL';
    return { type: 'record-reading', typed, value: shown.value };
  }
  const { look } = shown;
  const looks = step.kind === 'look' ? step.outcomes : [];
  const outcome = looks.find((one) => one.looks.includes(look))?.name ?? '';
  return { type: 'choose-outcome', outcome, look };
}

/** The session after a proposed test, as a vehicle with `fault` shows it. */
export function done({ model }: Shop, session: Session, fault: string, proposal: Proposal) {
  const { test, expected } = proposal;
  const shown = keptOf(createBench(model, fault, 1).shows(test));
  const typed = shown.kind === 'look' ? '' : `${shown.value ?? 'OL'}`;
  return after(session, { type: 'record-test', test, typed, shown, expected });
}
