/** Two leads on the simulated vehicle: what is measured of both signals has the position that the circuit's model has. */
import { expect, test } from 'vitest';
import { expectedSignal, signalTest } from '../../src/circuit/expected-signal.ts';
import type { Test } from '../../src/circuit/test.ts';
import { benchPosition, goodPosition } from '../../src/drill/bench-position.ts';
import { captureAnswer } from '../../src/session/capture-step.ts';
import type { Capture } from '../../src/waveform/capture.ts';
import { setupOf } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';

function lookFound(name: string, fault: string, seed: number) {
  const model = modelOf(name);
  const picture = signalTest(model.circuit, setupOf({ state: 'cranking' }));
  if (picture?.probe.kind !== 'pattern') throw new Error(`${name} has no input`);
  const asked: Test = { ...picture, probe: { ...picture.probe, kind: 'timing' } };
  const of = (capture: Capture | null) => {
    if (!capture) throw new Error(`${name} does not turn with the crankshaft`);
    return { name: 'bench.csv', sha256: '0'.repeat(64), from: 'bench', capture } as const;
  };
  const wanted = { fault, seed, test: picture };
  const answer = captureAnswer(
    { kind: 'test', test: asked, expected: null },
    of(benchPosition(model, wanted)),
    expectedSignal(model, picture, [model.pointOf(seed % model.samples, fault)]),
    0,
    { kind: 'good', given: of(goodPosition(model, wanted)) },
  );
  const found = answer.ok && answer.command.type === 'record-test' ? answer.command.shown : answer;
  return { found, modelled: model.shows(fault, asked, seed % model.samples) };
}

test.each(['hall-module-fed', 'hall-relay-fed', 'reluctor-two-wire'])('%s', (name) => {
  for (const fault of ['healthy', 'target.displaced', 'wire.signal.open'])
    for (const seed of [3, 7]) {
      const id = name === 'reluctor-two-wire' && fault.startsWith('wire') ? 'healthy' : fault;
      const { found, modelled } = lookFound(name, id, seed);
      expect(found, `${id} ${seed}`).toEqual(modelled);
    }
});

test('what does not turn with the crankshaft stands against nothing', () => {
  const model = modelOf('current-two-wire');
  const picture = signalTest(model.circuit, setupOf({ state: 'key-on' }))!;
  expect(benchPosition(model, { fault: 'healthy', seed: 1, test: picture })).toBeNull();
});
