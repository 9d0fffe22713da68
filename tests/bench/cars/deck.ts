/** A SPICE deck as it grows: nodes by the names of terminals, elements as ngspice writes them. */

/** The battery's negative post is ngspice's node 0. */
export const NEGATIVE = 'battery.negative';

/** Thermal voltage of ngspice 39 at 27 degC (CODATA 2014). */
const THERMAL_VOLTS = (1.38064852e-23 * 300.15) / 1.6021766208e-19;

/** A piece of a bent element's curve: current = amps + siemens times voltage. */
export interface Line {
  readonly siemens: number;
  readonly amps: number;
}

/**
 * An element with limits, such as a regulator. ngspice finds straight pieces in a tenth of the time that it takes with the
 * formula, so pieces are tried first; what they lead to is an answer only when each piece is the one that holds there.
 */
export interface BentElement {
  readonly a: string;
  readonly b: string;
  /** Places that the piece depends on. */
  readonly watches: readonly string[];
  readonly first: Line;
  readonly lineAt: (volts: (name: string) => number) => Line;
  /** The same as a formula of ngspice. */
  readonly formula: string;
}

interface Bent {
  readonly element: BentElement;
  readonly id: string;
  line: Line;
}

/** Pieces this much apart are two. */
const SAME_SHARE = 1e-7;

export class Deck {
  readonly lines: string[] = [];
  private readonly bents: Bent[] = [];
  private readonly nodes = new Map<string, string>([[NEGATIVE, '0']]);
  private readonly prefix: string;
  private count = 0;

  /** Decks with different prefixes can stand in one run. */
  constructor(prefix: string) {
    this.prefix = prefix;
  }

  /** The name of a node in ngspice. */
  node(name: string): string {
    const known = this.nodes.get(name);
    if (known !== undefined) return known;
    const made = `${this.prefix}n${this.nodes.size}`;
    this.nodes.set(name, made);
    return made;
  }

  resistor(a: string, b: string, ohms: number): void {
    if (this.node(a) === this.node(b)) return;
    this.lines.push(`R${this.next()} ${this.node(a)} ${this.node(b)} ${spice(ohms)}`);
  }

  /** A voltage behind a resistance. */
  source(plus: string, minus: string, volts: number, ohms: number): void {
    const id = this.next();
    const inner = `${this.prefix}m${id}`;
    this.lines.push(
      `V${id} ${inner} ${this.node(minus)} DC ${spice(volts)}`,
      `R${id} ${inner} ${this.node(plus)} ${spice(ohms)}`,
    );
  }

  /** An element whose current from a to b is no straight line. */
  bent(element: BentElement): void {
    this.node(element.a);
    this.node(element.b);
    this.bents.push({ element, line: element.first, id: this.next() });
  }

  /** Takes each bent element's line at these voltages; whether one of them moved. */
  settle(volts: (name: string) => number): boolean {
    let moved = false;
    for (const bent of this.bents) {
      const next = bent.element.lineAt(volts);
      const { siemens, amps } = bent.line;
      if (differs(next.siemens, siemens) || differs(next.amps, amps)) moved = true;
      bent.line = next;
    }
    return moved;
  }

  /** Nodes that bent elements look at. */
  watched(): string[] {
    return this.bents.flatMap(({ element }) => element.watches).map((name) => this.node(name));
  }

  private bentLines(asFormula: boolean): string[] {
    return this.bents.flatMap(({ element, line, id }) => {
      const [a, b] = [this.node(element.a), this.node(element.b)];
      if (asFormula) return [`B${id} ${a} ${b} I=${element.formula}`];
      return [
        ...(line.siemens > 0 ? [`R${id} ${a} ${b} ${spice(1 / line.siemens)}`] : []),
        ...(line.amps === 0 ? [] : [`I${id} ${a} ${b} DC ${spice(line.amps)}`]),
      ];
    });
  }

  diode(
    anode: string,
    cathode: string,
    saturationAmps: number,
    emission: number,
    ohms: number,
  ): void {
    const id = this.next();
    this.lines.push(
      `D${id} ${this.node(anode)} ${this.node(cathode)} M${id}`,
      `.model M${id} D(IS=${spice(saturationAmps)} N=${spice(emission)} RS=${spice(ohms)})`,
    );
  }

  /** Voltage between two nodes as a formula. */
  across(a: string, b: string): string {
    const part = (name: string) => (this.node(name) === '0' ? '0' : `V(${this.node(name)})`);
    return `(${part(a)}-${part(b)})`;
  }

  /** All lines. Every node is tied, so that nothing floats; far above what any meter sees. */
  tied(asFormula: boolean): string[] {
    const ties = [...this.nodes.values()]
      .filter((node) => node !== '0')
      .map((node) => `R${this.next()} ${node} 0 1e13`);
    return [...this.lines, ...this.bentLines(asFormula), ...ties];
  }

  private next(): string {
    this.count += 1;
    return `${this.prefix}${this.count}`;
  }
}

/** Emission coefficient of a junction that takes `volts` at `amps`, when n thermal voltages make one. */
export function saturationAmps(amps: number, volts: number, emission: number): number {
  return amps / Math.expm1(volts / (emission * THERMAL_VOLTS));
}

function differs(one: number, other: number): boolean {
  return Math.abs(one - other) > SAME_SHARE * Math.max(Math.abs(one), Math.abs(other), 1e-12);
}

function spice(value: number): string {
  return Number(value.toPrecision(12)).toString();
}
