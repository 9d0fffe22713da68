/** Reads the parts of a circuit file: defaults, units, and pins that must exist. */
import type { Unit } from '../quantity/quantity.ts';
import { whichOf } from '../quantity/value-at.ts';
import type { Path } from '../source/yaml-source.ts';
import {
  type BesideTrack,
  type ModulePin,
  type Part,
  type PotentiometerPart,
  type SensorPart,
  TRACK_RUNS,
  type Track,
} from './circuit.ts';
import type {
  CircuitDraft,
  ModuleDraft,
  ModulePinDraft,
  PotentiometerDraft,
  TrackDraft,
} from './generated/circuit.mjs';
import { spaced } from './part-faults.ts';
import { PinReader } from './pin-reader.ts';
import type { PlainValue } from './sensor-kind.ts';
import { SENSORS } from './sensors.ts';

type PartDraft = CircuitDraft['parts'][string];
type PlainSensor = Exclude<SensorPart, PotentiometerPart>;

/** Drafts of parts become parts. */
export class PartReader extends PinReader {
  protected part(name: string, draft: PartDraft): Part {
    const path = ['parts', name];
    const base = { name, words: draft.words ?? spaced(name) };
    const ohm = (text: string | undefined, fallback: string, key: string) =>
      this.positive(text, fallback, [...path, key]);
    const unit = (text: string | undefined, fallback: string, key: string, of: Unit) =>
      this.positive(text, fallback, [...path, key], of);
    switch (draft.kind) {
      case 'module':
        return {
          ...base,
          kind: 'module',
          pins: Object.keys(draft.pins),
          inside: this.modulePins(name, draft),
        };
      case 'potentiometer':
        return { ...base, ...this.potentiometer(draft, path) };
      case 'fuse':
        return {
          ...base,
          kind: 'fuse',
          pins: ['in', 'out'],
          amps: unit(draft.amps, '10 A', 'amps', 'A').nominal,
          ohms: ohm(draft.ohms, '8 mohm', 'ohms'),
        };
      case 'relay':
        return {
          ...base,
          kind: 'relay',
          // Terminal numbers of DIN 72552.
          pins: draft.coil === undefined ? ['30', '87'] : ['30', '87', '85', '86'],
          ohms: ohm(draft.ohms, '5 mohm to 50 mohm', 'ohms'),
          ...(draft.coil !== undefined && {
            coil: {
              ohms: ohm(draft.coil, '', 'coil'),
              pullsIn: unit(draft['pulls-in'], '5 V to 7.5 V', 'pulls-in', 'V'),
            },
          }),
        };
      case 'ground-point':
        return {
          ...base,
          kind: 'ground-point',
          pins: ['eyelet'],
          ohms: ohm(draft.ohms, '2 mohm to 20 mohm', 'ohms'),
          ...(draft.offset !== undefined && {
            volts: this.value(draft.offset, '', 'V', [...path, 'offset']),
          }),
        };
      case 'neighbour':
        return {
          ...base,
          kind: 'neighbour',
          pins: ['feed', 'ground'],
          ohms: ohm(draft.ohms, '', 'ohms'),
          shorted: ohm(draft.shorted, '0.05 ohm to 20 ohm', 'shorted'),
        };
      default:
        return this.plainSensor(draft, base);
    }
  }

  /** Pins are those that its tracks name. */
  private potentiometer(
    draft: PotentiometerDraft,
    path: readonly string[],
  ): Omit<PotentiometerPart, 'name' | 'words'> {
    const tracks = Object.entries(draft.tracks).map(([track, one]) => {
      const at = [...path, 'tracks', track];
      return {
        name: track,
        feed: one.feed,
        signal: one.signal,
        ground: one.ground,
        ohms: this.positive(one.ohms, '', [...at, 'ohms']),
        wiper: this.positive(one.wiper, '200 ohm +/- 50 %', [...at, 'wiper']),
        ...this.ends(one, draft.tracks, at),
      };
    });
    const pins = [...new Set(tracks.flatMap((track) => [track.feed, track.signal, track.ground]))];
    return { kind: 'potentiometer', pins, tracks, ...this.turned(draft.turned, path) };
  }

  /** A sensor that is a few values: pins and values of its kind. */
  private plainSensor(
    draft: Extract<PartDraft, { kind: PlainSensor['kind'] }>,
    base: Pick<Part, 'name' | 'words'>,
  ): Part {
    const { kind } = draft;
    const said: Readonly<Record<string, string | undefined>> = { ...draft };
    const { pins, values } = SENSORS[kind];
    const read = Object.entries<PlainValue>(values ?? {}).map(
      ([what, { key = what, usual, unit }]) =>
        [what, this.positive(said[key], usual, ['parts', base.name, key], unit)] as const,
    );
    return { ...base, kind, pins, ...Object.fromEntries(read) } as PlainSensor;
  }

