/**
 * Leaves out faults that nobody would come to the shop for: those that change nothing the module sees.
 *
 * A fault counts when, in some sample, an input no longer follows, the pattern or its position changes, or an
 * input's voltage leaves the range it has in the healthy circuit.
 */
import { type Circuit, type Fault, inputTerminals, moduleOf } from './circuit.ts';
import { createModel } from './model.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Meter, Setup, Shown, Test } from './test.ts';

const SAMPLES = 16;
const SEED = 1;
/** Further out than this an input's voltage is a symptom. */
const NOTICED_VOLTS = 0.1;
/** A module's own converter, as a meter that takes no current to speak of. */
const CONVERTER: Meter = {
  name: 'module',
  inputOhms: 1e8,
  volts: { ranges: [20], counts: 4096, ofReading: 0.01, digits: 1 },
  ohms: { ranges: [1e7], counts: 4096, ofReading: 0.01, digits: 1 },
};

/** The faults of a circuit that show. */
export function withSymptoms(circuit: Circuit): Fault[] {
  const model = createModel(circuit, { samples: SAMPLES, seed: SEED, meter: CONVERTER });
  const tests = symptomTests(circuit);
  const samples = Array.from({ length: SAMPLES }, (_, sample) => sample);
  const healthy = tests.map((test) => {
    const all = samples.map((sample) => model.shows('healthy', test, sample));
    return {
      looks: new Set(all.map(lookOf)),
      low: Math.min(...all.map(numberOf)),
      high: Math.max(...all.map(numberOf)),
    };
  });
  const isSymptom = (fault: Fault, index: number, sample: number): boolean => {
    const { looks, low, high } = healthy[index]!;
    const shown = model.shows(fault.id, tests[index]!, sample);
    if (shown.kind === 'look') return !looks.has(shown.look);
    return shown.value < low - NOTICED_VOLTS || shown.value > high + NOTICED_VOLTS;
  };
  // By sample first: what shows in one test only mostly shows there in every sample.
  return circuit.faults.filter((fault) =>
    samples.some((sample) => tests.some((_, index) => isSymptom(fault, index, sample))),
  );
}

function symptomTests(circuit: Circuit): Test[] {
  const module = moduleOf(circuit);
  const moves: Setup['state'] = circuit.target && circuit.target.turns > 0 ? 'cranking' : 'key-on';
  const moving: Setup = { ...PLAIN_SETUP, state: moves, target: 'moving' };
  return inputTerminals(circuit).flatMap((input): Test[] => {
    const pin = module.inside.find((one) => `${module.name}.${one.name}` === input)!;
    const plus = `${input}.pin`;
    const minus =
      pin.input?.kind === 'swing' ? `${module.name}.${pin.input.against}.pin` : 'battery.negative';
    return [
      { setup: moving, probe: { kind: 'counts', input } },
      { setup: moving, probe: { kind: 'pattern', plus, minus } },
      { setup: moving, probe: { kind: 'timing', plus, minus } },
      { setup: PLAIN_SETUP, probe: { kind: 'volts', plus, minus: 'battery.negative' } },
      { setup: moving, probe: { kind: 'volts', plus, minus: 'battery.negative' } },
    ];
  });
}

function lookOf(shown: Shown): string {
  return shown.kind === 'look' ? shown.look : '';
}

function numberOf(shown: Shown): number {
  return shown.kind === 'number' ? shown.value : 0;
}
