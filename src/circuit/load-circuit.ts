import { copperOhms, STRANDED } from '../quantity/wire.ts';
import { type Checked, isUsable } from '../source/issue.ts';
import { type Path, parseYaml } from '../source/parse-yaml.ts';
import { schemaIssues } from '../source/schema-issues.ts';
import { checkCircuit } from './check-circuit.ts';
import {
  type Circuit,
  type Connector,
  type Fault,
  type FaultClass,
  isSensor,
  type Part,
  type Terminal,
  type Wire,
} from './circuit.ts';
import { deriveFaults, shareWeights } from './derive-faults.ts';
import type { CircuitDraft } from './generated/circuit.mjs';
import validate from './generated/circuit.mjs';
import { PartReader } from './part-reader.ts';
import { UnsolvedCircuit } from './sample-solver.ts';
import { sizeFaults } from './size-faults.ts';
import { wireRoles } from './wire-roles.ts';
import { withSymptoms } from './with-symptoms.ts';

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

class Reader extends PartReader {
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
      this.issue(
        'not-settled',
        error.message,
        ['parts'],
        'look for a value that is far from usual',
      );
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
