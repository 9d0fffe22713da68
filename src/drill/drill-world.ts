/** What is hidden in a drill: the vehicle, and the suspects that it is judged by. Made when first needed. */
import { createModel, type Model } from '../circuit/model.ts';
import { judgingSuspects } from '../session/choose-suspects.ts';
import type { SessionOpened } from '../session/events.ts';
import type { SuspectSpace } from '../session/suspect-space.ts';
import { createVehicle, type HiddenVehicle } from './drill-vehicle.ts';
import type { Hash } from './hidden-fault.ts';

export interface DrillWorld {
  readonly vehicle: HiddenVehicle;
  /** The suspects of its session, with what is wrong surely among them. */
  readonly judge: () => SuspectSpace;
}

/** Models of circuits, so that the drills of a class share them and what was worked out over them. */
export type WorldStore = Map<string, Model>;

/** As a session has them, so that both think the same: of more samples none is looked at. */
const SAMPLES = 32;
const SEED = 1;

/** What was worked out over a model, by what it depends on. */
const judges = new WeakMap<Model, Map<string, SuspectSpace>>();

/** The world of a drill; null for a session that is none, and when its circuit has no fault for its level. */
export function createWorld(
  opened: SessionOpened,
  hash: Hash,
  store: WorldStore = new Map(),
): DrillWorld | null {
  const vehicle = createVehicle(opened, hash);
  const { circuit, meter, procedure, job } = opened;
  if (!vehicle || !circuit || opened.vehicle.kind !== 'drill') return null;
  const { level, earlierRepair } = opened.vehicle;
  const about = JSON.stringify([procedure, level, earlierRepair, job.codes, job.earlierRepairs]);
  const judgeWith = (truth: readonly string[]): SuspectSpace => {
    const name = hash(JSON.stringify([circuit, meter]));
    const model = store.get(name) ?? createModel(circuit, { samples: SAMPLES, seed: SEED, meter });
    store.set(name, model);
    const known = judges.get(model) ?? new Map<string, SuspectSpace>();
    judges.set(model, known);
    const key = [hash(about), ...truth].join(' ');
    const found = known.get(key) ?? judgingSuspects(model, opened, truth);
    known.set(key, found);
    return found;
  };
  let judge: SuspectSpace | undefined;
  return {
    vehicle,
    judge: () => {
      judge ??= withTruth(judgeWith, vehicle);
      return judge;
    },
  };
}

/** The suspects that every drill of the kind shares, unless what is wrong here is not among them. */
function withTruth(
  judgeWith: (truth: readonly string[]) => SuspectSpace,
  { hidden: { answer } }: HiddenVehicle,
): SuspectSpace {
  const common = judgeWith([]);
  const isKnown = common.table.candidates.some(({ id }) => {
    const faults = common.faultsOf(id);
    return (
      faults.length === answer.faults.length && faults.every((one) => answer.faults.includes(one))
    );
  });
  return isKnown ? common : judgeWith(answer.faults);
}
