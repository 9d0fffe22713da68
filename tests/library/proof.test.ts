import { describe, expect, it } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { LinkedProcedure } from '../../src/procedure/link-procedure.ts';
import { type Conclusion, stepOf } from '../../src/procedure/procedure.ts';
import { discriminatingTests } from '../../src/proof/discriminating-tests.ts';
import { type JudgedWay, judgeOf } from '../../src/proof/judge-ways.ts';
import {
  type Ending,
  type Proof,
  type ProofRow,
  proveProcedure,
} from '../../src/proof/prove-procedure.ts';
import { walkFaults } from '../../src/proof/walk-faults.ts';
import { WRONG_SHARE_MAX } from '../../src/proof/way-issues.ts';
import type { Issue } from '../../src/source/issue.ts';
import { testEntries } from '../../src/suspects/test-entries.ts';
import { shareOf } from '../campaign.ts';
import { enteredAt, shipped, trees, withoutScope } from './shipped.ts';
import { compareMinutes } from './tree-minutes.ts';

const names = trees.map(({ draft }) => draft.procedure);
/** Without a scope, a fault that ends elsewhere in this share of its samples or less is in the far corner of all tolerances. */
const BLIND_SHARE_MAX = 0.1;
/** Of all cars of all faults, by their weights, no more than this may end wrongly: what one fault may, and ten times better. */
const WRONG_SHARE_ALL = WRONG_SHARE_MAX / 10;
/**
 * A tree may take this much longer than the cheapest order of its own tests. It does on purpose what that order leaves
 * out: it looks at what is to be replaced, asks for volts before ohms, and tells a track that falls from a signal that is
 * held up before the plug is opened.
 */
const DETOUR_MAX = 1.15;
/** The pedal's goes through one track after the other; the cheapest order reads both at once and knows all pairs by heart. */
const DETOUR_OF_PEDAL_MAX = 1.25;

/**
 * What the cheapest order parts and the tree does not, on purpose. A coil without a bias floats once its minus side is open
 * at the module, and a scope from its plus side to battery negative shows nothing: the order calls that a contact. A person
 * who sees nothing there looks at the own lead first.
 */
const NOT_PARTED: Readonly<Record<string, readonly string[]>> = {
  'reluctor-no-signal': ['contact.module.signal-minus.open'],
};

/** Where a healthy car ends by another way: a module that gives its coil no bias. */
const HEALTHY_ENDS: Readonly<Record<string, readonly string[]>> = {
  'reluctor-no-signal': ['no-fault', 'nothing-unbiased'],
};

/**
 * Conclusions that a fault is led to and that leave more than one repair open, with the number of repairs. Each is one
 * that no instrument parts: see `docs/library.md`.
 */
const OPEN_ENDS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'hall-no-signal': {
    'gap-wide': 2,
    'pin-or-input': 2,
    'pin-or-pull-up': 2,
    'plug-or-gap': 3,
    'wheel-damaged': 2,
    'wheel-hidden': 2,
  },
  'hall-relay-no-signal': {
    'coil-module': 2,
    'gap-wide': 2,
    'no-pull-up': 2,
    'pin-or-input': 2,
    'plug-or-gap': 3,
    'wheel-damaged': 2,
    'wheel-hidden': 2,
    'wire-shorted': 3,
  },
  'reluctor-no-signal': {
    'gap-hidden': 2,
    'module-unbiased': 2,
    'wheel-damaged': 2,
    'wheel-displaced': 2,
  },
  'throttle-position': { 'module-end': 2, 'module-plug-open': 2 },
  'pedal-position': {
    'end-2': 3,
    'module-end': 2,
    'module-plug-open': 2,
    'no-ground-or-plug': 2,
    'no-reference-or-plug': 2,
  },
  'wheel-speed-current': {
    'no-feed': 2,
    'no-sense': 2,
    'plug-hidden': 2,
    'ring-hidden': 3,
    'ring-left': 3,
  },
};

/** What tells of cars that end wrongly; with more cars than these a healthy one reads beyond a limit drawn closer. */
const OF_CARS = ['wrong-conclusion', 'missed-fault', 'good-too-wide'];
/** A warning about cars of which so few end wrongly that `check` lets them pass, or that no instrument tells. */
const isFew = ({ severity, code, cars }: Issue) =>
  severity === 'warning' &&
  (code === 'like-healthy' ||
    (OF_CARS.includes(code) && cars?.every(({ share }) => share <= WRONG_SHARE_MAX)));
const strayShare = ({ ends }: ProofRow) =>
  ends.reduce((sum, { verdict, share }) => sum + (isStray(verdict) ? share : 0), 0);
