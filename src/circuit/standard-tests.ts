/** The sensible tests of a circuit, by rule from its structure: what a technician would think of, and may safely do. */
import {
  type Circuit,
  likeliestEnd,
  type Part,
  partName,
  type RelayPart,
  sensorOf,
} from './circuit.ts';
import { JointTests } from './joint-tests.ts';
import { refuseTest } from './refuse-test.ts';
import type { Bridge, Probe, TerminalId } from './test.ts';
import { type Lead, NEGATIVE, pin, type TestOption } from './test-list.ts';

export type { TestFamily, TestOption } from './test-list.ts';

/** Resistor for pulling an input to ground: far below any pull-up, and 11 mA at 5 V. */
const PULL_DOWN_OHMS = 470;
/** Resistor for loading the bias of a coil's input: as large as the smallest that stand behind one. */
const BIAS_LOAD_OHMS = 10_000;
/** Resistor for lifting an input to its own feed. */
const PULL_UP_OHMS = 1000;
const POSITIVE = 'battery.positive';

/** All tests that the rules give and the model does not refuse, in the order a technician would think of them. */
export function standardTests(circuit: Circuit): TestOption[] {
  const found = new Collector(circuit).all();
  return found.filter((option) => refuseTest(circuit, option.test) === null);
}

class Collector extends JointTests {
  all(): TestOption[] {
    const feeds = this.leads.filter(
      ({ wire }) => wire.role === 'reference' || wire.role === 'supply',
    );
    const grounds = this.leads.filter(({ wire }) => wire.role === 'ground');
    const signals = this.leads.filter(({ wire }) => wire.role === 'signal');
    feeds.forEach((feed, index) => {
      this.feed(feed, grounds[index] ?? grounds[0]);
    });
    for (const ground of grounds) this.ground(ground);
    for (const part of this.circuit.parts) {
      this.supply(part);
      if (part.kind === 'relay') this.relay(part);
    }
    for (const signal of signals) this.signal(signal);
    this.patterns(signals);
    for (const lead of [...feeds, ...grounds]) this.bypassServing(lead, signals);
    signals.forEach((signal, index) => {
      this.injection(signal, feeds[index] ?? feeds[0]);
    });
    for (const signal of signals) this.bias(signal, signals);
    for (const lead of this.leads)
      this.joints(lead, this.pullFor(lead, feeds[signals.indexOf(lead)] ?? feeds[0]));
    this.spare();
    for (const lead of this.leads) this.continuity(lead);
    this.ownTests();
    for (const part of this.circuit.parts)
      if (part.kind === 'neighbour') {
        this.neighbour(part, feeds);
        if (part.told) this.besideNeighbour(part, feeds, grounds[0]);
      }
    this.inspections();
    return this.options;
  }

  private feed({ here, there, wire }: Lead, ground: Lead | undefined): void {
    const off = { unplugged: [this.sensor] };
    const say = pin(here);
    this.volts(
      `${here}.volts`,
      'reference',
      `Volts from ${say} at the sensor to battery negative`,
      here,
      NEGATIVE,
    );
    if (ground)
      this.volts(
        `${here}.to-ground`,
        'reference',
        `Volts from ${say} to ${pin(ground.here)} at the sensor`,
        here,
        ground.here,
      );
    this.volts(
      `${here}.open-volts`,
      'reference',
      `Volts from ${say} to battery negative, sensor unplugged`,
      here,
      NEGATIVE,
      off,
    );
    if (ground)
      this.volts(
        `${here}.open-to-ground`,
        'reference',
        `Volts from ${say} to ${pin(ground.here)}, sensor unplugged`,
        here,
        ground.here,
        off,
      );
    const light = (minus: TerminalId): Probe => ({ kind: 'light', plus: here, minus });
    this.add(
      `${here}.light`,
      'reference',
      `LED light from ${say} to battery negative, sensor unplugged`,
      1.5,
      light(NEGATIVE),
      ['test-light'],
      off,
    );
    if (ground)
      this.add(
        `${here}.light-to-ground`,
        'reference',
        `LED light from ${say} to ${pin(ground.here)}, sensor unplugged`,
        1.5,
        light(ground.here),
        ['test-light'],
        off,
      );
    if (wire.role === 'supply' && ground)
      this.add(
        `${here}.lamp`,
        'reference',
        `Filament lamp from ${say} to battery negative, sensor unplugged`,
        1.5,
        { kind: 'lamp', plus: here, minus: NEGATIVE },
        ['lamp'],
        off,
      );
    const under: Bridge = { from: here, to: NEGATIVE, through: 'test-light' };
    this.volts(
      `${here}.loaded`,
      'reference',
      `Volts from ${say} to battery negative with the LED light as load, sensor unplugged`,
      here,
      NEGATIVE,
      { ...off, bridges: [under] },
      ['test-light'],
    );
    if (partName(there) === this.module)
      this.volts(
        `${there}.volts`,
        'reference',
        `Volts from ${pin(there)} at the module to battery negative`,
        there,
        NEGATIVE,
      );
  }

