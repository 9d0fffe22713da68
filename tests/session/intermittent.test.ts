/** A fault that comes and goes: when it is thought of, and what good readings, eyes and a moved harness say of it. */
import { describe, expect, it } from 'vitest';
import type { Look, Test } from '../../src/circuit/test.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { stepOf } from '../../src/procedure/procedure.ts';
import type { Advisor } from '../../src/session/advisor.ts';
import type { Command } from '../../src/session/command.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { decide } from '../../src/session/decide.ts';
import type { RuledOutLine } from '../../src/session/events.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { isIntermittent, wakingFaults, wakingTests } from '../../src/session/intermittent.ts';
import { passingWords, retestLines } from '../../src/session/retest.ts';
import type { Session } from '../../src/session/session.ts';
import { shipped } from '../library/shipped.ts';
import { opened, when } from './sample-tree.ts';
import { EVERYTHING } from './walk-library.ts';
import { weighedWords } from './weighed-words.ts';

const { linked, model } = shipped('hall-no-signal');
const { procedure, circuit } = linked;

/** A session that begins at `start`, with these commands performed. */
function session(start: string, codes: string[], ...commands: Command[]): Session {
  const job = { ...emptyJob('cuts out'), codes };
  const first = openSession(
    opened({ ...procedure, start }, { job, circuit, instruments: EVERYTHING }),
  );
  return commands.reduce((now, command) => {
    const decision = decide(now, command, when(1));
    if (!decision.ok) throw new Error(decision.refusal.code);
    return decision.events.reduce(evolve, now);
  }, first);
}
const choose = (outcome: string): Command => ({ type: 'choose-outcome', outcome });
const CAUTIONS: Command = { type: 'acknowledge-cautions' };

/** One advisor for each list of codes: its tables are computed once. */
const advisors = new Map<string, Advisor>();
function advisorOf({ opened: { job, vehicle } }: Session): Advisor {
  const key = job.codes.join();
  const known = advisors.get(key) ?? createAdvisor(model, { procedure, job, vehicle });
  advisors.set(key, known);
  return known;
}
const viewOf = (of: Session) => advisorOf(of).suspects(of);
const chanceOf = (of: Session, repair: string) =>
  viewOf(of).rows.find((row) => row.repair === repair)?.chance ?? 0;

const repairsOf = (lines: readonly RuledOutLine[]) =>
  lines.flatMap((line) => ('repair' in line ? [line.repair] : []));

