/** The next thing to practise: the first of a short list of weaknesses that the drill showed. */
import type { FaultClass } from '../circuit/circuit.ts';
import { EVIDENCE_NEEDED } from '../suspects/corroborate.ts';
import { LEVELS, type Level } from './levels.ts';
import { type ScoreFacts, TIME_FULL } from './score.ts';

/** What a drill showed of its student. */
export interface DrillShown extends ScoreFacts {
  readonly level: Level;
  /** Readings that told nothing new. */
  readonly wasted: number;
  /** Why the bench stopped the first dangerous test, without a full stop; null when it stopped none. */
  readonly danger: string | null;
  readonly classes: readonly FaultClass[];
}

/** More than this share of readings without news is a habit. */
const WASTED_SHARE = 0.34;

const CLASS_WORDS: Readonly<Record<FaultClass, string>> = {
  connector: 'contacts: measure on both sides of a connector, under load, and compare',
  wire: 'wires: the same voltage at both ends, under load, then continuity with both ends off',
  sensor: 'sensors: everything right at the connector and still no signal, then a known-good spare',
  module: "modules: unplug the wire and measure at the module's own terminal",
  supply: 'the supply: fuse, relay and ground point before the sensor',
  neighbour: 'neighbours on a shared feed: unplug one at a time and watch the feed come back',
  target: 'the wheel and the gap: a signal that toggles but is weak, uneven or shifted',
};

/** What to practise next, in one sentence: the first weakness of the drill that fits. */
export function adviceFor(shown: DrillShown): string {
  const { right, evidence, readings, wasted, yardstickMinutes, classes, level, danger } = shown;
  if (danger !== null)
    return `Safety first: before each test say what the instrument puts into the circuit. ${stoppedWords(shown.stopped, danger)}`;
  if (shown.passedOver > 0)
    return 'Read the cautions before the first test in each vehicle state; that is step one.';
  if (readings === 0) return 'Measure before you name a part.';
  if (!right) return `Practise ${CLASS_WORDS[classes[0] ?? 'wire']}.`;
  if (evidence < EVIDENCE_NEEDED)
    return 'Right, but not proven: go on until three different tests point at the same repair.';
  if (wasted > WASTED_SHARE * readings)
    return 'Before each test say what the two likeliest suspects would show; when it is the same, choose another test.';
  if (shown.minutes > TIME_FULL * yardstickMinutes)
    return 'Group tests by vehicle state and access: getting there costs more than the reading.';
  const next = LEVELS.find(({ number }) => number === level.number + 1);
  return next
    ? `Well done. Try level ${next.number}: ${next.title}.`
    : 'Well done. Try another circuit on this level.';
}

function stoppedWords(stopped: number, danger: string): string {
  return stopped > 1
    ? `The bench stopped ${stopped} tests; the first: ${danger}.`
    : `The bench stopped one: ${danger}.`;
}
