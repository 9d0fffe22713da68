/** A circuit's suspects and tests as the thinking about suspects takes them. */
import { partName } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import { leads } from '../circuit/refuse-test.ts';
import { standardTests } from '../circuit/standard-tests.ts';
import type { Probe, Test } from '../circuit/test.ts';
import { arrangementKey, testKey } from '../circuit/test-key.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import type { TableTest } from '../suspects/prediction-table.ts';

/** A test as the advisor's table knows it, and as the person does it. */
export interface AdvisorTest extends TableTest {
  readonly test: Test;
  readonly words: string;
}

/** What a test is called and takes, beside what it is. */
type TestWords = Pick<AdvisorTest, 'id' | 'words' | 'family' | 'minutes' | 'needs'>;

/** `test` with what it takes on this model's vehicle and meter. */
export function tableTest(model: Model, test: Test, rest: TestWords): AdvisorTest {
  const { volts, ohms } = model.meter;
  const { kind } = test.probe;
  const accuracy = kind === 'volts' ? volts : kind === 'ohms' ? ohms : null;
  return {
    ...rest,
    test,
    state: test.setup.state,
    unplugged: test.setup.unplugged,
    reaches: [...new Set(leads(test.probe).map(partName))].filter((part) => part !== 'battery'),
    reads: readsOf(test.probe),
    arrangement: arrangementKey(test.setup),
    ...(accuracy
      ? { standardUncertainty: (value: number) => meterUncertainty(accuracy, value).standard }
      : {}),
  };
}

/** Where a mistake about the place would show again: the terminals under the leads, or what is looked at. */
function readsOf(probe: Probe): string[] {
  if (probe.kind === 'inspect') return [`look ${probe.of}`];
  if (probe.kind === 'counts') return [`live data ${probe.input}`];
  return leads(probe)
    .filter((terminal) => partName(terminal) !== 'battery')
    .sort();
}

/** The tests of a procedure, if there is one, and the standard tests of the circuit, each once. */
export function collectTests(model: Model, procedure: Procedure | null): AdvisorTest[] {
  const known = new Map<string, AdvisorTest>();
  const add = (test: Test, rest: TestWords) => {
    const key = testKey(test);
    if (!known.has(key) && model.refusal(test) === null)
      known.set(key, tableTest(model, test, rest));
  };
  for (const step of Object.values(procedure?.steps ?? {})) {
    if ((step.kind !== 'measure' && step.kind !== 'look') || step.probe === null) continue;
    const test = { setup: step.setup, probe: step.probe };
    add(test, {
      id: step.id,
      words: step.title,
      family: step.family,
      minutes: 1,
      needs: needsOf(test),
    });
  }
  for (const { test, id, words, family, minutes, needs } of standardTests(model.circuit))
    add(test, { id, words, family, minutes, needs });
  return [...known.values()];
}

/** What has to be at hand for a step of a procedure. */
export function needsOf({ setup, probe }: Test): string[] {
  const needs = new Set<string>();
  if (probe.kind === 'pattern' || probe.kind === 'timing') needs.add('scope');
  if (probe.kind === 'light') needs.add('test-light');
  if (probe.kind === 'lamp') needs.add('lamp');
  for (const { through } of setup.bridges) {
    if (typeof through === 'object') needs.add('resistor');
    else if (through !== 'lead') needs.add(through);
  }
  if (setup.sensor === 'spare') needs.add('spare-sensor');
  return [...needs];
}
