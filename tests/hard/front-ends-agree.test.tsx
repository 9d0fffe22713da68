/**
 * One person, five ways in: keys on the screen, lines of the dialogue, an answers file, another program, and the log
 * replayed. Whatever the person answers, notes, knows of the car, takes back or cannot do in any shipped procedure, the same is saved and the same follows.
 */

import { expect, it } from 'vitest';
import { stringify } from 'yaml';
import { knowablesOf } from '../../src/circuit/knowable.ts';
import { startable } from '../../src/commands/session/open-desk.ts';
import { beginSession } from '../../src/commands/session/open-session.ts';
import { runAnswers } from '../../src/commands/session/run-unattended.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { parseReading } from '../../src/quantity/parse-reading.ts';
import type { Advisor, SuspectView, Weighed } from '../../src/session/advisor.ts';
import { loadAnswers } from '../../src/session/answers-file.ts';
import { doubtReading } from '../../src/session/doubt-reading.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import { expectedReading } from '../../src/session/expected-reading.ts';
import { judgeStep } from '../../src/session/judge-step.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { readSaid } from '../../src/session/read-known.ts';
import { presentStep } from '../../src/session/session.ts';
import { isProblem } from '../../src/source/problem.ts';
import type { OpenedSession } from '../../src/ui/app-services.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { rpcServer } from '../../src/ui/rpc/rpc-server.ts';
import { choicesAt } from '../../src/ui/screens/choice-prompt-state.ts';
import { outCommand, reachableOf } from '../../src/ui/screens/reach-pages.ts';
import { SessionScreen } from '../../src/ui/screens/session-screen.tsx';
import { LONG, SEED } from '../campaign.ts';
import { libraryDesk } from '../library-desk.ts';
import fc from '../seeded-check.ts';
import { openTestScreen } from '../ui/in-process.ts';
import { CLEAR, ENTER, F, PAGE_DOWN } from '../ui/screens/keys.ts';

const SESSIONS = LONG ? 2000 : 5;
const MOVES_MAX = 24;
/** The runner's own limit, far above what it takes. */
const TIME_MS = LONG ? 3_600_000 : 240_000;
/** More than any session of so many moves has events. */
const TURNS_MAX = 200;

/** What a person does next; numbers pick among what is asked. */
type Move =
  | { readonly do: 'answer'; readonly pick: number; readonly typed: string }
  | { readonly do: 'note'; readonly text: string }
  | { readonly do: 'cannot'; readonly text: string }
  /** A connector or a vehicle state that the step needs cannot be had. */
  | { readonly do: 'unreached'; readonly pick: number }
  | { readonly do: 'set'; readonly pick: number; readonly from: string }
  | { readonly do: 'back' };

/** What it meant where it was done, in the words of each way in. */
interface Meant {
  readonly keys: readonly string[];
  readonly line: string;
  readonly answer: Readonly<Record<string, unknown>>;
  /** Cautions are acknowledged one by one. */
  readonly call: 'acknowledge' | ProgramCall;
}
interface ProgramCall {
  readonly method: string;
  readonly params?: object;
}

const TYPED = [
  '0',
  '0.02',
  '4.98',
  '5 V',
  '11.9 V',
  '12,4',
  '2.5',
  '480 mV',
  '0.3 ohm',
  '850',
  '1k2',
  '0.9 Mohm',
  'OL',
  '120 Hz',
  '210 rpm',
  '50 %',
  '7 mA',
  '-0.1',
  'nonsense',
];
const words = fc
  .string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 20 })
  .map((text) => text.trim())
  .filter((text) => text !== '');
const set = fc.record({
  do: fc.constant('set' as const),
  pick: fc.nat({ max: 200 }),
  from: fc.constantFrom('maker', 'measured', 'label on the module', 'other: a guess'),
});
const move: fc.Arbitrary<Move> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('answer' as const),
      pick: fc.nat({ max: 20 }),
      typed: fc.constantFrom(...TYPED),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.oneof(
      fc.record({ do: fc.constant('note' as const), text: words }),
      fc.record({ do: fc.constant('cannot' as const), text: words }),
      fc.record({ do: fc.constant('unreached' as const), pick: fc.nat({ max: 8 }) }),
    ),
  },
  { weight: 1, arbitrary: set },
  { weight: 1, arbitrary: fc.constant<Move>({ do: 'back' }) },
);
/** A value that is set is taken back at once now and then, which seldom happens by itself. */
const moves: fc.Arbitrary<Move[]> = fc
  .array(
    fc.oneof(
      { weight: 11, arbitrary: move.map((one) => [one]) },
      { weight: 1, arbitrary: set.map((one): Move[] => [one, { do: 'back' }]) },
    ),
    { minLength: 4, maxLength: MOVES_MAX },
  )
  .map((all) => all.flat());

