/** Wires that pass joints of the harness on their way: their sections, where each runs, and what is at the far end. */
import {
  type Circuit,
  type JointPart,
  type Part,
  partName,
  sensorOf,
  type Wire,
} from './circuit.ts';
import { spaced, theWords } from './part-faults.ts';
import type { TerminalId } from './test.ts';

/** A joint on the way of a wire: the terminal on the sensor's side of it, and the one beyond. */
export interface Passed {
  readonly joint: JointPart;
  readonly near: TerminalId;
  readonly far: TerminalId;
}

/** The way of a wire from one end through its joints: the sections in order, what it passes, and where it ends. */
export interface WireWay {
  readonly sections: readonly Wire[];
  readonly passed: readonly Passed[];
  readonly end: TerminalId;
}

/** The way from `here`, an end of `wire`, as far as joints lead on; a wire without joints is its own only section. */
export function wayFrom(circuit: Circuit, wire: Wire, here: TerminalId): WireWay {
  const sections = [wire];
  const passed: Passed[] = [];
  let end = otherEnd(wire, here);
  while (true) {
    const joint = jointAt(circuit.parts, end);
    if (!joint) return { sections, passed, end };
    const far = acrossJoint(end);
    const next = circuit.wires.find(
      (one) => !sections.includes(one) && [one.from, one.to].includes(far),
    );
    passed.push({ joint, near: end, far });
    if (!next) return { sections, passed, end: far };
    sections.push(next);
    end = otherEnd(next, far);
  }
}

/** `the signal wire`; of a section `the signal wire between the sensor's connector and the connector at the bulkhead`. */
export function wireWords(
  { name, of, from, to }: Pick<Wire, 'name' | 'of' | 'from' | 'to'>,
  circuit: Pick<Circuit, 'parts'>,
): string {
  const whole = `the ${spaced(of ?? name)} wire`;
  return of === undefined ? whole : `${whole} ${betweenWords(circuit.parts, [from, to])}`;
}

/** `between the sensor's connector and the connector at the bulkhead`, from the sensor outward. */
export function betweenWords(
  parts: readonly Part[],
  [one, other]: readonly [TerminalId, TerminalId],
): string {
  return `between ${endWords(parts, one)} and ${endWords(parts, other)}`;
}

/** What a wire ends at, in words: `the main relay`, `the feed splice`, `the sensor's connector`. */
export function endWords(parts: readonly Part[], terminal: TerminalId): string {
  const part = parts.find(({ name }) => name === partName(terminal));
  if (!part)
    return terminal.startsWith('splice.')
      ? `the ${spaced(terminal.slice(terminal.indexOf('.') + 1))} splice`
      : `the ${spaced(terminal.replace('.', ' '))} post`;
  if (part.name === sensorOf({ parts }).name) return "the sensor's connector";
  return theWords(part);
}

/** The joint that a terminal is of, or none. */
export function jointAt(parts: readonly Part[], terminal: TerminalId): JointPart | null {
  const part = parts.find(({ name }) => name === partName(terminal));
  return part?.kind === 'joint' ? part : null;
}

/** The other side of the contact of a joint. */
export function acrossJoint(terminal: TerminalId): TerminalId {
  return terminal.endsWith('.pin') ? terminal.slice(0, -'.pin'.length) : `${terminal}.pin`;
}

/** The end of a wire that is not this one. */
export function otherEnd({ from, to }: Pick<Wire, 'from' | 'to'>, end: TerminalId): TerminalId {
  return end === from ? to : from;
}
