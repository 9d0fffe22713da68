/** `ohmward predict`: what an instrument reads at any two terminals of a circuit, under any fault. */
import { instrumentOf } from '../circuit/instruments.ts';
import { createModel, type Expected, type Model, summarised } from '../circuit/model.ts';
import { parseBridge, parseMeasure, TWO_LEADS } from '../circuit/parse-measure.ts';
import { standardTests } from '../circuit/standard-tests.ts';
import { type Bridge, type Setup, type Shown, TEST_STATES, type Test } from '../circuit/test.ts';
import { type TestRefusal, testRefusalWords } from '../circuit/test-refusal.ts';
import { STANDARD_SETTINGS } from '../files/settings.ts';
import { formatMiddle, formatQuantity, withoutNoise } from '../quantity/format-quantity.ts';
import { CARS_MAX, carsAsked } from './cars-option.ts';
import { type Arguments, type CliCommand, EXIT, type Io } from './command.ts';
import { type Progress, progressOn } from './progress.ts';
import { readCircuit, unknownFaultWords } from './read-circuit.ts';

/** Version of the JSON that this command writes. */
const SCHEMA_VERSION = 1;
/** Cars of a range; `check` draws the same ones. */
const CARS = 256;
const SEED = 1;
/** No workshop meter shows less than this, in V or ohm. */
const DISPLAY_STEP = 1e-4;

type PredictOptions = Arguments['values'];

export const command: CliCommand = {
  name: 'predict',
  summary: 'what an instrument reads in a circuit, healthy or with a fault',
  usage: 'predict CIRCUIT --measure "volts sensor.feed battery.negative" [--fault ID]',
  examples: [
    'ohmward predict hall-module-fed --measure "volts sensor.feed battery.negative"',
    'ohmward predict hall-module-fed --measure "volts sensor.feed battery.negative" --fault wire.feed.open --json',
    'ohmward predict hall-module-fed --measure "volts module.signal battery.negative" --unplug sensor --bridge "sensor.signal battery.negative test-light"',
    'ohmward predict hall-module-fed --table --csv',
  ],
  options: {
    measure: {
      type: 'string',
      value: 'WHAT',
      help: `${TWO_LEADS.join(', ')} with two terminals, red first; counts or inspect with one name`,
    },
    fault: { type: 'string', value: 'ID', help: 'a fault of the circuit; healthy when left out' },
    state: {
      type: 'string',
      value: 'STATE',
      help: `${TEST_STATES.join(', ')}; key-on when left out, key-off for ohms`,
    },
    unplug: {
      type: 'string',
      value: 'PART',
      multiple: true,
      help: 'take this connector off; may be given several times',
    },
    bridge: {
      type: 'string',
      value: 'WHAT',
      multiple: true,
      help: 'clip in, for example "sensor.signal module.signal lead"',
    },
    spare: { type: 'boolean', help: 'a sensor known to be good is plugged in' },
    moving: { type: 'boolean', help: 'the wheel turns, or the pedal is moved' },
    table: {
      type: 'boolean',
      help: 'every fault, or that of --fault, by every standard test of the circuit',
    },
    cars: {
      type: 'string',
      value: 'NUMBER',
      help: `a range over this many cars, drawn over everything the circuit file leaves open; ${CARS} when left out`,
    },
    csv: { type: 'boolean', help: 'the table as comma-separated values' },
    json: { type: 'boolean', help: 'one JSON document' },
  },
  run: async (args, io) => {
    const { positionals, values } = args;
    const [name, ...rest] = positionals;
    if (name === undefined || rest.length > 0) return wrongUse(io, 'name one circuit');
    const cars = carsAsked(args);
    if (values['cars'] !== undefined && cars === null)
      return wrongUse(io, `--cars is a whole number from 1 to ${CARS_MAX}`);
    const progress = progressOn(io);
    const circuit = readCircuit(name, io);
    if (circuit === null) return EXIT.wrongInput;
    const model = createModel(circuit, {
      samples: cars ?? CARS,
      seed: SEED,
      meter: STANDARD_SETTINGS.meter,
    });
    if (values['table'] === true) return table(model, values, io, progress);
    return one(model, values, io, progress);
  },
};

