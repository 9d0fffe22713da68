/** What can be hidden in a circuit: nothing that never happens. */
import { expect, it } from 'vitest';
import { hideFault } from '../../src/drill/hidden-fault.ts';
import { LEVELS } from '../../src/drill/levels.ts';
import { shipped } from '../circuit/shipped.ts';
import { hash } from './students.ts';

const circuit = shipped('reluctor-two-wire');
const weighing = (weightOf: (id: string, weight: number) => number) => ({
  ...circuit,
  faults: circuit.faults.map((fault) => ({ ...fault, weight: weightOf(fault.id, fault.weight) })),
});

it.each(LEVELS.map((level) => [level.name, level] as const))(
  'on level %s nothing is hidden where no fault has a chance',
  (_, level) => {
    expect(
      hideFault(
        weighing(() => 0),
        level,
        1,
        hash,
      ),
    ).toBeNull();
    expect(hideFault(circuit, level, 1, hash)).not.toBeNull();
  },
);

it('a fault without a chance is never hidden', () => {
  const [first] = circuit.faults;
  const one = weighing((id, weight) => (id === first!.id ? 0 : weight));
  const level = LEVELS.find(({ name }) => name === 'named')!;
  const seeds = Array.from({ length: 60 }, (_, seed) => seed);
  const hidden = (of: typeof circuit) =>
    seeds.flatMap((seed) => hideFault(of, level, seed, hash)?.answer.faults ?? []);
  expect(hidden(one)).not.toContain(first!.id);
  expect(hidden(one).length).toBeGreaterThanOrEqual(seeds.length);
});
