import { beforeAll, describe, expect, it } from 'vitest';
import { LOOK_WORDS } from '../../src/circuit/look-words.ts';
import { type Model, pairId } from '../../src/circuit/model.ts';
import { keptOf } from '../../src/circuit/shown-of.ts';
import type { Test } from '../../src/circuit/test.ts';
import { arrangementKey } from '../../src/circuit/test-key.ts';
import { createBench } from '../../src/drill/bench.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import type { LinkedProcedure } from '../../src/procedure/link-procedure.ts';
import { expectedEnds, type Step } from '../../src/procedure/procedure.ts';
import { expectedRangeWords } from '../../src/procedure/test-words.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { evolve, openSession, replay } from '../../src/session/evolve.ts';
import type { Session } from '../../src/session/session.ts';
import { testTable } from '../../src/session/test-table.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { withHealthy } from '../../src/suspects/prior.ts';
import { COSTS, testCost } from '../../src/suspects/test-cost.ts';
import { needsOf } from '../../src/suspects/test-entries.ts';
import { LONG } from '../campaign.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { when } from './sample-tree.ts';
import { after, beginWith, shopFor } from './walk-library.ts';
import { weighedWords } from './weighed-words.ts';

const AT_SENSOR = setupOf({ unplugged: ['sensor'] });
const SIGNAL_AT_PLUG: Test = {
  setup: AT_SENSOR,
  probe: { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' },
};
const SIGNAL_AT_MODULE: Test = {
  setup: AT_SENSOR,
  probe: { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' },
};
const FEED: Test = {
  setup: KEY_ON,
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};

let model: Model;
let linked: LinkedProcedure;
beforeAll(() => {
  ({ model, linked } = shopFor('hall-no-signal'));
});

const begin = (job?: Job, instruments?: readonly string[]): Session =>
  beginWith(linked, job, instruments);

/** The session after extra readings with these values in volts. */
function measured(session: Session, ...readings: [Test, number][]): Session {
  return readings.reduce((now, [test, value]) => {
    const shown = { kind: 'number', value, unit: 'V' } as const;
    return after(now, {
      ...{ type: 'record-test', test, typed: `${value} V`, shown, expected: null },
    });
  }, session);
}

function withNote(session: Session, text: string): Session {
  return after(session, { type: 'add-note', text });
}

/** One for all sessions without a job of their own: its table grows only by what is asked for. */
let plain: ReturnType<typeof createAdvisor> | undefined;
function advisorFor(job?: Job) {
  if (job) return createAdvisor(model, begin(job).opened);
  plain ??= createAdvisor(model, begin().opened);
  return plain;
}
/** What a conclusion with these faults rests on, in words. */
const said = (session: Session, faults: readonly string[]) =>
  weighedWords(model, session, advisorFor().weigh(session, faults));
const chanceOf = (session: Session, repair: string, job?: Job) =>
  advisorFor(job)
    .suspects(session)
    .rows.find((row) => row.repair === repair)?.chance ?? 0;

/** A session that always does the first proposal on a vehicle with `fault`, until there is none. */
function followed(advisor: ReturnType<typeof advisorFor>, fault: string, seed: number): Session {
  const bench = createBench(model, fault, seed);
  let session = begin();
  for (let round = 0; round < 12; round += 1) {
    const [proposal] = advisor.nextTests(session);
    if (!proposal) break;
    const { test, expected } = proposal;
    const shown = keptOf(bench.shows(test));
    session = after(session, { type: 'record-test', test, typed: '', shown, expected });
  }
  return session;
}

describe('a diagnosis', () => {
  it('is worked out once for a state of the session, whoever asks', () => {
    const advisor = advisorFor();
    const session = measured(begin(), [FEED, 4.99]);
    const once = advisor.diagnosis(session);
    expect(advisor.diagnosis(session)).toBe(once);
    expect(advisor.suspects(session)).toBe(once.suspects);
    expect(advisor.nextTests(session)).toBe(once.nextTests);
    const faults = ['wire.signal.open'];
    expect(advisor.weigh(session, faults)).toBe(once.weigh([...faults]));
    expect(once.weigh(faults)).not.toBe(once.weigh([]));
    expect(advisor.diagnosis(measured(begin(), [FEED, 4.98]))).not.toBe(once);
  });

  it('is not made again where nothing has come to it but words', () => {
    const advisor = advisorFor();
    const session = measured(begin(), [FEED, 4.99]);
    const noted = withNote(session, 'the plug was green');
    expect(noted).not.toBe(session);
    expect(advisor.diagnosis(noted)).toBe(advisor.diagnosis(session));
    const helped = measured(begin(undefined, ['helper']), [FEED, 4.99]);
    expect(advisor.diagnosis(helped)).not.toBe(advisor.diagnosis(session));
  });

  it('of a session that was read, shut and read again is the same', () => {
    const session = measured(begin(), [FEED, 4.99], [SIGNAL_AT_MODULE, 4.98]);
    const again = replay(JSON.parse(JSON.stringify(session.events)) as SessionEvent[]);
    const advisor = advisorFor();
    expect(advisor.suspects(again)).toEqual(advisor.suspects(session));
    expect(advisor.nextTests(again)).toEqual(advisor.nextTests(session));
  });

  it('is made without a procedure as well, of the standard tests', () => {
    const free = openSession({ ...begin().opened, procedure: null });
    const advisor = createAdvisor(model, free.opened);
    const proposals = advisor.nextTests(free);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { step } of proposals) expect(step).toBeNull();
    const read = measured(free, [SIGNAL_AT_MODULE, 4.98], [SIGNAL_AT_PLUG, 0.0002]);
    expect(advisor.suspects(read).rows[0]?.repair).toBe('wire.signal');
  });

  it('takes nothing that was read after the conclusion, which is read after the repair', () => {
    const before = measured(begin(), [SIGNAL_AT_MODULE, 4.98], [SIGNAL_AT_PLUG, 0.0002]);
    const own = { words: null, faults: ['wire.signal.open'] };
    const concluded = after(before, { type: 'conclude', own });
    const repaired = measured(concluded, [SIGNAL_AT_PLUG, 4.98]);
    const advisor = advisorFor();
    const chances = (of: Session) => advisor.suspects(of).rows.map(({ chance }) => chance);
    expect(chances(repaired)).toEqual(chances(before));
    const evidence = (of: Session) => advisor.weigh(of, own.faults).evidence;
    expect(evidence(repaired)).toEqual(evidence(before));
    // before the conclusion the same reading does count
    const unrepaired = measured(before, [SIGNAL_AT_PLUG, 4.98]);
    expect(chances(unrepaired)).not.toEqual(chances(before));
  });
});

describe('suspects', () => {
  it('are all there before any reading, with chances that sum to 1', () => {
    const view = advisorFor().suspects(begin());
    expect(view.rows.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
    expect(view.changed).toBeNull();
    for (const { faults, chance, repair } of view.rows) {
      const sum = faults.reduce((total, fault) => total + fault.chance, 0);
      expect(sum, repair).toBeCloseTo(chance, 9);
    }
  });

  it('point at the wire when the pull-up is at the module and not at the plug', () => {
    const session = measured(begin(), [SIGNAL_AT_MODULE, 4.98], [SIGNAL_AT_PLUG, 0.0002]);
    const [first] = advisorFor().suspects(session).rows;
    expect(first?.repair).toBe('wire.signal');
    expect(first?.faults[0]?.id).toBe('wire.signal.open');
    expect(advisorFor().suspects(session).changed).toMatch(/signal wire/);
  });

  it('a sensor that was replaced before is less suspected, and its connector no less', () => {
    const job = {
      ...emptyJob('no start'),
      earlierRepairs: [{ words: 'new sensor', part: 'sensor' }],
    };
    expect(chanceOf(begin(job), 'sensor.replace', job)).toBeLessThan(
      chanceOf(begin(), 'sensor.replace') / 3,
    );
    expect(chanceOf(begin(job), 'connector.sensor', job)).toBeGreaterThan(
      chanceOf(begin(), 'connector.sensor'),
    );
  });

  it('a code for "low" speaks for a short to ground, a code for "high" against it', () => {
    const shorted = (code: string) => {
      const job = { ...emptyJob('no start'), codes: [code] };
      const rows = advisorFor(job).suspects(begin(job)).rows;
      return rows
        .flatMap(({ faults }) => faults)
        .find(({ id }) => id === 'wire.signal.short-to-ground')!.chance;
    };
    expect(shorted('P0337')).toBeGreaterThan(3 * shorted('P0338'));
  });

  it('say so when nothing explains the readings, and name one to repeat', () => {
    // 7 V at the sensor's feed and a good pull-up cannot both come from one fault of a 5 V circuit.
    const session = measured(
      begin(),
      [SIGNAL_AT_MODULE, 4.98],
      [SIGNAL_AT_PLUG, 4.97],
      [FEED, 7.3],
    );
    const { unexplained, unexplainedBy } = advisorFor().suspects(session);
    expect(unexplained).toMatch(/check where both leads were/);
    expect(unexplained).not.toMatch(/Two faults/);
    // the same in facts: the third reading is the fourth event
    expect(unexplainedBy).toEqual({ reading: 4, pair: null });
  });
});

describe('two faults at once', () => {
  const FEED_AT_MODULE: Test = {
    ...FEED,
    probe: { kind: 'volts', plus: 'module.reference', minus: 'battery.negative' },
  };

  it('are named when no single one explains the readings', () => {
    const { faults } = linked.circuit!;
    const words = ['wire.feed.open', 'wire.signal.open'].map(
      (id) => faults.find((fault) => fault.id === id)!.words,
    );
    const id = pairId(
      faults.find((fault) => fault.id === 'wire.feed.open')!,
      faults.find((fault) => fault.id === 'wire.signal.open')!,
    );
    const read = [FEED, FEED_AT_MODULE, SIGNAL_AT_MODULE, SIGNAL_AT_PLUG].map((test) => {
      const shown = model.shows(id!, test, 5);
      if (shown.kind !== 'number') throw new Error('volts are numbers');
      return [test, shown.value] as [Test, number];
    });
    const { unexplained, unexplainedBy } = advisorFor().suspects(measured(begin(), ...read));
    expect(unexplained).toMatch(/Two faults at once would explain them: /);
    expect([...unexplainedBy!.pair!].sort()).toEqual(['wire.feed.open', 'wire.signal.open']);
    for (const one of words) expect(unexplained).toContain(one);
  });

  it('are not thought of while one explains the readings', () => {
    const session = measured(begin(), [SIGNAL_AT_MODULE, 4.98], [SIGNAL_AT_PLUG, 0.0002]);
    expect(advisorFor().suspects(session).unexplained).toBeNull();
  });
});

describe('the next test', () => {
  it('costs nothing to arrange without clips and with its own sensor', () => {
    const clip = { from: 'sensor.feed', to: 'battery.negative', through: 'test-light' as const };
    expect(arrangementKey(FEED.setup)).toBe('');
    expect(arrangementKey({ ...FEED.setup, bridges: [clip] })).not.toBe('');
    expect(arrangementKey({ ...FEED.setup, sensor: 'spare' })).not.toBe('');
    for (const { test, minutes } of advisorFor().nextTests(
      begin(emptyJob('no start'), ['meter']),
    )) {
      const own = testTable(model.circuit, linked.procedure, model.meter).entryOf(test);
      const cost = testCost(own, AT_THE_START, COSTS, false);
      expect(minutes).toBeCloseTo(cost.minutes, 1);
      if (test.setup.bridges.length === 0) expect(cost.arrange).toBe(0);
    }
  });

  it('is none that needs what the person does not have', () => {
    const session = begin(emptyJob('no start'), ['meter']);
    const proposals = advisorFor().nextTests(session);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { needs } of proposals)
      expect(['meter']).toEqual(expect.arrayContaining([...needs]));
  });

  it('without the multimeter is none in volts or ohms, and without anything only a look', () => {
    const kinds = (instruments: readonly string[]) =>
      advisorFor()
        .nextTests(begin(emptyJob('no start'), instruments))
        .map(({ test }) => test.probe.kind);
    expect(kinds(['meter', 'test-light', 'live-data'])).toContain('volts');
    const without = kinds(['test-light', 'scope', 'live-data']);
    expect(without.length).toBeGreaterThan(0);
    for (const kind of without) expect(['volts', 'ohms']).not.toContain(kind);
    const bare = kinds([]);
    expect(bare.length).toBeGreaterThan(0);
    expect(new Set(bare)).toEqual(new Set(['inspect']));
    const { wouldProve } = advisorFor().weigh(begin(emptyJob('no start'), []), [
      'wire.signal.open',
    ]);
    for (const { needs } of wouldProve) expect(needs).toEqual([]);
  });

  it('is none in live data for who has no tester', () => {
    const offered = (instruments: readonly string[]) => {
      const session = begin(emptyJob('no start'), instruments);
      // that a signal arrives speaks for a circuit in which nothing is wrong
      const { wouldProve } = advisorFor().weigh(session, []);
      return [...advisorFor().nextTests(session), ...wouldProve].map(({ test }) => test.probe.kind);
    };
    expect(offered(['live-data'])).toContain('counts');
    expect(offered(['meter', 'test-light', 'lamp'])).not.toContain('counts');
  });

  it('is not one that was just done, and says what the leading suspects would show', () => {
    const session = measured(begin(), [FEED, 4.99]);
    const proposals = advisorFor().nextTests(session);
    expect(proposals.length).toBeGreaterThan(1);
    const suspects = withHealthy(linked.circuit!.faults).map(({ words }) => words);
    for (const proposal of proposals) {
      expect(proposal.test).not.toEqual(FEED);
      expect(proposal.shows.length).toBeGreaterThan(1);
      for (const { suspect, shown } of proposal.shows) {
        expect(suspects).toContain(suspect);
        expect(shown).toBeTruthy();
      }
    }
  });

  it.each([
    ...(LONG ? ['wire.signal.open', 'contact.sensor.signal.open', 'module.reference.dead'] : []),
    'throttle-position.shorted',
  ])('followed again and again finds %s without a tree', (fault) => {
    const wanted = linked.circuit!.faults.find(({ id }) => id === fault)!.repair;
    const advisor = advisorFor();
    const session = followed(advisor, fault, 11);
    expect(advisor.suspects(session).rows[0]?.repair).toBe(wanted);
  });

  it('ends with the repairs named that no test here parts, when several are left', () => {
    const advisor = advisorFor();
    expect(advisor.suspects(begin()).group).toBeNull();
    const session = followed(advisor, 'target.missing', 1);
    const { group, groupRepairs, rows } = advisor.suspects(session);
    expect(groupRepairs[0]).toBe(rows[0]!.repair);
    expect(groupRepairs).toContain(
      linked.circuit!.faults.find(({ id }) => id === 'target.missing')!.repair,
    );
    expect(group).toMatch(/^No test here can tell these apart: /);
    const right = linked.circuit!.faults.find(({ id }) => id === 'target.missing')!.repairWords;
    // Behind the first one they go on in small letters.
    const part = (words: string) => words.replace(/\.$/, '').toLowerCase();
    expect(group?.toLowerCase()).toContain(part(right));
    expect(group?.toLowerCase()).toContain(part(rows[0]!.words));
    expect(group).not.toMatch(/\.[;.]/);
    expect(advisor.nextTests(session)).toEqual([]);
  });
});

describe('a conclusion', () => {
  it('with no reading behind it is not proven, and tests that would help are offered', () => {
    const weighed = advisorFor().weigh(begin(), ['wire.signal.open']);
    expect(weighed).toMatchObject({ proven: false, evidence: [] });
    expect(weighed.missing).toBeGreaterThan(0);
    expect(weighed.wouldProve.length).toBeGreaterThan(0);
  });

  it('offers no two tests by one name: where a procedure gives one title twice, the place is said', () => {
    const { procedure: shipped } = linked;
    const steps: Record<string, Step> = {};
    for (const [id, step] of Object.entries(shipped.steps))
      steps[id] = step.kind === 'conclude' ? step : { ...step, title: 'A test' };
    const procedure = { ...shipped, steps };
    const job = emptyJob('no start');
    const advisor = createAdvisor(model, { ...begin(job).opened, procedure });
    const offered = Object.values(procedure.steps).flatMap((step) =>
      step.kind === 'conclude' ? [advisor.weigh(begin(), step.faults).wouldProve] : [],
    );
    const names = offered.map((proposals) => proposals.map(({ words }) => words));
    expect(names.flat().some((words) => words.startsWith('A test: '))).toBe(true);
    for (const words of names) expect(new Set(words).size).toBe(words.length);
  });

  it('is backed by evidence in the words of the step that was asked', () => {
    // The same test stands in the tree as "Live data instead of the scope" too.
    const asked = 'counts/live';
    const twins = Object.values(linked.procedure.steps).filter(
      (step) => step.kind === 'look' && step.probe.kind === 'counts',
    );
    expect(new Set(twins.map(({ title }) => title)).size).toBeGreaterThan(1);
    const opened = begin();
    let session = openSession({
      ...opened.opened,
      procedure: { ...linked.procedure, start: asked },
    });
    for (const command of [
      { type: 'acknowledge-cautions' },
      { type: 'choose-outcome', outcome: 'still', look: 'still' },
    ] as const) {
      session = after(session, command);
    }
    const { evidence } = said(session, ['sensor.dead']);
    expect(evidence.map(({ test, found }) => [test, found])).toEqual([
      [linked.procedure.steps[asked]!.title, 'the live data does not change'],
    ]);
  });

  it('lists what was found, where, and what it points to, and what ruled others out', () => {
    const session = measured(
      begin(),
      [SIGNAL_AT_MODULE, 4.98],
      [SIGNAL_AT_PLUG, 0.0002],
      [FEED, 4.98],
    );
    const weighed = said(session, ['wire.signal.open']);
    expect(weighed.evidence.length).toBeGreaterThan(0);
    expect(weighed.evidence[0]?.where).toMatch(/battery negative/);
    // the feed that is there rules its wire out, whatever the pull-up leads to
    expect(weighed.ruledOut.length).toBeGreaterThan(0);
  });
});

describe('the answers of the tree', () => {
  const answers = [
    ['plug/look', { look: 'sound', outcome: 'sound', go: 'feed/across' }],
    ['feed/across', { value: 4.98, outcome: 'good', go: 'level/at-plug' }],
    ['level/at-plug', { value: 0.0002, outcome: 'low', go: 'far-end/along' }],
    ['far-end/along', { value: 4.98, outcome: 'lost', go: 'signal-wire' }],
  ] as const;

  function walked(count: number, more: object = {}): Session {
    const opened = { ...begin().opened, from: 'plug/look' };
    return answers.slice(0, count).reduce((session, [step, part]) => {
      const kind = 'look' in part ? 'look-recorded' : 'reading-recorded';
      const rest = { typed: '', unit: 'V', instrument: '', judgement: null };
      const event = { type: kind, step, ...rest, ...part, ...more, ...when(1) };
      return evolve(session, event as SessionEvent);
    }, openSession(opened));
  }
  const advisor = () => advisorFor();

  it('weigh as much as the same readings besides', () => {
    const rows = advisor().suspects(walked(4)).rows;
    expect(rows[0]?.repair).toBe('wire.signal');
    const alone = advisor().suspects(
      measured(begin(), [SIGNAL_AT_PLUG, 0.0002], [SIGNAL_AT_MODULE, 4.98]),
    ).rows;
    expect(rows[0]!.chance).toBeGreaterThanOrEqual(alone[0]!.chance);
  });

  it('are told with their step, their place and their words', () => {
    const session = walked(4);
    const { evidence, ruledOut } = said(session, ['wire.signal.open']);
    const steps = linked.procedure.steps;
    const titles = answers.map(([id]) => (steps[id] as { title: string }).title);
    expect(evidence.length).toBeGreaterThan(0);
    for (const { test } of evidence) expect(titles).toContain(test);
    expect(evidence.map(({ found }) => found)).toContain('200 \u00b5V');
    for (const { words, by } of ruledOut) {
      expect(words).not.toBe('');
      expect(words).not.toBe('nothing to repair now');
      expect(titles.some((title) => by.startsWith(`${title}: `))).toBe(true);
    }
  });

  it('are forgotten when they are taken back', () => {
    const session = walked(4);
    const back = decide(session, { type: 'go-back', to: 2 }, when(2));
    const before = back.ok ? back.events.reduce(evolve, session) : session;
    const chances = (of: Session) =>
      advisor()
        .suspects(of)
        .rows.map(({ chance }) => chance);
    expect(chances(before)).toEqual(chances(walked(2)));
  });

  it('in hertz, and looks that nobody named, say nothing', () => {
    const chances = (of: Session) =>
      advisor()
        .suspects(of)
        .rows.map(({ chance }) => chance);
    expect(chances(walked(2, { unit: 'Hz', look: null }))).toEqual(chances(begin()));
  });

  it('an over-limit is read as infinite', () => {
    const through: Test = {
      setup: setupOf({ unplugged: ['module', 'sensor'], state: 'key-off' }),
      probe: { kind: 'ohms', plus: 'sensor.signal', minus: 'module.signal' },
    };
    const session = after(begin(), {
      ...{ type: 'record-test', test: through, typed: 'OL', expected: null },
      shown: { kind: 'number', value: null, unit: 'ohm' },
    });
    expect(advisor().suspects(session).rows[0]?.repair).toBe('wire.signal');
  });
});

describe("a test of the technician's own", () => {
  const own: Test = {
    setup: { ...AT_SENSOR, unplugged: ['sensor'] },
    probe: { kind: 'volts', plus: 'module.signal', minus: 'module.reference' },
  };
  it('is taken into the table once, in the words of its leads', () => {
    const advisor = advisorFor(emptyJob('no start'));
    const session = measured(begin(), [own, -4.98], [own, -4.98]);
    const { ruledOut } = said(session, ['wire.signal.short-to-ground']);
    expect(advisor.suspects(session).rows.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(
      1,
      9,
    );
    const words = 'volts, red at module.signal, black at module.reference: -4.98 V';
    for (const { by } of ruledOut) expect(by).toBe(words);
    expect(ruledOut.length).toBeGreaterThan(0);
  });
  it('says nothing where the model has no such place', () => {
    const lost: Test = { ...own, probe: { ...own.probe, plus: 'sensor.nowhere' } as Test['probe'] };
    const chances = (of: Session) =>
      advisorFor()
        .suspects(of)
        .rows.map(({ chance }) => chance);
    expect(chances(measured(begin(), [lost, 3]))).toEqual(chances(begin()));
  });
});

describe('a proposal', () => {
  it('tells what a healthy circuit shows, and which looks there are', () => {
    const advisor = advisorFor();
    const proposals = [
      ...advisor.nextTests(begin()),
      ...advisor.weigh(begin(), ['wire.signal.open']).wouldProve,
      ...advisor.weigh(begin(), ['sensor.stuck-high']).wouldProve,
    ];
    for (const { test, kind, looks, healthy, expected, needs, minutes, likely } of proposals) {
      const shown = Array.from({ length: 32 }, (_, at) => model.shows('healthy', test, at));
      expect(minutes).toBe(Math.round(minutes * 10) / 10);
      expect(needs).toEqual(needsOf(test));
      expect(likely).toEqual(shown[0]);
      if (shown[0]!.kind === 'look') {
        const found = shown.map((one) => (one.kind === 'look' ? one.look : 'full'));
        expect(kind).toBe('look');
        for (const look of found) expect(looks).toContain(look);
        expect(healthy).toBe([...new Set(found.map((look) => LOOK_WORDS[look]))].join(', or '));
        expect(expected).toEqual({ kind: 'look', looks: [...new Set(found)] });
      } else {
        // Before any reading it is good for any car: nearly all of what 32 of them show, and what meter and model may be off.
        expect(kind).toBe('number');
        expect(looks).toEqual([]);
        if (expected.kind !== 'number') throw new Error('a number was expected');
        const within = { ...expected, nominal: null, from: 'circuit' } as const;
        expect(healthy).toBe(expectedRangeWords(within, shown[0]!.unit));
        const { low, high } = expectedEnds(within);
        const values = shown.map((one) => (one.kind === 'number' ? one.value : 0));
        const inside = values.filter((value) => value >= low && value <= high);
        expect(inside.length, test.probe.kind).toBeGreaterThanOrEqual(29);
        // and hardly more than what 512 of them show, as far as a meter and the model may be off
        for (let sample = 0; sample < 512; sample += 1) {
          const one = model.showsAt('healthy', test, model.pointOf(sample));
          values.push(one.kind === 'number' ? one.value : 0);
        }
        const [least, most] = [Math.min(...values), Math.max(...values)];
        expect(low).toBeGreaterThanOrEqual(least - 0.03 * Math.abs(least) - 0.05);
        expect(high).toBeLessThanOrEqual(most + 0.03 * Math.abs(most) + 0.05);
      }
    }
    expect(new Set(proposals.map(({ kind }) => kind)).size).toBe(2);
  });

  it('for a conclusion has no other suspects to set apart, and what changed is the last reading', () => {
    const { wouldProve } = advisorFor().weigh(begin(), ['wire.signal.open']);
    for (const { shows, why } of wouldProve) {
      expect(shows).toEqual([]);
      expect(why).not.toBe('');
    }
    const two = measured(begin(), [SIGNAL_AT_MODULE, 4.98], [SIGNAL_AT_PLUG, 0.0002]);
    const again = measured(two, [SIGNAL_AT_PLUG, 0.0002]);
    // what changed is what the last reading did, whatever the ones before it did
    expect(advisorFor().suspects(two).changed).not.toMatch(/^little changed/);
    expect(advisorFor().suspects(again).changed).not.toBe(advisorFor().suspects(two).changed);
    // the same again is hardly a slip, so that what it speaks for can only become likelier; and a third time no news
    expect(chanceOf(again, 'wire.signal')).toBeGreaterThan(chanceOf(two, 'wire.signal'));
    const third = measured(again, [SIGNAL_AT_PLUG, 0.0002]);
    expect(advisorFor().suspects(third).changed).toMatch(/^little changed/);
  });

  it('is quicker with a helper who turns the key', () => {
    const offers = (has: string[]) =>
      advisorFor().weigh(begin(emptyJob('x'), has), ['wire.signal.open']).wouldProve;
    const [alone, helped] = [offers(['meter']), offers(['meter', 'helper'])];
    const walk = (list: readonly { minutes: number }[]) =>
      list.reduce((sum, { minutes }) => sum + minutes, 0);
    expect(walk(helped)).toBeLessThan(walk(alone));
  });
});

describe('a conclusion without a fault', () => {
  it('stands for the healthy circuit', () => {
    const live: Test = {
      setup: setupOf({ state: 'cranking', target: 'moving' }),
      probe: { kind: 'counts', input: 'module.signal' },
    };
    const session = after(begin(), {
      ...{ type: 'record-test', test: live, typed: '', expected: null },
      shown: { kind: 'look', look: 'follows' },
    });
    const { evidence } = said(session, []);
    expect(evidence.map(({ found }) => found)).toEqual(['the live data follows']);
  });
  it('a code of another system says nothing', () => {
    const job = { ...emptyJob('no start'), codes: ['P0420', 'rubbish'] };
    expect(chanceOf(begin(job), 'wire.signal', job)).toBe(chanceOf(begin(), 'wire.signal'));
  });
});
