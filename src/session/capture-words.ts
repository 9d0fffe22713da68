/** What a kept capture says in words, made harmless: channel names come from files. */
import { safeText } from '../source/safe-text.ts';
import { phaseWords } from '../waveform/describe-measures.ts';
import { findingWords } from '../waveform/finding-words.ts';
import type { StepCapture } from './events.ts';

/** What is against the signal, a sentence each without a full stop; empty when nothing is. */
export function capturedFindingWords(capture: StepCapture): string[] {
  const { channel = 1, findings } = capture;
  const name = namesOf(capture, channel)[channel - 1]!;
  return findings.map((one) => safeText('said' in one ? one.said : findingWords(one, name)));
}

/** Where the edges of one channel stand in the turn of another, a line for each pair. */
export function capturedPhaseWords(capture: StepCapture): string[] {
  return (capture.phases ?? []).map((one) => {
    if ('said' in one) return safeText(one.said);
    const names = namesOf(capture, one.channel, one.reference);
    const phase = { ...one, channel: one.channel - 1, reference: one.reference - 1 };
    return safeText(phaseWords(phase, names));
  });
}

/** Names of the channels; one of these numbers, from 1, that is not there is called by its number. */
function namesOf({ channels }: StepCapture, ...numbers: readonly number[]): string[] {
  const names = channels.map(({ name }) => name);
  for (const number of numbers) names[number - 1] ??= `channel ${number}`;
  return names;
}