  private ground({ here }: Lead): void {
    const off = { unplugged: [this.sensor] };
    const say = pin(here);
    this.volts(
      `${here}.drop`,
      'ground',
      `Voltage drop from ${say} at the sensor to battery negative`,
      here,
      NEGATIVE,
    );
    this.add(
      `${here}.light`,
      'ground',
      `LED light from battery positive to ${say}, sensor unplugged`,
      1.5,
      { kind: 'light', plus: POSITIVE, minus: here },
      ['test-light'],
      off,
    );
    const load: Bridge = { from: POSITIVE, to: here, through: 'test-light' };
    this.volts(
      `${here}.loaded-drop`,
      'ground',
      `Voltage drop of ${say} with the LED light as load from battery positive, sensor unplugged`,
      here,
      NEGATIVE,
      { ...off, bridges: [load] },
      ['test-light'],
    );
  }

  private supply(part: Part): void {
    if (part.kind !== 'fuse' && part.kind !== 'relay') return;
    for (const name of part.pins) {
      const terminal = `${part.name}.${name}`;
      this.volts(
        `${terminal}.volts`,
        'reference',
        `Volts at ${part.words}, ${name}, to battery negative`,
        terminal,
        NEGATIVE,
      );
    }
  }

  /** What reaches a relay's coil, and the relay by itself on fused leads, coil and contact. */
  private relay({ name, words, coil }: RelayPart): void {
    if (!coil) return;
    this.volts(
      `${name}.coil-volts`,
      'reference',
      `Volts at the coil of the ${words}, 86 to 85`,
      `${name}.86`,
      `${name}.85`,
    );
    this.add(
      `${name}.alone`,
      'continuity',
      `Ohms of the contact of the ${words}, its coil on fused leads from the battery, relay unplugged`,
      3,
      { kind: 'ohms', plus: `${name}.30.pin`, minus: `${name}.87.pin` },
      ['meter', 'lead'],
      {
        state: 'key-off',
        unplugged: [name],
        bridges: [
          { from: POSITIVE, to: `${name}.86.pin`, through: 'lead' },
          { from: NEGATIVE, to: `${name}.85.pin`, through: 'lead' },
        ],
      },
    );
  }

  private signal({ here, there }: Lead): void {
    const off = { unplugged: [this.sensor] };
    const say = pin(here);
    this.volts(
      `${here}.open-volts`,
      'signal',
      `Volts from ${say} at the sensor's plug to battery negative, sensor unplugged`,
      here,
      NEGATIVE,
      off,
    );
    this.volts(
      `${here}.volts`,
      'signal',
      `Volts from ${say} at the sensor to battery negative`,
      here,
      NEGATIVE,
    );
    if (partName(there) === this.module) {
      this.volts(
        `${here}.alone-volts`,
        'signal',
        `Volts from ${say} at the sensor's plug to battery negative, both connectors off`,
        here,
        NEGATIVE,
        { unplugged: [this.module, this.sensor] },
      );
      this.volts(
        `${there}.open-volts`,
        'signal',
        `Volts from ${pin(there)} at the module to battery negative, sensor unplugged`,
        there,
        NEGATIVE,
        off,
      );
      this.volts(
        `${there}.volts`,
        'signal',
        `Volts from ${pin(there)} at the module to battery negative`,
        there,
        NEGATIVE,
      );
    }
    if (sensorOf(this.circuit).kind === 'potentiometer') {
      const moved = { target: 'moving' as const };
      this.volts(
        `${here}.moved`,
        'signal',
        `Volts from ${say} at the sensor to battery negative, fully moved`,
        here,
        NEGATIVE,
        moved,
      );
      this.volts(
        `${there}.moved`,
        'signal',
        `Volts from ${pin(there)} at the module to battery negative, fully moved`,
        there,
        NEGATIVE,
        moved,
      );
    }
  }

  private patterns(signals: readonly Lead[]): void {
    const moving = this.moving();
    for (const { here, there, wire } of signals) {
      const input = this.inputAt(there);
      if (!input) continue;
      const other =
        input.kind === 'swing'
          ? signals.find((one) => one.there === `${this.module}.${input.against}`)
          : undefined;
      const near = other?.there ?? NEGATIVE;
      const far = other?.here ?? NEGATIVE;
      this.add(
        `${there}.pattern`,
        'pattern',
        `Scope at ${pin(there)} of the module`,
        3,
        { kind: 'pattern', plus: there, minus: near },
        ['scope'],
        moving,
      );
      this.add(
        `${here}.pattern`,
        'pattern',
        `Scope at ${pin(here)} of the sensor`,
        3,
        { kind: 'pattern', plus: here, minus: far },
        ['scope'],
        moving,
      );
      this.add(
        `${there}.counts`,
        'pattern',
        `Live data: does the module follow ${pin(there)}`,
        1,
        { kind: 'counts', input: there },
        ['live-data'],
        moving,
      );
      if (this.circuit.target)
        this.add(
          `${there}.timing`,
          'timing',
          `Scope at ${pin(there)} beside a good or sister signal: position`,
          5,
          { kind: 'timing', plus: there, minus: near },
          ['scope'],
          moving,
        );
      this.bypass({ here, there, wire }, there);
    }
  }