const table = await libraryDesk();
const procedures = startable(table);

/** Chances are another room's matter, and cost more than all the rest. */
function begin(procedure: number): OpenedSession {
  const opened = beginSession(table, {
    subject: { kind: 'procedure', procedure: procedures[procedure % procedures.length]! },
    job: emptyJob('does not start'),
    bench: null,
  });
  if (isProblem(opened)) throw new Error(opened.problem);
  return { ...opened, advisor: opened.advisor && SILENT };
}

/** Enough for the pages that a value is set from. */
const NOT_PROVEN = { evidence: [], ruledOut: [], proven: false };
const WEIGHED: Weighed = {
  ...NOT_PROVEN,
  ...{ missing: 3, unexplained: null, hangsOn: null, wouldProve: [], wouldPlace: [] },
  ...{ chance: 0, better: { kind: 'accept' }, support: 'unlikely', left: [] },
};
const NOTHING: SuspectView = {
  ...{ rows: [], changed: null, intermittent: false, unexplained: null, unexplainedBy: null },
  ...{ group: null, groupRepairs: [] },
};
const SILENT: Advisor = {
  diagnosis: () => ({
    ...{
      suspects: NOTHING,
      nextTests: [],
      furtherTests: [],
      asleep: null,
      car: null,
      carsLeft: null,
      weigh: () => WEIGHED,
    },
    ...{
      goodHere: () => null,
      expected: () => ({ kind: 'look', looks: [] }),
      possible: () => null,
    },
  }),
  isReady: () => true,
  *prepare() {},
  *prepareWeigh() {},
  suspects: () => NOTHING,
  nextTests: () => [],
  weigh: () => WEIGHED,
};

/** What each unit is set to, by turns. */
const SET_TO: Readonly<Record<string, readonly string[]>> = {
  V: ['12.4 V', '8 V +/- 3 %', 'battery', 'unknown'],
  ohm: ['4.7 kohm', '120 ohm +/- 5 %', 'unknown'],
  A: ['20 mA', 'unknown'],
  '1': ['40 %', 'unknown'],
};

/** Does the moves by command, as far as each is possible where it comes; what they meant. */
function reference(opened: OpenedSession, moves: readonly Move[]): Meant[] {
  const { driver } = opened;
  const meant: Meant[] = [];
  for (const one of moves) {
    let session = driver.session();
    if (session.status !== 'open') break;
    const step = presentStep(session);
    if (!step) break;
    if (pendingCautions(session).length > 0) {
      driver.perform({ type: 'acknowledge-cautions', step: step.id });
      meant.push({
        // More than a screen of cautions is read to its end.
        keys: [PAGE_DOWN, PAGE_DOWN, 'y'],
        line: 'yes',
        answer: { acknowledge: true },
        call: 'acknowledge',
      });
      session = driver.session();
    }
    const found = meaning(one, opened);
    if (found && driver.perform(found.command).ok) meant.push(found);
  }
  return meant;
}

type Found = Meant & { readonly command: Parameters<OpenedSession['driver']['perform']>[0] };