  /** Where a track ends: as it says itself, or as another track of the sensor tells. */
  private ends(
    { closed, open, beside, runs, lower }: TrackDraft,
    tracks: PotentiometerDraft['tracks'],
    path: Path,
  ): Pick<Track, 'closed' | 'open' | 'beside'> {
    if (beside === undefined) {
      if (closed !== undefined && open !== undefined)
        return {
          closed: this.share(closed, [...path, 'closed']),
          open: this.share(open, [...path, 'open']),
        };
      this.issue(
        'no-ends',
        'a track needs closed and open, or another track beside which it runs',
        path,
        'write closed and open, or beside and runs',
      );
      return {};
    }
    const others = Object.keys(tracks).filter((name) => tracks[name]!.beside === undefined);
    const noTrack = `"${beside}" is no track with ends of its own`;
    const at = [...path, 'beside'];
    if (others.length === 0)
      this.issue('unknown-track', noTrack, at, 'write closed and open at one of the tracks');
    else if (!others.includes(beside)) this.unknown('unknown-track', noTrack, beside, others, at);
    if (closed !== undefined || open !== undefined)
      this.issue(
        'two-ends',
        `the track "${beside}" tells where this one ends`,
        [...path, closed === undefined ? 'open' : 'closed'],
        'leave closed and open out, or beside',
      );
    return {
      beside: {
        track: beside,
        ...this.runs(runs ?? 'half', [...path, 'runs']),
        lower: this.share(lower ?? '6 % to 10 %', [...path, 'lower']),
      },
    };
  }

  /** `half`, or `one of: half 50 %, opposite 30 %, lower 20 %`. */
  private runs(text: string, path: Path): Pick<BesideTrack, 'runs' | 'which'> {
    const choices = this.choices(text, path) ?? [{ text, chance: 1 }];
    const runs = choices.map(({ text: one }) => TRACK_RUNS.find((run) => run === one));
    const odd = choices.find((_, at) => runs[at] === undefined);
    if (odd)
      this.unknown('unknown-run', `"${odd.text}" is no way to run`, odd.text, TRACK_RUNS, path);
    const found = runs.filter((run) => run !== undefined);
    if (odd || found.length === 0) return { runs: ['half'], which: whichOf([1]) };
    return { runs: found, which: whichOf(choices.map(({ chance }) => chance)) };
  }

  /** A share of the cars in which the sensor is built the other way round. */
  private turned(text: string | undefined, path: Path): Pick<PotentiometerPart, 'turned'> {
    if (text === undefined) return {};
    const { nominal } = this.share(text, [...path, 'turned']);
    return { turned: whichOf([1 - nominal, nominal]) };
  }

  protected modulePins(part: string, draft: ModuleDraft): ModulePin[] {
    return Object.entries(draft.pins).map(([name, pin]) =>
      this.modulePin(['parts', part, 'pins', name], name, pin, draft.pins),
    );
  }

  protected modulePin(
    path: Path,
    name: string,
    draft: ModulePinDraft,
    drafts: ModuleDraft['pins'],
  ): ModulePin {
    const pins = Object.keys(drafts);
    const { reference, pull, input, ground, driver } = draft;
    const joinedTo = draft['joined-to'] ?? null;
    const others = pins.filter((pin) => pin !== name);
    if (joinedTo !== null && !others.includes(joinedTo))
      this.unknown(
        'unknown-pin',
        `"${joinedTo}" is no other pin of this module`,
        joinedTo,
        others,
        [...path, 'joined-to'],
      );
    const read = pull ? this.pull(pull, [...path, 'pull'], drafts) : null;
    return {
      name,
      reference: reference ? this.reference(reference, [...path, 'reference']) : null,
      pull: read,
      input: input ? this.input(input, read?.to, [...path, 'input'], pins) : null,
      ground: ground ? this.positive(ground.ohms, '20 mohm', [...path, 'ground', 'ohms']) : null,
      ...(driver !== undefined && {
        driver: this.positive(driver.ohms, '0.2 ohm to 2 ohm', [...path, 'driver', 'ohms']),
      }),
      ...(ground?.offset !== undefined && {
        groundVolts: this.value(ground.offset, '', 'V', [...path, 'ground', 'offset']),
      }),
      joinedTo,
    };
  }
}
