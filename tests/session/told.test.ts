/** What is told before any reading: what is understood of it, how far it moves chances, and that the page says the same. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  type Circumstances,
  type EarlierRepair,
  emptyJob,
  type Job,
} from '../../src/procedure/job.ts';
import { chooseSuspects } from '../../src/session/choose-suspects.ts';
import { isIntermittent } from '../../src/session/intermittent.ts';
import { movesOdds } from '../../src/session/moves-odds.ts';
import { movedWords, toldBy, toldFactor, toldIntermittent } from '../../src/session/told.ts';
import { TOLD_MOST, TOLD_WEIGHTS } from '../../src/suspects/told-weights.ts';
import { modelOf, shipped } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';
import { WAKING } from './waking-tree.ts';

const model = modelOf('hall-relay-fed', 8);
/** Where no neighbour is told of, none is asked for. */
const NOBODY = () => 0;
const begun = sessionAfter([], WAKING);

const told = (circumstances: Circumstances, more: Partial<Job> = {}): Job => ({
  ...emptyJob('stalls'),
  codes: ['P0365'],
  ...more,
  circumstances,
});
const replaced = (more: Partial<EarlierRepair>, part = 'sensor'): Job => ({
  ...told({}),
  earlierRepairs: [{ words: 'replaced', part, ...more }],
});

function chanceOf(job: Job, repair: string): number {
  const opened = { ...begun.opened, job };
  const { table, prior } = chooseSuspects(model, opened)({ ...begun, opened });
  return table.candidates.reduce(
    (sum, candidate, at) => sum + (candidate.repair === repair ? prior[at]! : 0),
    0,
  );
}

describe('an earlier repair', () => {
  const factor = (job: Job, fault: string) => toldFactor(model.circuit, job, NOBODY)(fault);
  const NOTHING = { changed: 'nothing' } as const;

  it('that changed nothing lowers its part, and does not exclude it', () => {
    const inVain = chanceOf(replaced(NOTHING), 'sensor.replace');
    expect(inVain).toBeLessThan(0.6 * chanceOf(replaced({}), 'sensor.replace'));
    expect(inVain).toBeGreaterThan(0.001);
  });

  it('with a second-hand part, or one of another make, lowers it less', () => {
    expect(factor(replaced({ ...NOTHING, fitted: 'new' }), 'sensor.dead')).toBe(0.5);
    expect(factor(replaced({ ...NOTHING, fitted: 'second-hand' }), 'sensor.dead')).toBe(1.5);
    expect(factor(replaced({ ...NOTHING, fitted: 'other-make' }), 'sensor.dead')).toBe(1.25);
  });

  it('that helped for a while speaks for the contacts of its plug', () => {
    const forAWhile = replaced({ changed: 'for-a-while' });
    expect(factor(forAWhile, 'contact.sensor.feed.open')).toBe(4);
    expect(factor(forAWhile, 'contact.module.signal.open')).toBe(1);
    expect(factor(forAWhile, 'sensor.dead')).toBe(1);
    expect(factor(replaced({ changed: 'cured' }), 'sensor.dead')).toBe(4);
  });

  it('told of twice counts once', () => {
    const once = replaced(NOTHING);
    const twice = { ...once, earlierRepairs: [...once.earlierRepairs, ...once.earlierRepairs] };
    expect(factor(twice, 'sensor.dead')).toBe(0.5);
  });
});

