/**
 * Sessions as no plan has them: any answer, steps that cannot be done, answers taken back and given otherwise, tests out
 * of order, conclusions accepted as they are, repairs that help or not. And what their papers say, sentence by sentence,
 * held against the events that stand.
 */
import { keptOf } from '../../src/circuit/shown-of.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Test } from '../../src/circuit/test.ts';
import { createBench } from '../../src/drill/bench.ts';
import { outcomeOfValue, type Step, stepOf } from '../../src/procedure/procedure.ts';
import { claimsOf } from '../../src/proof/claims.ts';
import { reportOf } from '../../src/records/report.ts';
import type { Block, Report } from '../../src/records/report-form.ts';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { evolve } from '../../src/session/evolve.ts';
import { expectedShown } from '../../src/session/expected-shown.ts';
import { GAPS_WORDS } from '../../src/session/gaps.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { closeCommand, passes, retestLines } from '../../src/session/retest.ts';
import {
  presentConclusion,
  presentStep,
  type Session,
  standingAnswers,
} from '../../src/session/session.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { when } from '../session/sample-tree.ts';
import { shopFor } from '../session/walk-library.ts';

/** Answers at most; a session that has come to no end by then is left unfinished, as some are. */
const ANSWERS_MAX = 80;

/** How often of a hundred what is done at a step. */
const CANNOT = 12;
const BACK = 8;
const TEST = 10;
const OTHER_CAR = 10;

/** A session of one tree, the same for the same seed. */
export function oddSession(tree: string, seed: number): Session {
  const { model, advisor, begun } = shopFor(tree);
  const random = seededRandom(seed);
  const below = (count: number) => Math.floor(random() * count);
  const pick = <T>(all: readonly T[]): T => all[below(all.length)]!;
  const chance = (of: number) => random() * 100 < of;
  const faults = model.circuit.faults.map(({ id }) => id);
  const bench = createBench(model, pick(faults), seed);
  const other = createBench(model, pick(faults), seed + 1);
  const sound = createBench(model, 'healthy', seed);
  const tests = standardTests(model.circuit);
  let session = begun;
  const tries = (command: Command): boolean => {
    const decision = decide(session, command, when(session.events.length));
    if (!decision.ok) return false;
    session = decision.events.reduce(evolve, session);
    return true;
  };
  for (let answers = 0; answers < ANSWERS_MAX; answers += 1) {
    const step = presentStep(session)!;
    if (session.trail.length > 1 && chance(BACK)) {
      tries({ type: 'go-back', to: below(session.trail.length) });
      continue;
    }
    if (chance(TEST)) tries(testCommand(pick(tests).test));
    if (step.kind === 'conclude') break;
    if (step.cannot !== null && chance(CANNOT)) {
      tries({ type: 'cannot-do', reason: 'no room' });
      continue;
    }
    if (pendingCautions(session).length > 0) tries({ type: 'acknowledge-cautions' });
    tries(answerTo(step, chance(OTHER_CAR) ? other : bench));
  }
  const step = presentStep(session)!;
  if (step.kind !== 'conclude') return session;
  tries({ type: 'conclude', weighed: advisor.weigh(session, step.faults) });
  const repaired = chance(50) ? sound : bench;
  for (const line of retestLines(session)) {
    if (chance(20)) continue;
    const again = retestLines(session).find((one) => one.step.id === line.step.id)!.step;
    if (chance(10)) {
      tries({ type: 'cannot-retest', step: again.id, reason: 'no room' });
      continue;
    }
    if (pendingCautions(session, again).length > 0)
      tries({ type: 'acknowledge-cautions', step: again.id });
    const answer = answerTo(again, repaired);
    const given = { value: null, look: null, typed: '' };
    if (answer.type === 'record-reading')
      tries({
        ...{
          type: 'record-retest',
          step: again.id,
          ...given,
          typed: answer.typed,
          value: Number.isFinite(answer.value) ? answer.value : null,
        },
        outcome: again.kind === 'measure' ? (outcomeOfValue(again, answer.value)?.name ?? '') : '',
      });
    if (answer.type === 'choose-outcome')
      tries({
        ...{ type: 'record-retest', step: again.id, ...given, look: answer.look ?? null },
        outcome: answer.outcome,
      });
  }
  if (chance(30)) tries(testCommand(pick(tests).test));
  if (chance(70)) tries(closeCommand(session));
  return session;

  function testCommand(test: Test): Command {
    const shown = keptOf(bench.shows(test));
    const typed = shown.kind === 'look' ? '' : `${shown.value ?? 'OL'}`;
    return { type: 'record-test', test, typed, shown, expected: expectedShown(model, test) };
  }

  function answerTo(step: Step, from: typeof bench): Command {
    if (step.kind === 'act' || step.kind === 'conclude') return { type: 'mark-done' };
    if (step.kind === 'ask' || step.probe === null)
      return { type: 'choose-outcome', outcome: pick(step.outcomes).name };
    const shown = from.shows({ setup: step.setup, probe: step.probe });
    if (shown.kind === 'number') {
      const typed = Number.isFinite(shown.value)
        ? `${Number(shown.value.toFixed(3))} ${shown.unit}`
        : 'OL';
      const value = Number(shown.value.toFixed(3));
      return { type: 'record-reading', typed, value };
    }
    const { look } = shown;
    const outcomes = step.kind === 'look' ? step.outcomes : [];
    const outcome = outcomes.find((one) => one.looks.includes(look))?.name ?? '';
    return { type: 'choose-outcome', outcome, look };
  }
}