function meaning(one: Move, { driver, limits, advisor }: OpenedSession): Found | null {
  const session = driver.session();
  const step = presentStep(session);
  if (!step) return null;
  if (one.do === 'note')
    return {
      command: { type: 'add-note', text: one.text },
      keys: [F.note, one.text, ENTER],
      line: `note ${one.text}`,
      answer: { note: one.text },
      call: { method: 'note', params: { text: one.text } },
    };
  if (one.do === 'set') {
    const { circuit } = session.opened;
    const all = circuit ? knowablesOf(circuit) : [];
    const what = all[one.pick % Math.max(1, all.length)];
    const texts = what ? (what.unit === null ? what.ways : SET_TO[what.unit]!) : [];
    const is = texts[one.pick % Math.max(1, texts.length)];
    if (!circuit || !what || is === undefined) return null;
    const said = { what: what.key, is, from: one.from };
    const read = readSaid(circuit, said);
    if (!('quantity' in read)) return null;
    return {
      command: { type: 'set-value', ...read },
      keys: [F.suspects, 'v', what.key, ENTER, is, ENTER, one.from, ENTER],
      line: `known ${what.key} is ${is} from ${one.from}`,
      answer: { known: said },
      call: { method: 'set-value', params: { quantity: what.key, is, from: one.from } },
    };
  }
  if (one.do === 'back')
    return {
      command: { type: 'go-back' },
      keys: [F.back],
      line: 'back',
      answer: { back: true },
      call: { method: 'back' },
    };
  if (one.do === 'unreached') {
    const all = reachableOf(session);
    const place = one.pick % Math.max(1, all.length);
    const out = all[place];
    if (out === undefined) return null;
    const isPart = 'part' in out;
    return {
      command: outCommand(session, out),
      keys: [F.cannot, String(place + 1), ENTER],
      line: `aside ${isPart ? out.part : out.state}`,
      answer: isPart ? { connector: out.part } : { 'no-state': out.state },
      call: { method: 'aside', params: isPart ? { connector: out.part } : out },
    };
  }
  // On the screen such a number names a connector or a state.
  if (one.do === 'cannot' && /^[1-9]$/.test(one.text)) return null;
  if (one.do === 'cannot')
    return {
      command: { type: 'cannot-do', reason: one.text },
      keys: [F.cannot, one.text, ENTER],
      line: `cannot ${one.text}`,
      answer: { cannot: one.text },
      call: { method: 'cannot', params: { reason: one.text } },
    };
  switch (step.kind) {
    case 'act':
      return {
        command: { type: 'mark-done' },
        keys: [ENTER],
        line: 'done',
        answer: { done: true },
        call: { method: 'done' },
      };
    case 'conclude':
      return {
        command: { type: 'conclude', ...(advisor ? { weighed: NOT_PROVEN } : {}) },
        keys: [ENTER],
        line: 'yes',
        answer: { conclude: true },
        call: { method: 'accept' },
      };
    case 'measure': {
      const read = parseReading(one.typed, expectedReading(step, limits(step)));
      if (read.status !== 'read') return null;
      const { value } = read.quantity;
      // What cannot be is asked for twice on the screen, and not at all in a file.
      if (judgeStep(step, value, session.meter)?.verdict === 'impossible') return null;
      const judge = (other: number) => judgeStep(step, other, session.meter);
      const doubtful = doubtReading(value, step.unit, judge) !== null;
      return {
        command: { type: 'record-reading', typed: one.typed, value },
        keys: [CLEAR, one.typed, ENTER, ...(doubtful ? [ENTER] : [])],
        line: doubtful ? `${one.typed}\nyes` : one.typed,
        answer: { reading: one.typed },
        call: { method: 'reading', params: { reading: one.typed, sure: doubtful } },
      };
    }
    case 'ask':
    case 'look': {
      const choices = choicesAt(step);
      const place = one.pick % Math.min(9, choices.length);
      const { outcome, look } = choices[place]!;
      return {
        command: { type: 'choose-outcome', outcome, ...(look === null ? {} : { look }) },
        keys: [String(place + 1)],
        line: outcome,
        answer: { choose: look ?? outcome },
        call: { method: 'choose', params: { choose: look ?? outcome } },
      };
    }
  }
}

/** What was saved, without times; in lines a person names the outcome, on the screen what was seen. */
function saved(opened: OpenedSession, withLooks: boolean): unknown[] {
  const { events, verdict } = readSessionLog(table.disk.read(opened.driver.path()));
  expect(verdict).toBe('whole');
  const bare = events.map(({ seq: _seq, prev: _prev, ...event }) => event);
  expect(replay(bare as unknown as readonly SessionEvent[])).toEqual(opened.driver.session());
  return events.map(({ at: _at, elapsed: _elapsed, prev: _prev, ...rest }) => {
    if (rest['type'] === 'session-opened') return { ...rest, id: '' };
    // A program acknowledges cautions one by one, so its events have other numbers.
    if (rest['type'] === 'step-impossible' && 'by' in rest) return { ...rest, by: 'an event' };
    if (withLooks || rest['type'] !== 'look-recorded') return rest;
    const { look: _look, ...named } = rest as Record<string, unknown>;
    return named;
  });
}

async function onScreen(opened: OpenedSession, meant: readonly Meant[]): Promise<void> {
  let now = 0;
  const screen = await openTestScreen(
    <SessionScreen opened={opened} clock={() => now} onHome={() => {}} />,
  );
  for (const { keys } of meant)
    for (const key of keys) {
      now += 1000;
      await screen.send(key);
    }
  await screen.unmount();
  expect(screen.crashes).toEqual([]);
}

