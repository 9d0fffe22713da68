/** Whether a light or resistor clipped to a signal pulls the module's input low enough to be counted. */
import type { Circuit } from './circuit.ts';
import { inputOn } from './nets.ts';
import type { SampleSolver } from './sample-solver.ts';
import type { TerminalId, Test } from './test.ts';

/** How low a light or resistor clipped to ground pulls a module's input, against what the module calls low. */
export interface PullDown {
  readonly input: TerminalId;
  readonly pulls: boolean;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly thresholdVolts: number;
}

/** For a test with something clipped from an input to ground; null for other tests. */
export function pullDownOf(
  { circuit, solver, samples }: { circuit: Circuit; solver: SampleSolver; samples: number },
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
  const thresholdVolts = found.input.lowBelow;
  const rig = solver.rig(null, test.setup, `${input}.pin`, 'battery.negative', 'none', []);
  const volts = (sample: number) => solver.volts(rig, null, solver.still(null, sample), sample);
  const values = [-1, ...Array.from({ length: samples }, (_, sample) => sample)].map(volts);
  const high = Math.max(...values);
  return {
    input,
    pulls: high < thresholdVolts,
    low: Math.min(...values),
    nominal: values[0]!,
    high,
    thresholdVolts,
  };
}