/** Sentences of the customer's and the shop's paper that the events of the session do not bear out. */
export function untrueSentences(session: Session): string[] {
  const record = recordOf(session, { seq: session.events.length, hash: '' });
  const customer = reportOf(record, 'customer');
  const shop = reportOf(record, 'shop');
  return [
    ...untrueClaims(session, customer, shop),
    ...untrueEvidence(session, customer),
    ...untrueProof(session, customer, shop),
    ...untrueRuledOut(session, customer),
    ...untrueGaps(session, customer),
    ...untrueRepair(session, customer),
    ...untrueOrigin(customer, shop),
    ...untrueCall(session, record.call),
    ...untrueOpen(session, customer, record.call),
    ...unshownAnswer(session, customer),
    ...namesOfPlaces(session, customer, record.call),
  ];
}

function textsOf(report: Report): string[] {
  return report.sections.flatMap(({ blocks }) => blocks.flatMap(wordsOf));
}

function wordsOf(block: Block): readonly string[] {
  switch (block.kind) {
    case 'text':
      return [block.text];
    case 'list':
      return block.items;
    case 'facts':
      return block.rows.map(([, words]) => words);
    case 'table':
      return block.rows.flatMap((row) => row.flatMap(({ parts }) => parts));
    case 'wiring':
    case 'picture':
    case 'drawing':
    case 'sign':
      return [];
  }
}

function tableOf(report: Report, caption: string): string[][] {
  const blocks = report.sections.flatMap((section) => section.blocks);
  const table = blocks.find((block) => block.kind === 'table' && block.caption === caption);
  return table?.kind === 'table'
    ? table.rows.map((row) => row.map(({ parts }) => parts.join(' ')))
    : [];
}

/** What is said to have been seen is shown by a step that was answered, and whose answer stands. */
function untrueClaims(session: Session, ...papers: readonly Report[]): string[] {
  const { concluded, opened } = session;
  const tree = presentConclusion(session);
  if (!concluded || !tree) return [];
  const answered = standingAnswers(session)
    .filter(({ type }) => type !== 'step-impossible')
    .flatMap((event) => {
      const step =
        'step' in event && event.step !== null ? opened.procedure?.steps[event.step] : undefined;
      return step && step.kind !== 'conclude' ? [step] : [];
    });
  // Its own words, those that a paper prints; what the repair takes is no statement.
  const printed = new Set(papers.flatMap(textsOf));
  const own = [tree.title, tree.customer, tree.say].filter((text) =>
    [...printed].some((words) => text !== '' && words.includes(text)),
  );
  return own.flatMap((text) =>
    claimsOf(text, opened.circuit!, tree.faults)
      .filter(({ isShownBy }) => isShownBy === null || !answered.some(isShownBy))
      .map(({ said, needs }) => `"${tree.id}" says "${said}" without ${needs}`),
  );
}

