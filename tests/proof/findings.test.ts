/** What the proof finds in a small tree over a model that shows what it is told to: codes, places, shares and names. */
import { describe, expect, test } from 'vitest';
import type { Fault } from '../../src/circuit/circuit.ts';
import type { Shown } from '../../src/circuit/test.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import { ambiguityGroups } from '../../src/proof/ambiguity-groups.ts';
import { betterTarget } from '../../src/proof/better-target.ts';
import type { DiscriminatingTests } from '../../src/proof/discriminating-tests.ts';
import { judgeOf } from '../../src/proof/judge-ways.ts';
import { CarTeller } from '../../src/proof/lost-cars.ts';
import type { ProofFacts } from '../../src/proof/proof-facts.ts';
import { rangeIssues } from '../../src/proof/range-issues.ts';
import { retestIssues } from '../../src/proof/retest-issues.ts';
import { stepIssues } from '../../src/proof/step-issues.ts';
import { walkFaults } from '../../src/proof/walk-faults.ts';
import { wayIssues } from '../../src/proof/way-issues.ts';
import {
  base,
  end,
  HEALTHY,
  light,
  linkedOf,
  measure,
  modelOf,
  range,
  STEPS,
  tree,
  volts,
} from './small-tree.ts';

type Shows = Record<string, Record<string, readonly Shown[]>>;
/** Every fault at its right place: the wires read low, the fuse high. */
const RIGHT: Shows = {
  healthy: HEALTHY,
  wire: { feed: [volts(1)] },
  twin: { feed: [volts(1)] },
  'like-wire': { feed: [volts(1)] },
  fuse: { feed: [volts(9)] },
  lost: { feed: [volts(9.5)] },
};
const SOUND = tree('feed', {
  feed: measure('feed', {
    outcomes: [
      range('low', null, 4, 'broken'),
      range('good', 4, 6, 'light'),
      range('high', 6, null, 'other'),
    ],
  }),
  other: end('other', ['fuse', 'lost']),
});
const NOTHING: DiscriminatingTests = { detects: () => true, separator: () => null };

function factsOf(
  shows: Shows,
  procedure = SOUND,
  discriminating = NOTHING,
  samples = 4,
): ProofFacts {
  const model = modelOf(shows, samples);
  const judge = judgeOf(procedure, model.circuit, discriminating);
  const ways = walkFaults(procedure, model).flatMap(judge.judge);
  const teller = new CarTeller(model, ways);
  return { linked: linkedOf(procedure), model, ways, judge, discriminating, teller };
}
const found = (issues: ReturnType<typeof wayIssues>) =>
  issues.map(({ code, severity, at }) => `${severity} ${code} at ${at.file}`);

test('a sound tree has no finding', () => {
  const facts = factsOf(RIGHT);
  for (const find of [wayIssues, stepIssues, rangeIssues, retestIssues])
    expect(find(facts)).toEqual([]);
});

