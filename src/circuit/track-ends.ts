/**
 * Where the wipers of a sensor stand at rest and fully moved, car by car. The ends of a second track hang on those of the
 * first: it is made with half its slope, runs against it, or beside it a little lower. A sensor may be built the other way
 * round, all of its tracks. Common practice, no source.
 */
import type { Toleranced } from '../quantity/quantity.ts';
import type { PotentiometerPart, Track } from './circuit.ts';
import type { Draw } from './plan.ts';

/** Parts of the track between ground and wiper, 0 to 1. */
export interface TrackEnds {
  readonly closed: number;
  readonly open: number;
}

/** Of a draw only its values are looked at. */
type DrawnValue = Pick<Draw, 'value'>;
type MadeOfDraw<Made> = (draw: DrawnValue) => Made;

/** How a value of the sensor is looked up, by the name that it has in `car-quantities.ts` behind the sensor's own. */
export type SensorValue = (name: string, of: Toleranced) => MadeOfDraw<number>;

/** The ends of a track in each draw. */
export function trackEnds(
  sensor: PotentiometerPart,
  track: Track,
  value: SensorValue,
): MadeOfDraw<TrackEnds> {
  const ends = asBuilt(sensor, track, value);
  if (sensor.turned === undefined) return ends;
  const turned = value('turned', sensor.turned);
  return (draw) => {
    const { closed, open } = ends(draw);
    return turned(draw) === 1 ? { closed: 1 - closed, open: 1 - open } : { closed, open };
  };
}

function asBuilt(
  sensor: PotentiometerPart,
  track: Track,
  value: SensorValue,
): MadeOfDraw<TrackEnds> {
  const { name, beside } = track;
  if (beside === undefined) {
    const closed = value(`${name}.closed`, track.closed!);
    const open = value(`${name}.open`, track.open!);
    return (draw) => ({ closed: closed(draw), open: open(draw) });
  }
  const first = sensor.tracks.find((one) => one.name === beside.track)!;
  const ends = asBuilt(sensor, first, value);
  const which = value(`${name}.runs`, beside.which);
  const lower = value(`${name}.lower`, beside.lower);
  return (draw) => {
    const { closed, open } = ends(draw);
    switch (beside.runs[which(draw)]!) {
      case 'half':
        return { closed: closed / 2, open: open / 2 };
      case 'opposite':
        return { closed: 1 - closed, open: 1 - open };
      case 'lower':
        return { closed: closed - lower(draw), open: open - lower(draw) };
    }
  };
}
