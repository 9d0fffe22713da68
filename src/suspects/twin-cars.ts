/**
 * Suspects that come and go and that all readings so far leave alike, as a bad spot in a wire and one in the contact at its
 * end: on the same cars they show the same. They are given the same cars then, so that the luck of drawing cars tells
 * nothing between them.
 */
import type { Cloud } from './cloud.ts';
import type { Fact } from './fact.ts';
import type { SuspectCars } from './suspect-cars.ts';

/** A suspect's cars after the facts. */
export interface MovedCars {
  readonly cars: SuspectCars;
  readonly cloud: Cloud;
}

/** Cars on which two are compared, the heaviest of a cloud. Our choice. */
const COMPARED = 6;
/** First cars that are the same where two suspects' sizes and shares are. Our choice. */
const FIRST_CARS = 4;
/** Logarithms this near are the same. */
const SAME_LOG = 1e-9;

/**
 * The cars of one of `others` for the suspect of `cars`, where the two are alike by all `facts`: then a fact's logarithm
 * differs by the same on every car, as where a movement wakes one more readily. Null where none is.
 */
export function carsOfTwin(
  cars: SuspectCars,
  others: readonly MovedCars[],
  facts: readonly Fact[],
): Cloud | null {
  for (const other of others) {
    const apart = isSameAtFirst(cars, other.cars) ? apartBy(cars, other.cloud, facts) : null;
    if (apart) return shifted(other.cloud, apart);
  }
  return null;
}

function isSameAtFirst(one: SuspectCars, other: SuspectCars): boolean {
  const { points } = one.start(FIRST_CARS);
  const { points: others } = other.start(FIRST_CARS);
  return points.every((value, at) => value === others[at]);
}

/** By fact, how much the logarithms of the suspect are above those of the cloud; null where that hangs on the car. */
function apartBy({ model }: SuspectCars, cloud: Cloud, facts: readonly Fact[]): number[] | null {
  const { dims } = model;
  const heaviest = [...cloud.weights.keys()]
    .sort((a, b) => cloud.weights[b]! - cloud.weights[a]! || a - b)
    .slice(0, COMPARED);
  const apart: number[] = [];
  for (const car of heaviest) {
    const point = cloud.points.subarray(car * dims, (car + 1) * dims);
    // The newest first: it tells most apart.
    for (let at = facts.length - 1; at >= 0; at -= 1) {
      const fact = facts[at]!;
      const log = model.logLikelihood(fact, model.predict(fact, point), 1);
      const by = log - cloud.logs[at]![car]!;
      apart[at] ??= by;
      if (Math.abs(by - apart[at]!) > SAME_LOG) return null;
    }
    if (!model.isPossible(point)) return null;
  }
  return apart;
}

/** Another suspect's cloud, its logarithms shifted. */
function shifted(cloud: Cloud, by: readonly number[]): Cloud {
  return {
    ...cloud,
    logs: cloud.logs.map((logs, at) => (by[at] === 0 ? logs : logs.map((log) => log + by[at]!))),
    logEvidence: cloud.logEvidence + by.reduce((sum, one) => sum + one, 0),
  };
}
