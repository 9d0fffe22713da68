/** The sensible tests of a circuit, by rule from its structure: what a technician would think of, and may safely do. */
import { type Circuit, moduleOf, type Part, partName, sensorOf, type Wire } from './circuit.ts';
import { refuseTest } from './refuse-test.ts';
import type { Bridge, Probe, Setup, TerminalId, Test } from './test.ts';

export const TEST_FAMILIES = [
  'reference',
  'ground',
  'signal',
  'pattern',
  'injection',
  'bypass',
  'spare',
  'continuity',
  'neighbour',
  'inspection',
  'timing',
] as const;
export type TestFamily = (typeof TEST_FAMILIES)[number];

/** What has to be at hand. */
export type Need =
  | 'meter'
  | 'test-light'
  | 'resistor'
  | 'lead'
  | 'scope'
  | 'live-data'
  | 'spare-sensor'
  | 'eyes';

export interface TestOption {
  readonly id: string;
  readonly family: TestFamily;
  /** What is done, in one line without a full stop. */
  readonly words: string;
  /** The test itself; changing the vehicle's state and reaching terminals come on top. */
  readonly minutes: number;
  readonly test: Test;
  readonly needs: readonly Need[];
}

/** Resistor for pulling an input to ground: far below any pull-up, and 11 mA at 5 V. */
const PULL_DOWN_OHMS = 470;
/** Resistor for lifting an input to its own feed. */
const PULL_UP_OHMS = 1000;
const NEGATIVE = 'battery.negative';
const POSITIVE = 'battery.positive';

/** All tests that the rules give and the model does not refuse, in the order a technician would think of them. */
export function standardTests(circuit: Circuit): TestOption[] {
  const found = new Collector(circuit).all();
  return found.filter((option) => refuseTest(circuit, option.test) === null);
}

/** A wire at the sensor: its terminal there and what is at the other end. */
interface Lead {
  readonly wire: Wire;
  readonly here: TerminalId;
  readonly there: TerminalId;
}

class Collector {
  private readonly circuit: Circuit;
  private readonly sensor: string;
  private readonly module: string;
  private readonly leads: readonly Lead[];
  private readonly options: TestOption[] = [];