  /** A wire beside this one, and what the module at its `input` makes of it. */
  private bypass({ here, there, wire }: Lead, input: TerminalId): void {
    const lead: Bridge = { from: here, to: there, through: 'lead' };
    const follows = input === there ? '' : ` ${pin(input)}`;
    this.add(
      `wire.${wire.of ?? wire.name}.bypass`,
      'bypass',
      `A temporary wire from ${pin(here)} at the sensor to ${pin(there)} at the module: does the module follow${follows}`,
      5,
      { kind: 'counts', input },
      ['lead', 'live-data'],
      { ...this.moving(), bridges: [lead] },
    );
  }

  /** Around a wire that serves a signal of the sensor, where it comes from the module. */
  private bypassServing(lead: Lead, signals: readonly Lead[]): void {
    const sensor = sensorOf(this.circuit);
    const own = lead.here.slice(sensor.name.length + 1);
    const served =
      sensor.kind === 'potentiometer'
        ? sensor.tracks.find(({ feed, ground }) => [feed, ground].includes(own))?.signal
        : undefined;
    const signal = signals.find(
      ({ here, there }) =>
        this.inputAt(there) !== null &&
        (served === undefined || here === `${sensor.name}.${served}`),
    );
    if (signal && partName(lead.there) === this.module) this.bypass(lead, signal.there);
  }

  /**
   * A bias read open and loaded tells the resistance on the way, and against its twin's whether it is the resistor's own.
   * Where one end of the coil is grounded, the coil loads the other one already.
   */
  private bias({ here, there }: Lead, signals: readonly Lead[]): void {
    const isBiased = (lead: Lead) => {
      const pull = this.pinAt(lead.there)?.pull;
      return pull != null && likeliestEnd(pull.to).kind === 'volts';
    };
    if (sensorOf(this.circuit).kind !== 'reluctor' || signals.length < 2) return;
    if (!signals.every(isBiased)) return;
    for (const [place, at] of [
      ['module', there],
      ['sensor', here],
    ] as const) {
      const bridge: Bridge = { from: at, to: NEGATIVE, through: { ohms: BIAS_LOAD_OHMS } };
      const where = place === 'sensor' ? "sensor's plug" : 'module';
      this.volts(
        `${there}.loaded-at-${place}`,
        'signal',
        `Volts from ${pin(at)} at the ${where} to battery negative with ${BIAS_LOAD_OHMS / 1000} kohm between the two, sensor unplugged`,
        at,
        NEGATIVE,
        { unplugged: [this.sensor], bridges: [bridge] },
        ['resistor'],
      );
    }
  }

  /** What pulls an input over from the sensor's plug; null where nothing does. */
  private pullFor({ here, there }: Lead, feed: Lead | undefined): Bridge | null {
    const pull = this.pinAt(there)?.pull;
    if (
      this.inputAt(there)?.kind === 'swing' &&
      pull != null &&
      likeliestEnd(pull.to).kind === 'volts'
    )
      return { from: here, to: NEGATIVE, through: { ohms: BIAS_LOAD_OHMS } };
    if (this.inputAt(there)?.kind !== 'levels') return null;
    const falls = pull !== null && pull !== undefined && likeliestEnd(pull.to).kind !== 'ground';
    const to = falls ? NEGATIVE : feed?.here;
    if (to === undefined) return null;
    return { from: here, to, through: { ohms: falls ? PULL_DOWN_OHMS : PULL_UP_OHMS } };
  }

  private injection(lead: Lead, feed: Lead | undefined): void {
    const { here, there } = lead;
    const pull = this.inputAt(there)?.kind === 'levels' ? this.pullFor(lead, feed) : null;
    if (typeof pull?.through !== 'object') return;
    const { to: source } = pull;
    const { ohms } = pull.through;
    const falls = source === NEGATIVE;
    const from = falls ? 'battery negative' : `${pin(source)} at the sensor's plug`;
    for (const [place, at] of [
      ['module', there],
      ['sensor', here],
    ] as const) {
      const bridge: Bridge = { from: at, to: source, through: { ohms } };
      this.volts(
        `${there}.injection-at-${place}`,
        'injection',
        `Volts at ${pin(there)} of the module with ${ohms} ohm from ${from} to ${pin(at)} at the ${place}, sensor unplugged`,
        there,
        NEGATIVE,
        { unplugged: [this.sensor], bridges: [bridge] },
        ['resistor'],
      );
    }
  }
}
