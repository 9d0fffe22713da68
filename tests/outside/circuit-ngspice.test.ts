/**
 * The solver against ngspice, on every shipped circuit with every fault and every standard measurement with digits or a
 * light. Both get the same elements here, ngspice as its own: resistors, sources, diodes, and behavioural sources with the
 * formulas of netlist.ts. Whether those are the right ones is asked in circuit-decks.test.ts.
 *
 * An ordinary run takes some 25 cases of each circuit; all of them, and other ones: see campaign.ts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { bridgeElement } from '../../src/circuit/bridge-element.ts';
import { type Circuit, effectsOf } from '../../src/circuit/circuit.ts';
import { instrumentOf } from '../../src/circuit/instruments.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import type { Element, Netlist } from '../../src/circuit/netlist.ts';
import { NOMINAL_DRAW } from '../../src/circuit/plan.ts';
import { addBridges, planNetlist } from '../../src/circuit/plan-netlist.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Meter, Probe, Test } from '../../src/circuit/test.ts';
import { LONG, shareOf } from '../campaign.ts';
import { freshNgspice, operatingPoint } from './ngspice.ts';

const FOLDER = 'procedures/circuits';
/** An ordinary run takes about so many cases of a circuit, evenly over all. */
const CASES_A_RUN = 25;
const SHARE_MAX = 1e-3;
const VOLTS_MAX = 1e-3;
const METER: Meter = {
  name: 'ten megohm meter',
  inputOhms: 10e6,
  volts: { ranges: [600], counts: 6000, ofReading: 0.005, digits: 3 },
  ohms: { ranges: [6e7], counts: 6000, ofReading: 0.01, digits: 3 },
};
/** The thermal voltage of ngspice 39 at 27 degC: its constants are those of CODATA 2014. */
const NGSPICE_VT = (1.38064852e-23 * 300.15) / 1.6021766208e-19;

beforeAll(freshNgspice);

describe.each(readdirSync(FOLDER).sort())('%s', (file) => {
  const circuit = loadCircuit(readFileSync(`${FOLDER}/${file}`, 'utf8'), file).value!;
  test('agrees with ngspice within 0.1 % or 1 mV', async () => {
    const all = casesOf(circuit);
    const cases = shareOf(all, Math.ceil(all.length / CASES_A_RUN));
    expect(cases.length).toBeGreaterThan(5);
    let worst = 0;
    let hinted = 0;
    for (const one of cases) {
      const { fault, option, on } = one;
      const { netlist, plus, minus } = netlistOf(circuit, one);
      const solver = createSolver(netlist);
      expect(solver.solve(), `${fault} ${option}`).toBeNull();
      const { volts: theirs, helped } = await ngspice(netlist, solver.volts);
      if (helped) hinted += 1;
      const mine = solver.volts[plus]! - solver.volts[minus]!;
      const other = (theirs[plus] ?? 0) - (theirs[minus] ?? 0);
      const off = Math.abs(mine - other);
      worst = Math.max(worst, off);
      expect(
        off,
        `${file} ${fault} ${option} ${on ? 'on' : 'off'}: ${mine} V here, ${other} V in ngspice`,
      ).toBeLessThanOrEqual(Math.max(VOLTS_MAX, SHARE_MAX * Math.abs(other)));
    }
    if (LONG)
      process.stdout.write(
        `${file}: ${cases.length} cases, largest difference ${worst.toExponential(2)} V, ${hinted} with a starting hint\n`,
      );
  }, 1_800_000);
});

interface Case {
  readonly fault: string;
  readonly option: string;
  readonly test: Test;
  readonly on: boolean;
}

function casesOf(circuit: Circuit): Case[] {
  const faults = [null, ...circuit.faults];
  const options = standardTests(circuit).filter(({ test }) =>
    ['volts', 'ohms', 'amps', 'light', 'lamp', 'pattern'].includes(test.probe.kind),
  );
  return faults.flatMap((fault) =>
    options.flatMap(({ id, test }) =>
      [true, false].map((on) => ({ fault: fault?.id ?? 'healthy', option: id, test, on })),
    ),
  );
}

function netlistOf(
  circuit: Circuit,
  { fault: faultId, test: { setup, probe }, on }: Case,
): { netlist: Netlist; plus: number; minus: number } {
  const fault = circuit.faults.find(({ id }) => id === faultId) ?? null;
  const plan = planNetlist(circuit, setup, effectsOf(fault));
  addBridges(plan, setup, bridgeElement);
  if (probe.kind === 'counts' || probe.kind === 'inspect') throw new Error('no leads');
  const plus = plan.node(probe.plus);
  const minus = plan.node(probe.minus);
  const instrument = elementOf(probe, plus, minus);
  const draw = { ...NOMINAL_DRAW, on, swing: on ? 1 : -1, travel: on ? 0 : 1 };
  return {
    netlist: {
      nodes: plan.nodes,
      elements: [...plan.makers.map((make) => make(draw)), instrument],
    },
    plus,
    minus,
  };
}

function elementOf(probe: Probe, plus: number, minus: number): Element {
  const { element } = instrumentOf(probe);
  if (element === null) throw new Error('no leads');
  return element(plus, minus, METER);
}

