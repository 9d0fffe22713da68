/** Whether a light or resistor clipped to a signal pulls the module's input low enough to be counted. */
import type { Circuit } from './circuit.ts';
import { levelsIn } from './input-levels.ts';
import { inputOn } from './nets.ts';
import type { SampleSolver } from './sample-solver.ts';
import { NOMINAL } from './samples.ts';
import type { TerminalId, Test } from './test.ts';

/** How low a light or resistor clipped to ground pulls a module's input, against what the module calls low. */
export interface PullDown {
  readonly input: TerminalId;
  /** In every car. */
  readonly pulls: boolean;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** In the nominal car. */
  readonly thresholdVolts: number;
}

/** For a test with something clipped from an input to ground; null for other tests. */
export function pullDownOf(
  {
    circuit,
    solver,
    samples,
    indexOf,
  }: {
    readonly circuit: Circuit;
    readonly solver: SampleSolver;
    readonly samples: number;
    readonly indexOf: (faultId: string, sample: number) => number;
  },
  test: Test,
): PullDown | null {
  const bridge = test.setup.bridges.find(
    ({ from, to, through }) => through !== 'lead' && [from, to].includes('battery.negative'),
  );
  if (!bridge) return null;
  const at = bridge.from === 'battery.negative' ? bridge.to : bridge.from;
  const found = inputOn(circuit, test.setup, at);
  if (found?.input.kind !== 'levels') return null;
  const input = found.terminal;
  const levels = levelsIn(circuit, input, test.setup.state)!;
  const threshold = (sample: number) => levels(solver.valueOf(sample)).lowBelow;
  const rig = solver.rig(null, test.setup, `${input}.pin`, 'battery.negative', 'none', []);
  const volts = (sample: number) => solver.volts(rig, null, solver.still(null, sample), sample);
  const all = [
    NOMINAL,
    ...Array.from({ length: samples }, (_, sample) => indexOf('healthy', sample)),
  ];
  const values = all.map(volts);
  return {
    input,
    pulls: all.every((sample, index) => values[index]! < threshold(sample)),
    low: Math.min(...values),
    nominal: values[0]!,
    high: Math.max(...values),
    thresholdVolts: threshold(NOMINAL),
  };
}
