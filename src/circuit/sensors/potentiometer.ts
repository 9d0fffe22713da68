/** One track or several between feed and ground, each parted by its wiper. */
import type { PotentiometerPart } from '../circuit.ts';
import { partFault, SENSOR_SHORT_OHMS, spaced, theWords } from '../part-faults.ts';
import { type Draw, faultResistor } from '../plan.ts';
import type { Adding, OwnTest, SensorKind } from '../sensor-kind.ts';
import { trackEnds } from '../track-ends.ts';

/** Where a track or a spot of it is broken, only leakage along the surface is left. Common practice, no source. */
const BROKEN_TRACK_OHMS = 1e9;
/** The wiper at the very end of its track still touches this much of it. Common practice, no source. */
const TRACK_END_OHMS = 1;
/** Where a track breaks, as a share of its length. */
const BREAK_AT = { low: 0.05, high: 0.95 };
/** Of a supply whose voltage nobody asks here. */
const USUAL_FEED_VOLTS = 5;
const USUAL_TRACK_OHMS = 5000;

export const potentiometer: SensorKind<PotentiometerPart> = {
  pins: null,
  values: null,
  hasElectronics: false,
  isSwitched: false,
  faults: (part) => {
    const make = partFault(part);
    const the = theWords(part);
    return part.tracks.flatMap(({ name }) => {
      const track = part.tracks.length > 1 ? trackWords(name) : 'the track';
      return [
        make(
          `${name}.track-open`,
          'sensor',
          1,
          `${track} of ${the} is broken`,
          'track-open',
          name,
          BREAK_AT,
        ),
        make(
          `${name}.wiper-open`,
          'sensor',
          1,
          `the wiper of ${track} of ${the} makes no contact`,
          'wiper-open',
          name,
        ),
        make(
          `${name}.worn-spot`,
          'sensor',
          2,
          `${track} of ${the} has a worn spot`,
          'worn-spot',
          name,
        ),
        make(
          `${name}.shorted`,
          'sensor',
          0.3,
          `${track} of ${the} is shorted inside from feed to ground`,
          'shorted',
          name,
          SENSOR_SHORT_OHMS,
        ),
      ];
    });
  },
  add: addTracks,
  tests: (sensor) => trackOhms(sensor),
  amps: ({ tracks }) => USUAL_FEED_VOLTS / (tracks[0]?.ohms.nominal ?? USUAL_TRACK_OHMS),
};

/** Tracks between feed and ground, each parted by its wiper. */
function addTracks({ sensor, plan, own, pin, reader }: Adding<PotentiometerPart>): void {
  for (const track of sensor.tracks) {
    const hurt = own !== null && own.at === track.name ? own : null;
    const feed = pin(track.feed);
    const ground = pin(track.ground);
    const signal = pin(track.signal);
    const wiper = plan.node(`${sensor.name}.${track.name}.wiper`);
    const ends = trackEnds(sensor, track, reader);
    const whole = reader(`${track.name}.ohms`, track.ohms);
    const touch = reader(`${track.name}.wiper`, track.wiper);
    const position = (draw: Draw): number => {
      const { closed, open } = ends(draw);
      return closed + draw.travel * (open - closed);
    };
    if (hurt?.mode === 'shorted') plan.makers.push(faultResistor(feed, ground, hurt));
    // A break in the track leaves the part of it that the wiper stands on.
    const broken = hurt?.mode === 'track-open' ? hurt.size : null;
    const part = (draw: Draw, share: number, cut: boolean): number =>
      cut ? BROKEN_TRACK_OHMS : Math.max(TRACK_END_OHMS, whole(draw) * share);
    plan.makers.push((draw) => {
      const at = position(draw);
      const cut = broken !== null && at < draw.size(broken);
      return { kind: 'resistor', a: feed, b: wiper, ohms: part(draw, 1 - at, cut) };
    });
    plan.makers.push((draw) => {
      const at = position(draw);
      const cut = broken !== null && at >= draw.size(broken);
      return { kind: 'resistor', a: wiper, b: ground, ohms: part(draw, at, cut) };
    });
    if (hurt?.mode === 'wiper-open') continue;
    const worn = hurt?.mode === 'worn-spot';
    plan.makers.push((draw) => ({
      kind: 'resistor',
      a: wiper,
      b: signal,
      ohms: worn && draw.onSpot ? BROKEN_TRACK_OHMS : touch(draw),
    }));
  }
}

function trackOhms({ name, tracks }: PotentiometerPart): OwnTest[] {
  const common = {
    minutes: 2,
    needs: ['meter'],
    setup: { state: 'key-off', unplugged: [name] },
  } as const;
  const own = (pin: string) => `${name}.${pin}.pin`;
  return tracks.flatMap((track) => [
    {
      ...common,
      id: `sensor.${track.name}.track-ohms`,
      words: `Ohms of ${spaced(track.name)} at the sensor's own pins`,
      probe: { kind: 'ohms', plus: own(track.feed), minus: own(track.ground) } as const,
    },
    {
      ...common,
      id: `sensor.${track.name}.wiper-ohms`,
      words: `Ohms from wiper to ground of ${spaced(track.name)} at the sensor's own pins`,
      probe: { kind: 'ohms', plus: own(track.signal), minus: own(track.ground) } as const,
    },
  ]);
}

/** `track-1` is "track 1", any other name stands behind the word. */
function trackWords(name: string): string {
  const words = spaced(name);
  return words.startsWith('track') ? words : `track ${words}`;
}