/** A volt at the sensor's feed and a picture at the module as a healthy circuit shows them. */
const GOOD: Command[] = [
  extra({ kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' }, 'key-on', 'still'),
  extra(
    { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
    'cranking',
    'moving',
  ),
];
function extra(
  probe: Test['probe'],
  state: Test['setup']['state'],
  target: 'still' | 'moving',
  look: Look = 'full',
): Command {
  const test: Test = {
    setup: { state, unplugged: [], bridges: [], sensor: 'fitted', target },
    probe,
  };
  const shown = model.shows('healthy', test, -1);
  return {
    type: 'record-test',
    test,
    typed: '',
    shown: shown.kind === 'look' ? { kind: 'look', look } : shown,
    expected: null,
  };
}

describe('a fault that comes and goes is thought of', () => {
  // SAE J2012: P0339 intermittent, P0335 circuit
  it.each<[string, boolean, string, string[], Command[]]>([
    ['by its code', true, 'prepare', ['P0339'], []],
    ['not by another code', false, 'prepare', ['P0335'], []],
    ['not without a code', false, 'prepare', [], []],
    ['by the answer to what the code says', true, 'code', [], [choose('intermittent')]],
    ['not against that answer', false, 'code', ['P0339'], [choose('circuit')]],
    ['when the harness woke it', true, 'wake-second/wiggle', [], [CAUTIONS, choose('plug')]],
    ['not when nothing woke it', false, 'wake-second/wiggle', [], [CAUTIONS, choose('nothing')]],
    ['when the heat woke it', true, 'wake-second/heat', [], [CAUTIONS, choose('drops')]],
  ])('%s: %s', (_, expected, start, codes, commands) => {
    expect(isIntermittent(session(start, codes, ...commands))).toBe(expected);
  });

  it('not by an answer that was taken back', () => {
    const back: Command = { type: 'go-back' };
    expect(isIntermittent(session('code', [], choose('intermittent'), back))).toBe(false);
  });
});

it('is said with the suspects', () => {
  expect(viewOf(session('prepare', ['P0339'])).intermittent).toBe(true);
  expect(viewOf(session('prepare', ['P0335'])).intermittent).toBe(false);
});

describe('good readings', () => {
  it('rule out what stays, and nearly nothing that comes and goes', () => {
    const wires = ['wire.signal', 'connector.sensor', 'connector.module'];
    const staying = session('prepare', [], ...GOOD);
    expect(viewOf(staying).rows[0]!.repair).toBe('healthy');
    // what is wrong between the module's plug and its own input is not seen by these two
    for (const repair of ['wire.signal', 'connector.sensor'])
      expect(chanceOf(staying, repair), repair).toBeLessThan(0.1);
    const before = session('prepare', ['P0339']);
    const fleeting = session('prepare', ['P0339'], ...GOOD);
    for (const repair of wires)
      expect(chanceOf(fleeting, repair), repair).toBeGreaterThan(0.7 * chanceOf(before, repair));
    // a wheel is damaged or it is not
    expect(chanceOf(fleeting, 'target.replace')).toBeLessThan(
      0.2 * chanceOf(before, 'target.replace'),
    );
  });

  it('prove no conclusion of such a fault', () => {
    const of = session('prepare', ['P0339'], ...GOOD);
    const { evidence, proven, ruledOut } = advisorOf(of).weigh(of, ['contact.sensor.signal.open']);
    expect([evidence, proven]).toEqual([[], false]);
    expect(repairsOf(ruledOut).join()).not.toMatch(/wire|connector/);
  });
});

it('a step wakes only what shows in it', () => {
  const coil = shipped('reluctor-no-signal').linked.procedure;
  const wakes = (id: string) => wakingFaults(coil, id).filter((fault) => /module/.test(fault));
  // by hand: at idle a coil gives several times what its module needs, so that only an open contact stops the count
  expect(wakes('wake/running: module-plug')).toEqual([
    'contact.module.signal-plus.open',
    'contact.module.signal-minus.open',
  ]);
  // with the module's plug off nothing in it is moved
  expect(wakes('wake-loop/wiggle: plug')).toEqual([]);
  expect(wakingFaults(coil, 'wake-loop/wiggle: harness')).not.toContain(
    'wire.plus.short-to-ground',
  );
});

describe('a moved harness', () => {
  const woken = session('wake-second/wiggle', ['P0339'], ...GOOD, CAUTIONS, choose('harness'));

  it('that woke the fault names the place, is evidence, and rules nothing else out', () => {
    const [first, second] = viewOf(woken).rows;
    expect(first!.repair).toMatch(/^wire\./);
    expect(second!.repair).toMatch(/^wire\./);
    expect(viewOf(woken).changed).toMatch(/, intermittently" rose to/);
    const weighed = advisorOf(woken).weigh(woken, [
      'wire.feed.open',
      'wire.signal.open',
      'wire.ground.open',
    ]);
    const { evidence, ruledOut } = weighedWords(model, woken, weighed);
    expect(evidence).toMatchObject([
      {
        test: 'Wiggle the harness',
        where: 'engine running',
        found: 'it drops out along the harness',
      },
    ]);
    // What drops out there says nothing of the module: both may be wrong.
    expect(ruledOut.filter(({ by }) => /^Wiggle the harness/.test(by))).toEqual([]);
    expect(weighed.proven).toBe(false);
  });

  it('in vain makes what was moved a little less likely, and rules nothing out', () => {
    const before = session('wake-second/wiggle', ['P0339']);
    const vain = session('wake-second/wiggle', ['P0339'], CAUTIONS, choose('nothing'));
    for (const repair of ['connector.sensor', 'wire.signal', 'connector.module']) {
      expect(chanceOf(vain, repair), repair).toBeLessThan(chanceOf(before, repair));
      expect(chanceOf(vain, repair), repair).toBeGreaterThan(0.4 * chanceOf(before, repair));
    }
    // it was not moved
    expect(chanceOf(vain, 'sensor.replace')).toBeGreaterThan(chanceOf(before, 'sensor.replace'));
  });

  it('was moved in vain up to the place that woke it, and not after it', () => {
    const at = (outcome: string) => {
      const of = session('wake-second/wiggle', ['P0339'], CAUTIONS, choose(outcome));
      return { plug: chanceOf(of, 'connector.sensor'), module: chanceOf(of, 'connector.module') };
    };
    // the plug comes before the harness, the module's plug after it
    const prior = session('wake-second/wiggle', ['P0339']);
    const ratio = chanceOf(prior, 'connector.sensor') / chanceOf(prior, 'connector.module');
    const { plug, module } = at('harness');
    expect(plug / module).toBeLessThan(0.8 * ratio);
  });

  it('is a step of the tree and no test to be offered', () => {
    const names = new Set(wakingTests(procedure).map(({ words }) => words));
    expect([...names].sort()).toEqual(['Warm the sensor', 'Wiggle the harness']);
    const offered = [
      ...advisorOf(woken).nextTests(woken),
      ...advisorOf(woken).weigh(woken, ['wire.signal.open']).wouldProve,
    ];
    expect(offered.length).toBeGreaterThan(0);
    expect(offered.filter(({ words }) => names.has(words))).toEqual([]);
  });
});

it('a harness that was moved while an instrument was read tells more than one left alone', () => {
  const feed = extra(
    { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    'key-on',
    'still',
  );
  const moved =
    feed.type === 'record-test' ? { ...feed, test: { ...feed.test, wiggle: true } as const } : feed;
  const of = (command: Command) => chanceOf(session('prepare', ['P0339'], command), 'wire.feed');
  expect(of(moved)).toBeLessThan(0.8 * of(feed));
});

it('eyes see a fault that comes and goes as one that stays', () => {
  const eyes = extra({ kind: 'inspect', of: 'connector.sensor' }, 'key-off', 'still', 'faulty');
  const of = session('prepare', ['P0339'], ...GOOD, eyes);
  expect(viewOf(of).rows[0]!.repair).toBe('connector.sensor');
  expect(chanceOf(of, 'connector.sensor')).toBeGreaterThan(0.8);
});

it('the faults behind a repair are those of the circuit, each once, and chances sum to 1', () => {
  const { rows } = viewOf(session('prepare', ['P0339']));
  const known = new Set(['healthy', ...circuit!.faults.map(({ id }) => id)]);
  const ids = rows.flatMap(({ faults }) => faults.map(({ id }) => id));
  expect(ids.filter((id) => !known.has(id))).toEqual([]);
  expect(new Set(ids).size).toBe(ids.length);
  expect(rows.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
  for (const { faults, chance, repair } of rows)
    expect(
      faults.reduce((sum, fault) => sum + fault.chance, 0),
      repair,
    ).toBeCloseTo(chance, 9);
});

describe('after the repair of a fault that comes and goes', () => {
  const wiggle = 'wake-second/wiggle';
  const woken = session(wiggle, [], CAUTIONS, choose('plug'), { type: 'conclude' });
  const again = (of: Session, outcome: string) => {
    const base = { type: 'record-retest', typed: '', value: null, look: null } as const;
    const ready = { type: 'acknowledge-cautions', step: wiggle } as const;
    return [ready, { ...base, step: wiggle, outcome } as const].reduce((now, command) => {
      const decision = decide(now, command, when(2));
      return decision.ok ? decision.events.reduce(evolve, now) : now;
    }, of);
  };

  it('the step that woke it has to be done again, in vain', () => {
    const lines = retestLines(woken).map(({ step }) => step.id);
    expect(lines).toContain(wiggle);
    const passed = (outcome: string) =>
      again(woken, outcome).retests.map((one) => one.type === 'retest-recorded' && one.passed);
    const step = stepOf(procedure, wiggle);
    expect(step.kind === 'ask' && passingWords(procedure, step)).toBe('it never drops out');
    expect(passed('nothing')).toEqual([true]);
    expect(passed('plug')).toEqual([false]);
    expect(passed('harness')).toEqual([false]);
  });

  it('a step that woke nothing need not be done again', () => {
    const vain = session(wiggle, [], CAUTIONS, choose('nothing'));
    expect(retestLines(vain).map(({ step }) => step.id)).not.toContain(wiggle);
  });
});
