/** Two files of one crank as one capture: scopes may save a file for each channel. */
import type { Problem } from '../source/problem.ts';
import { type Capture, CHANNELS_MAX } from './capture.ts';

/** Rates that differ by less than this share are the same, written with other digits. */
const RATE_SHARE = 1e-4;
/** Files of one crank begin and end within so many samples of each other. */
const SAMPLES_APART = 2;

/** The channels of both, `one`'s first; a problem where they cannot be of the same crank. */
export function joinCaptures(one: Capture, two: Capture): Capture | Problem {
  const counts = [one, two].map(({ channels }) => channels[0]?.samples.length ?? 0);
  const isAlike =
    Math.abs(one.rateHz / two.rateHz - 1) < RATE_SHARE &&
    Math.abs(one.startSeconds - two.startSeconds) * one.rateHz <= SAMPLES_APART &&
    Math.abs(counts[0]! - counts[1]!) <= SAMPLES_APART;
  if (!isAlike)
    return {
      problem:
        'the two files are not of the same crank: they differ in sample rate, start or length',
      fix: 'save both channels of the same crank again',
    };
  const channels = [...one.channels, ...two.channels];
  if (channels.length > CHANNELS_MAX)
    return {
      problem: `the two files have ${channels.length} channels; at most ${CHANNELS_MAX} can be used`,
      fix: 'export fewer of them',
    };
  const count = Math.min(...counts);
  return {
    ...one,
    channels: channels.map((channel) => ({
      ...channel,
      samples: channel.samples.subarray(0, count),
    })),
  };
}
