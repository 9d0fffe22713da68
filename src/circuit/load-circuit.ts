/**
 * Reads a circuit file: shape by the schema, values with their units, names that must agree, and then everything
 * that follows from the structure. All mistakes are found at once, each at its place.
 */
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import { copperOhms, STRANDED } from '../quantity/wire.ts';
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { nearestName } from '../source/nearest-name.ts';
import { type Path, parseYaml, type YamlSource } from '../source/parse-yaml.ts';
import { schemaIssues } from '../source/schema-issues.ts';
import { checkCircuit } from './check-circuit.ts';
import {
  type Circuit,
  type Connector,
  type Fault,
  type FaultClass,
  isSensor,
  type ModuleInput,
  type ModulePin,
  type Part,
  type PullTo,
  type Terminal,
  type Wire,
} from './circuit.ts';
import { deriveFaults, shareWeights } from './derive-faults.ts';
import type { CircuitDraft, ModuleDraft, ModulePinDraft } from './generated/circuit.mjs';
import validate from './generated/circuit.mjs';
import { readToleranced } from './read-value.ts';
import { UnsolvedCircuit } from './model.ts';
import { sizeFaults } from './size-faults.ts';
import { wireRoles } from './wire-roles.ts';
import { withSymptoms } from './with-symptoms.ts';

type PartDraft = CircuitDraft['parts'][string];

/** Weight of each class unless the author says otherwise. Common practice, no source. */
export const DEFAULT_WEIGHTS: Readonly<Record<FaultClass, number>> = {
  connector: 5,
  wire: 3,
  sensor: 3,
  module: 0.3,
  supply: 1,
  neighbour: 0.7,
  target: 0.7,
};

/** The circuit in `text`; null with issues when it cannot be used. */
export function loadCircuit(text: string, file: string): Checked<Circuit> {
  const parsed = parseYaml(text, file);
  if (!parsed.value) return { value: null, issues: parsed.issues };
  if (!isUsable(parsed.issues)) return { value: null, issues: parsed.issues };
  const { data } = parsed.value;
  if (!validate(data))
    return {
      value: null,
      issues: [...parsed.issues, ...schemaIssues(validate.errors, parsed.value)],
    };
  const reader = new Reader(parsed.value);
  const circuit = reader.circuit(data);
  const issues = [...parsed.issues, ...reader.issues];
  return { value: isUsable(issues) ? circuit : null, issues };
}

class Reader {
  readonly issues: Issue[] = [];
  private readonly source: YamlSource;

  constructor(source: YamlSource) {
    this.source = source;
  }

  circuit(draft: CircuitDraft): Circuit | null {
    const supply = draft.supply ?? {};
    const battery = {
      rest: this.value(supply.battery, '12.6 V +/- 0.3 V', 'V', ['supply', 'battery']),
      cranking: this.value(supply.cranking, '10.5 V +/- 0.7 V', 'V', ['supply', 'cranking']),
      running: this.value(supply.running, '14.2 V +/- 0.3 V', 'V', ['supply', 'running']),
      ohms: this.positive(supply.ohms, '20 mohm', ['supply', 'ohms']),
    };
    const celsius = this.value(draft.temperature, '25 degC', 'degC', ['temperature']).nominal;
    const parts = Object.entries(draft.parts).map(([name, part]) => this.part(name, part));
    this.checkPartNames(parts);
    const bare = Object.entries(draft.wires).map(([name, wire]) => {
      const path = ['wires', name];
      const size = this.positive(wire.size, '', [...path, 'size'], 'm2').nominal;
      const length = this.positive(wire.length, '', [...path, 'length'], 'm').nominal;
      return {
        name,
        from: wire.from,
        to: wire.to,
        sizeSquareMetres: size,
        lengthMetres: length,
        ohms: copperOhms({ areaM2: size, metres: length, degC: celsius, factor: STRANDED.usual }),
      };
    });
    this.checkWires(bare, parts);
    if (!isUsable(this.issues)) return null;
    const roles = wireRoles(bare, parts);
    const wires: Wire[] = bare.map((wire) => ({ ...wire, role: roles.get(wire.name) ?? 'signal' }));
    const connectors: Connector[] = parts.map((part) => ({
      part: part.name,
      words: connectorWords(part),
      pins: part.pins.filter((pin) =>
        wires.some((wire) => [wire.from, wire.to].includes(`${part.name}.${pin}`)),
      ),
      unplugs: part.kind !== 'ground-point',
    }));
    const target = draft.target
      ? {
          at: draft.target.at,
          teeth: draft.target.teeth ?? null,
          missing: draft.target.missing ?? 0,
          turns: draft.target.turns ?? 1,
          onChance: draft.target.on ?? 0.5,
        }
      : null;
    const unfailing: Omit<Circuit, 'faults'> = {
      name: draft.circuit,
      title: draft.title,
      notes: draft.notes ?? '',
      celsius,
      battery,
      parts,
      wires,
      connectors,
      terminals: terminalsOf(connectors, parts),
      target,
    };
    for (const found of checkCircuit({ ...unfailing, faults: [] })) {
      const path: Path =
        found.wire !== null
          ? ['wires', found.wire]
          : found.part !== null
            ? ['parts', found.part]
            : [];
      this.issues.push({
        code: found.code,
        severity: found.severity,
        words: found.words,
        at: this.source.locate(path, 'key'),
      });
    }
    if (!isUsable(this.issues)) return null;
    const weights = { ...DEFAULT_WEIGHTS, ...draft.weights };
    const derived: Circuit = {
      ...unfailing,
      faults: deriveFaults(unfailing, sizeFaults(unfailing)),
    };
    const telling = this.telling(derived);
    if (telling === null) return null;
    this.checkChanges(derived.faults, telling, draft);
    return { ...unfailing, faults: this.changed(shareWeights(telling, weights), draft) };
  }