/** ngspice's own settings, tight first; the second set is for circuits on which its Newton does not settle at 1e-9. */
const SETTINGS = ['RELTOL=1e-9 ABSTOL=1e-15 VNTOL=1e-12', 'RELTOL=1e-6 ABSTOL=1e-12 VNTOL=1e-8'];

/** At so little no volts of a car open a junction. */
const NO_JUNCTION_AMPS = 1e-300;

/**
 * Node voltages by ngspice, ground first. Where it finds no operating point by itself it is told where to begin
 * (.nodeset), in tenths of a volt, then finer, as behind a light that an output of 1.5 V hardly opens. Wherever it begins,
 * it has to reach a solution of its own equations.
 */
async function ngspice(
  netlist: Netlist,
  ours: Float64Array,
): Promise<{ volts: number[]; helped: boolean }> {
  const hintTo = (digits: number): string => {
    const at = Array.from(ours, (volts, node) => `V(n${node})=${volts.toFixed(digits)}`);
    return `.nodeset ${at.slice(1).join(' ')}`;
  };
  // Tight settings with a hint before loose ones: at 1e-12 A a node that nothing holds lies anywhere.
  for (const settings of SETTINGS)
    for (const hint of [null, hintTo(1), hintTo(2), hintTo(4)]) {
      const volts = await operatingPoint(linesOf(netlist, settings, hint));
      if (volts !== null)
        return {
          volts: netlist.nodes.map((_, node) => volts.get(name(node))!),
          helped: hint !== null,
        };
    }
  throw new Error('ngspice finds no operating point');
}

function linesOf(netlist: Netlist, settings: string, hint: string | null): string[] {
  const lines = ['* circuit'];
  const models: string[] = [];
  netlist.elements.forEach((element, index) => {
    lines.push(...spiceLines(element, index, models));
  });
  // Ties every node so that nothing floats: far above the largest resistance in any circuit, and yet more than what a
  // contact of some milliohm loses of a double's digits; behind the leakage of a light it is worth 0.4 mV at most.
  for (let node = 1; node < netlist.nodes.length; node += 1)
    lines.push(`Rtie${node} n${node} 0 3e13`);
  const options = `.options TEMP=27 TNOM=27 GMIN=1e-20 PIVTOL=1e-17 ITL1=1000 ITL2=1000 ${settings}`;
  return [...lines, ...models, ...(hint === null ? [] : [hint]), options];
}

const name = (node: number) => (node === 0 ? '0' : `n${node}`);
const across = (a: number, b: number) =>
  a === 0 ? `(-V(${name(b)}))` : b === 0 ? `V(${name(a)})` : `(V(${name(a)})-V(${name(b)}))`;

/** The element as ngspice lines, with the same continuous formulas. */
function spiceLines(element: Element, index: number, models: string[]): string[] {
  switch (element.kind) {
    case 'resistor':
      return [`R${index} ${name(element.a)} ${name(element.b)} ${element.ohms}`];
    case 'emf':
      return [
        `V${index} m${index} ${name(element.minus)} DC ${element.volts}`,
        `R${index} m${index} ${name(element.plus)} ${element.ohms}`,
      ];
    case 'current':
      return [`I${index} ${name(element.from)} ${name(element.to)} DC ${element.amps}`];
    case 'regulator': {
      const slope = `(${element.volts}+${across(element.from, element.out)})/${element.ohms}`;
      return [
        `B${index} ${name(element.from)} ${name(element.out)} I=max(0,min(${element.limitAmps},${slope}))`,
      ];
    }
    case 'sink': {
      const v = across(element.a, element.b);
      const rise = `${element.amps}*min(1,max(0,${v})/${element.minVolts})`;
      return [
        `B${index} ${name(element.a)} ${name(element.b)} I=${rise}+min(0,${v})/${element.reverseOhms}`,
      ];
    }
    case 'gated-output': {
      const v = across(element.out, element.ground);
      const ramp = `max(0,min(1,(${across(element.feed, element.ground)}-${0.9 * element.minVolts})/${0.1 * element.minVolts}))`;
      const siemens = `(${element.offSiemens}+${element.onSiemens - element.offSiemens}*${ramp})`;
      return [
        `B${index} ${name(element.out)} ${name(element.ground)} I=min(${element.limitAmps},${v}*${siemens})`,
      ];
    }
    case 'diode':
      // ngspice has a least saturation current, at which a junction that is none would conduct.
      if (element.saturationAmps <= NO_JUNCTION_AMPS) return [];
      models.push(
        `.model LED${index} D(IS=${element.saturationAmps} N=${element.emissionVolts / NGSPICE_VT} RS=${element.ohms})`,
      );
      return [
        `D${index} ${name(element.a)} ${name(element.b)} LED${index}`,
        ...(Number.isFinite(element.leakOhms)
          ? [`Rleak${index} ${name(element.a)} ${name(element.b)} ${element.leakOhms}`]
          : []),
      ];
    case 'lamp': {
      const v = across(element.a, element.b);
      return [
        `B${index} ${name(element.a)} ${name(element.b)} I=${v}/(${element.coldOhms}+${element.risePerRootVolt}*sqrt(abs(${v})))`,
      ];
    }
  }
}
