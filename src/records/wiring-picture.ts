/** Where in the wiring the readings behind a conclusion were taken, and what the conclusion names. */
import { type Circuit, type Fault, isSensor, moduleOf, sensorOf } from '../circuit/circuit.ts';
import { type DrawnWire, drawnWires, wireName } from '../circuit/draw-circuit.ts';
import { jointAt } from '../circuit/joints.ts';
import type { Probe, TerminalId } from '../circuit/test.ts';
import { testOfEvent } from '../session/event-test.ts';
import type { RecordContext } from './record-context.ts';
import type {
  PictureFault,
  PictureReading,
  RecordConclusion,
  RecordPicture,
} from './record-form.ts';

type DrawnPlace = Pick<PictureReading, 'wire' | 'at'>;
const ELSEWHERE: DrawnPlace = { wire: null, at: 'elsewhere' };

/** The picture of a conclusion; null without a circuit that can be drawn, or without a conclusion. */
export function wiringPicture(
  { session, clock }: RecordContext,
  conclusion: RecordConclusion | null,
): RecordPicture | null {
  const { circuit, procedure } = session.opened;
  // A session's file may come from anywhere; what cannot be drawn is not.
  if (!conclusion || !circuit?.parts.some(isSensor)) return null;
  if (!circuit.parts.some(({ kind }) => kind === 'module')) return null;
  const drawn = drawnWires(circuit);
  const module = moduleOf(circuit);
  const numbers = new Set(conclusion.evidence.flatMap(({ reading }) => reading ?? []));
  const readings = session.events.flatMap((event): PictureReading[] => {
    const { event: reading } = clock(event);
    if (!numbers.has(reading)) return [];
    const test = testOfEvent(event, procedure);
    if (!test) return [{ reading, ...ELSEWHERE, against: '' }];
    const place = placeOfProbe(circuit, drawn, test.probe);
    return [{ reading, ...place, against: againstWords(drawn, test.probe, place) }];
  });
  const named = new Set(conclusion.faults.map(({ id }) => id));
  return {
    left: module.words,
    right: sensorOf(circuit).words,
    wires: drawn.map(({ wire, there, left, right }) => ({
      words: `${wireName(wire)} wire`,
      left,
      right,
      module: there.startsWith(`${module.name}.`),
    })),
    readings,
    faults: circuit.faults
      .filter(({ id }) => named.has(id))
      .map((fault) => pictureFault(circuit, drawn, fault)),
  };
}

function placeOfProbe(circuit: Circuit, drawn: readonly DrawnWire[], probe: Probe): DrawnPlace {
  if (probe.kind === 'counts') return placeOfTerminal(drawn, probe.input) ?? ELSEWHERE;
  if (probe.kind === 'inspect') return placeOfThing(circuit, drawn, probe.of);
  const [plus, minus] = [probe.plus, probe.minus].map(
    (lead) => placeOfTerminal(drawn, lead) ?? placeOfJoint(circuit, drawn, lead),
  );
  if (plus && minus && plus.wire === minus.wire && plus.at !== minus.at)
    return { wire: plus.wire, at: 'along' };
  return plus ?? minus ?? ELSEWHERE;
}

function placeOfTerminal(drawn: readonly DrawnWire[], lead: TerminalId): DrawnPlace | null {
  const terminal = lead.replace(/\.pin$/, '');
  const wire = drawn.findIndex(({ here, there }) => here === terminal || there === terminal);
  if (wire < 0) return null;
  return { wire, at: drawn[wire]!.here === terminal ? 'right' : 'left' };
}

/** A joint lies on the way of the wire that its pin is called like. */
function placeOfJoint(
  { parts }: Circuit,
  drawn: readonly DrawnWire[],
  lead: TerminalId,
): DrawnPlace | null {
  if (!jointAt(parts, lead)) return null;
  const [, pin] = lead.split('.');
  const wire = drawn.findIndex(({ wire: one }) => (one.of ?? one.name) === pin);
  return wire < 0 ? null : { wire, at: 'along' };
}

/** A wire, a connector, a part or the target by the name that faults and looks have for it. */
function placeOfThing(circuit: Circuit, drawn: readonly DrawnWire[], thing: string): DrawnPlace {
  const [kind, name, pin] = thing.split('.');
  if (kind === 'wire') {
    const wire = drawn.findIndex(({ wire: one }) => (one.of ?? one.name) === name);
    return wire < 0 ? ELSEWHERE : { wire, at: 'along' };
  }
  if (kind === 'contact') {
    const at = `${name}.${pin}`;
    return placeOfTerminal(drawn, at) ?? placeOfJoint(circuit, drawn, at) ?? ELSEWHERE;
  }
  const part = kind === 'connector' ? name : kind;
  if (part === moduleOf(circuit).name) return { wire: null, at: 'left' };
  return part === sensorOf(circuit).name || part === 'target'
    ? { wire: null, at: 'right' }
    : ELSEWHERE;
}

/** The end of another wire that the black lead was on. */
function againstWords(drawn: readonly DrawnWire[], probe: Probe, place: DrawnPlace): string {
  if (!('minus' in probe) || place.at === 'along') return '';
  const other = placeOfTerminal(drawn, probe.minus);
  if (!other || other.wire === null || other.wire === place.wire) return '';
  return drawn[other.wire]![other.at === 'left' ? 'left' : 'right'];
}

function pictureFault(circuit: Circuit, drawn: readonly DrawnWire[], fault: Fault): PictureFault {
  const place = placeOfFault(circuit, drawn, fault);
  const others = fault.subject.slice(1).map((name) => placeOfThing(circuit, drawn, name));
  const touched = others.find(({ wire, at }) => at === 'along' && wire !== place.wire);
  return { words: fault.words, ...place, touches: touched?.wire ?? null };
}

/** Of what sits at one pin of the module, that pin. */
function placeOfFault(
  circuit: Circuit,
  drawn: readonly DrawnWire[],
  { id, subject }: Fault,
): DrawnPlace {
  const module = moduleOf(circuit).name;
  const [part, pin] = id.split('.');
  if (part === module) {
    const at = placeOfTerminal(drawn, `${module}.${pin}`);
    if (at) return at;
  }
  return placeOfThing(circuit, drawn, subject[0] ?? '');
}
