/**
 * The ways beside the usual ones: every answer of every question that a fault can give, and up to two steps that could
 * not be done. Not way by way, of which there are millions, but as what can be come to: which cars of a fault reach a
 * step by any way with these steps passed over. That is exact, since a car reads the same at a step however it came
 * there, and a conclusion asks for no more of the way than which steps it requires were passed over.
 */
import type { Model } from '../circuit/model.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { CarExits } from './car-exits.ts';
import { type Arrival, type Coming, FaultReach, type OtherWay } from './fault-reach.ts';
import { WayTree } from './way-tree.ts';

/**
 * What every fault, and the healthy circuit, can come to. `report` hears of each end once a fault and number of skips,
 * `come` of each step that is read, while the fault is awake.
 */
export function otherWays(
  procedure: Procedure,
  model: Model,
  report: (arrival: Arrival) => void,
  come: (coming: Coming) => void = () => {},
): void {
  const tree = new WayTree(procedure);
  const faults = [HEALTHY, ...model.circuit.faults.map(({ id }) => id)];
  const exits = new CarExits(model);
  const asleep = new Map<string, FaultReach>();
  for (const fault of faults) {
    const awake = new FaultReach(tree, exits, fault, { sleeping: false });
    awake.report(report);
    awake.tellComing(come);
    exits.forget(fault);
    if (!tree.canWake(fault)) continue;
    const open = tree.openTo(fault);
    const reach = asleep.get(open) ?? new FaultReach(tree, exits, fault, { sleeping: true });
    asleep.set(open, reach);
    reach.report(report, fault);
  }
}

/**
 * Looks for a way to an end on which no step of `shown` is made: passed over, or not come to. The first that one of the
 * faults can take, or null. Exact as `otherWays` is.
 */
export function waysWithout(
  procedure: Procedure,
  model: Model,
): (end: string, faults: readonly string[], shown: ReadonlySet<string>) => OtherWay | null {
  const tree = new WayTree(procedure);
  const exits = new CarExits(model);
  return (end, faults, shown) => {
    const asleep = new Set<string>();
    const wayOf = (fault: string, sleeping: boolean) => {
      let way: OtherWay | null = null;
      new FaultReach(tree, exits, fault, { sleeping, unmade: shown }).report((arrival) => {
        if (arrival.end === end) way ??= arrival.example(arrival.samples[0]!);
      });
      return way;
    };
    for (const fault of faults) {
      const awake = wayOf(fault, false);
      if (awake) return awake;
      const open = tree.openTo(fault);
      if (!tree.canWake(fault) || asleep.has(open)) continue;
      asleep.add(open);
      const way = wayOf(fault, true);
      if (way) return way;
    }
    return null;
  };
}
