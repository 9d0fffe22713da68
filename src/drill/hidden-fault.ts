/**
 * What is wrong with the vehicle of a drill: drawn from the seed by the faults' weights, within what the level allows,
 * and committed to by a salted hash before the first reading.
 *
 * The salt comes from the seed too. So nobody who has only the file can read the answer in it, the program can always
 * find it again, and at the end anybody can check that it was not changed on the way. Whoever runs this code with the
 * seed can of course find it as the program does.
 */
import type { Circuit, Fault } from '../circuit/circuit.ts';
import { chanceOf, pickByWeight } from '../session/chance-of.ts';
import { faultPairs } from '../session/fault-pairs.ts';
import type { Level } from './levels.ts';

/** SHA-256 of a text as lower-case hex; handed in, as this room knows no library. */
export type Hash = (text: string) => string;

/** What the student is to find. */
export interface HiddenAnswer {
  /** Ids of the faults, sorted. */
  readonly faults: readonly string[];
  /** What puts them right, in the same order. */
  readonly repairs: readonly string[];
}

/** The answer with all that follows from the seed: salt, commitment, and what the work order says. */
export interface Hidden {
  readonly answer: HiddenAnswer;
  /** Id for the model: one fault, or a pair. */
  readonly modelId: string;
  readonly salt: string;
  readonly commitment: string;
  /** Repair that the work order says was done before; null on levels without. */
  readonly earlierRepair: string | null;
}

/** Seeds are whole numbers from 0 to this. */
export const SEED_MAX = 0xffff_ffff;
/** How often the earlier repair of a misleading work order is the very one that is needed again. Our choice. */
const BAD_REPAIR_CHANCE = 0.7;

/** The hidden fault of a seed; null when this circuit has no fault that the level allows. */
export function hideFault(circuit: Circuit, level: Level, seed: number, hash: Hash): Hidden | null {
  const drawn = level.faults === 2 ? drawPair(circuit, seed) : drawOne(circuit, level, seed);
  if (!drawn) return null;
  const faults = [...drawn.faults].sort((a, b) => (a.id < b.id ? -1 : 1));
  const answer = {
    faults: faults.map(({ id }) => id),
    repairs: faults.map(({ repair }) => repair),
  };
  const salt = hash(`ohmward drill salt\n${circuit.name}\n${level.name}\n${seed}`);
  return {
    answer,
    modelId: drawn.id,
    salt,
    commitment: commitmentOf(answer, salt, hash),
    earlierRepair: level.misled ? earlierRepair(circuit, faults[0]!, seed) : null,
  };
}

/** The hash that stands in the file from the start. */
export function commitmentOf(answer: HiddenAnswer, salt: string, hash: Hash): string {
  return hash([salt, ...answer.faults, ...answer.repairs].join('\n'));
}

interface DrawnFault {
  readonly id: string;
  readonly faults: readonly Fault[];
}

function drawOne(circuit: Circuit, level: Level, seed: number): DrawnFault | null {
  const allowed = circuit.faults.filter((fault) => fault.weight > 0 && isAllowed(fault, level));
  if (allowed.length === 0) return null;
  const fault = pickByWeight(allowed, ({ weight }) => weight, chanceOf(seed, 'fault'));
  return { id: fault.id, faults: [fault] };
}

function drawPair(circuit: Circuit, seed: number): DrawnFault | null {
  const allowed = faultPairs(circuit).filter(({ weight }) => weight > 0);
  if (allowed.length === 0) return null;
  const { id, first, second } = pickByWeight(
    allowed,
    ({ weight }) => weight,
    chanceOf(seed, 'pair of faults'),
  );
  return { id, faults: [first, second] };
}

/** Only joints come and go by themselves. */
function isAllowed({ effect }: Fault, level: Level): boolean {
  if (!level.intermittent) return true;
  return (
    effect.kind === 'wire-open' ||
    effect.kind === 'contact-open' ||
    effect.kind === 'wire-short' ||
    effect.kind === 'wire-resistive' ||
    effect.kind === 'contact-resistive'
  );
}

function earlierRepair(circuit: Circuit, truth: Fault, seed: number): string {
  const repairs = [...new Set(circuit.faults.map(({ repair }) => repair))];
  const others = repairs.filter((repair) => repair !== truth.repair);
  if (others.length === 0 || chanceOf(seed, 'bad repair') < BAD_REPAIR_CHANCE) return truth.repair;
  return pickByWeight(others, () => 1, chanceOf(seed, 'other repair'));
}
