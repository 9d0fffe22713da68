/** A small tree of our own, and a model that shows what it is told to. */
import type { Model } from '../../src/circuit/model.ts';
import type { Shown, Test } from '../../src/circuit/test.ts';
import type { LinkedProcedure } from '../../src/procedure/link-procedure.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { METER } from '../circuit/shipped.ts';

export const base = {
  title: '',
  family: 'signal',
  say: '',
  why: '',
  cautions: [],
  cannot: null,
  setup: KEY_ON,
};
export const range = (name: string, from: number | null, to: number | null, go: string) => ({
  name,
  words: name,
  from,
  to,
  go,
});
export const measure = (id: string, more: object = {}): Step =>
  ({
    ...base,
    id,
    kind: 'measure',
    minutes: 2,
    probe: { kind: 'volts', plus: `${id}.plus`, minus: 'battery.negative' },
    unit: 'V',
    expected: null,
    outcomes: [range('low', null, 4, 'broken'), range('good', 4, 6, 'light')],
    ...more,
  }) as Step;
export const STEPS: Record<string, Step> = {
  prepare: { ...base, id: 'prepare', kind: 'act', minutes: 1, go: 'feed' } as Step,
  feed: measure('feed'),
  light: {
    ...base,
    id: 'light',
    kind: 'look',
    minutes: 3,
    probe: { kind: 'light', plus: 'light.plus', minus: 'battery.negative' },
    expected: ['lit'],
    outcomes: [
      { name: 'lit', words: '', looks: ['lit'], go: 'fine' },
      { name: 'dim', words: '', looks: ['dim'], go: 'broken' },
    ],
  } as Step,
  broken: end('broken', ['wire', 'twin']),
  other: end('other', ['fuse']),
  fine: end('fine', []),
};

export function end(id: string, faults: readonly string[]): Step {
  return { id, kind: 'conclude', title: '', faults, say: '', repair: '', customer: '', retest: [] };
}

export function tree(start: string, steps: Record<string, Step> = {}): Procedure {
  return {
    ...base,
    name: 't',
    about: '',
    circuit: null,
    codes: [],
    start,
    steps: { ...STEPS, ...steps },
  };
}

export const FAULTS = [
  { id: 'wire', repair: 'mend', weight: 3, class: 'wire' },
  { id: 'twin', repair: 'twin', weight: 1, class: 'wire' },
  { id: 'like-wire', repair: 'mend', weight: 1, class: 'wire' },
  { id: 'fuse', repair: 'fuse', weight: 1, class: 'supply' },
  { id: 'lost', repair: 'lost', weight: 1, class: 'wire' },
];
export const volts = (value: number): Shown => ({ kind: 'number', value, unit: 'V' });
export const light = (look: 'lit' | 'dim' | 'dark'): Shown => ({ kind: 'look', look });

/** `shows[fault][place][sample]`; the last sample stands for all further ones. */
export function modelOf(
  shows: Record<string, Record<string, readonly Shown[]>>,
  samples = 4,
): Model {
  const showing = (fault: string, test: Test, sample: number) => {
    const place = 'plus' in test.probe ? test.probe.plus.split('.')[0]! : '';
    const list = shows[fault]?.[place] ?? shows['healthy']![place]!;
    return list[Math.min(sample, list.length - 1)]!;
  };
  return {
    samples,
    meter: METER,
    quantities: [],
    pointOf: () => new Float64Array(0),
    circuit: {
      faults: FAULTS.map((one) => ({ ...one, effect: { kind: 'wire-open', wire: one.id } })),
    },
    shows: showing,
    expected: (test: Test, fault = 'healthy') => {
      const all = Array.from({ length: samples }, (_, sample) => showing(fault, test, sample));
      const values = all.flatMap((one) => (one.kind === 'number' ? [one.value] : []));
      if (values.length === 0)
        return {
          kind: 'looks',
          looks: all.map((one) => ({ look: (one as { look: string }).look })),
        };
      const [low, high] = [Math.min(...values), Math.max(...values)];
      return { kind: 'number', low, high, nominal: (low + high) / 2, unit: 'V' };
    },
  } as unknown as Model;
}
export const HEALTHY = { feed: [volts(5)], light: [light('lit')] };

/** The tree as if it were linked from one file; a place is told as the path that leads to it. */
export function linkedOf(procedure: Procedure): LinkedProcedure {
  const locate = (path: readonly (string | number)[]) => ({
    file: path.join(' '),
    line: 1,
    column: 1,
  });
  const place = (id: string) => ({ source: { data: {}, locate }, path: ['steps', id] });
  return {
    procedure,
    places: new Map(Object.keys(procedure.steps).map((id) => [id, place(id)])),
  } as unknown as LinkedProcedure;
}