describe('a fault that ends wrongly', () => {
  test('is told at the outcome that lost it, with its share, reading and the way on', () => {
    const [issue, ...others] = wayIssues(
      factsOf({ ...RIGHT, wire: { feed: [volts(5)], light: [light('lit')] } }),
    );
    expect(others).toEqual([]);
    expect(found([issue!])).toEqual(['error missed-fault at steps light outcomes lit']);
    expect(issue!.words).toContain('wire (4 of 4 cars, 100 %)');
    expect(issue!.words).toContain('"lit" of "light"');
    expect(issue!.words).toContain('it ends at "fine", not at "broken"');
  });
  test('with the steps between, and what is read there', () => {
    const [issue] = wayIssues(
      factsOf({ ...RIGHT, fuse: { feed: [volts(4.2), volts(5)], light: [light('lit')] } }),
    );
    expect(found([issue!])).toEqual(['error missed-fault at steps feed outcomes good']);
    expect(issue!.words).toContain('fuse (4 of 4 cars, 100 %), reading 4.2 to 5 V');
    expect(issue!.words).toContain('it goes on by light lit and ends at "fine", not at "other"');
  });
  test('in more than a hundredth of its cars is an error, in any at all a warning', () => {
    const share = (wrong: number, of: number) =>
      found(
        wayIssues(
          factsOf(
            {
              ...RIGHT,
              fuse: { feed: [...Array<Shown>(wrong).fill(volts(1)), volts(9)] },
            },
            SOUND,
            NOTHING,
            of,
          ),
        ),
      );
    expect(share(1, 9)).toEqual(['error wrong-conclusion at steps feed outcomes low']);
    expect(share(1, 99)).toEqual(['error wrong-conclusion at steps feed outcomes low']);
    expect(share(1, 100)).toEqual(['warning wrong-conclusion at steps feed outcomes low']);
    expect(share(2, 199)).toEqual(['error wrong-conclusion at steps feed outcomes low']);
    expect(share(1, 5000)).toEqual(['warning wrong-conclusion at steps feed outcomes low']);
    expect(share(0, 5000)).toEqual([]);
  });
  test('is named before one that does so more seldom', () => {
    const [issue] = wayIssues(
      factsOf({
        ...RIGHT,
        fuse: { feed: [volts(1), volts(9)] },
        lost: { feed: [volts(1), volts(1), volts(1), volts(9.5)] },
      }),
    );
    expect(issue!.words).toContain('lost (3 of 4 cars, 75 %) and fuse (1 of 4 cars, 25 %)');
  });
  test('of the same repair, but under another name, is a warning with all its ways together', () => {
    const named = (ask: boolean) => {
      const outcomes = ['yes', 'no'].map((name) => ({ name, words: '', go: 'feed' }));
      const question = { ...base, id: 'ask', kind: 'ask', minutes: 1, usual: null, outcomes };
      const two = tree(ask ? 'ask' : 'feed', {
        ...SOUND.steps,
        ask: question as unknown as Step,
        twice: end('twice', ['like-wire']),
      });
      return wayIssues(factsOf(RIGHT, two)).filter(({ code }) => code === 'named-elsewhere');
    };
    for (const ask of [false, true]) {
      const [issue, ...others] = named(ask);
      expect(others).toEqual([]);
      expect(found([issue!])).toEqual(['warning named-elsewhere at steps broken conclude']);
      expect(issue!.words).toContain('like-wire (100 %) ends at "broken"');
      expect(issue!.words).toContain('while "twice" does');
    }
  });
  test('is told apart from a healthy circuit that is blamed', () => {
    const shows = { ...RIGHT, healthy: { feed: [volts(1)], light: [light('lit')] } };
    const blamed = wayIssues(factsOf({ ...shows, fuse: { feed: [volts(1)] } }));
    expect(found(blamed).sort()).toEqual([
      'error healthy-blamed at steps feed outcomes low',
      'error wrong-conclusion at steps feed outcomes low',
    ]);
    expect(blamed.find(({ code }) => code === 'healthy-blamed')!.words).toContain(
      'a healthy circuit (4 of 4 cars, 100 %)',
    );
  });
  test('at a look no limit mends: the circuit is looked at, or the levels that count', () => {
    const fix = (probe: object, place: string) => {
      const looked = tree('feed', { ...SOUND.steps, light: { ...STEPS['light'], probe } as Step });
      const shows = Object.fromEntries(
        Object.entries(RIGHT).map(([fault, one]) => [fault, { ...one, [place]: [light('dim')] }]),
      );
      const facts = factsOf(shows, looked);
      // nobody can name the conclusion for a healthy circuit, so leading there is no way out
      const places = new Map([...facts.linked.places].filter(([id]) => id !== 'fine'));
      return wayIssues({ ...facts, linked: { ...facts.linked, places } })[0]!.fix;
    };
    expect(fix({ kind: 'light', plus: 'light.plus', minus: 'x.y' }, 'light')).toContain(
      '(expected: lit)',
    );
    expect(fix({ kind: 'counts', input: 'module.signal' }, '')).toContain('input of module.signal');
  });
  test('that nothing stands for is told at the conclusion it comes to, with a test that would part it', () => {
    const named = { ...NOTHING, separator: () => ({ words: 'a test', step: null }) as never };
    const uncovered = tree('feed', { ...SOUND.steps, other: end('other', ['fuse']) });
    const at = (discriminating: DiscriminatingTests, end9 = uncovered) =>
      wayIssues(factsOf(RIGHT, end9, discriminating)).map(({ code, at: place, fix }) => [
        code,
        place.file,
        fix,
      ]);
    expect(at(named)).toEqual([
      [
        'uncovered-fault',
        'steps other conclude',
        'this test tells them apart: a test; or let "other" stand for it too',
      ],
    ]);
    expect(at(NOTHING)[0]![2]).toMatch(
      /^no single test tells them apart in all cases: let "other" stand/,
    );
    const none = tree('feed', {
      ...uncovered.steps,
      other: end('other', []),
      more: end('more', ['fuse']),
    });
    const fix = (discriminating: DiscriminatingTests) =>
      at(discriminating, none).find(([code]) => code === 'uncovered-fault')![2];
    expect(fix(named)).toBe('this test shows it: a test');
    expect(fix(NOTHING)).toMatch(/take two$/);
  });
  test('the rivals are what the conclusion stands for, or the healthy circuit', () => {
    const asked: unknown[] = [];
    const discriminating: DiscriminatingTests = {
      ...NOTHING,
      separator: (fault, samples, rivals) => {
        asked.push([fault, [...samples], [...rivals]]);
        return null;
      },
    };
    wayIssues(
      factsOf(
        RIGHT,
        tree('feed', { ...SOUND.steps, other: end('other', ['fuse']) }),
        discriminating,
      ),
    );
    expect(asked).toEqual([['lost', [0, 1, 2, 3], ['fuse']]]);
  });
});

