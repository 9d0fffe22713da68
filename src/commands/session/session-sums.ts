/** The small sums inside a session: those of `calc`, filled in with what the circuit and the step say. */

import { parseArgs } from 'node:util';
import {
  type Circuit,
  likeliestEnd,
  type ModulePin,
  moduleOf,
  sensorOf,
  type Target,
  type Wire,
} from '../../circuit/circuit.ts';
import { expectedSignal } from '../../circuit/expected-signal.ts';
import { functionOf, isMeterUnit, METER_UNITS } from '../../circuit/meter-units.ts';
import type { Model } from '../../circuit/model.ts';
import { joinedTo } from '../../circuit/nets.ts';
import { leads } from '../../circuit/refuse-test.ts';
import { sensorKindOf } from '../../circuit/sensors.ts';
import type { Meter, MeterUnit, Probe, Setup, Test } from '../../circuit/test.ts';
import type { MeasureStep, Step } from '../../procedure/procedure.ts';
import { formatQuantity, withoutNoise } from '../../quantity/format-quantity.ts';
import type { Unit } from '../../quantity/quantity.ts';
import type { ScopeSettings } from '../../quantity/sums.ts';
import { asksPosition } from '../../session/capture-step.ts';
import type { StepSum } from '../../ui/app-services.ts';
import { Options, WrongUse } from '../calc/sum.ts';
import { command as calc, SUMS } from '../calc.ts';
import { captureTest } from './session-captures.ts';

type SumValues = Readonly<Record<string, string | boolean>>;
interface Filled {
  readonly name: string;
  readonly title: string;
  readonly values: SumValues;
  /** What a line is called here, where the sum has another word for it. */
  readonly called?: Readonly<Record<string, string>>;
}

/** Drop that is allowed on a wire of a sensor where the step does not say. Common practice, no source. */
const DROP_VOLTS = 0.1;
/** Speeds at which a signal is looked at. Common practice, no source. */
const RPM = { cranking: 200, running: 800, driving: 800, 'key-on': 60, 'key-off': 60 } as const;

/** What a sum needs to know of the session. */
export interface SumContext {
  readonly model: Model | null;
  readonly meter: Meter;
  readonly ascii: boolean;
  /** Divisions of the scope's screen, up and across. */
  readonly scope: { readonly volts: number; readonly time: number };
}

/** The sums that fit a step, done; none for a step without numbers. */
export function sumsFor(step: Step, context: SumContext): StepSum[] {
  return filledFor(step, context).flatMap(({ name, title, values, called = {} }) => {
    try {
      const { lines } = SUMS[name]!.run(
        new Options({ positionals: [name], values: { ...values } }, context.ascii),
      );
      const named = lines.map(([label, value]) => [called[label] ?? label, value] as const);
      return [{ name, title, lines: named, typed: typedOf(name, values) }];
    } catch (fault) {
      // A value of the circuit that a sum does not take: there is nothing to show then.
      if (fault instanceof WrongUse) return [];
      throw fault;
    }
  });
}

/**
 * How the scope is set for what is looked at, as a line to be read beside it; null for any other instrument. A picture
 * wants some ten teeth, a position and a wheel whose teeth nobody knows two whole turns, a travel no trigger. A coil's
 * waves have no levels to cross, so that it says from what height on they are full.
 */
export function scopeLine(test: Test, context: SumContext): string | null {
  const { kind } = test.probe;
  const picture =
    kind === 'pattern' || kind === 'timing'
      ? context.model && captureTest(context.model, { kind: 'test', test, expected: null })
      : null;
  if (!context.model || !picture) return null;
  const { levels, expected } = expectedSignal(context.model, picture);
  const setup = { ...picture.setup, turns: kind === 'timing' };
  const [sum] = signalSums(context, context.model, levels, setup);
  if (!sum || !(levels.high > levels.low)) return null;
  const { data } = SUMS['scope']!.run(
    new Options({ positionals: ['scope'], values: { ...sum.values } }, context.ascii),
  );
  const { voltsPerDivision, secondsPerDivision, zero, triggerVolts } =
    data as unknown as ScopeSettings;
  const show = (value: number, unit: Unit) =>
    formatQuantity({ value, unit }, { ascii: context.ascii });
  const isRolling = sum.values['rpm'] === undefined;
  const trigger = isRolling
    ? 'no trigger: let it roll'
    : `trigger ${show(triggerVolts, 'V')} rising`;
  const foot = zero === 'centre' ? 'zero in the middle' : 'zero at the bottom';
  const least = kind === 'pattern' ? expected.leastPeakToPeak : undefined;
  const full = least === undefined ? '' : ` Full: > ${show(twoDigits(least), 'V')} pk-pk.`;
  return `Scope: DC, ${show(voltsPerDivision, 'V')} and ${show(secondsPerDivision, 's')} a division, ${trigger}, ${foot}.${full}`;
}

