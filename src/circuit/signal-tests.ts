/** Tests along a signal: its levels, its pattern, what the module makes of it, and what can be put in its place. */
import { likeliestEnd, partName, sensorOf } from './circuit.ts';
import type { Bridge, TerminalId } from './test.ts';
import { type Lead, NEGATIVE, pin, type TestList } from './test-list.ts';

/** Resistor for pulling an input to ground: far below any pull-up, and 11 mA at 5 V. */
const PULL_DOWN_OHMS = 470;
/** Resistor for loading the bias of a coil's input: as large as the smallest that stand behind one. */
const BIAS_LOAD_OHMS = 10_000;
/** Resistor for lifting an input to its own feed. */
const PULL_UP_OHMS = 1000;
/** Resistor that loads this feed meanwhile, so that a pull-up from a higher supply cannot lift it: 15 mA at 5 V. */
const FEED_LOAD_OHMS = 330;

/** The level of a signal wire at both of its ends, at rest and moved. */
export function signalTests(list: TestList, { here, there }: Lead): void {
  const off = { unplugged: [list.sensor] };
  const say = pin(here);
  list.volts(
    `${here}.open-volts`,
    'signal',
    `Volts from ${say} at the sensor's connector to battery negative, sensor unplugged`,
    here,
    NEGATIVE,
    off,
  );
  list.volts(
    `${here}.volts`,
    'signal',
    `Volts from ${say} at the sensor to battery negative`,
    here,
    NEGATIVE,
  );
  if (partName(there) === list.module) {
    list.volts(
      `${here}.alone-volts`,
      'signal',
      `Volts from ${say} at the sensor's connector to battery negative, both connectors off`,
      here,
      NEGATIVE,
      { unplugged: [list.module, list.sensor] },
    );
    list.volts(
      `${there}.open-volts`,
      'signal',
      `Volts from ${pin(there)} at the module to battery negative, sensor unplugged`,
      there,
      NEGATIVE,
      off,
    );
    list.volts(
      `${there}.volts`,
      'signal',
      `Volts from ${pin(there)} at the module to battery negative`,
      there,
      NEGATIVE,
    );
  }
  if (sensorOf(list.circuit).kind === 'potentiometer') {
    const moved = { target: 'moving' as const };
    list.volts(
      `${here}.moved`,
      'signal',
      `Volts from ${say} at the sensor to battery negative, fully moved`,
      here,
      NEGATIVE,
      moved,
    );
    list.volts(
      `${there}.moved`,
      'signal',
      `Volts from ${pin(there)} at the module to battery negative, fully moved`,
      there,
      NEGATIVE,
      moved,
    );
  }
}

/** The signal as a scope sees it and as the module counts it, and a wire around its own. */
export function patternTests(list: TestList, signals: readonly Lead[]): void {
  const moving = list.moving();
  for (const { here, there, wire } of signals) {
    const input = list.inputAt(there);
    if (!input) continue;
    const other =
      input.kind === 'swing'
        ? signals.find((one) => one.there === `${list.module}.${input.against}`)
        : undefined;
    const near = other?.there ?? NEGATIVE;
    const far = other?.here ?? NEGATIVE;
    list.add(
      `${there}.pattern`,
      'pattern',
      `Scope at ${pin(there)} of the module`,
      3,
      { kind: 'pattern', plus: there, minus: near },
      ['scope'],
      moving,
    );
    list.add(
      `${here}.pattern`,
      'pattern',
      `Scope at ${pin(here)} of the sensor`,
      3,
      { kind: 'pattern', plus: here, minus: far },
      ['scope'],
      moving,
    );
    list.add(
      `${there}.counts`,
      'pattern',
      `Live data: does the module follow ${pin(there)}`,
      1,
      { kind: 'counts', input: there },
      ['live-data'],
      moving,
    );
    if (list.circuit.target)
      list.add(
        `${there}.timing`,
        'timing',
        `Scope at ${pin(there)} beside a good or sister signal: position`,
        5,
        { kind: 'timing', plus: there, minus: near },
        ['scope'],
        moving,
      );
    bypassTest(list, { here, there, wire }, there);
  }
}

/** A wire beside this one, and what the module at its `input` makes of it. */
function bypassTest(list: TestList, { here, there, wire }: Lead, input: TerminalId): void {
  const lead: Bridge = { from: here, to: there, through: 'lead' };
  const follows = input === there ? '' : ` ${pin(input)}`;
  list.add(
    `wire.${wire.of ?? wire.name}.bypass`,
    'bypass',
    `A temporary wire from ${pin(here)} at the sensor to ${pin(there)} at the module: does the module follow${follows}`,
    5,
    { kind: 'counts', input },
    ['lead', 'live-data'],
    { ...list.moving(), bridges: [lead] },
  );
}

/** Around a wire that serves a signal of the sensor, where it comes from the module. */
export function bypassServing(list: TestList, lead: Lead, signals: readonly Lead[]): void {
  const sensor = sensorOf(list.circuit);
  const own = lead.here.slice(sensor.name.length + 1);
  const served =
    sensor.kind === 'potentiometer'
      ? sensor.tracks.find(({ feed, ground }) => [feed, ground].includes(own))?.signal
      : undefined;
  const signal = signals.find(
    ({ here, there }) =>
      list.inputAt(there) !== null && (served === undefined || here === `${sensor.name}.${served}`),
  );
  if (signal && partName(lead.there) === list.module) bypassTest(list, lead, signal.there);
}

