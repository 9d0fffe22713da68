/** A plan to record on a drive, in words: its cautions first. No React. */
import type { Command } from '../../session/command.ts';
import { type DrivePlan, planNote } from '../../session/drive-plan.ts';
import type { Paragraph } from '../parts/text-block.ts';

type Bind = (text: string) => string;

/** The page; null is a tree that has none. */
export function planParagraphs(plan: DrivePlan | null, bind: Bind): Paragraph[] {
  return plan
    ? planLines(plan, bind).map((text, at) => ({ text, hang: 3, bold: at < plan.cautions.length }))
    : [];
}

/** Cautions whole, then what to do, numbered. */
export function planLines({ cautions, lines }: DrivePlan, bind: Bind): string[] {
  return [
    ...cautions.map(({ word, say }) => `${word}: ${bind(say)}`),
    ...lines.map((line, at) => `${at + 1}. ${bind(line)}`),
  ];
}

/** The plan as a note for the record. */
export function noteOf(plan: DrivePlan, bind: Bind): Extract<Command, { type: 'add-note' }> {
  return { type: 'add-note', text: bind(planNote(plan)) };
}
