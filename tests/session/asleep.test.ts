/** A search for a fault that comes and goes and does not come: what is tried first, when it ends, and what is said then. */
import { describe, expect, test } from 'vitest';
import { openDesk } from '../../src/commands/session/open-desk.ts';
import { beginSession } from '../../src/commands/session/open-session.ts';
import { madeOnBench } from '../../src/commands/session/run-unattended.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { allTests, concludedOn } from '../../src/session/advisor.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { presentStep } from '../../src/session/session.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { vehicleCommand } from '../../src/session/vehicle-command.ts';
import { isProblem } from '../../src/source/problem.ts';
import type { OpenedSession } from '../../src/ui/app-services.ts';
import { asleepWords } from '../../src/ui/screens/asleep-words.ts';

const desk = await openDesk(
  { out: () => {}, err: () => {}, env: {}, cwd: process.cwd() },
  'ohmward test',
  { preview: true },
);
if (isProblem(desk)) throw new Error(desk.problem);
const table = desk;

/** A session on a simulated vehicle with a code that comes and goes (SAE J2012: P0339). */
function begun(bench: { fault: string; intermittent: boolean }): OpenedSession {
  const procedure = table.library.procedures.get('reluctor-no-signal')!;
  const job = { ...emptyJob('cuts out now and then'), codes: ['P0339'] };
  const opened = beginSession(table, {
    subject: { kind: 'procedure', procedure },
    job,
    bench: { ...bench, seed: 1 },
  });
  if (isProblem(opened)) throw new Error(opened.problem);
  return opened;
}

/** Follows the tree until the first step at which `isThere`. */
function followed(opened: OpenedSession, isThere: (opened: OpenedSession) => boolean): void {
  const { driver } = opened;
  while (!isThere(opened)) {
    const session = driver.session();
    const step = presentStep(session)!;
    if (step.kind === 'conclude') throw new Error(`the end at ${step.id}`);
    driver.perform(
      pendingCautions(session).length > 0
        ? { type: 'acknowledge-cautions' }
        : vehicleCommand(step, driver.vehicleShows()!)!,
    );
  }
}

const asleepIn = ({ driver, advisor }: OpenedSession) =>
  advisor!.diagnosis(driver.session()).asleep;
const WAYS = { tests: 'F6', suspects: 'F5' };

describe('on a sound car', () => {
  const opened = begun({ fault: 'healthy', intermittent: false });
  const { driver, advisor } = opened;

  test('nothing is searched for before the harness was moved in vain', () => {
    expect(asleepIn(opened)).toBeNull();
    followed(opened, (now) => presentStep(now.driver.session())!.id === 'wake-first/running');
    expect(asleepIn(opened)).toBeNull();
  });

  test('then what is likeliest to show it for its minutes is told before the next step, and leads the best tests', () => {
    followed(opened, (now) => asleepIn(now) !== null);
    const { first, end } = asleepIn(opened)!;
    expect(end).toBeNull();
    const session = driver.session();
    expect(advisor!.nextTests(session)[0]).toBe(first);
    expect(asleepWords(opened, session, presentStep(session)!, WAYS)).toMatch(
      /^Likelier to show it than this step: .+ \(\d+(\.\d)? min\), F6\.$/,
    );
  });

  test('who does it is told after less than an hour that nothing shows now, and names no repair', () => {
    for (let count = 0; count < 20 && !asleepIn(opened)!.end; count += 1) {
      const { first } = asleepIn(opened)!;
      if (!first) followed(opened, (now) => Boolean(asleepIn(now)!.first ?? asleepIn(now)!.end));
      else
        for (
          const before = driver.session().tests.length;
          driver.session().tests.length === before;
        )
          driver.perform(madeOnBench(opened, first)!);
    }
    const session = driver.session();
    const { first, end } = asleepIn(opened)!;
    expect(first).toBeNull();
    expect(spentMinutes(session)).toBeLessThan(60);
    const own = concludedOn(end!);
    expect(own.faults).toEqual([]);
    const [, from, to] = /fell from (\d+) % to (\d+) %/.exec(own.words!)!.map(Number);
    expect(from).toBeGreaterThan(to!);
    expect(asleepWords(opened, session, presentStep(session)!, WAYS)).toMatch(
      /Record it on a drive.+ To end here: F5, then "nothing to repair now"\.$/,
    );
  });

  test('an end that names everything is answered by it, and no test is to prove it', () => {
    const session = driver.session();
    const all = session.opened.circuit!.faults.map(({ id }) => id);
    const { better, wouldProve, proven } = advisor!.weigh(session, all);
    expect([wouldProve, proven]).toEqual([[], false]);
    const { end } = asleepIn(opened)!;
    expect(better).toEqual({ kind: 'instead', row: end });
    expect(driver.perform({ type: 'conclude', own: concludedOn(end!) }).ok).toBe(true);
    expect(driver.session().concluded?.faults).toEqual([]);
  });
});

test('nor where it was there for one reading, which no sound car shows', () => {
  const opened = begun({ fault: 'healthy', intermittent: false });
  followed(opened, (now) => asleepIn(now) !== null);
  const { driver, advisor } = opened;
  const { test: coil, expected } = allTests(advisor!, driver.session()).find(
    ({ test: { probe } }) => probe.kind === 'ohms' && probe.plus === 'sensor.plus.pin',
  )!;
  driver.perform({ type: 'acknowledge-cautions', test: coil });
  const shown = { kind: 'number', value: null, unit: 'ohm' } as const;
  expect(driver.perform({ type: 'record-test', test: coil, typed: 'OL', shown, expected }).ok).toBe(
    true,
  );
  expect(asleepIn(opened)).toBeNull();
});

test('nothing of it is said where something was woken', () => {
  const opened = begun({ fault: 'contact.sensor.plus.open', intermittent: true });
  followed(opened, (now) => presentStep(now.driver.session())!.kind === 'conclude');
  expect(asleepIn(opened)).toBeNull();
});
