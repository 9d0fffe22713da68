/** A conclusion in the dialogue of lines: the question, and what a line answers to it. */
import type { Better } from '../../session/advisor.ts';
import { DO_BETTER } from '../screens/conclusion-words.ts';

/** The line that asks for a conclusion to be accepted, or for what is better first. */
export function acceptQuestion({ kind }: Better): string {
  return kind === 'accept'
    ? 'Type yes to accept this conclusion: '
    : `Type yes to ${DO_BETTER[kind]}, or accept to conclude anyway: `;
}

/** What a line asks for there: what is better, or to accept; null for anything else. */
export function askedFor(line: string, better: Better): Better | null {
  const word = line.trim().toLowerCase();
  if (word === 'yes') return better;
  return word === 'accept' ? { kind: 'accept' } : null;
}