describe('a way that comes to no conclusion', () => {
  test('a dead end is told at its step, with what is read', () => {
    const open = tree('feed', {
      ...SOUND.steps,
      feed: measure('feed', {
        outcomes: [range('low', null, 4, 'broken'), range('good', 4, 6, 'light')],
      }),
    });
    const [issue] = wayIssues(factsOf({ ...RIGHT, lost: { feed: [volts(5)] } }, open));
    expect(found([issue!])).toEqual(['error dead-end at steps feed']);
    expect(issue!.words).toContain('fuse (4 of 4 cars, 100 %): reading 9 V');
    expect(issue!.fix).toBe('let an outcome cover it');
  });
  test('a way without end is told at the step it comes back to', () => {
    const back = { ...base, id: 'back', kind: 'act', minutes: 1, go: 'feed' } as unknown as Step;
    const round = tree('feed', {
      ...SOUND.steps,
      back,
      feed: measure('feed', {
        outcomes: [
          range('low', null, 4, 'broken'),
          range('good', 4, 6, 'light'),
          range('high', 6, null, 'back'),
        ],
      }),
    });
    const issues = wayIssues(factsOf(RIGHT, round));
    expect(found(issues)).toEqual(['error endless-walk at steps feed']);
    expect(issues[0]!.words).toContain('fuse (4 of 4 cars, 100 %) and lost (4 of 4 cars, 100 %)');
    expect(issues[0]!.fix).toContain('elsewhere');
  });
});

test('a way that only goes on where a step cannot be done is no way by readings', () => {
  const round = tree('feed', {
    ...SOUND.steps,
    feed: measure('feed', {
      cannot: 'other',
      outcomes: [range('low', null, 4, 'broken'), range('rest', 4, null, 'light')],
    }),
    light: {
      ...STEPS['light']!,
      outcomes:
        STEPS['light']!.kind === 'look'
          ? STEPS['light']!.outcomes.map((one) => ({ ...one, go: 'fine' }))
          : [],
    } as Step,
  });
  // nothing that is read leads to "other", so the last step is where the fuse is lost
  const issues = wayIssues(
    factsOf({ ...RIGHT, fuse: { feed: [volts(5)], light: [light('lit')] } }, round),
  );
  const fuse = issues.filter(({ words }) => words.includes('fuse'));
  expect(found(fuse)).toEqual(['error missed-fault at steps light outcomes lit']);
});