/** As well as heights are read off a screen. */
function twoDigits(volts: number): number {
  return Number(volts.toPrecision(2));
}

/** Does the sum that was typed; what is left out is taken from the step. */
export async function calculate(line: string, step: Step, context: SumContext): Promise<string[]> {
  const words = wordsOf(line);
  const [name] = words;
  const filled = filledFor(step, context).find((one) => one.name === name)?.values ?? {};
  const lines: string[] = [];
  const say = (text: string) => void lines.push(...text.split('\n').filter((it) => it !== ''));
  try {
    const { positionals, values } = parseArgs({
      args: words,
      allowPositionals: true,
      options: Object.fromEntries(
        Object.entries(calc.options).map(([option, { type }]) => [option, { type }]),
      ),
    });
    const io = { out: say, err: say, env: context.ascii ? { OHMWARD_ASCII: '1' } : {}, cwd: '.' };
    await calc.run({ positionals, values: { ...prefill(filled, values), ...values } }, io);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (!code?.startsWith('ERR_PARSE_ARGS')) throw error;
    say(message);
  }
  return lines;
}

/** Speed or frequency: whoever types one does not want the other. */
function prefill(filled: SumValues, typed: Readonly<Record<string, unknown>>): SumValues {
  const { rpm: _rpm, ...rest } = filled;
  return typed['frequency'] === undefined ? filled : rest;
}

/** Words as a shell would part them: blanks part, quotes keep together. */
function wordsOf(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(
    ([, double, single, bare]) => double ?? single ?? bare ?? '',
  );
}

function typedOf(name: string, values: SumValues): string {
  const words = Object.entries(values).map(([option, value]) =>
    value === true
      ? `--${option}`
      : `--${option} ${/\s/.test(String(value)) ? `"${value}"` : value}`,
  );
  return [name, ...words].join(' ');
}

function filledFor(step: Step, context: SumContext): Filled[] {
  const { model } = context;
  const test = model && captureTest(model, { kind: 'step', step });
  if (model && test) {
    const { levels } = expectedSignal(model, test);
    const turns = asksPosition({ kind: 'step', step });
    return signalSums(context, model, levels, { ...test.setup, turns });
  }
  if (step.kind !== 'measure' || !isMeterUnit(step.unit)) return [];
  const { unit, probe } = step;
  if (probe === null && !METER_UNITS[unit].isMeterAlone) return [];
  const meter = meterSum(step, unit, context.meter);
  if (!model || probe === null) return meter;
  const { circuit } = model;
  return [...OF_UNIT[unit](circuit, wireAt(circuit, probe), step, context.meter), ...meter];
}

type SumsOf = (circuit: Circuit, wire: Wire | null, step: MeasureStep, meter: Meter) => Filled[];

/** Beside what the meter can tell. */
const OF_UNIT: Readonly<Record<MeterUnit, SumsOf>> = {
  V: (circuit, wire, step, meter) => [
    ...(wire ? [dropSum(circuit, wire, step), wireSum(circuit, wire)] : []),
    ...loadingSum(circuit, step, meter),
  ],
  ohm: (circuit, wire) => (wire ? [wireSum(circuit, wire)] : []),
  A: () => [],
};

function signalSums(
  { scope }: SumContext,
  { circuit }: Model,
  levels: { readonly low: number; readonly high: number },
  { state, turns = false }: Setup & { readonly turns?: boolean },
): Filled[] {
  const { target } = circuit;
  const speed = {
    rpm: String(RPM[state]),
    ...(target?.turns === 0.5 ? { cam: true } : {}),
  };
  const wheel: SumValues | null = target?.teeth
    ? { ...speed, teeth: String(target.teeth), missing: String(target.missing) }
    : null;
  // Of a shaft that the engine turns nobody need know the teeth to show its turns.
  const isTurned = (target?.turns ?? 0) > 0 && (state === 'cranking' || state === 'running');
  const sweep = wheel
    ? { ...wheel, ...(turns ? { turns: true } : {}) }
    : isTurned
      ? { ...speed, turns: true }
      : { frequency: '0.5 Hz' };
  const ends = {
    low: text(levels.low, 'V'),
    high: text(levels.high, 'V'),
    vertical: String(scope.volts),
    horizontal: String(scope.time),
  };
  const how = 'rpm' in sweep ? `at ${RPM[state]} rpm` : 'for a travel of two seconds';
  return [
    {
      name: 'scope',
      title: `Scope settings ${how}`,
      values: { ...ends, ...sweep },
    },
    ...(wheel
      ? [
          {
            name: 'speed',
            title: `Teeth and frequency ${how}`,
            values: wheel,
            called: turned(target),
          },
        ]
      : []),
  ];
}