/** Each row of the evidence is a reading that stands, and its sentence is what the two numbers beside it say. */
function untrueEvidence({ concluded, events }: Session, customer: Report): string[] {
  if (!concluded) return [];
  const at = events.indexOf(concluded);
  const stands = concluded.evidence.flatMap((line) =>
    'reading' in line && line.reading > at
      ? [`evidence of event ${line.reading}, after the conclusion`]
      : [],
  );
  const rows = tableOf(customer, 'What points to it').flatMap(([, test, should, found, says]) => {
    const inside = isInside(should!, found!);
    if (
      inside === null ||
      says === '' ||
      /Too close|No fault of this circuit|moved|wiggled/.test(says!)
    )
      return [];
    const isRight = /in the range that it should be in/.test(says!);
    return inside === isRight ? [] : [`${test}: ${found}, should be ${should}: "${says}"`];
  });
  return [...stands, ...rows];
}

const UNITS: Readonly<Record<string, number>> = { k: 1e3, M: 1e6, m: 1e-3, µ: 1e-6 };

function isInside(should: string, found: string): boolean | null {
  const range = /^(-?[\d. ]+?) to (-?[\d. ]+) ([kMmµ]?)(V|Ω|A|Hz|rpm)$/.exec(should);
  const value = /^(-?[\d. ]+) ([kMmµ]?)(V|Ω|A|Hz|rpm)\b/.exec(found);
  if (!range || !value || range[4] !== value[3]) return null;
  const number = (text: string, prefix: string) =>
    Number(text.replaceAll(' ', '')) * (UNITS[prefix] ?? 1);
  const is = number(value[1]!, value[2]!);
  const [low, high] = [number(range[1]!, range[3]!), number(range[2]!, range[3]!)];
  // Printed to three digits: what lies on a limit may have been on either side of it.
  const near = 0.006 * Math.max(Math.abs(low), Math.abs(high), Math.abs(is));
  if (Math.abs(is - low) < near || Math.abs(is - high) < near) return null;
  return is >= low && is <= high;
}

function untrueProof({ concluded, events }: Session, ...papers: readonly Report[]): string[] {
  const said = papers.flatMap(textsOf).filter((words) => /at least three independent/i.test(words));
  if (said.length === 0) return [];
  const pieces = new Set(
    (concluded?.evidence ?? []).flatMap((line) =>
      'reading' in line && line.counted ? [line.reading] : [],
    ),
  );
  const real = [...pieces].filter((number) =>
    ['reading-recorded', 'look-recorded', 'test-recorded'].includes(events[number - 1]?.type ?? ''),
  );
  return real.length >= 3 && concluded?.proven ? [] : [`"${said[0]}" on ${real.length} readings`];
}

/** A conclusion that stands for every fault explains nothing. */
function untrueOpen(
  session: Session,
  customer: Report,
  call: readonly string[],
): readonly string[] {
  const tree = presentConclusion(session);
  const all = session.opened.circuit!.faults.length;
  if (!session.concluded?.conclusion || tree?.faults.length !== all) return [];
  return [...textsOf(customer), ...call].filter((words) =>
    /best explanation|agree on this|^We found this/.test(words),
  );
}

/** What a procedure concluded from is on the paper, where it is what a person saw as well. */
function unshownAnswer(session: Session, customer: Report): string[] {
  const last = standingAnswers(session).at(-1);
  const step = last && 'step' in last && last.step !== null && presentTree(session)[last.step];
  if (!session.concluded?.conclusion || last?.type !== 'look-recorded' || !step) return [];
  if (step.kind !== 'ask') return [];
  const { words } = step.outcomes.find(({ name }) => name === last.outcome)!;
  return textsOf(customer).some((text) => text.includes(words))
    ? []
    : [`"${session.concluded.conclusion}" is concluded from "${words}", which is not told`];
}