/** Faults of which more cars end wrongly than `check` lets pass. */
const oftenStray = ({ rows }: Proof) =>
  rows.filter((row) => strayShare(row) > WRONG_SHARE_MAX).map(({ fault }) => fault);
/** Where every fault ends by the usual answers, and nothing else of the proof. */
function judgedWays({ procedure }: LinkedProcedure, model: Model): JudgedWay[] {
  const { circuit, meter } = model;
  const discriminating = discriminatingTests(model, testEntries(circuit, procedure, meter));
  const { judge } = judgeOf(procedure, circuit, discriminating);
  return walkFaults(procedure, model).flatMap(judge);
}
const isStray = (verdict: Ending['verdict']) => verdict !== 'right' && verdict !== 'inseparable';
describe.each(names)('%s, proved', (name) => {
  const { linked, model } = shipped(name);
  const proof = proveProcedure(linked, model);

  it('leads the cars of every fault to its repair or its named group, but for one in a hundred', () => {
    expect(proof.rows).toHaveLength(model.circuit.faults.length + 1);
    expect(oftenStray(proof)).toEqual([]);
  });

  it('leads all cars of all faults there, but for one in a thousand', () => {
    const stray = proof.rows.reduce((sum, row) => sum + row.chance * strayShare(row), 0);
    expect(stray).toBeLessThanOrEqual(WRONG_SHARE_ALL);
  });

  it('finds nothing wrong with a healthy vehicle', () => {
    const healthy = proof.rows.find(({ fault }) => fault === 'healthy')!;
    const ends = HEALTHY_ENDS[name] ?? ['no-fault'];
    expect(healthy.ends.map(({ step }) => step)).toEqual(ends);
    expect(healthy.ends.every(({ verdict }) => verdict === 'right')).toBe(true);
    expect(healthy.ends.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  it('has no issue, and warns of nothing but of those few cars', () => {
    const issues = proof.issues.filter((issue) => !isFew(issue));
    expect(issues.map(({ code, words }) => ({ code, words }))).toEqual([]);
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
  const answers = code.kind === 'ask' ? code.outcomes : [];
  const usual = answers.find((one) => code.kind === 'ask' && one.name === code.usual)!;

  it('was walked as the code usually says', () => {
    for (const { fault, visits } of proof.ways)
      expect(visits, fault).toContainEqual({ step: 'code', outcome: usual.name });
  });

  // Where another answer leads on as the usual one does, the proof above has walked it.
  const others = answers.filter(({ go }) => go !== usual.go).map((one) => [one.name, one.go]);
  it.each(others)('is right for every fault when the code says "%s"', (_, go) => {
    const entered = proveProcedure(enteredAt(linked, go!), model);
    // A step that has nothing left to part on this way is a detour and no mistake.
    const issues = entered.issues.filter(
      (issue) => issue.code !== 'separates-nothing' && !isFew(issue),
    );
    expect(issues).toEqual([]);
    expect(oftenStray(entered)).toEqual([]);
  });

  it('without a scope it loses only what no meter can see', () => {
    const shares = new Map<string, number>();
    for (const { fault, share, verdict } of judgedWays(withoutScope(linked), model))
      if (isStray(verdict)) shares.set(fault, (shares.get(fault) ?? 0) + share);
    const lost = [...shares].flatMap(([fault, share]) => (share >= BLIND_SHARE_MAX ? [fault] : []));
    // Makers' coils differ more in their ohms than a few shorted turns do; AC volts are not in the circuit file.
    const blindTo = /^target\.|\.worn-spot$|track-open$|leads-swapped$|shorted-turns$/;
    expect(lost.filter((fault) => !blindTo.test(fault))).toEqual([]);
  });
});

/** The search takes most of a minute for all: an ordinary run takes one of the six trees. */
const searched = shareOf(names, 6);

describe('beside the cheapest order of its tests', () => {
  it.each(searched)(
    '%s takes little longer than the cheapest order found, and parts as much',
    (name) => {
      const { linked, model } = shipped(name);
      const { tree, optimum, repairsLeft } = compareMinutes(linked.procedure, model);
      expect(tree / optimum).toBeGreaterThan(0.9);
      expect(tree / optimum).toBeLessThan(
        name === 'pedal-position' ? DETOUR_OF_PEDAL_MAX : DETOUR_MAX,
      );
      const larger = [...repairsLeft].flatMap(([fault, left]) =>
        left.tree > left.optimum ? [fault] : [],
      );
      expect(larger).toEqual(NOT_PARTED[name] ?? []);
    },
    600_000,
  );
});