  constructor(circuit: Circuit) {
    this.circuit = circuit;
    this.sensor = sensorOf(circuit).name;
    this.module = moduleOf(circuit).name;
    this.leads = circuit.wires.flatMap((wire): Lead[] => {
      if (partName(wire.from) === this.sensor) return [{ wire, here: wire.from, there: wire.to }];
      return partName(wire.to) === this.sensor ? [{ wire, here: wire.to, there: wire.from }] : [];
    });
  }

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
    for (const part of this.circuit.parts) this.supply(part);
    for (const signal of signals) this.signal(signal);
    this.patterns(signals);
    signals.forEach((signal, index) => {
      this.injection(signal, feeds[index] ?? feeds[0]);
    });
    this.spare();
    for (const lead of this.leads) this.continuity(lead);
    this.sensorOhms();
    for (const part of this.circuit.parts)
      if (part.kind === 'neighbour') this.neighbour(part, feeds);
    this.inspections();
    return this.options;
  }

  private feed({ here, wire }: Lead, ground: Lead | undefined): void {
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
        ['test-light'],
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
    for (const { there } of this.leads.filter((one) => one.here === here))
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
      const lead: Bridge = { from: here, to: there, through: 'lead' };
      this.add(
        `wire.${wire.name}.bypass`,
        'bypass',
        `A temporary wire from ${pin(here)} at the sensor to ${pin(there)} at the module: does the module follow`,
        5,
        { kind: 'counts', input: there },
        ['lead', 'live-data'],
        { ...moving, bridges: [lead] },
      );
    }
  }

  private injection({ here, there }: Lead, feed: Lead | undefined): void {
    const input = this.inputAt(there);
    if (input?.kind !== 'levels') return;
    const pull = moduleOf(this.circuit).inside.find(
      (one) => `${this.module}.${one.name}` === there,
    )?.pull;
    const falls = pull !== null && pull !== undefined && pull.to.kind !== 'ground';
    const source = falls ? NEGATIVE : feed?.here;
    if (source === undefined) return;
    const ohms = falls ? PULL_DOWN_OHMS : PULL_UP_OHMS;
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

  private spare(): void {
    const module = moduleOf(this.circuit);
    for (const pinInside of module.inside)
      if (pinInside.input) {
        const input = `${module.name}.${pinInside.name}`;
        this.add(
          `${input}.spare`,
          'spare',
          `A good spare sensor plugged in and moved: does the module follow ${pin(input)}`,
          6,
          { kind: 'counts', input },
          ['spare-sensor', 'live-data'],
          {
            ...this.moving(),
            sensor: 'spare',
          },
        );
      }
  }

  private continuity({ wire, here, there }: Lead): void {
    const away = partName(there);
    const parts = away === 'splice' || away === 'battery' ? [this.sensor] : [away, this.sensor];
    const off = { state: 'key-off' as const, unplugged: parts };
    if (away !== 'splice' && away !== 'battery')
      this.ohms(
        `wire.${wire.name}.ohms`,
        `Ohms of the ${wire.name} wire from end to end, both connectors off`,
        there,
        here,
        off,
      );
    this.ohms(
      `wire.${wire.name}.ohms-to-ground`,
      `Ohms from ${pin(here)} to battery negative, both connectors off`,
      here,
      NEGATIVE,
      off,
    );
    for (const other of this.leads)
      if (other.here > here) {
        const both = {
          ...off,
          unplugged: [...new Set([...parts, partName(other.there)])].filter(
            (name) => name !== 'splice' && name !== 'battery',
          ),
        };
        this.ohms(
          `wire.${wire.name}.ohms-to-${other.wire.name}`,
          `Ohms from ${pin(here)} to ${pin(other.here)}, both connectors off`,
          here,
          other.here,
          both,
        );
      }
  }

  private sensorOhms(): void {
    const sensor = sensorOf(this.circuit);
    const own = (name: string) => `${sensor.name}.${name}.pin`;
    const off = { state: 'key-off' as const, unplugged: [sensor.name] };
    if (sensor.kind === 'reluctor') {
      this.ohms(
        'sensor.coil-ohms',
        "Ohms of the coil at the sensor's own pins",
        own('plus'),
        own('minus'),
        off,
        'signal',
      );
      const [first, second] = this.leads;
      if (first && second)
        this.ohms(
          'module.loop-ohms',
          "Ohms of coil and wires from the module's plug, module unplugged",
          first.there,
          second.there,
          { ...off, unplugged: [this.module] },
          'signal',
        );
    }
    if (sensor.kind === 'potentiometer')
      for (const track of sensor.tracks) {
        this.ohms(
          `sensor.${track.name}.track-ohms`,
          `Ohms of ${track.name} at the sensor's own pins`,
          own(track.feed),
          own(track.ground),
          off,
          'signal',
        );
        this.ohms(
          `sensor.${track.name}.wiper-ohms`,
          `Ohms from wiper to ground of ${track.name} at the sensor's own pins`,
          own(track.signal),
          own(track.ground),
          off,
          'signal',
        );
      }
  }

  private neighbour(part: Part, feeds: readonly Lead[]): void {
    for (const { here } of feeds)
      this.volts(
        `${here}.without-${part.name}`,
        'neighbour',
        `Volts from ${pin(here)} at the sensor to battery negative with the ${part.words} unplugged`,
        here,
        NEGATIVE,
        { unplugged: [part.name] },
        [],
        3,
      );
  }

  private inspections(): void {
    const look = (of: string, words: string, minutes: number) =>
      this.add(
        `${of}.inspection`,
        'inspection',
        words,
        minutes,
        { kind: 'inspect', of },
        ['eyes'],
        { state: 'key-off' },
      );
    for (const { part, words, pins } of this.circuit.connectors) {
      const neighbour = this.circuit.parts.some(
        (one) => one.name === part && one.kind === 'neighbour',
      );
      if (pins.length > 0 && !neighbour)
        look(
          `connector.${part}`,
          `Look at ${words}: pins, crimps, corrosion, seals`,
          part === this.module ? 4 : 2,
        );
    }
    look('harness', 'Look along the harness: chafing, heat, earlier repairs', 6);
    if (this.circuit.target)
      look('target', `Look at the wheel at the ${this.circuit.target.at}: teeth, seat, gap`, 8);
  }

  private moving(): Partial<Setup> {
    const { target } = this.circuit;
    return { state: target && target.turns > 0 ? 'cranking' : 'key-on', target: 'moving' };
  }

  private inputAt(terminal: TerminalId) {
    const module = moduleOf(this.circuit);
    return module.inside.find((one) => `${module.name}.${one.name}` === terminal)?.input ?? null;
  }

  private volts(
    id: string,
    family: TestFamily,
    words: string,
    plus: TerminalId,
    minus: TerminalId,
    setup: Partial<Setup> = {},
    more: readonly Need[] = [],
    minutes = 1,
  ): void {
    this.add(id, family, words, minutes, { kind: 'volts', plus, minus }, ['meter', ...more], setup);
  }

  private ohms(
    id: string,
    words: string,
    plus: TerminalId,
    minus: TerminalId,
    setup: Partial<Setup>,
    family: TestFamily = 'continuity',
  ): void {
    this.add(id, family, words, 2, { kind: 'ohms', plus, minus }, ['meter'], setup);
  }

  private add(
    id: string,
    family: TestFamily,
    words: string,
    minutes: number,
    probe: Probe,
    needs: readonly Need[],
    setup: Partial<Setup>,
  ): void {
    if (this.options.some((option) => option.id === id)) return;
    const whole: Setup = {
      state: 'key-on',
      bridges: [],
      sensor: 'fitted',
      target: 'still',
      ...setup,
      unplugged: [...(setup.unplugged ?? [])].sort(),
    };
    this.options.push({ id, family, words, minutes, needs, test: { setup: whole, probe } });
  }
}

/** `signal-plus` of `sensor.signal-plus` as people write it. */
function pin(terminal: TerminalId): string {
  return terminal
    .slice(terminal.indexOf('.') + 1)
    .replace(/\.pin$/, '')
    .replace(/-/g, ' ');
}
