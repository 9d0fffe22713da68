/**
 * Which cars would come to the shop. A healthy car works: its module follows the sensor at every input. A faulty one
 * comes when its module notices: an input no longer follows, its pattern is uneven, or weak where this same car's
 * healthy one is not, or has shifted; a bias or a reference is not the module's own any more. Of position tracks see
 * `track-complaint.ts`.
 */
import {
  type Circuit,
  effectsOf,
  type Fault,
  inputTerminals,
  moduleOf,
  sensorOf,
} from './circuit.ts';
import { shiftsTiming } from './fault-electrics.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import { type InstrumentReader, missesTeeth } from './read-instrument.ts';
import type { SampleSolver } from './sample-solver.ts';
import type { Setup, TerminalId, Test } from './test.ts';
import { TrackComplaint } from './track-complaint.ts';
import { hangingTogether } from './within-reach.ts';

/** A module whose reference is held this many times as high as it should be says so. Common practice, no source. */
const REFERENCE_HIGH = 1.1;
/** A biased input outside these volts is a wire that touches something. Common practice, no source. */
const BIAS_LOW_VOLTS = 0.2;
const BIAS_HIGH_VOLTS = 4.8;
/** A wire that takes more than this share of the battery's volts with the key on carries some 60 A and burns: another complaint. */
const BATTERY_LEFT = 0.9;

const BATTERY: readonly TerminalId[] = ['battery.positive'];

/** What is asked at one input. */
interface InputTests {
  readonly counts: Test;
  readonly pattern: Test;
  /** The two pins of an input that looks at a swing, else none. */
  readonly biased: readonly TerminalId[];
}

/** What the module of one circuit makes of its cars. */
export class Complaint {
  private readonly circuit: Circuit;
  private readonly solver: SampleSolver;
  private readonly reader: InstrumentReader;
  private readonly inputs: readonly InputTests[];
  private readonly references: readonly TerminalId[];
  /** Those that hang together with a wire, by its name; the same ones are one list, so that their rig is found by it. */
  private readonly referencesOn = new Map<string, readonly TerminalId[]>();
  private readonly referenceLists = new Map<string, readonly TerminalId[]>();
  private readonly tracks: TrackComplaint;

  constructor(circuit: Circuit, solver: SampleSolver, reader: InstrumentReader) {
    this.circuit = circuit;
    this.solver = solver;
    this.reader = reader;
    this.tracks = new TrackComplaint(circuit, solver);
    this.inputs = inputTests(circuit, movingSetup(circuit));
    const module = moduleOf(circuit);
    this.references = module.inside
      .filter(({ reference }) => reference !== null && reference.volts !== 'battery')
      .map(({ name }) => `${module.name}.${name}`);
  }

  /** The healthy car of this sample does what its module wants. */
  works(sample: number): boolean {
    if (this.tracks.count > 0) return this.tracks.works(sample);
    return this.inputs.every(({ counts }) => this.look(null, counts, sample) === 'follows');
  }

  /**
   * The module notices this fault in the car of this sample. Two samples of the same `car` differ in nothing but the size of
   * the fault, so that what its healthy tracks show is found once.
   */
  complains(fault: Fault, sample: number, car?: number): boolean {
    if (this.drainsBattery(fault, sample)) return false;
    // First what takes one look.
    if (this.holdsReferenceHigh(fault, sample)) return true;
    return this.tracks.count > 0
      ? this.tracks.complains(fault, sample, car)
      : this.inputs.some((input) => this.isNoticedAt(input, fault, sample));
  }

  private isNoticedAt(
    { counts, pattern, biased }: InputTests,
    fault: Fault,
    sample: number,
  ): boolean {
    if (this.look(fault, counts, sample) !== 'follows') return true;
    if (shiftsTiming(fault) || missesTeeth(fault, sensorOf(this.circuit).kind)) return true;
    // An input with levels of its own follows what crosses them, which is all that a pattern is asked for.
    if (biased.length === 0) return false;
    const seen = this.look(fault, pattern, sample);
    if (seen !== 'full' && seen !== this.look(null, pattern, sample)) return true;
    const healthy = this.restVolts(null, biased, sample);
    return this.restVolts(fault, biased, sample).some(
      (volts, at) => isBias(healthy[at]!) && !isBias(volts),
    );
  }

  /** Something outside feeds back into a reference of the module. */
  private holdsReferenceHigh(fault: Fault, sample: number): boolean {
    return effectsOf(fault).some((one) => {
      if (one.kind !== 'wire-short' || one.to !== 'battery.positive') return false;
      const fed = this.referencesFedBy(one.wire);
      if (fed.length === 0) return false;
      const healthy = this.restVolts(null, fed, sample);
      return this.restVolts(fault, fed, sample).some(
        (volts, at) => volts > REFERENCE_HIGH * healthy[at]!,
      );
    });
  }

  /** The references that a current into this wire could reach. */
  private referencesFedBy(wire: string): readonly TerminalId[] {
    const known = this.referencesOn.get(wire);
    if (known) return known;
    const { from, to } = this.circuit.wires.find(({ name }) => name === wire)!;
    const together = hangingTogether(this.circuit, [from, to]);
    const fed = this.references.filter((pin) => together.has(pin)).map((pin) => `${pin}.pin`);
    const list = this.referenceLists.get(fed.join()) ?? fed;
    this.referenceLists.set(list.join(), list);
    this.referencesOn.set(wire, list);
    return list;
  }

  /** Only a supply wire against metal before any fuse does. */
  private drainsBattery(fault: Fault, sample: number): boolean {
    const supply = effectsOf(fault).some(
      (one) =>
        one.kind === 'wire-short' &&
        this.circuit.wires.some(({ name, role }) => name === one.wire && role === 'supply'),
    );
    if (!supply) return false;
    const [loaded] = this.restVolts(fault, BATTERY, sample);
    const [healthy] = this.restVolts(null, BATTERY, sample);
    return loaded! < BATTERY_LEFT * healthy!;
  }

  private restVolts(fault: Fault | null, at: readonly TerminalId[], sample: number): number[] {
    return this.solver.voltsOf(fault, PLAIN_SETUP, at, this.solver.still(fault, sample), sample);
  }

  private look(fault: Fault | null, test: Test, sample: number): string {
    const shown = this.reader.read(fault, test, sample);
    return shown.kind === 'look' ? shown.look : '';
  }
}

function isBias(volts: number): boolean {
  return volts >= BIAS_LOW_VOLTS && volts <= BIAS_HIGH_VOLTS;
}

/** A turning target is turned by the starter, any other by hand. */
function movingSetup({ target }: Circuit): Setup {
  const state = target !== null && target.turns > 0 ? 'cranking' : 'key-on';
  return { ...PLAIN_SETUP, state, target: 'moving' };
}

function inputTests(circuit: Circuit, setup: Setup): InputTests[] {
  const module = moduleOf(circuit);
  return inputTerminals(circuit).map((input) => {
    const pin = module.inside.find((one) => `${module.name}.${one.name}` === input)!;
    const plus = `${input}.pin`;
    const isSwing = pin.input?.kind === 'swing';
    const minus =
      pin.input?.kind === 'swing' ? `${module.name}.${pin.input.against}.pin` : 'battery.negative';
    return {
      counts: { setup, probe: { kind: 'counts', input } },
      pattern: { setup, probe: { kind: 'pattern', plus, minus } },
      biased: isSwing ? [plus, minus] : [],
    };
  });
}
