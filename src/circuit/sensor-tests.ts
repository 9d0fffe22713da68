/** Tests that do not follow a single wire in use: a spare sensor, ohms, neighbours, eyes and fingers. */
import { moduleOf, type Part, partName, sensorOf, type Wire } from './circuit.ts';
import { spaced } from './part-faults.ts';
import type { TerminalId } from './test.ts';
import { type Lead, NEGATIVE, pin, TestList } from './test-list.ts';

/** The second half of the rules of `standard-tests.ts`. */
export class SensorTests extends TestList {
  protected spare(): void {
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

  protected continuity({ wire, here, there }: Lead): void {
    const name = wholeName(wire);
    const near = this.connectorsOff([there]);
    if (near.unplugged.length > 1)
      this.ohms(
        `wire.${name}.ohms`,
        `Ohms of the ${spaced(name)} wire from end to end, ${offWords(near)}`,
        there,
        here,
        near,
      );
    this.ohms(
      `wire.${name}.ohms-to-ground`,
      `Ohms from ${pin(here)} to battery negative, ${offWords(near)}`,
      here,
      NEGATIVE,
      near,
    );
    for (const other of this.leads) {
      if (other.here <= here) continue;
      const far = this.connectorsOff([there, other.there]);
      this.ohms(
        `wire.${name}.ohms-to-${wholeName(other.wire)}`,
        `Ohms from ${pin(here)} to ${pin(other.here)}, ${offWords(far)}`,
        here,
        other.here,
        far,
      );
    }
  }

  /** Key off, and the sensor's connector off with those that the wires' other ends are in. */
  private connectorsOff(ends: readonly TerminalId[]) {
    const away = ends.map(partName).filter((name) => name !== 'splice' && name !== 'battery');
    return { state: 'key-off' as const, unplugged: [...new Set([...away, this.sensor])] };
  }

  protected sensorOhms(): void {
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
          `Ohms of ${spaced(track.name)} at the sensor's own pins`,
          own(track.feed),
          own(track.ground),
          off,
          'signal',
        );
        this.ohms(
          `sensor.${track.name}.wiper-ohms`,
          `Ohms from wiper to ground of ${spaced(track.name)} at the sensor's own pins`,
          own(track.signal),
          own(track.ground),
          off,
          'signal',
        );
      }
  }

  /** A sensor that speaks by its current: the meter in its feed wire, the plug open, its other pins on short leads. */
  protected current(feeds: readonly Lead[]): void {
    if (sensorOf(this.circuit).kind !== 'current-switch') return;
    for (const { here } of feeds) {
      const others = this.leads.filter((lead) => lead.here !== here);
      this.add(
        `${here}.amps`,
        'signal',
        `Milliamperes through ${pin(here)} at the sensor's opened plug, its other pin on a short lead`,
        4,
        { kind: 'amps', plus: here, minus: `${here}.pin` },
        ['milliammeter', 'lead'],
        {
          unplugged: [this.sensor],
          bridges: others.map((other) => ({
            ...{ from: other.here, to: `${other.here}.pin` },
            through: 'lead',
          })),
        },
      );
    }
  }

  protected neighbour(part: Part, feeds: readonly Lead[]): void {
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
    // Where a fuse has blown there are no volts to tell by.
    for (const { here } of feeds)
      this.ohms(
        `${here}.ohms-without-${part.name}`,
        `Ohms from ${pin(here)} at the sensor's plug to battery negative, with the ${part.words} and the sensor unplugged`,
        here,
        NEGATIVE,
        { state: 'key-off', unplugged: [part.name, this.sensor] },
        'neighbour',
      );
  }

  protected inspections(): void {
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
    const { target } = this.circuit;
    if (!target) return;
    look('target', `Look at the wheel at the ${target.at}: teeth, seat, gap`, 8);
    if (target.ring === undefined) return;
    look('target.seat', `Look at the seat of the ${this.sensor}: rust, dirt, metal on its tip`, 6);
    look('target.ring', `A magnet card along the ring at the ${target.at}, all the way round`, 8);
    look('target.turning', `Turn the ${target.at} by hand: play, run-out, noise`, 3);
  }
}

/** Of a section the name of the whole wire, which runs from end to end. */
function wholeName({ name, of }: Wire): string {
  return of ?? name;
}

function offWords({ unplugged }: { readonly unplugged: readonly string[] }): string {
  if (unplugged.length === 1) return 'sensor unplugged';
  return unplugged.length === 2 ? 'both connectors off' : 'all connectors off';
}