function presentTree({ opened }: Session): Readonly<Record<string, Step>> {
  return opened.procedure!.steps;
}

/** No place is called by the name that files have for it. */
function namesOfPlaces(
  { opened }: Session,
  customer: Report,
  call: readonly string[],
): readonly string[] {
  const ids = opened.circuit!.terminals.map(({ id }) => id.replace('.', '\\.'));
  const names = new RegExp(`(?<![\\w.-])(?:${ids.join('|')})(?![\\w.-]*\\w)`);
  return [...textsOf(customer), ...call].filter((words) => names.test(words));
}

/** What is not needed is shown by readings that stand, and is neither concluded on nor listed as open. */
function untrueRuledOut(session: Session, customer: Report): string[] {
  const { concluded, events } = session;
  if (!concluded) return [];
  const standing = new Set<unknown>([...standingAnswers(session), ...session.tests]);
  const bad = concluded.ruledOut.flatMap((line) => {
    if (!('repair' in line)) return [];
    const gone = line.by.filter((number) => !standing.has(events[number - 1]));
    return line.by.length === 0 || gone.length > 0
      ? [
          `"${line.repair}" is ruled out by ${gone.length === 0 ? 'nothing' : `events ${gone.join()}, which do not stand`}`,
        ]
      : [];
  });
  const out = [
    'Repairs that the tests have ruled out',
    'Repairs that no test calls for now',
  ].flatMap((caption) => tableOf(customer, caption).map(([repairs]) => repairs!));
  const open = customer.sections
    .filter(({ heading }) => heading === 'What was not ruled out')
    .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'list' ? block.items : [])));
  return [
    ...bad,
    ...open
      .filter((words) => out.some((one) => one.includes(words)))
      .map((words) => `"${words}" is ruled out and open`),
  ];
}

function untrueGaps(session: Session, customer: Report): string[] {
  const isGap = standingAnswers(session).some(({ type }) => type === 'step-impossible');
  const isSaid = textsOf(customer).some((words) => words.includes(GAPS_WORDS));
  return isGap === isSaid || !session.concluded ? [] : [`gaps: ${isGap}, said: ${isSaid}`];
}

/** What is said of the repair is what each test after it shows, the last of each. */
function untrueRepair(session: Session, customer: Report): string[] {
  const said = textsOf(customer);
  const { procedure } = session.opened;
  const last = new Map(session.retests.map((event) => [event.step, event]));
  const passed = [...last.values()].map((event) => {
    const step = stepOf(procedure!, event.step);
    if (event.type !== 'retest-recorded' || !('outcomes' in step)) return false;
    const now = retestLines(session).find((line) => line.step.id === event.step)?.step;
    return now !== undefined && passes(procedure!, now, event);
  });
  const isWhole =
    retestLines(session).length > 0 && retestLines(session).every(({ step }) => last.has(step.id));
  const cured = said.includes('The tests were repeated after the repair and passed.');
  if (cured && !(isWhole && passed.every(Boolean))) return ['the repair is said to be good'];
  const failed = said.includes('The fault is still there after the repair.');
  if (failed && passed.every(Boolean)) return ['the repair is said to have failed'];
  return [];
}

function untrueOrigin(...papers: readonly Report[]): string[] {
  return papers
    .filter(({ origin }) => origin === '')
    .map(({ title }) => `"${title}" does not say where it comes from`);
}

/** On the telephone a test is named with what it found, which the paper has as well. */
function untrueCall(session: Session, call: readonly string[]): string[] {
  const [first = ''] = call;
  const found =
    /what shows it: .*?, found (.*?)(?:; it should be|; at least|; it is the best|\.$)/.exec(
      first,
    )?.[1];
  if (found === undefined) return [];
  const record = recordOf(session, { seq: 1, hash: '' });
  return [...record.lines, ...record.tests].some((line) => line.found === found)
    ? []
    : [`on the telephone: found ${found}, which no reading is`];
}