function one(model: Model, values: PredictOptions, io: Io, progress: Progress): number {
  const { circuit } = model;
  const measure = values['measure'];
  if (typeof measure !== 'string')
    return wrongUse(io, 'say what to measure with --measure, or ask for the --table');
  const probe = parseMeasure(measure);
  if ('words' in probe) return wrongUse(io, probe.words);
  const setup = setupOf(values, instrumentOf(probe.value).isForDeadCircuit ? 'key-off' : 'key-on');
  if ('words' in setup) return wrongUse(io, setup.words);
  const fault = typeof values['fault'] === 'string' ? values['fault'] : 'healthy';
  const unknown = unknownFaultWords(circuit, fault);
  if (unknown !== null) {
    io.err(`${unknown}\n`);
    return EXIT.wrongInput;
  }
  const test: Test = { setup: setup.value, probe: probe.value };
  const refusal = model.refusal(test);
  if (refusal !== null) {
    const words = testRefusalWords(refusal);
    if (values['json'] === true)
      io.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, refused: words, refusal })}\n`);
    const way = wayOut(refusal);
    io.err(`refused: ${words}${way === null ? '' : `\n  ${way}`}\n`);
    return EXIT.wrongInput;
  }
  const all = Array.from({ length: model.samples }, (_, sample) => {
    progress.at(`predicting over ${model.samples} cars`, sample / model.samples);
    return model.shows(fault, test, sample);
  });
  const expected = summarised(model.shows(fault, test, -1), all);
  progress.end();
  io.out(
    values['json'] === true
      ? `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, ...plain(expected) })}\n`
      : `${inWords(expected)}\n`,
  );
  const pull = model.pullsLow(test);
  if (pull && !pull.pulls)
    io.err(
      `note: this pulls ${pull.input} only to ${formatQuantity({ value: pull.high, unit: 'V' })}, and the module counts low below ${formatQuantity({ value: pull.thresholdVolts, unit: 'V' })}\n`,
    );
  return EXIT.done;
}

/** The option that does what the refusal asks for, where one does. */
function wayOut(refusal: TestRefusal): string | null {
  if (refusal.code === 'inside-connector' || refusal.code === 'ohms-on-electronics')
    return `add --unplug ${refusal.part}`;
  return WAYS_OUT[refusal.code] ?? null;
}

const WAYS_OUT: Readonly<Partial<Record<TestRefusal['code'], string>>> = {
  'wheel-turns': 'add --moving',
  'target-still': 'add --moving',
  'module-off': 'add --state key-on',
  'ohms-with-key': 'add --state key-off',
};

function setupOf(
  values: PredictOptions,
  usual: Setup['state'],
): { value: Setup } | { words: string } {
  const state = typeof values['state'] === 'string' ? values['state'] : usual;
  const known = TEST_STATES.find((one) => one === state);
  if (!known)
    return { words: `"${state}" is not a vehicle state; one of: ${TEST_STATES.join(', ')}` };
  const bridges: Bridge[] = [];
  for (const text of listOf(values['bridge'])) {
    const bridge = parseBridge(text);
    if ('words' in bridge) return bridge;
    bridges.push(bridge.value);
  }
  return {
    value: {
      state: known,
      unplugged: [...new Set(listOf(values['unplug']))].sort(),
      bridges,
      sensor: values['spare'] === true ? 'spare' : 'fitted',
      target: values['moving'] === true ? 'moving' : 'still',
    },
  };
}

function listOf(value: string | boolean | string[] | undefined): string[] {
  if (Array.isArray(value)) return value;
  return typeof value === 'string' ? [value] : [];
}

/** Numbers as they are; an over-limit as the text OL, since JSON knows no infinity; a look with its chances if it is not certain. */
function plain(expected: Expected): Record<string, unknown> {
  if (expected.kind === 'number') {
    const { low, nominal, high, unit } = expected;
    return { low: finite(low), nominal: finite(nominal), high: finite(high), unit };
  }
  const { looks } = expected;
  const chances = Object.fromEntries(looks.map(({ look, chance }) => [look, chance]));
  return { shows: looks[0]?.look, ...(looks.length > 1 ? { chances } : {}) };
}

function inWords(expected: Expected): string {
  if (expected.kind === 'number') {
    const { unit } = expected;
    const [low, nominal, high] = [expected.low, expected.nominal, expected.high].map((value) =>
      withoutNoise(displayed(value), unit),
    );
    return formatMiddle({ value: nominal!, unit }, low!, high!);
  }
  return expected.looks
    .map(({ look, chance }) => (chance === 1 ? look : `${look} ${Math.round(chance * 100)} %`))
    .join(', ');
}

/** Rows are faults, or healthy and the one asked for, columns the standard tests; each cell is the middle of the tolerances. */
function table(model: Model, values: PredictOptions, io: Io, progress: Progress): number {
  const { circuit } = model;
  const tests = standardTests(circuit);
  const asked = typeof values['fault'] === 'string' ? values['fault'] : null;
  const unknown = asked === null ? null : unknownFaultWords(circuit, asked);
  if (unknown !== null) {
    io.err(`${unknown}\n`);
    return EXIT.wrongInput;
  }
  const faults = asked === null ? circuit.faults.map(({ id }) => id) : [asked];
  const rows = [...new Set(['healthy', ...faults])].map((fault, index) => ({
    fault,
    cells: tests.map(({ test }) => {
      progress.at(`predicting ${faults.length + 1} rows`, index / (faults.length + 1));
      return model.shows(fault, test, -1);
    }),
  }));
  progress.end();
  if (values['json'] === true) {
    const document = {
      schemaVersion: SCHEMA_VERSION,
      circuit: circuit.name,
      tests: tests.map(({ id, words, minutes, family, test }) => ({
        id,
        words,
        minutes,
        family,
        test,
      })),
      rows: rows.map(({ fault, cells }) => ({ fault, shows: cells.map(plainCell) })),
    };
    io.out(`${JSON.stringify(document)}\n`);
  } else if (values['csv'] === true) {
    const head = ['fault', ...tests.map(({ id }) => id)];
    const lines = [head, ...rows.map(({ fault, cells }) => [fault, ...cells.map(plainCell)])];
    io.out(`${lines.map((line) => line.join(',')).join('\r\n')}\r\n`);
  } else
    tests.forEach((option, column) => {
      io.out(`${option.words}\n  [${option.id}, ${option.minutes} min]\n`);
      const groups = new Map<string, string[]>();
      for (const { fault, cells } of rows) {
        const words = cellWords(cells[column]!);
        groups.set(words, [...(groups.get(words) ?? []), fault]);
      }
      for (const [words, ids] of groups) io.out(`  ${words.padEnd(12)} ${ids.join(' ')}\n`);
      io.out('\n');
    });
  return EXIT.done;
}

function finite(value: number): number | string {
  return Number.isFinite(value) ? Number(displayed(value).toPrecision(6)) : 'OL';
}

function plainCell(shown: Shown): number | string {
  return shown.kind === 'look' ? shown.look : finite(shown.value);
}

function cellWords(shown: Shown): string {
  return shown.kind === 'look'
    ? shown.look
    : formatQuantity({ value: withoutNoise(displayed(shown.value), shown.unit), unit: shown.unit });
}

/** The value, or zero for what no display shows. */
function displayed(value: number): number {
  return Math.abs(value) < DISPLAY_STEP ? 0 : value;
}

function wrongUse(io: Io, words: string): number {
  io.err(`ohmward predict: ${words}\n`);
  return EXIT.wrongUse;
}
