/**
 * Tests that the bench stops: those that do damage or hurt, told from those that merely cannot be done (a terminal that
 * is not there, a connector that is still on). Places are looked at before instruments, so what is refused for its
 * place has done no harm yet.
 */
import type { Model } from '../circuit/model.ts';
import type { Test } from '../circuit/test.ts';
import { type TestRefusal, testRefusalWords } from '../circuit/test-refusal.ts';
import type { TestHazard } from '../session/events.ts';

/** Why the bench stops a test, and what would have happened. */
export interface Danger {
  readonly hazard: TestHazard;
  readonly reason: string;
  readonly would: string;
}

/** Why a test is stopped as dangerous; null for one that is fine or cannot be done at all. */
export function dangerOf(model: Pick<Model, 'refusal'>, test: Test): Danger | null {
  const refusal = model.refusal(test);
  const hazard = refusal && hazardOf(refusal);
  return hazard && { hazard, reason: testRefusalWords(refusal), would: WOULD[hazard] };
}

function hazardOf({ code }: TestRefusal): TestHazard | null {
  switch (code) {
    case 'ohms-with-key':
    case 'ohms-on-battery':
    case 'ohms-on-electronics':
    case 'ohms-across-electronics':
      return 'ohms-on-live';
    case 'lamp-on-module':
      return 'lamp-on-module';
    case 'few-ohms-on-module':
    case 'battery-on-module':
    case 'module-to-ground':
    case 'pins-joined':
    case 'short-circuit':
    case 'lifted':
    case 'fuse-blows':
    case 'output-overloaded':
    case 'amps-across':
      return 'clipped-in';
    case 'no-connector':
    case 'no-terminal':
    case 'nothing-to-inspect':
    case 'no-input':
    case 'nothing-turns':
    case 'inside-connector':
    case 'module-pin':
    case 'same-terminal':
    case 'bridge-same-terminal':
    case 'spare-unplugged':
    case 'wheel-turns':
    case 'target-still':
    case 'module-unplugged':
    case 'module-off':
    case 'amps-beside':
      return null;
  }
}

/** What would have happened; common practice, no source. */
const WOULD: Readonly<Record<TestHazard, string>> = {
  'ohms-on-live':
    'The ohmmeter would have put its own current into a circuit that is live or has electronics on it: the number means nothing, and the meter or the module can be damaged.',
  'lamp-on-module':
    'A filament lamp draws a quarter of an ampere and several times that while cold: more than a module output, reference or input is made for. That terminal of the module would have burnt out, and the vehicle would have a second fault.',
  'clipped-in':
    'More volts or amps than a terminal can take would have reached it: a reference, an input, an output or a pin of the module would have been destroyed, a lead would have shorted the battery, or a fuse would have blown.',
};
