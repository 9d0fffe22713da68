/** What speaks against a signal: a kind with its numbers and the limits they missed, in SI units. */
import type { Channel } from './capture.ts';
import type { WheelExpected } from './find-wheel.ts';

type ChannelUnit = Channel['unit'];

/** A list that goes on: so many more than are named. Absent where all are. */
interface WithMore {
  readonly more?: number;
}

/** One thing that speaks against a signal. */
export type Finding =
  /** Sampled too seldom to be judged. */
  | { readonly kind: 'coarse'; readonly samplesPerPulse: number }
  | { readonly kind: 'dead'; readonly level: number; readonly unit: ChannelUnit }
  | { readonly kind: 'stuck-high' | 'stuck-low' | 'stuck-between'; readonly volts: number }
  /** A level of a switched signal, or the end of a sweep, on the wrong side of the module's threshold. */
  | {
      readonly kind: 'low-not-low' | 'high-not-high';
      readonly of: 'level' | 'sweep';
      readonly volts: number;
      readonly limitVolts: number;
    }
  | {
      readonly kind: 'noisy';
      readonly noise: number;
      readonly swing: number;
      readonly unit: ChannelUnit;
    }
  /** Places in seconds from the first sample; `pitch`, from 1, where all are at the same one of the turn. */
  | ({
      readonly kind: 'drop-out' | 'extra-pulses';
      readonly seconds: readonly number[];
      readonly pitch: number | null;
    } & WithMore)
  /** The wiper of a potentiometer leaves its track. */
  | ({
      readonly kind: 'contact-lost';
      readonly places: readonly ContactLost[];
      readonly unit: ChannelUnit;
    } & WithMore)
  /** Null where no turn can be made out. */
  | {
      readonly kind: 'pattern';
      readonly found: WheelExpected | null;
      readonly wanted: WheelExpected;
    }
  /** Numbers of the teeth, from 1 behind the gap; none where only their count is known. */
  | ({
      readonly kind: 'missing-teeth';
      readonly teeth: readonly number[];
      readonly seen: number;
      readonly of: number;
    } & WithMore)
  | {
      readonly kind: 'weak';
      readonly volts: number;
      readonly hertz: number;
      readonly limitVolts: number;
    }
  /** Numbers of the teeth, from 1 behind the gap. */
  | ({ readonly kind: 'weak-teeth'; readonly teeth: readonly number[] } & WithMore)
  /** Once-a-turn swing of the height as a share of it. */
  | { readonly kind: 'run-out'; readonly share: number; readonly limitShare: number }
  /** What passes with the gap: a level of a switched signal, a lobe of a coil. */
  | {
      readonly kind: 'inverted';
      readonly seen: 'low' | 'high' | 'negative' | 'positive';
    }
  | {
      readonly kind: 'currents';
      readonly state: 'low' | 'high';
      readonly amperes: number;
      readonly wantedAmperes: number;
    }
  | { readonly kind: 'slow-edges'; readonly edgeSeconds: number; readonly pulseSeconds: number };

/** The identity of a finding, which words and tests go by. */
export type FindingKind = Finding['kind'];

/** One place at which the wiper lost its track, in seconds and volts. */
export interface ContactLost {
  /** When, from the first sample, and for how long. */
  readonly at: number;
  readonly seconds: number;
  /** Level from which it fell, and the furthest it went. */
  readonly from: number;
  readonly to: number;
}