  private part(name: string, draft: PartDraft): Part {
    const path = ['parts', name];
    const base = { name, words: draft.words ?? name.replace(/-/g, ' ') };
    const ohm = (text: string | undefined, fallback: string, key: string) =>
      this.positive(text, fallback, [...path, key]);
    const unit = (text: string | undefined, fallback: string, key: string, of: Unit) =>
      this.positive(text, fallback, [...path, key], of);
    switch (draft.kind) {
      case 'module':
        return {
          ...base,
          kind: 'module',
          pins: Object.keys(draft.pins),
          inside: this.modulePins(name, draft),
        };
      case 'hall-switch':
        return {
          ...base,
          kind: 'hall-switch',
          pins: ['feed', 'signal', 'ground'],
          draws: unit(draft.draws, '8 mA +/- 40 %', 'draws', 'A'),
          minimum: unit(draft.minimum, '3.8 V', 'minimum', 'V'),
          on: ohm(draft.on, '50 ohm +/- 50 %', 'on'),
          off: ohm(draft.off, '2 Mohm +/- 50 %', 'off'),
          limit: unit(draft.limit, '40 mA +/- 25 %', 'limit', 'A'),
        };
      case 'reluctor':
        return {
          ...base,
          kind: 'reluctor',
          pins: ['plus', 'minus'],
          ohms: ohm(draft.ohms, '900 ohm +/- 15 %', 'ohms'),
          cranking: unit(draft.cranking, '1 V +/- 40 %', 'cranking', 'V'),
          running: unit(draft.running, '4 V +/- 40 %', 'running', 'V'),
          byHand: unit(draft['by-hand'], '0.25 V +/- 50 %', 'by-hand', 'V'),
        };
      case 'potentiometer': {
        const tracks = Object.entries(draft.tracks).map(([track, one]) => {
          const at = [...path, 'tracks', track];
          return {
            name: track,
            feed: one.feed,
            signal: one.signal,
            ground: one.ground,
            ohms: this.positive(one.ohms, '', [...at, 'ohms']),
            wiper: this.positive(one.wiper, '200 ohm +/- 50 %', [...at, 'wiper']),
            closed: this.share(one.closed, [...at, 'closed']),
            open: this.share(one.open, [...at, 'open']),
          };
        });
        const pins = [
          ...new Set(tracks.flatMap((track) => [track.feed, track.signal, track.ground])),
        ];
        return { ...base, kind: 'potentiometer', pins, tracks };
      }
      case 'current-switch':
        return {
          ...base,
          kind: 'current-switch',
          pins: ['feed', 'signal'],
          low: unit(draft.low, '7 mA +/- 15 %', 'low', 'A'),
          high: unit(draft.high, '14 mA +/- 15 %', 'high', 'A'),
          minimum: unit(draft.minimum, '4.5 V', 'minimum', 'V'),
          reverse: ohm(draft.reverse, '1 Mohm', 'reverse'),
        };
      case 'fuse':
        return {
          ...base,
          kind: 'fuse',
          pins: ['in', 'out'],
          amps: unit(draft.amps, '10 A', 'amps', 'A').nominal,
          ohms: ohm(draft.ohms, '8 mohm', 'ohms'),
        };
      case 'relay':
        return {
          ...base,
          kind: 'relay',
          pins: ['30', '87'],
          ohms: ohm(draft.ohms, '20 mohm +/- 50 %', 'ohms'),
        };
      case 'ground-point':
        return {
          ...base,
          kind: 'ground-point',
          pins: ['eyelet'],
          ohms: ohm(draft.ohms, '5 mohm +/- 50 %', 'ohms'),
        };
      case 'neighbour':
        return {
          ...base,
          kind: 'neighbour',
          pins: ['feed', 'ground'],
          ohms: ohm(draft.ohms, '', 'ohms'),
          shorted: ohm(draft.shorted, '4 ohm +/- 80 %', 'shorted'),
        };
    }
  }

