/**
 * Hazards of the work itself, beside those of the vehicle's state: what is moved, warmed or opened in a step. Common
 * practice, no source.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Probe, Setup } from '../circuit/test.ts';
import { MARKS } from '../circuit/timing-marks.ts';
import { TURNING_CAUTION } from './cautions.ts';
import type { Caution, Hazard } from './procedure.ts';

/** A step as far as the hands are concerned. */
interface Hands {
  /** All that the person reads. */
  readonly say: string;
  readonly setup: Setup;
  readonly probe: Probe | null;
  readonly circuit: Circuit | null;
}

interface Work {
  readonly hazard: Hazard;
  /** What is done, as it stands in a finding: "a step that ...". */
  readonly words: string;
  /** A name of the shipped cautions that speaks of it. */
  readonly caution: string;
  readonly isDone: (hands: Hands) => boolean;
}

/** What a person does, as the text of the step or its setup says it. */
const WORKS: readonly Work[] = [
  {
    hazard: 'hot-parts',
    words: 'works with hot air',
    caution: 'hot-air',
    isDone: ({ say }) => /\bhot air\b|\bheat gun\b/i.test(say),
  },
  {
    hazard: 'unexpected-start',
    words: 'moves a throttle',
    caution: 'throttle-snaps',
    isDone: ({ say, setup }) =>
      setup.state === 'key-on' &&
      /\b(?:open|move|press|push)\b[^.]*\b(?:throttle|pedal)\b|\bthrottle (?:moves|closes|opens|can snap)\b/i.test(
        say,
      ),
  },
  {
    hazard: 'vehicle-secured',
    words: 'raises the vehicle or turns a wheel of it',
    caution: 'raised-wheel',
    isDone: ({ say, setup, probe, circuit }) =>
      /\braise (?:the|that|this|a|one)\b[^.]*\b(?:wheel|vehicle)\b/i.test(say) ||
      (circuit?.target?.at?.endsWith('wheel') === true &&
        ((setup.target === 'moving' && (setup.state === 'key-on' || setup.state === 'key-off')) ||
          (probe?.kind === 'inspect' && probe.of.startsWith('target')))),
  },
  {
    hazard: 'engine-damage',
    words: 'asks or checks whether the timing has moved',
    caution: 'timing-first',
    isDone: ({ say, probe }) =>
      (probe?.kind === 'inspect' && probe.of === MARKS) ||
      /\bwork on (?:the )?belt, chain\b|\bbelt or chain and its marks\b/i.test(say),
  },
  {
    hazard: 'unexpected-start',
    words: 'turns the engine by hand',
    caution: TURNING_CAUTION,
    isDone: ({ say }) => /\bturn(?:ing)? the engine by hand\b/i.test(say),
  },
  {
    hazard: 'rotating-parts',
    words: 'turns the engine by hand',
    caution: 'turned-by-hand',
    isDone: ({ say, probe }) =>
      (probe?.kind === 'inspect' && probe.of === MARKS) ||
      /\bturn(?:ing)? the (?:engine|crankshaft)\b[^.]*\bby hand\b/i.test(say),
  },
  {
    hazard: 'airbag',
    words: 'works under the dash or at the steering column',
    caution: 'airbag-near',
    isDone: ({ say }) =>
      /\bunder the (?:pedal|dash\w*)\b|\bsteering (?:column|wheel)\b|\bairbag\b/i.test(say),
  },
  {
    hazard: 'harness-damage',
    words: 'opens a connector',
    caution: 'unplug-key-off',
    isDone: ({ say, probe }) =>
      probe?.kind === 'inspect' && /\bopen\b[^.]*\blook into\b/i.test(say),
  },
  {
    hazard: 'instrument-damage',
    words: 'measures ohms',
    caution: 'dead-circuit-ohms',
    isDone: ({ say }) =>
      /\bmeter on ohms\b|\bohms (?:from|between|across)\b|\bwatch\b[^.]*\bohms\b/i.test(say),
  },
];

/**
 * What a step does that no caution speaks of, and the shipped caution that would. `cautions` are those that the author
 * named or that its instrument brings; what a vehicle state brings speaks of other work.
 */
export function uncoveredWork(
  hands: Hands,
  cautions: readonly Caution[],
): readonly Pick<Work, 'words' | 'caution'>[] {
  const covered = new Set(cautions.flatMap(({ hazards }) => hazards));
  return WORKS.filter(({ hazard, isDone }) => !covered.has(hazard) && isDone(hands));
}