describe('a better target', () => {
  const swapped = tree('feed', {
    ...SOUND.steps,
    feed: measure('feed', {
      outcomes: [
        range('low', null, 4, 'other'),
        range('good', 4, 6, 'light'),
        range('high', 6, null, 'broken'),
      ],
    }),
  });
  const better = (
    outcome: string | null,
    procedure = swapped,
    targets = ['other', 'broken', 'light'],
    step = 'feed',
  ) => {
    const { model, judge, ways } = factsOf(RIGHT, procedure);
    return betterTarget({ procedure, model, judge, ways, targets }, { step, outcome });
  };
  test('is where all that leaves ends rightly', () => {
    expect(better('low')).toBe('broken');
    expect(better('high')).toBe('other');
  });
  test('is never where it leads already, nor what the author cannot name', () => {
    expect(better('low', swapped, ['other', 'light'])).toBeNull();
    expect(better('good')).toBeNull();
  });
  test('must be right for all that leaves by that outcome, and for nothing else', () => {
    // wire and twin leave by low; where only the wire's end is asked for, the twin would be lost
    const apart = tree('feed', {
      ...swapped.steps,
      broken: end('broken', ['wire', 'like-wire']),
      twin: end('twin', ['twin']),
    });
    expect(better('low', apart, ['broken', 'twin', 'other'])).toBeNull();
    // what leaves by high is none of its business
    expect(better('low', swapped, ['broken'])).toBe('broken');
    expect(better('high', swapped, ['other'])).toBe('other');
  });
  test('of a step to be done is found too, and a conclusion leads nowhere', () => {
    const go = { ...base, id: 'go', kind: 'act', minutes: 1, go: 'broken' } as unknown as Step;
    const act = tree('go', { ...SOUND.steps, go });
    expect(better(null, act, ['feed', 'broken'], 'go')).toBe('feed');
    expect(better(null, act, ['feed'], 'broken')).toBeNull();
    // all that leaves by it ends right already, so there is nothing better
    const right = tree('go', { ...SOUND.steps, go: { ...go, go: 'feed' } as Step });
    expect(better(null, right, ['feed'], 'go')).toBeNull();
  });
});

describe('ranges an author wrote', () => {
  const written = (shows: Shows, good: readonly [number | null, number | null], samples = 4) =>
    factsOf(
      shows,
      tree('feed', {
        ...SOUND.steps,
        feed: measure('feed', {
          expected: { low: good[0], nominal: null, high: good[1], from: 'author' },
          outcomes: [range('good', good[0], good[1], 'light'), range('bad', null, null, 'broken')],
        }),
      }),
      NOTHING,
      samples,
    );
  const healthy = (...values: number[]): Shows => ({
    ...RIGHT,
    healthy: { feed: values.map(volts), light: [light('lit')] },
  });
  test('a healthy circuit outside is told with its share', () => {
    const narrow = (values: number[], samples: number) =>
      found(rangeIssues(written(healthy(...values), [4, 6], samples))).filter((one) =>
        one.includes('narrow'),
      );
    expect(narrow([7, 5], 4)).toEqual(['error good-too-narrow at steps feed outcomes good']);
    expect(narrow([7, 5], 99)).toEqual(['error good-too-narrow at steps feed outcomes good']);
    expect(narrow([7, 5], 100)).toEqual(['warning good-too-narrow at steps feed outcomes good']);
    expect(narrow([5, 5], 100)).toEqual([]);
    expect(narrow([3, 5], 4)).toEqual(['error good-too-narrow at steps feed outcomes good']);
    expect(narrow([6, 5], 4)).toHaveLength(1); // the upper end does not count
    expect(narrow([4, 5], 4)).toEqual([]); // the lower end does
    const [issue] = rangeIssues(written(healthy(7, 5), [4, 6]));
    expect(issue!.words).toContain('reads 5 to 7 V at "feed"');
    expect(issue!.words).toContain('in 1 of 4 cars, 25 %, that is not');
    expect(issue!.words).toContain('(4 to 6 V)');
  });
  test('an open end holds everything on its side', () => {
    expect(rangeIssues(written(healthy(-1, 5), [null, 6]))).toEqual([]);
    expect(rangeIssues(written(healthy(50, 5), [4, null]))).toEqual([]);
  });
  test('a fault that passes as good and is then lost is told with what it reads', () => {
    const shows = { ...RIGHT, fuse: { feed: [volts(3.2)] }, lost: { feed: [volts(4.5)] } };
    const [issue, ...others] = rangeIssues(written(shows, [3, 6]));
    expect(others).toEqual([]);
    expect(found([issue!])).toEqual(['warning good-too-wide at steps feed outcomes good']);
    expect(issue!.words).toContain(
      'fuse (4 of 4 cars, 100 %) and lost (4 of 4 cars, 100 %) at 3.2 to 4.5 V',
    );
    expect(rangeIssues(written({ ...RIGHT, fuse: { feed: [volts(5)] } }, [3, 6]))).toEqual([]);
    const seldom = { ...RIGHT, fuse: { feed: [volts(3.2), volts(1)] } };
    const [once] = rangeIssues(written(seldom, [3, 6], 60));
    expect(once!.words).toContain('fuse (1 of 60 cars, 1.7 %) at 3.2 V');
  });
  test('a healthy circuit below nothing has its leads the wrong way round', () => {
    const codes = (value: number) =>
      rangeIssues(
        factsOf({ ...RIGHT, healthy: { feed: [volts(value)], light: [light('lit')] } }),
      ).map(({ code, at }) => `${code} ${at.file}`);
    expect(codes(-5)).toEqual(['reversed-leads steps feed measure']);
    expect(codes(-0.3)).toEqual(['reversed-leads steps feed measure']);
    expect(codes(-0.2)).toEqual([]);
  });
});

