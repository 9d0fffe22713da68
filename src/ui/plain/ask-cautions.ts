/** Before a test in the plain dialogue: its cautions, acknowledged only by the whole word, and how the vehicle stands. */
import type { Test } from '../../circuit/test.ts';
import { inShort } from '../../procedure/in-short.ts';
import type { Caution, Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import {
  stepCautions,
  stepCautionsInShort,
  testCautionsInShort,
} from '../../session/pending-cautions.ts';
import { readBefore } from '../../session/read-cautions.ts';
import type { OpenedSession } from '../app-services.ts';
import { cautionLine, stillLine, undoLine, vehicleLine } from '../screens/step-words.ts';
import type { Dialogue } from './dialogue.ts';
import { performSaved } from './until-saved.ts';

/** What they are of: a step, or a test that no step asks for. */
type CautionsOf = { readonly step: string } | { readonly test: Test };

/** True when there was nothing to acknowledge or it is acknowledged; false when the person leaves here. */
export async function askCautions(
  opened: OpenedSession,
  pending: readonly Caution[],
  step: string,
  dialogue: Dialogue,
): Promise<boolean> {
  const { say, ask } = dialogue;
  if (pending.length === 0) return true;
  sayCautions(opened, pending, say);
  while (true) {
    const line = await ask('Read and understood? Type yes: ');
    if (line === null || line.trim().toLowerCase() === 'pause') return false;
    if (line.trim().toLowerCase() === 'yes') return acknowledge(opened, { step }, dialogue);
    say('Type the whole word "yes" when you have read it, or "pause" to leave.');
  }
}

/** The same of a test outside the tree, asked once; false when the test is left. What stands in short is said. */
export async function readCautions(
  opened: OpenedSession,
  pending: readonly Caution[],
  of: CautionsOf,
  dialogue: Dialogue,
): Promise<boolean> {
  const { say, ask } = dialogue;
  const session = opened.driver.session();
  const short = 'test' in of ? testCautionsInShort(session, of.test) : [];
  const inShortLine = cautionLine(
    opened,
    session,
    short.map(({ caution }) => caution),
    short,
  );
  if (inShortLine !== '') say(inShortLine);
  if (pending.length === 0) return true;
  sayCautions(opened, pending, say);
  const line = await ask('Read and understood? Type yes: ');
  if (line?.trim().toLowerCase() === 'yes') return acknowledge(opened, of, dialogue);
  say('Nothing was done: the cautions were not acknowledged.');
  return false;
}

function sayCautions(
  { bind, driver }: OpenedSession,
  pending: readonly Caution[],
  say: Dialogue['say'],
): void {
  const read = readBefore(driver.session());
  for (const { word, say: text } of pending.filter(({ id }) => !read.has(id)))
    say(`${word}: ${bind(text)}`);
  const known = pending.filter(({ id }) => read.has(id));
  if (known.length > 0) say('Read before; the same applies here:');
  for (const caution of known) say(`  ${bind(inShort(caution))}`);
  say("The maker's procedure, local rules and qualified practice come first.");
}

async function acknowledge(
  opened: OpenedSession,
  of: CautionsOf,
  dialogue: Dialogue,
): Promise<boolean> {
  return (await performSaved({ opened, dialogue }, { type: 'acknowledge-cautions', ...of })).ok;
}

/** How the vehicle must stand, what to undo first, and the cautions that hold. */
export function sayStanding(
  opened: OpenedSession,
  step: Exclude<Step, { kind: 'conclude' }>,
  say: Dialogue['say'],
): void {
  const session = opened.driver.session();
  say(vehicleLine(step.setup, session));
  const test = testOf(step);
  const undo = test === null ? '' : undoLine(test, session);
  if (undo !== '') say(undo);
  const still = test === null ? '' : stillLine(step.setup, session);
  if (still !== '') say(still);
  const short = stepCautionsInShort(session, step);
  const cautions = cautionLine(opened, session, stepCautions(session, step), short);
  if (cautions !== '') say(cautions);
}
