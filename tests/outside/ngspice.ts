/** ngspice 39 as WebAssembly (eecircuit-engine), started once for a file of tests. */
import { Simulation } from 'eecircuit-engine';
import { vi } from 'vitest';

let started: Promise<Simulation> | null = null;

/**
 * For `beforeAll`: a fresh ngspice, as two of them in one process spoil each other, without its words. It tells each failed
 * attempt at length; what counts is whether a later one succeeds.
 */
export function freshNgspice(): void {
  started = null;
  for (const channel of ['log', 'warn', 'error'] as const)
    vi.spyOn(console, channel).mockImplementation(() => undefined);
}

/** Runs a deck, which ends with `.end`: values by names in small letters, and what ngspice complains of. */
export async function runDeck(
  deck: string,
): Promise<{ values: Map<string, readonly number[]>; errors: readonly string[] }> {
  started ??= startNgspice();
  const simulation = await started;
  simulation.setNetList(deck);
  const { dataType, data } = await simulation.runSim();
  if (dataType !== 'real') throw new Error('ngspice: no real numbers');
  return {
    values: new Map(data.map(({ name, values }) => [name.toLowerCase(), values])),
    errors: simulation.getError(),
  };
}

/** Voltages at the operating point, by the names of the nodes in small letters; null where ngspice finds none. */
export async function operatingPoint(
  lines: readonly string[],
): Promise<Map<string, number> | null> {
  const { values, errors } = await runDeck([...lines, '.op', '.end'].join('\n'));
  if (
    errors.some((line) => /operating point.*(failed|aborted)|simulation\(s\) aborted/i.test(line))
  )
    return null;
  const volts = [...values].map(
    ([name, [first = Number.NaN]]) => [/^v\((.+)\)$/.exec(name)?.[1] ?? name, first] as const,
  );
  return new Map([['0', 0], ...volts]);
}

async function startNgspice(): Promise<Simulation> {
  const simulation = new Simulation();
  await simulation.start();
  return simulation;
}