  private modulePins(part: string, draft: ModuleDraft): ModulePin[] {
    const pins = Object.keys(draft.pins);
    return Object.entries(draft.pins).map(([name, pin]) =>
      this.modulePin(['parts', part, 'pins', name], name, pin, pins),
    );
  }

  private modulePin(
    path: Path,
    name: string,
    draft: ModulePinDraft,
    pins: readonly string[],
  ): ModulePin {
    const { reference, pull, ground } = draft;
    const joinedTo = draft['joined-to'] ?? null;
    if (joinedTo !== null && (!pins.includes(joinedTo) || joinedTo === name))
      this.unknown('unknown-pin', `"${joinedTo}" is no other pin of this module`, joinedTo, pins, [
        ...path,
        'joined-to',
      ]);
    return {
      name,
      reference: reference
        ? {
            volts:
              reference.volts === 'battery'
                ? 'battery'
                : this.positive(reference.volts, '', [...path, 'reference', 'volts'], 'V'),
            series: this.positive(reference.series, '0.5 ohm', [...path, 'reference', 'series']),
            limit: this.positive(
              reference.limit,
              '80 mA +/- 20 %',
              [...path, 'reference', 'limit'],
              'A',
            ),
          }
        : null,
      pull: pull
        ? {
            to: this.pullTo(pull.to, [...path, 'pull', 'to'], pins),
            ohms: this.positive(pull.ohms, '', [...path, 'pull', 'ohms']),
          }
        : null,
      input: draft.input ? this.input(draft.input, [...path, 'input'], pins) : null,
      ground: ground ? this.positive(ground.ohms, '20 mohm', [...path, 'ground', 'ohms']) : null,
      joinedTo,
    };
  }

  private pullTo(text: string, path: Path, pins: readonly string[]): PullTo {
    if (text === 'battery' || text === 'ground') return { kind: text };
    if (pins.includes(text)) return { kind: 'pin', pin: text };
    if (/^[\d.]/.test(text)) return { kind: 'volts', volts: this.value(text, '', 'V', path) };
    this.unknown(
      'unknown-pin',
      `"${text}" is no pin of this module, and neither battery, ground nor a voltage`,
      text,
      pins,
      path,
    );
    return { kind: 'ground' };
  }

  private input(
    draft: NonNullable<ModulePinDraft['input']>,
    path: Path,
    pins: readonly string[],
  ): ModuleInput {
    if (draft.swing !== undefined && draft.against !== undefined) {
      if (!pins.includes(draft.against))
        this.unknown(
          'unknown-pin',
          `"${draft.against}" is no pin of this module`,
          draft.against,
          pins,
          [...path, 'against'],
        );
      return {
        kind: 'swing',
        swing: this.positive(draft.swing, '', [...path, 'swing'], 'V').nominal,
        against: draft.against,
      };
    }
    if (draft['low-below'] === undefined || draft['high-above'] === undefined) {
      this.issue(
        'incomplete-input',
        'an input needs low-below and high-above, or swing and against',
        path,
      );
      return { kind: 'levels', lowBelow: 0, highAbove: 0 };
    }
    const lowBelow = this.positive(draft['low-below'], '', [...path, 'low-below'], 'V').nominal;
    const highAbove = this.positive(draft['high-above'], '', [...path, 'high-above'], 'V').nominal;
    if (lowBelow >= highAbove)
      this.issue('bad-thresholds', 'low-below must lie under high-above', path);
    return { kind: 'levels', lowBelow, highAbove };
  }