async function inLines(opened: OpenedSession, meant: readonly Meant[]): Promise<void> {
  const lines = meant.flatMap(({ line }) => line.split('\n'));
  let turns = 0;
  await plainSession(opened, {
    say: () => {},
    ask: async () => {
      turns += 1;
      if (turns > TURNS_MAX) throw new Error('asked without end');
      return lines.shift() ?? null;
    },
  });
  expect(lines).toEqual([]);
}

async function byFile(opened: OpenedSession, meant: readonly Meant[]): Promise<void> {
  const text = stringify({ answers: meant.map(({ answer }) => answer) });
  const { value, issues } = loadAnswers(text, 'answers.yaml');
  expect(issues).toEqual([]);
  expect(await runAnswers(opened, value!, () => {})).toBeNull();
}

async function byProgram(opened: OpenedSession, meant: readonly Meant[]): Promise<void> {
  const bug = (error: unknown) => {
    throw error;
  };
  const server = rpcServer(
    {
      program: '',
      kind: 'session',
      procedures: () => [],
      sheet: () => ({ terminals: [], parts: [], values: [], faults: [] }),
      begin: null,
      bug,
    },
    opened,
  );
  for (const { call } of meant) {
    const one = (id: string) => ({
      method: 'acknowledge',
      params: { caution: id, person: 'R. Example' },
    });
    const calls =
      call === 'acknowledge'
        ? pendingCautions(opened.driver.session()).map(({ id }) => one(id))
        : [call];
    for (const sent of calls) {
      const answer = await server.answer(JSON.stringify({ jsonrpc: '2.0', id: 1, ...sent }));
      expect(JSON.parse(answer!)).toHaveProperty('result');
    }
  }
}

/** Cautions read one after the other as those that are read with one key; numbers of events move with it. */
function readTogether(events: readonly unknown[]): unknown[] {
  const all: Record<string, unknown>[] = [];
  for (const event of events as readonly Record<string, unknown>[]) {
    const { seq: _seq, readBy: _readBy, set: _set, ...rest } = event;
    const before = all.at(-1);
    const goesOn =
      rest['type'] === 'caution-acknowledged' && before?.['type'] === 'caution-acknowledged';
    if (goesOn && before) before['cautions'] = [before['cautions'], rest['cautions']].flat();
    else all.push(rest);
  }
  return all;
}

it(
  `screen, lines, answers file, program and replay agree on ${SESSIONS} sessions`,
  async () => {
    const reached = { events: 0, concluded: 0, backs: 0, readings: 0, set: 0, unset: 0 };
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: procedures.length - 1 }), moves, async (procedure, made) => {
        const first = begin(procedure);
        const meant = reference(first, made);
        if (meant.length === 0) return;
        const wanted = saved(first, true);
        const file = begin(procedure);
        await byFile(file, meant);
        expect(saved(file, true)).toEqual(wanted);
        const program = begin(procedure);
        await byProgram(program, meant);
        expect(readTogether(saved(program, true))).toEqual(readTogether(wanted));
        const screen = begin(procedure);
        await onScreen(screen, meant);
        expect(saved(screen, true)).toEqual(wanted);
        const lines = begin(procedure);
        await inLines(lines, meant);
        const named = saved(lines, false);
        const paused = first.driver.session().status === 'open' ? 1 : 0;
        expect(named.slice(0, named.length - paused)).toEqual(saved(first, false));
        reached.events += wanted.length;
        for (const event of wanted as { type: string }[]) {
          if (event.type === 'concluded') reached.concluded += 1;
          if (event.type === 'step-reopened') reached.backs += 1;
          if (event.type === 'reading-recorded') reached.readings += 1;
          if (event.type === 'value-set') reached.set += 1;
          if (event.type === 'value-taken-back') reached.unset += 1;
        }
      }),
      { numRuns: SESSIONS, seed: SEED },
    );
    // The sequences came far enough to mean something.
    expect(reached.events).toBeGreaterThan(SESSIONS * 6);
    expect(reached.concluded).toBeGreaterThan(SESSIONS / 20);
    expect(reached.backs).toBeGreaterThan(SESSIONS / 10);
    expect(reached.readings).toBeGreaterThan(SESSIONS / 2);
    expect(reached.set).toBeGreaterThan(SESSIONS / 4);
    if (LONG) expect(reached.unset).toBeGreaterThan(0);
  },
  TIME_MS,
);