/**
 * A bias read open and loaded tells the resistance on the way, and against its twin's whether it is the resistor's own.
 * Across the coil, with its plug closed and a load on one wire, a contact that opens shows by itself, whatever the bias is.
 * Where one end of the coil is grounded, the coil loads the other one already.
 */
export function biasTests(list: TestList, { here, there }: Lead, signals: readonly Lead[]): void {
  const isBiased = (lead: Lead) => {
    const pull = list.pinAt(lead.there)?.pull;
    return pull != null && likeliestEnd(pull.to).kind === 'volts';
  };
  if (sensorOf(list.circuit).kind !== 'reluctor' || signals.length < 2) return;
  if (!signals.every(isBiased)) return;
  for (const [place, at] of [
    ['module', there],
    ['sensor', here],
  ] as const) {
    const bridge: Bridge = { from: at, to: NEGATIVE, through: { ohms: BIAS_LOAD_OHMS } };
    const where = place === 'sensor' ? "sensor's connector" : 'module';
    list.volts(
      `${there}.loaded-at-${place}`,
      'signal',
      `Volts from ${pin(at)} at the ${where} to battery negative with ${BIAS_LOAD_OHMS / 1000} kohm between the two, sensor unplugged`,
      at,
      NEGATIVE,
      { unplugged: [list.sensor], bridges: [bridge] },
      ['resistor'],
    );
  }
  const [first, second] = signals;
  if (here !== first?.here || !second) return;
  list.volts(
    'sensor.loaded-coil',
    'signal',
    `Volts from ${pin(second.here)} to ${pin(here)} at the sensor's connector with ${BIAS_LOAD_OHMS / 1000} kohm from ${pin(here)} to battery negative`,
    second.here,
    here,
    { bridges: [{ from: here, to: NEGATIVE, through: { ohms: BIAS_LOAD_OHMS } }] },
    ['resistor'],
  );
}

/** What pulls an input over from the sensor's connector; null where nothing does. */
export function pullFor(
  list: TestList,
  { here, there }: Lead,
  feed: Lead | undefined,
): Bridge | null {
  const pull = list.pinAt(there)?.pull;
  if (
    list.inputAt(there)?.kind === 'swing' &&
    pull != null &&
    likeliestEnd(pull.to).kind === 'volts'
  )
    return { from: here, to: NEGATIVE, through: { ohms: BIAS_LOAD_OHMS } };
  if (list.inputAt(there)?.kind !== 'levels') return null;
  const falls = pull !== null && pull !== undefined && likeliestEnd(pull.to).kind !== 'ground';
  const to = falls ? NEGATIVE : feed?.here;
  if (to === undefined) return null;
  return { from: here, to, through: { ohms: falls ? PULL_DOWN_OHMS : PULL_UP_OHMS } };
}

/** An input pulled over by hand, at the module and at the sensor's connector: what it makes of that shows on its pin. */
export function injectionTests(list: TestList, lead: Lead, feed: Lead | undefined): void {
  const { here, there } = lead;
  const pull = list.inputAt(there)?.kind === 'levels' ? pullFor(list, lead, feed) : null;
  if (typeof pull?.through !== 'object') return;
  const { to: source } = pull;
  const { ohms } = pull.through;
  const falls = source === NEGATIVE;
  const from = falls ? 'battery negative' : `${pin(source)} at the sensor's connector`;
  for (const [place, at] of [
    ['module', there],
    ['sensor', here],
  ] as const) {
    const bridge: Bridge = { from: at, to: source, through: { ohms } };
    list.volts(
      `${there}.injection-at-${place}`,
      'injection',
      `Volts at ${pin(there)} of the module with ${ohms} ohm from ${from} to ${pin(at)} at the ${place}, sensor unplugged`,
      there,
      NEGATIVE,
      { unplugged: [list.sensor], bridges: [bridge] },
      ['resistor'],
    );
  }
}

/**
 * A pull-up lent to the signal at the module, from the feed beside it: with the module's own missing, or not reached by its
 * pin, wire and sensor show what they do. A wire that is held down stays down, and from here the sensor's plug may stay closed.
 */
export function lentTests(list: TestList, lead: Lead, feed: Lead | undefined): void {
  const { there } = lead;
  const pull = pullFor(list, lead, feed);
  if (!feed || partName(feed.there) !== list.module) return;
  if (list.inputAt(there)?.kind !== 'levels' || pull?.to !== NEGATIVE) return;
  const bridges: Bridge[] = [
    { from: feed.there, to: there, through: { ohms: PULL_UP_OHMS } },
    { from: feed.there, to: NEGATIVE, through: { ohms: FEED_LOAD_OHMS } },
  ];
  const from = `with ${PULL_UP_OHMS} ohm from ${pin(feed.there)} to ${pin(there)}, ${FEED_LOAD_OHMS} ohm from ${pin(feed.there)} to battery negative`;
  list.volts(
    `${there}.lent-volts`,
    'injection',
    `Volts at ${pin(there)} of the module ${from}`,
    there,
    NEGATIVE,
    { bridges },
    ['resistor'],
    2,
  );
  list.add(
    `${there}.lent-pattern`,
    'injection',
    `Scope at ${pin(there)} of the module ${from}`,
    4,
    { kind: 'pattern', plus: there, minus: NEGATIVE },
    ['scope', 'resistor'],
    { ...list.moving(), bridges },
  );
}
