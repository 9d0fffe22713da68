/** Faults of the sections and contacts that a whole wire has become once its joints are known. */
import {
  type Circuit,
  type Fault,
  type FaultEffect,
  type JointPart,
  partName,
  sensorOf,
  type Wire,
} from './circuit.ts';
import { wireWords } from './joints.ts';
import { spaced } from './part-faults.ts';

/** A connector or splice that wires pass on their way to the sensor. */
export interface Joint extends Pick<JointPart, 'name' | 'words' | 'splice' | 'metres' | 'minutes'> {
  readonly wires: readonly string[];
}

/** A wire and what has become of it. */
export interface Cut {
  readonly whole: Wire;
  readonly sections: readonly WireSection[];
}
/** A part of it between joints. */
export interface WireSection {
  readonly wire: Wire;
  /** Of the whole length, 0 to 1. */
  readonly share: number;
  /** Between which joints of the harness, by their places in it; the sensor is -1. */
  readonly between: readonly [number, number];
}

/** The faults of the sections that a fault of a whole wire stands for; null where none of its wires has sections. */
export function ofSections(
  fault: Fault,
  cuts: readonly Cut[],
  made: Omit<Circuit, 'faults'>,
): Fault[] | null {
  const { effect } = fault;
  if (
    effect.kind !== 'wire-open' &&
    effect.kind !== 'wire-resistive' &&
    effect.kind !== 'wire-short'
  )
    return null;
  const own = cuts.find(({ whole }) => whole.name === effect.wire)!;
  const touched =
    effect.kind === 'wire-short' && typeof effect.to === 'object' ? effect.to.wire : null;
  const other = touched === null ? null : cuts.find(({ whole }) => whole.name === touched)!;
  if (own.sections.length === 1 && (other === null || other.sections.length === 1)) return null;
  if (isOfPlug(fault, made)) return [atPlug(fault, own, other)];
  return own.sections.flatMap((section) => {
    const beside = other?.sections.filter((one) => runBeside(section, one)) ?? [];
    const all = beside.reduce((sum, { share }) => sum + share, 0);
    if (!other) return [ofSection(fault, { section, own, made })];
    return beside.map((one) =>
      ofSection(fault, { section, own, made, beside: one, other, part: one.share / all }),
    );
  });
}

/** Between two pins of the sensor's connector, and no wire's. */
function isOfPlug({ id }: Fault, made: Omit<Circuit, 'faults'>): boolean {
  return id.startsWith(`contact.${sensorOf(made).name}.`);
}

/** The same fault, at the sections that end there. */
function atPlug(fault: Fault, own: Cut, other: Cut | null): Fault {
  return {
    ...fault,
    effect: effectAt(fault.effect, nearest(own), other ? nearest(other) : undefined),
  };
}

function nearest({ sections }: Cut): string {
  return sections.find(({ between }) => between[0] === -1)!.wire.name;
}

function runBeside(
  { between: [from, to] }: WireSection,
  { between: [start, end] }: WireSection,
): boolean {
  return Math.max(from, start) < Math.min(to, end);
}

interface CutSection {
  readonly section: WireSection;
  readonly own: Cut;
  readonly made: Omit<Circuit, 'faults'>;
  readonly beside?: WireSection;
  readonly other?: Cut;
  readonly part?: number;
}

function ofSection(
  fault: Fault,
  { section, own, made, beside, other, part = 1 }: CutSection,
): Fault {
  const { wire, share } = section;
  const { name } = own.whole;
  const isCut = own.sections.length > 1;
  const otherCut = other && other.sections.length > 1;
  const mode = fault.id.slice(`wire.${name}.`.length);
  const which = beside && otherCut ? `.${beside.wire.name.slice(other.whole.name.length + 1)}` : '';
  const place = isCut ? wireWords(wire, made) : wireWords(beside!.wire, made);
  const said = isCut ? `the ${spaced(name)} wire` : `the ${spaced(other!.whole.name)} wire`;
  const more = isCut ? [`wire.${wire.name}`] : [];
  return {
    ...fault,
    id: `wire.${wire.name}.${mode}${which}`,
    words: placed(fault.words, said, place),
    repair: isCut ? `${fault.repair}${wire.name.slice(name.length)}` : `${fault.repair}${which}`,
    // Short at its beginning, so that a narrow list still names the wire.
    repairWords: placed(
      fault.repairWords.replace('Repair or replace', 'Mend'),
      isCut ? said : `the ${spaced(name)} wire`,
      isCut ? place : `the ${spaced(name)} wire ${place.slice(said.length + 1)}`,
    ),
    weight: fault.weight * share * part,
    subject: [
      ...more,
      ...fault.subject,
      ...(beside && otherCut ? [`wire.${beside.wire.name}`] : []),
    ],
    effect: effectAt(fault.effect, wire.name, beside?.wire.name),
  };
}

/** The place stands where the wire is named; behind words of an author's own that do not name it so. */
function placed(words: string, wire: string, place: string): string {
  if (words.includes(wire)) return words.replace(wire, place);
  const stop = words.endsWith('.') ? '.' : '';
  return `${stop ? words.slice(0, -1) : words}: ${place}${stop}`;
}

function effectAt(effect: FaultEffect, wire: string, other: string | undefined): FaultEffect {
  if (effect.kind === 'wire-short' && typeof effect.to === 'object')
    return { ...effect, wire, to: { wire: other! } };
  return 'wire' in effect ? { ...effect, wire } : effect;
}

/** Behind the contact of a wire in the sensor's connector those of its joints, as likely as it. */
export function ofContacts(fault: Fault, joints: readonly Joint[], circuit: Circuit): Fault[] {
  const { effect } = fault;
  if (effect.kind !== 'contact-open' && effect.kind !== 'contact-resistive') return [];
  if (partName(effect.terminal) !== sensorOf(circuit).name) return [];
  const wire = circuit.wires.find(({ from, to }) => [from, to].includes(effect.terminal));
  if (!wire) return [];
  const mode = effect.kind === 'contact-open' ? 'open' : 'resistive';
  const is = mode === 'open' ? 'is open' : 'is corroded';
  return joints
    .filter(({ wires }) => wires.includes(wire.name))
    .map(({ name, words, splice }) => ({
      ...fault,
      id: `contact.${name}.${wire.name}.${mode}`,
      words: splice
        ? `the ${words} in the ${spaced(wire.name)} wire ${is}`
        : `the ${spaced(wire.name)} contact of the ${words} ${is}`,
      repair: `connector.${name}`,
      repairWords: splice
        ? `Remake the ${words} in the ${spaced(wire.name)} wire.`
        : `Clean, refit or replace the terminals of the ${words}.`,
      subject: [`contact.${name}.${wire.name}`, `connector.${name}`],
      effect: { ...effect, terminal: `${name}.${wire.name}` },
    }));
}