describe('steps that tell nothing', () => {
  const all = (go: string) => range('all', null, null, go);
  test('a step that every repair leaves the same way is told, if it could lead elsewhere', () => {
    const idle = (outcomes: object[], shows = RIGHT) =>
      found(
        stepIssues(
          factsOf(shows, tree('idle', { ...SOUND.steps, idle: measure('idle', { outcomes }) })),
        ),
      ).filter((one) => one.includes('separates'));
    const shows = Object.fromEntries(
      Object.entries(RIGHT).map(([fault, places]) => [fault, { ...places, idle: [volts(5)] }]),
    );
    expect(idle([range('good', 0, 9, 'feed'), range('high', 9, null, 'other')], shows)).toEqual([
      'warning separates-nothing at steps idle',
    ]);
    expect(idle([all('feed')], shows)).toEqual([]); // it has one way only
    const parted = { ...shows, fuse: { ...shows['fuse'], idle: [volts(9.5)] } };
    expect(idle([range('good', 0, 9, 'feed'), range('high', 9, null, 'other')], parted)).toEqual(
      [],
    );
  });
  test('one repair alone has nothing to be told apart from', () => {
    const late = tree('feed', {
      ...SOUND.steps,
      feed: measure('feed', {
        outcomes: [
          range('low', null, 4, 'late'),
          range('good', 4, 6, 'light'),
          range('high', 6, null, 'other'),
        ],
      }),
      late: measure('late', {
        outcomes: [range('a', null, 5, 'broken'), range('b', 5, null, 'fine')],
      }),
    });
    const shows = (twin: number): Shows => ({
      ...RIGHT,
      healthy: { ...HEALTHY, late: [volts(1)] },
      twin: { feed: [volts(twin)] },
    });
    const codes = (of: Shows) => stepIssues(factsOf(of, late)).map(({ code }) => code);
    expect(codes(shows(9))).not.toContain('separates-nothing'); // wire and like-wire share a repair
    expect(codes(shows(1))).toContain('separates-nothing');
  });
  test('an outcome that nothing shows is told, unless a person may come to its step another way', () => {
    const never = (more: Record<string, Step> = {}, feed: object = {}) =>
      found(
        stepIssues(
          factsOf(
            RIGHT,
            tree('feed', {
              ...SOUND.steps,
              feed: measure('feed', {
                outcomes: [
                  range('low', null, 4, 'broken'),
                  range('good', 4, 6, 'light'),
                  range('high', 6, 40, 'other'),
                  range('spark', 40, null, 'odd'),
                ],
                ...feed,
              }),
              odd: end('odd', ['twin']),
              ...more,
            }),
          ),
        ),
      );
    expect(never()).toEqual(['warning never-reached at steps feed outcomes spark']);
    expect(never({}, { cannot: 'odd' })).toEqual([]);
    expect(never({}, { cannot: 'fine' })).toHaveLength(1);
    // what stands behind a step that a person may come to is excused with it
    const behind = { ...base, id: 'behind', kind: 'act', minutes: 1, go: 'odd' } as unknown as Step;
    expect(never({ behind }, { cannot: 'behind' })).toEqual([]);
    // a question can be answered every way
    const leading = (go: string) => ({
      outcomes: [
        range('low', null, 4, 'broken'),
        range('good', 4, 6, go),
        range('high', 6, 40, 'other'),
        range('spark', 40, null, 'odd'),
      ],
    });
    const ask = (no: string) => {
      const outcomes = [
        { name: 'yes', words: '', go: 'light' },
        { name: 'no', words: '', go: no },
      ];
      const step = { ...base, id: 'ask', kind: 'ask', minutes: 1, usual: 'yes', outcomes };
      return { ask: step as unknown as Step };
    };
    expect(never(ask('odd'), leading('ask'))).toEqual([]);
    expect(never(ask('fine'), leading('ask'))).toHaveLength(1);
    // and so can a number that the circuit knows nothing of
    const count = (bad: string) => ({
      count: measure('count', {
        probe: null,
        unit: 'rpm',
        expected: { low: 500, nominal: null, high: 900, from: 'author' },
        outcomes: [range('good', 500, 900, 'light'), range('bad', null, null, bad)],
      }),
    });
    expect(never(count('odd'), leading('count'))).toEqual([]);
    expect(never(count('fine'), leading('count'))).toHaveLength(1);
  });
});

