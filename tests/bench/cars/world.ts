/** What eyes, ears and hands find at a car: looks at things, answers to the questions of a tree. */
import type { Car, CarFault } from './car.ts';
import type { Sees } from './module-sees.ts';
import type { Random } from './seeded.ts';

/** Of the wheels and timings that have moved, those whose marks show it. Our guess. */
const MARKS_SHOW = 0.5;

/** A question, by the names of its answers. */
export interface Question {
  readonly title: string;
  readonly outcomes: readonly string[];
}

export class World {
  /** Questions that nobody has taught the bench to answer. */
  readonly unknown: string[] = [];
  private readonly car: Car;
  private readonly sees: Sees;
  private readonly random: Random;
  private readonly seen = new Map<string, boolean>();
  private readonly codeAt: number;
  private areMarksOff = false;

  constructor(car: Car, sees: Sees, random: Random) {
    this.car = car;
    this.sees = sees;
    this.random = random;
    this.codeAt = random();
  }

  /** Marks were found off: nobody lets the starter turn this engine any more. */
  get isTimingOff(): boolean {
    return this.areMarksOff;
  }

  /** Whether the fault is there at this look; moving wakes one that comes and goes. */
  isPresent(isMoved: boolean): boolean {
    const { fleeting } = this.car;
    if (!fleeting) return true;
    return this.random() < (isMoved ? fleeting.woken : fleeting.present);
  }

  /** Eyes and fingers on a thing: what is seen once is seen again. */
  inspect(of: string): 'sound' | 'faulty' {
    // The marks tell on every car whether the wheel stands where it should.
    if (of === 'target.marks') {
      this.areMarksOff = this.car.faults.some(({ id }) => id === 'target.displaced');
      return this.areMarksOff ? 'faulty' : 'sound';
    }
    for (const fault of this.car.faults) {
      if (!fault.subject.includes(of)) continue;
      const known = this.seen.get(fault.id) ?? this.random() < fault.visibleChance;
      this.seen.set(fault.id, known);
      if (known) return 'faulty';
    }
    return 'sound';
  }

  /** The truthful answer to a question, by the name of an outcome. */
  answer({ title, outcomes }: Question): string {
    const first = (names: readonly string[]) => names.find((name) => outcomes.includes(name));
    const found =
      (outcomes.includes('circuit') || outcomes.includes('intermittent')
        ? first(this.code())
        : undefined) ??
      first(this.timing(outcomes)) ??
      first(this.woken()) ??
      first(this.swept()) ??
      first(['nothing', 'no', 'none', 'sound']);
    if (found !== undefined) return found;
    this.unknown.push(`${title}: ${outcomes.join(', ')}`);
    const [any] = outcomes;
    if (any === undefined) throw new Error(`world: "${title}" has no answers`);
    return any;
  }

  /** Names of the code's kind, the fitting one first. */
  private code(): readonly string[] {
    if (this.car.fleeting !== null) return ['intermittent'];
    switch (this.sees) {
      case 'good':
        return ['intermittent'];
      case 'low':
      case 'high':
        // Modules with thresholds of their own say low or high; the others no signal.
        return this.car.drawing.sensor === 'tracks' || this.codeAt < 0.3
          ? [this.sees, 'low-or-high', 'circuit']
          : ['circuit'];
      case 'uneven':
        return ['range', 'correlation', 'circuit'];
      case 'shifted':
        return ['correlation', 'range', 'circuit'];
      default:
        return ['circuit'];
    }
  }

  /** A code that says correlation speaks for it; the marks show what moved on the belt, not on the shaft. */
  private timing(outcomes: readonly string[]): readonly string[] {
    const isMoved = this.car.faults.some(
      ({ trouble }) => trouble.kind === 'wheel' && trouble.mode === 'displaced',
    );
    if (outcomes.includes('some')) return [this.sees === 'shifted' ? 'some' : 'none'];
    if (!outcomes.includes('moved')) return [];
    const isSeen = isMoved && this.random() < MARKS_SHOW;
    if (isSeen) this.areMarksOff = true;
    return [isSeen ? 'moved' : 'right'];
  }

  /** Where something drops out when it is moved or warmed. */
  private woken(): readonly string[] {
    const { fleeting, faults } = this.car;
    const [fault] = faults;
    if (!fleeting || !fault || this.random() >= fleeting.woken) return [];
    return placesOf(fault);
  }

  private swept(): readonly string[] {
    const worn = this.car.faults.some(
      ({ trouble }) =>
        trouble.kind === 'sensor' &&
        (trouble.mode === 'worn-spot' || trouble.mode === 'track-open'),
    );
    // A short drop-out is not always caught by eye.
    return worn && this.random() < 0.6 && this.isPresent(false) ? ['jumps'] : ['smooth'];
  }
}

/** Names that a step may have for the place of a fault. */
function placesOf({ trouble }: CarFault): readonly string[] {
  switch (trouble.kind) {
    case 'contact-open':
    case 'contact-resistive':
      if (trouble.terminal.startsWith('sensor.')) return ['plug', 'sensor-plug'];
      if (trouble.terminal.startsWith('module.')) return ['module-plug'];
      return [trouble.terminal.split('.')[0] ?? '', 'socket'];
    case 'wire-open':
    case 'wire-resistive':
    case 'wire-short':
      return ['harness'];
    case 'sensor':
      return ['drops', 'sensor'];
    case 'part':
      return [trouble.part];
    default:
      return [];
  }
}