/** The sum speaks of an engine; what it does not turn is a wheel. */
function turned(target: Target | null): Readonly<Record<string, string>> {
  return target?.turns === 0 ? { crankshaft: 'wheel' } : {};
}

/** Limits of the reading that a healthy circuit gives. */
function meterSum({ expected }: MeasureStep, unit: MeterUnit, meter: Meter): Filled[] {
  const middle = expected?.nominal ?? expected?.high ?? expected?.low ?? null;
  const value = middle === null ? null : withoutNoise(middle, unit);
  const { ranges, counts, ofReading, digits } = functionOf(meter, unit);
  const range = value === null ? undefined : ranges.find((full) => Math.abs(value) <= full);
  if (value === null || range === undefined) return [];
  const ends = {
    ...(expected?.low == null ? {} : { from: text(withoutNoise(expected.low, unit), unit) }),
    ...(expected?.high == null ? {} : { to: text(withoutNoise(expected.high, unit), unit) }),
  };
  const values = {
    reading: text(value, unit),
    accuracy: `${Number((ofReading * 100).toPrecision(6))} % + ${digits}`,
    range: text(range, unit),
    counts: String(counts),
    ...ends,
  };
  return [{ name: 'meter', title: `What your meter can resolve at ${text(value, unit)}`, values }];
}

/** The copper at the red lead, or at the black one. */
function wireAt(circuit: Circuit, probe: Probe): Wire | null {
  for (const lead of leads(probe)) {
    const place = lead.replace(/\.pin$/, '');
    const found = circuit.wires.find(({ from, to }) => from === place || to === place);
    if (found) return found;
  }
  return null;
}

function wireSum(circuit: Circuit, wire: Wire): Filled {
  const values = {
    size: `${Number((wire.sizeSquareMetres * 1e6).toPrecision(4))} mm2`,
    length: `${Number(wire.lengthMetres.toPrecision(4))} m`,
    temperature: String(circuit.celsius),
    current: text(ampsOf(circuit), 'A'),
  };
  return { name: 'wire', title: `The ${wire.name} wire`, values };
}

function dropSum(circuit: Circuit, wire: Wire, { expected, family }: MeasureStep): Filled {
  const allowed = family === 'ground' && expected?.high ? expected.high : DROP_VOLTS;
  const values = {
    current: text(ampsOf(circuit), 'A'),
    length: `${Number(wire.lengthMetres.toPrecision(4))} m`,
    drop: text(allowed, 'V'),
    temperature: String(circuit.celsius),
  };
  return { name: 'drop', title: `Drop on the ${wire.name} wire`, values };
}

/** Nominal current of the sensor, or through a track at its usual feed. */
function ampsOf(circuit: Circuit): number {
  const sensor = sensorOf(circuit);
  return sensorKindOf(sensor).amps(sensor);
}

/** What the meter's own resistance makes of a pulled-up line. */
function loadingSum(circuit: Circuit, { probe, setup }: MeasureStep, meter: Meter): Filled[] {
  if (probe?.kind !== 'volts') return [];
  const module = moduleOf(circuit);
  const net = joinedTo(circuit, { ...setup, unplugged: [] }, probe.plus);
  const pin = module.inside.find((one) => one.pull && net.has(`${module.name}.${one.name}.pin`));
  const supply = pin && pulledTo(circuit, module.inside, pin);
  if (!pin?.pull || !supply) return [];
  const values = {
    supply: text(supply, 'V'),
    upper: text(pin.pull.ohms.nominal, 'ohm'),
    meter: text(meter.inputOhms, 'ohm'),
  };
  return [{ name: 'divider', title: 'Open line: pull-up and meter', values }];
}

function pulledTo(
  circuit: Circuit,
  pins: readonly ModulePin[],
  { pull }: ModulePin,
): number | null {
  const end = pull && likeliestEnd(pull.to);
  switch (end?.kind) {
    case 'volts':
      return end.volts.nominal;
    case 'battery':
      return circuit.battery.rest.nominal;
    case 'pin': {
      const volts = pins.find(({ name }) => name === end.pin)?.reference?.volts;
      return volts === 'battery' ? circuit.battery.rest.nominal : (volts?.nominal ?? null);
    }
    case 'ground':
    case 'nothing':
    case undefined:
      return null;
  }
}

/** As a person would type it. */
function text(value: number, unit: Unit): string {
  return formatQuantity({ value, unit }, { ascii: true, digits: 4 });
}