  private checkPartNames(parts: readonly Part[]): void {
    const sensors = parts.filter(isSensor);
    const modules = parts.filter((part) => part.kind === 'module');
    if (sensors.length !== 1)
      this.issue('one-sensor', `a circuit has one sensor, this one has ${sensors.length}`, [
        'parts',
      ]);
    if (modules.length !== 1)
      this.issue('one-module', `a circuit has one module, this one has ${modules.length}`, [
        'parts',
      ]);
    for (const reserved of [
      'battery',
      'splice',
      'wire',
      'contact',
      'target',
      'connector',
      'harness',
    ])
      if (parts.some((part) => part.name === reserved))
        this.issue('reserved-name', `a part cannot be called "${reserved}"`, ['parts', reserved]);
  }

  private checkWires(wires: readonly Omit<Wire, 'role'>[], parts: readonly Part[]): void {
    const known = [
      'battery.positive',
      'battery.negative',
      ...parts.flatMap((part) => part.pins.map((pin) => `${part.name}.${pin}`)),
    ];
    const used = new Map<string, string>();
    const spliceEnds = new Map<string, number>();
    for (const wire of wires)
      for (const end of ['from', 'to'] as const) {
        const terminal = wire[end];
        const path = ['wires', wire.name, end];
        if (terminal.startsWith('splice.')) {
          spliceEnds.set(terminal, (spliceEnds.get(terminal) ?? 0) + 1);
          continue;
        }
        if (!known.includes(terminal))
          this.unknown(
            'unknown-terminal',
            `no terminal "${terminal}" is known`,
            terminal,
            known,
            path,
          );
        const first = used.get(terminal);
        if (first !== undefined && !terminal.startsWith('battery.'))
          this.issue(
            'terminal-taken',
            `the wire "${first}" already ends at "${terminal}"`,
            path,
            'join wires at a splice, for example splice.feed',
          );
        used.set(terminal, wire.name);
      }
    for (const [splice, ends] of spliceEnds)
      if (ends < 2) {
        const wire = wires.find((one) => one.from === splice || one.to === splice)!;
        this.issue('lonely-splice', `only one wire ends at "${splice}"`, ['wires', wire.name]);
      }
    for (const part of parts)
      if (isSensor(part) || part.kind === 'fuse' || part.kind === 'relay')
        for (const pin of part.pins)
          if (!used.has(`${part.name}.${pin}`))
            this.issue('loose-pin', `no wire ends at "${part.name}.${pin}"`, ['parts', part.name]);
  }

  /** The faults that show; null with an issue when one of them has no operating point. */
  private telling(circuit: Circuit): Fault[] | null {
    try {
      return withSymptoms(circuit);
    } catch (error) {
      if (!(error instanceof UnsolvedCircuit)) throw error;
      this.issue('not-settled', error.message, ['parts'], 'look for a value that is far from usual');
      return null;
    }
  }

  /** Changes must name faults that follow from the circuit and that the module can notice. */
  private checkChanges(
    derived: readonly Fault[],
    telling: readonly Fault[],
    draft: CircuitDraft,
  ): void {
    const ids = derived.map((fault) => fault.id);
    for (const id of Object.keys(draft.faults ?? {}))
      if (!ids.includes(id))
        this.unknown(
          'unknown-fault',
          `no fault "${id}" follows from this circuit`,
          id,
          ids,
          ['faults', id],
          'key',
        );
      else if (!telling.some((fault) => fault.id === id))
        this.issue(
          'fault-without-symptom',
          `the fault "${id}" changes nothing that the module sees, so it is left out anyway`,
          ['faults', id],
        );
  }

  /** The author's changes to the faults. */
  private changed(faults: readonly Fault[], draft: CircuitDraft): Fault[] {
    const changes = draft.faults ?? {};
    return faults.flatMap((fault) => {
      const change = changes[fault.id];
      const weight = change?.weight ?? fault.weight;
      if (change?.['ruled-out'] !== undefined || weight === 0) return [];
      if (!change) return [fault];
      const repaired = {
        ...fault,
        weight,
        words: change.words ?? fault.words,
        repair: change.repair ?? fault.repair,
        repairWords: change['repair-words'] ?? fault.repairWords,
      };
      return [change.ohms === undefined ? repaired : this.resized(repaired, change.ohms)];
    });
  }

  private resized(fault: Fault, text: string): Fault {
    const path = ['faults', fault.id, 'ohms'];
    const { low, high } = this.positive(text, '', path);
    const { effect } = fault;
    if (
      effect.kind === 'wire-resistive' ||
      effect.kind === 'wire-short' ||
      effect.kind === 'contact-resistive'
    )
      return { ...fault, effect: { ...effect, ohms: { low, high } } };
    if (
      effect.kind === 'part' &&
      ['weak-pull-down', 'shorted', 'coil-resistive', 'contact-resistive'].includes(effect.mode)
    )
      return { ...fault, effect: { ...effect, size: { low, high } } };
    this.issue('no-size', `the fault "${fault.id}" has no size in ohms`, path);
    return fault;
  }

