import { describe, expect, it } from 'vitest';
import { type Conclusion, stepOf } from '../../src/procedure/procedure.ts';
import { type Ending, type Proof, proveProcedure } from '../../src/proof/prove-procedure.ts';
import { shareOf } from '../campaign.ts';
import { enteredAt, shipped, trees, withoutScope } from './shipped.ts';
import { compareMinutes } from './tree-minutes.ts';

const names = trees.map(({ draft }) => draft.procedure);
/** Without a scope, a fault that ends elsewhere in this share of its samples or less is in the far corner of all tolerances. */
const BLIND_SHARE_MAX = 0.1;
/** A tree may take this much longer than the cheapest strategy found. */
const DETOUR_MAX = 1.15;

/**
 * Conclusions that a fault is led to and that leave more than one repair open, with the number of repairs. Each is one
 * that no instrument parts: see `docs/library.md`.
 */
const OPEN_ENDS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'hall-no-signal': { 'plug-or-gap': 2, 'wheel-damaged': 2, 'wheel-hidden': 2 },
  'hall-relay-no-signal': {
    'plug-or-gap': 2,
    'wheel-damaged': 2,
    'wheel-hidden': 2,
    'relay-bad': 2,
    'wire-shorted': 3,
    'no-pull-up': 2,
  },
  'reluctor-no-signal': { 'wheel-damaged': 2, 'wheel-hidden': 2, 'wheel-displaced': 2 },
  'throttle-position': {},
  'pedal-position': { 'no-reference-or-plug': 2, 'no-ground-or-plug': 2 },
  'wheel-speed-current': {
    'ring-damaged': 2,
    'ring-hidden': 2,
    'no-feed': 2,
    'no-sense': 2,
  },
};

const isStray = (verdict: Ending['verdict']) => verdict !== 'right' && verdict !== 'inseparable';
const strayEnds = ({ rows }: Proof) =>
  rows.flatMap(({ fault, ends }) =>
    ends.filter(({ verdict }) => isStray(verdict)).map((end) => ({ fault, ...end })),
  );

describe.each(names)('%s, proved', (name) => {
  const { linked, model } = shipped(name);
  const proof = proveProcedure(linked, model);

  it('leads every sample of every fault to its repair or its named group', () => {
    expect(proof.rows).toHaveLength(model.circuit.faults.length + 1);
    expect(strayEnds(proof)).toEqual([]);
  });

  it('finds nothing wrong with a healthy vehicle', () => {
    const healthy = proof.rows.find(({ fault }) => fault === 'healthy')!;
    expect(healthy.ends).toEqual([{ step: 'no-fault', verdict: 'right', share: 1 }]);
  });

  it('has no issue, not even a warning', () => {
    expect(proof.issues.map(({ code, words }) => ({ code, words }))).toEqual([]);
  });

  it('leaves no more repairs open than listed', () => {
    const repairs = new Map(model.circuit.faults.map(({ id, repair }) => [id, repair]));
    const ends = new Set(proof.rows.flatMap(({ ends: own }) => own.map(({ step }) => step)));
    const open = [...ends].flatMap((id): [string, number][] => {
      const { faults } = stepOf(linked.procedure, id) as Conclusion;
      const count = new Set(faults.map((fault) => repairs.get(fault))).size;
      return count > 1 ? [[id, count]] : [];
    });
    expect(Object.fromEntries(open)).toEqual(OPEN_ENDS[name]);
  });

  const code = stepOf(linked.procedure, 'code');
  const entries = code.kind === 'ask' ? code.outcomes.map(({ name: word, go }) => [word, go]) : [];
  it.each(entries)('is right for every fault when the code says "%s"', (_, go) => {
    const entered = proveProcedure(enteredAt(linked, go!), model);
    // A step that has nothing left to part on this way is a detour and no mistake.
    expect(entered.issues.filter(({ code: kind }) => kind !== 'separates-nothing')).toEqual([]);
    expect(strayEnds(entered)).toEqual([]);
  });

  it('without a scope it loses only what no meter can see', () => {
    const blind = proveProcedure(withoutScope(linked), model);
    const lost = blind.rows.flatMap(({ fault, ends }) => {
      const share = ends.reduce((sum, end) => sum + (isStray(end.verdict) ? end.share : 0), 0);
      return share >= BLIND_SHARE_MAX ? [fault] : [];
    });
    const blindTo = /^target\.|\.worn-spot$|track-open$|leads-swapped$/;
    expect(lost.filter((fault) => !blindTo.test(fault))).toEqual([]);
  });
});

/** The search takes most of a minute for all: an ordinary run takes every third tree. */
const searched = shareOf(names, 3);

describe('beside the cheapest strategy', () => {
  it.each(searched)(
    '%s takes little longer than the cheapest strategy found, and parts as much',
    (name) => {
      const { linked, model } = shipped(name);
      const { tree, optimum, repairsLeft } = compareMinutes(linked.procedure, model);
      expect(tree / optimum).toBeGreaterThan(0.9);
      expect(tree / optimum).toBeLessThan(DETOUR_MAX);
      const larger = [...repairsLeft].filter(([, left]) => left.tree > left.optimum);
      expect(larger).toEqual([]);
    },
    600_000,
  );
});