describe('a retest', () => {
  const retested = (retest: readonly string[], shows = RIGHT, procedure = SOUND, samples = 4) =>
    retestIssues(
      factsOf(
        shows,
        tree(procedure.start, {
          ...procedure.steps,
          broken: { ...procedure.steps['broken'], retest } as Step,
        }),
        NOTHING,
        samples,
      ),
    );
  test('that the fault fails is sound, one that it passes is told', () => {
    expect(retested(['feed'])).toEqual([]);
    expect(retested([])).toEqual([]);
    const [issue] = retested(['light']);
    expect(found([issue!])).toEqual(['warning blind-retest at steps broken retest']);
    expect(issue!.words).toContain('wire, twin and like-wire');
    expect(issue!.words).toContain('"light"');
    expect(retested(['light', 'feed'])).toEqual([]);
  });
  test('must fail in half of the samples', () => {
    const half = (low: number) =>
      retested(
        ['light'],
        {
          ...RIGHT,
          wire: {
            feed: [volts(1)],
            light: [...Array<Shown>(low).fill(light('dim')), light('lit')],
          },
          twin: { feed: [volts(1)], light: [light('dim')] },
          'like-wire': { feed: [volts(1)], light: [light('dim')] },
        },
        SOUND,
        10,
      ).length;
    expect([4, 5].map(half)).toEqual([1, 0]);
  });
  test('that no instrument answers would notice nothing', () => {
    expect(retested(['prepare'], RIGHT, tree('feed', SOUND.steps))).toHaveLength(1);
  });
});

describe('a conclusion that leaves open what is bad', () => {
  const wide = (
    classes: Record<string, string>,
    names: string[],
    separator = NOTHING.separator,
  ) => {
    const facts = factsOf(RIGHT, tree('feed', { broken: end('broken', names) }));
    const faults = facts.model.circuit.faults.map((one) => ({
      ...one,
      class: classes[one.id] ?? one.class,
    })) as Fault[];
    const model = { ...facts.model, circuit: { ...facts.model.circuit, faults } };
    return ambiguityGroups({ ...facts, model, discriminating: { ...NOTHING, separator } });
  };
  const NAMES = ['wire', 'twin', 'fuse'];

  test('names faults in two places', () => {
    const issues = wide({ twin: 'sensor' }, NAMES);
    expect(found(issues)).toEqual(['warning ambiguity-group at steps broken conclude']);
    expect(issues[0]!.words).toContain('stands for the wiring and the sensor:');
  });

  test('wires and what feeds them are one place, a connector none, a wheel goes with its sensor', () => {
    expect(wide({}, NAMES)).toEqual([]);
    expect(wide({ twin: 'connector' }, NAMES)).toEqual([]);
    expect(wide({ wire: 'sensor', twin: 'target', fuse: 'connector' }, NAMES)).toEqual([]);
    expect(wide({ wire: 'module', twin: 'target', fuse: 'connector' }, NAMES)).toHaveLength(1);
  });

  test('is told with a test that parts them, looked for in all samples', () => {
    const asked: unknown[] = [];
    const [issue] = wide({ twin: 'module' }, NAMES, (...of) => {
      asked.push(of);
      return { words: 'Feed to ground', step: 'feed' } as never;
    });
    expect(asked).toEqual([['wire', [0, 1, 2, 3], ['twin']]]);
    // the tree has it already, so its own name is what the author knows it by
    expect(issue!.fix).toContain('the test of step "feed"');
  });

  test('that nothing comes to is not told', () => {
    const steps = { unused: end('unused', ['wire', 'fuse']) };
    const facts = factsOf(RIGHT, tree('feed', steps));
    const faults = facts.model.circuit.faults.map((one) => ({ ...one, class: one.id })) as never;
    const model = { ...facts.model, circuit: { ...facts.model.circuit, faults } };
    expect(ambiguityGroups({ ...facts, model }).map(({ at }) => at.file)).not.toContain(
      'steps unused conclude',
    );
  });
});