  /** A toleranced value above zero. */
  private positive(
    text: string | undefined,
    fallback: string,
    path: Path,
    unit: Unit = 'ohm',
  ): Toleranced {
    const value = this.value(text, fallback, unit, path);
    if (value.low > 0) return value;
    this.issue('not-positive', `"${text}" must stay above zero`, path);
    return { nominal: 1, low: 1, high: 1, unit };
  }

  /** A share of 0 to 100 %, as 0 to 1. */
  private share(text: string, path: Path): Toleranced {
    const value = this.value(text, '', '%', path);
    const part = {
      nominal: value.nominal / 100,
      low: value.low / 100,
      high: value.high / 100,
      unit: '1' as const,
    };
    if (part.low < 0 || part.high > 1)
      this.issue('bad-share', `"${text}" must lie between 0 % and 100 %`, path);
    return part;
  }

  private value(text: string | undefined, fallback: string, unit: Unit, path: Path): Toleranced {
    const read = readToleranced(text ?? fallback, unit);
    if (read.ok && withinReason(read.value)) return read.value;
    if (read.ok) {
      this.issue(
        'out-of-reason',
        `"${text}" is not found in a vehicle's sensor circuit`,
        path,
        'check the prefix of the unit',
      );
      return { nominal: 1, low: 1, high: 1, unit };
    }
    this.issue(
      'bad-value',
      `"${text ?? fallback}" is not understood: ${read.words}`,
      path,
      read.fix,
    );
    return { nominal: 1, low: 1, high: 1, unit };
  }

  private unknown(
    code: string,
    words: string,
    typed: string,
    known: readonly string[],
    path: Path,
    what: 'key' | 'value' = 'value',
  ): void {
    const near = nearestName(typed, known);
    const fix = near !== null ? `did you mean "${near}"?` : undefined;
    this.issues.push({
      code,
      severity: 'error',
      at: this.source.locate(path, what),
      words,
      ...(fix ? { fix } : {}),
    });
  }

  private issue(code: string, words: string, path: Path, fix?: string): void {
    this.issues.push({
      code,
      severity: 'error',
      at: this.source.locate(path),
      words,
      ...(fix ? { fix } : {}),
    });
  }
}

/** No vehicle has values outside these; beyond them numbers lose their digits. Zero is judged elsewhere. */
const LARGEST: Partial<Record<Unit, number>> = {
  V: 60,
  A: 1000,
  ohm: 1e9,
  m: 1000,
  m2: 1e-3,
  degC: 300,
  '%': 100,
};
const SMALLEST: Partial<Record<Unit, number>> = { ohm: 1e-5, A: 1e-7, V: 1e-4, m: 1e-3, m2: 1e-9 };

function withinReason({ low, high, unit }: Toleranced): boolean {
  const largest = LARGEST[unit] ?? Number.POSITIVE_INFINITY;
  const smallest = SMALLEST[unit] ?? 0;
  const size = Math.min(Math.abs(low), Math.abs(high));
  return Math.max(Math.abs(low), Math.abs(high)) <= largest && (size >= smallest || low <= 0);
}

function connectorWords(part: Part): string {
  if (part.kind === 'fuse' || part.kind === 'relay') return `the socket of the ${part.words}`;
  if (part.kind === 'ground-point') return `the ${part.words}`;
  return `the connector of the ${part.words}`;
}

/** Every place for a lead: battery posts, each connector from behind, each part's own pins. */
function terminalsOf(connectors: readonly Connector[], parts: readonly Part[]): Terminal[] {
  const posts: Terminal[] = (['positive', 'negative'] as const).map((pin) => ({
    id: `battery.${pin}`,
    part: 'battery',
    pin,
    side: 'post',
    words: `battery ${pin}`,
  }));
  const others = connectors.flatMap(({ part, pins }) =>
    pins.flatMap((pin): Terminal[] => {
      const words = `${pin.replace(/-/g, ' ')} at the ${parts.find((one) => one.name === part)!.words}`;
      return [
        { id: `${part}.${pin}`, part, pin, side: 'harness', words },
        {
          id: `${part}.${pin}.pin`,
          part,
          pin,
          side: 'part',
          words: `${words}, the part's own pin`,
        },
      ];
    }),
  );
  return [...posts, ...others];
}
