/** Reads the parts of a circuit file: defaults, units, and pins that must exist. */
import type { Unit } from '../quantity/quantity.ts';
import { whichOf } from '../quantity/value-at.ts';
import type { Path } from '../source/yaml-source.ts';
import {
  type BesideTrack,
  type Part,
  type PotentiometerPart,
  type SensorPart,
  TRACK_RUNS,
  type Track,
} from './circuit.ts';
import type { CircuitDraft, PotentiometerDraft, TrackDraft } from './generated/circuit.mjs';
import { modulePins } from './module-pins.ts';
import { spaced } from './part-faults.ts';
import type { PlainValue } from './sensor-kind.ts';
import { SENSORS } from './sensors.ts';
import type { ValueReader } from './value-reader.ts';

type PartDraft = CircuitDraft['parts'][string];
type PlainSensor = Exclude<SensorPart, PotentiometerPart>;

/** One part of the file by its name, with what its kind usually has where the file says nothing. */
export function readPart(reader: ValueReader, name: string, draft: PartDraft): Part {
  const path = ['parts', name];
  const base = { name, words: draft.words ?? spaced(name) };
  const ohm = (text: string | undefined, fallback: string, key: string) =>
    reader.positive(text, fallback, [...path, key]);
  const unit = (text: string | undefined, fallback: string, key: string, of: Unit) =>
    reader.positive(text, fallback, [...path, key], of);
  switch (draft.kind) {
    case 'module':
      return {
        ...base,
        kind: 'module',
        pins: Object.keys(draft.pins),
        inside: modulePins(reader, name, draft),
        ...(draft.offset !== undefined && {
          groundVolts: reader.value(draft.offset, '', 'V', [...path, 'offset']),
        }),
      };
    case 'potentiometer':
      return { ...base, ...potentiometerOf(reader, draft, path) };
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
          volts: reader.value(draft.offset, '', 'V', [...path, 'offset']),
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
      return plainSensorOf(reader, draft, base);
  }
}

/** Pins are those that its tracks name. */
function potentiometerOf(
  reader: ValueReader,
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
      ohms: reader.positive(one.ohms, '', [...at, 'ohms']),
      wiper: reader.positive(one.wiper, '200 ohm +/- 50 %', [...at, 'wiper']),
      ...endsOfTrack(reader, one, draft.tracks, at),
    };
  });
  const pins = [...new Set(tracks.flatMap((track) => [track.feed, track.signal, track.ground]))];
  return { kind: 'potentiometer', pins, tracks, ...turnedOf(reader, draft.turned, path) };
}

/** A sensor that is a few values: pins and values of its kind. */
function plainSensorOf(
  reader: ValueReader,
  draft: Extract<PartDraft, { kind: PlainSensor['kind'] }>,
  base: Pick<Part, 'name' | 'words'>,
): Part {
  const { kind } = draft;
  const said: Readonly<Record<string, string | undefined>> = { ...draft };
  const { pins, values } = SENSORS[kind];
  const read = Object.entries<PlainValue>(values ?? {}).map(
    ([what, { key = what, usual, unit }]) =>
      [what, reader.positive(said[key], usual, ['parts', base.name, key], unit)] as const,
  );
  return { ...base, kind, pins, ...Object.fromEntries(read) } as PlainSensor;
}

/** Where a track ends: as it says itself, or as another track of the sensor tells. */
function endsOfTrack(
  reader: ValueReader,
  { closed, open, beside, runs, lower }: TrackDraft,
  tracks: PotentiometerDraft['tracks'],
  path: Path,
): Pick<Track, 'closed' | 'open' | 'beside'> {
  if (beside === undefined) {
    if (closed !== undefined && open !== undefined)
      return {
        closed: reader.share(closed, [...path, 'closed']),
        open: reader.share(open, [...path, 'open']),
      };
    reader.issue(
      'no-ends',
      'a track needs closed and open, or another track beside which it runs',
      path,
      'write closed and open, or beside and runs',
    );
    return {};
  }
  const others = Object.keys(tracks).filter((name) => tracks[name]!.beside === undefined);
  const noTrack = `"${beside}" is not a track with ends of its own`;
  const at = [...path, 'beside'];
  if (others.length === 0)
    reader.issue('unknown-track', noTrack, at, 'write closed and open at one of the tracks');
  else if (!others.includes(beside)) reader.unknown('unknown-track', noTrack, beside, others, at);
  if (closed !== undefined || open !== undefined)
    reader.issue(
      'two-ends',
      `the track "${beside}" tells where this one ends`,
      [...path, closed === undefined ? 'open' : 'closed'],
      'leave closed and open out, or beside',
    );
  return {
    beside: {
      track: beside,
      ...runsOf(reader, runs ?? 'half', [...path, 'runs']),
      lower: reader.share(lower ?? '6 % to 10 %', [...path, 'lower']),
    },
  };
}

/** `half`, or `one of: half 50 %, opposite 30 %, lower 20 %`. */
function runsOf(
  reader: ValueReader,
  text: string,
  path: Path,
): Pick<BesideTrack, 'runs' | 'which'> {
  const choices = reader.choices(text, path) ?? [{ text, chance: 1 }];
  const runs = choices.map(({ text: one }) => TRACK_RUNS.find((run) => run === one));
  const odd = choices.find((_, at) => runs[at] === undefined);
  if (odd)
    reader.unknown('unknown-run', `"${odd.text}" is not a way to run`, odd.text, TRACK_RUNS, path);
  const found = runs.filter((run) => run !== undefined);
  if (odd || found.length === 0) return { runs: ['half'], which: whichOf([1]) };
  return { runs: found, which: whichOf(choices.map(({ chance }) => chance)) };
}

/** A share of the cars in which the sensor is built the other way round. */
function turnedOf(
  reader: ValueReader,
  text: string | undefined,
  path: Path,
): Pick<PotentiometerPart, 'turned'> {
  if (text === undefined) return {};
  const { nominal } = reader.share(text, [...path, 'turned']);
  return { turned: whichOf([1 - nominal, nominal]) };
}
