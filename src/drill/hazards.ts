/**
 * Tests that the bench stops: those that do damage or hurt, told from those that merely cannot be done (a terminal that
 * is not there, a connector that is still on). A refused test is dangerous when a voltmeter at all its clips would be
 * fine, so that it is the instrument or what is clipped in, and not the place, that is wrong.
 */
import type { Model } from '../circuit/model.ts';
import { leads } from '../circuit/refuse-test.ts';
import type { Probe, Test } from '../circuit/test.ts';
import type { Hazard } from '../session/events.ts';

export interface Danger {
  readonly hazard: Hazard;
  readonly reason: string;
  readonly would: string;
}

/** All that is asked of a model here. */
type Refusing = Pick<Model, 'refusal'>;

/** Why a test is stopped as dangerous; null for one that is fine or cannot be done at all. */
export function dangerOf(model: Refusing, test: Test): Danger | null {
  const reason = model.refusal(test);
  if (reason === null || !couldBeVolts(model, test)) return null;
  const { probe, setup } = test;
  const refused = (bare: Test) => model.refusal(bare) !== null;
  if (probe.kind === 'ohms' && refused({ probe, setup: { ...setup, bridges: [] } }))
    return { hazard: 'ohms-on-live', reason, would: WOULD['ohms-on-live'] };
  if (isLight(probe) && refused({ probe, setup: { ...setup, bridges: [] } })) {
    const hazard = probe.kind === 'lamp' ? 'lamp-on-module' : 'clipped-in';
    return { hazard, reason, would: WOULD[hazard] };
  }
  if (setup.bridges.length === 0 || !clipsRefused(model, test)) return null;
  const lamp = setup.bridges.some(({ through }) => through === 'lamp');
  const hazard = lamp && !refused(withoutLamps(test)) ? 'lamp-on-module' : 'clipped-in';
  return { hazard, reason, would: WOULD[hazard] };
}

/** What would have happened; common practice, no source. */
const WOULD: Readonly<Record<Hazard, string>> = {
  'ohms-on-live':
    'The ohmmeter would have put its own current into a circuit that has a voltage of its own or electronics on it: the number means nothing, and the meter or the module can be damaged.',
  'lamp-on-module':
    'A filament lamp draws a quarter of an ampere and several times that while cold: more than a module output, reference or input is made for. That terminal of the module would have burnt out, and the vehicle would have a second fault.',
  'clipped-in':
    'Battery voltage or a direct path to ground would have reached a terminal that is not made for it: a reference, an input or a pin of the module would have been destroyed, or a lead would have shorted the battery.',
};

function isLight(probe: Probe): probe is Extract<Probe, { kind: 'light' | 'lamp' }> {
  return probe.kind === 'light' || probe.kind === 'lamp';
}

/** A meter for volts, with nothing clipped in, could stand at the leads and at the ends of each bridge. */
function couldBeVolts(model: Refusing, test: Test): boolean {
  const bare = { ...test.setup, bridges: [] };
  const pairs = clippedAt(test);
  return pairs.length > 0 && pairs.every((probe) => model.refusal({ setup: bare, probe }) === null);
}

/** What is clipped in is wrong by itself, whatever reads: a voltmeter beside it is refused too. */
function clipsRefused(model: Refusing, { setup, probe }: Test): boolean {
  const [volts] = clippedAt({ setup, probe });
  return volts !== undefined && model.refusal({ setup, probe: volts }) !== null;
}

/** A voltmeter at the ends of each bridge, and at the leads. */
function clippedAt({ setup, probe }: Test): Probe[] {
  const [plus, minus] = leads(probe);
  const pairs = setup.bridges.map(({ from, to }) => [from, to] as const);
  if (plus !== undefined && minus !== undefined) pairs.push([plus, minus]);
  return pairs.map(([a, b]) => ({ kind: 'volts', plus: a, minus: b }));
}

function withoutLamps({ setup, probe }: Test): Test {
  return {
    setup: { ...setup, bridges: setup.bridges.filter(({ through }) => through !== 'lamp') },
    probe,
  };
}