describe('what was told and seen', () => {
  it.each<[string, Circumstances, string]>([
    ['wet', { happens: ['wet'] }, 'contacts and wires likelier'],
    ['cranking only', { happens: ['cranking'] }, 'fuse and relay and the gap likelier'],
    ['always', { happens: ['always'] }, ''],
    [
      'nothing else fails',
      { failsWithIt: 'Nothing, all fine' },
      'fuse and relay and what shares the feed less likely',
    ],
    [
      'others fail',
      { failsWithIt: 'ABS lamp, speedometer' },
      'fuse and relay, what shares the feed and the module likelier',
    ],
    ['a bearing', { recentWork: 'front wheel bearing, left' }, 'the wheel likelier'],
    ['a belt', { recentWork: 'timing belt and water pump' }, 'the position of the wheel likelier'],
    [
      'engine out',
      { recentWork: 'engine out for the gasket' },
      'contacts, swapped wires, wires and the wheel likelier',
    ],
    ['an accident', { recentWork: 'accident in May' }, 'wires and contacts likelier'],
    ['a chafed harness', { seen: 'loom chafed at the bracket' }, 'wires likelier'],
    ['a green pin', { seen: 'pin 2 green' }, 'contacts likelier'],
    ['a blown fuse', { seen: 'blown fuse' }, 'fuse and relay likelier'],
    ['a ring with a crack', { seen: 'cracked ring' }, 'the wheel likelier'],
    ['no corrosion', { seen: 'no corrosion, plug dry' }, ''],
    ['an oil change', { recentWork: 'oil and filter' }, ''],
    ['the frame', { freezeFrame: ['812 rpm'] }, ''],
  ])('%s', (_, circumstances, moved) => {
    expect(
      movedWords(
        toldBy(told(circumstances)).map(({ key }) => key),
        null,
      ),
    ).toBe(moved);
  });

  it('speaks of no fuse where the circuit has none', () => {
    const keys = toldBy(told({ failsWithIt: 'nothing' })).map(({ key }) => key);
    expect(movedWords(keys, shipped('hall-module-fed'))).toBe('what shares the feed less likely');
    expect(movedWords(keys, shipped('hall-relay-fed'))).toBe(
      'fuse and relay and what shares the feed less likely',
    );
  });

  it('moves each suspect by what the table says, and none by more than its bound', () => {
    const factor = toldFactor(
      model.circuit,
      told({ happens: ['wet'], seen: 'green pins' }),
      NOBODY,
    );
    // By the table: 3 for water in plugs, 4 for corrosion seen; 1.5 for the wires. Together at most ten.
    expect(factor('contact.sensor.feed.open')).toBe(TOLD_MOST);
    expect(factor('wire.signal.open')).toBe(1.5);
    expect(factor('sensor.dead')).toBe(1);
    const one = toldFactor(model.circuit, told({ happens: ['wet'] }), NOBODY);
    expect(one('contact.sensor.feed.open')).toBe(3);
  });

  it('says whether the fault comes and goes', () => {
    const is = (job: Job) => isIntermittent({ ...begun, opened: { ...begun.opened, job } });
    expect(is(told({}))).toBe(false);
    expect(is(told({ happens: ['bumps'] }))).toBe(true);
    expect(is(told({ happens: ['cranking'] }))).toBe(false);
    // SAE J2012 names P0369 intermittent.
    expect(is(told({}, { codes: ['P0369'] }))).toBe(true);
    expect(is(told({ happens: ['always'] }, { codes: ['P0369'] }))).toBe(false);
    expect(is(told({}, { codeStates: { P0365: 'history' } }))).toBe(true);
    expect(is(told({}, { codeStates: { P0365: 'pending' } }))).toBe(false);
  });

  it('a code of some time ago says less than one that stands', () => {
    // P0367 "low", SAE J2012: the signal wire at ground.
    const chance = (state: 'stored' | 'pending') =>
      chanceOf(told({}, { codes: ['P0367'], codeStates: { P0367: state } }), 'wire.signal');
    expect(chance('stored')).toBeGreaterThan(1.05 * chance('pending'));
  });
});

it('docs/maths.md has the table of weights, each with its reason', () => {
  const rows = [
    ...readFileSync('docs/maths.md', 'utf8').matchAll(
      /^\| ([a-z-]+:[a-z-]+) \| ([a-z-]+) \| ([\d.]+) \| ([^|]+) \|$/gm,
    ),
  ].map(([, key, of, times, why]) => ({ told: key, of, times: Number(times), why }));
  expect(rows).toEqual(TOLD_WEIGHTS.map((row) => ({ ...row })));
  expect(TOLD_WEIGHTS.every(({ times }) => times >= 1 / TOLD_MOST && times <= TOLD_MOST)).toBe(
    true,
  );
});

describe('the odds of a job sheet are the usual ones', () => {
  it.each<[string, Partial<Job>, boolean]>([
    ['with a complaint alone', {}, false],
    [
      'with an earlier repair that was not understood',
      { earlierRepairs: [{ words: 'x', part: null }] },
      false,
    ],
    ['not once it is known which part was replaced', replaced({}), true],
    ['not with a trouble code that says how the signal was', { codes: ['P0122'] }, true],
    ['not once something was seen', told({ happens: ['hot'] }), true],
  ])('%s', (_, more, moves) => {
    expect(movesOdds({ ...emptyJob('stalls'), codes: [], ...more })).toBe(moves);
  });
});

it.each([
  ['cold', true],
  ['hot', true],
  ['wet', true],
  ['bumps', true],
  ['always', false],
] as const)('a complaint that happens %s comes and goes: %s', (when, comes) => {
  const job = { codes: [], circumstances: { happens: [when] } };
  expect(toldIntermittent(job as never)).toBe(comes);
});
