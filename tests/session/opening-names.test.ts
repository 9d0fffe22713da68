/** Every name in a fault of a session's circuit must be there: one that is not is told before anything computes with it. */
import { expect, it } from 'vitest';
import type { Circuit, FaultEffect } from '../../src/circuit/circuit.ts';
import type { SessionOpened } from '../../src/session/events.ts';
import { openingFlaw } from '../../src/session/opening-flaw.ts';
import { NAMES, shipped } from '../circuit/shipped.ts';

const NOWHERE = 'nowhere';

function flawOf(circuit: Circuit): string | null {
  return openingFlaw({
    procedure: null,
    circuit,
    vehicle: { kind: 'real' },
  } as unknown as SessionOpened);
}

/** The effect with one of its names, or each of a list, replaced; none where it names nothing. */
function misnamed(effect: FaultEffect): FaultEffect[] {
  switch (effect.kind) {
    case 'wire-open':
    case 'wire-resistive':
      return [{ ...effect, wire: NOWHERE }];
    case 'wire-short':
      return [
        { ...effect, wire: NOWHERE },
        ...(typeof effect.to === 'object' ? [{ ...effect, to: { wire: NOWHERE } }] : []),
      ];
    case 'contact-open':
    case 'contact-resistive':
      return [{ ...effect, terminal: NOWHERE }];
    case 'wires-swapped': {
      const [one, other] = effect.terminals;
      return [
        { ...effect, terminals: [NOWHERE, other] },
        { ...effect, terminals: [one, NOWHERE] },
      ];
    }
    case 'part':
      return [{ ...effect, part: NOWHERE }];
    case 'target':
      return [];
  }
}

const cases = NAMES.map((name) => {
  const circuit = shipped(name);
  const wrong = circuit.faults.flatMap((fault, at) =>
    misnamed(fault.effect).map((effect) => ({ id: fault.id, at, effect })),
  );
  return { name, circuit, wrong };
});

it.each(cases)('a fault of $name that names what there is not', ({ circuit, wrong }) => {
  expect(flawOf(circuit)).toBeNull();
  const passed = wrong.filter(({ at, effect }) => {
    const faults = circuit.faults.map((fault, index) =>
      index === at ? { ...fault, effect } : fault,
    );
    return !flawOf({ ...circuit, faults })?.includes(`"${NOWHERE}"`);
  });
  expect(passed).toEqual([]);
});

it('all kinds of faults that name anything are among them', () => {
  const kinds = new Set(cases.flatMap(({ wrong }) => wrong.map(({ effect }) => effect.kind)));
  expect([...kinds].sort()).toEqual([
    'contact-open',
    'contact-resistive',
    'part',
    'wire-open',
    'wire-resistive',
    'wire-short',
    'wires-swapped',
  ]);
  const between = cases.some(({ wrong }) =>
    wrong.some(({ effect }) => effect.kind === 'wire-short' && typeof effect.to === 'object'),
  );
  expect(between).toBe(true);
});

it('a value that no circuit has is told with its place', () => {
  const circuit = shipped(NAMES[0]!);
  expect(flawOf({ ...circuit, celsius: Number.NaN })).toMatch(/celsius/);
});
