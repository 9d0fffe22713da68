/** `ohmward wave --make`: the capture that a scope on the simulated vehicle would save. */
import { signalTest } from '../../circuit/expected-signal.ts';
import { createModel } from '../../circuit/model.ts';
import { parseMeasure } from '../../circuit/parse-measure.ts';
import { type Probe, TEST_STATES } from '../../circuit/test.ts';
import { testRefusalWords } from '../../circuit/test-refusal.ts';
import { benchCapture } from '../../drill/bench-capture.ts';
import { STANDARD_SETTINGS } from '../../files/settings.ts';
import { SESSION_SAMPLES, SESSION_SEED } from '../../session/session-model.ts';
import { safeText } from '../../source/safe-text.ts';
import { csvOfCapture } from '../../waveform/write-csv.ts';
import { type Options, WrongUse } from '../calc/sum.ts';
import { EXIT, type Io } from '../command.ts';
import { readCircuit, unknownFaultWords } from '../read-circuit.ts';
import { writeNewFile } from '../write-new-file.ts';

/** Beyond this no engine turns. */
const RPM_MOST = 20_000;

/** Writes that of the circuit `name` to `--output`, or to standard output. */
export function makeCapture(name: string, options: Options, io: Io): number {
  const circuit = readCircuit(name, io);
  if (!circuit) return EXIT.wrongInput;
  const fault = options.text('fault') ?? 'healthy';
  const unknown = unknownFaultWords(circuit, fault);
  if (unknown !== null) {
    io.err(`ohmward wave: ${unknown}\n`);
    return EXIT.wrongInput;
  }
  const state = options.text('state') ?? 'cranking';
  const vehicleState = TEST_STATES.find((one) => one === state);
  if (!vehicleState) throw new WrongUse(`--state is one of ${TEST_STATES.join(', ')}`);
  const seed = options.whole('vehicle', 0, 1);
  const rpm = options.maybe('rpm', 'rpm');
  if (rpm !== undefined && !(rpm > 0 && rpm <= RPM_MOST))
    throw new WrongUse(`--rpm must be above zero, and ${RPM_MOST} at most`);
  // The same model as a session's simulated vehicle, so that both give the same capture.
  const { meter } = STANDARD_SETTINGS;
  const model = createModel(circuit, { samples: SESSION_SAMPLES, seed: SESSION_SEED, meter });
  const setup = { unplugged: [], bridges: [], sensor: 'fitted', target: 'moving' } as const;
  const atInput = signalTest(circuit, { ...setup, state: vehicleState });
  const test = atInput && { ...atInput, ...probeOf(options) };
  if (!test) throw new WrongUse(`the module of "${safeText(name)}" has no input to look at`);
  const refusal = model.refusal(test);
  if (refusal !== null) throw new WrongUse(testRefusalWords(refusal));
  const wanted = { fault, seed, test, ...(rpm === undefined ? {} : { rpm }) };
  const text = csvOfCapture(benchCapture(model, wanted));
  const output = options.text('output');
  if (output === undefined) {
    io.out(text);
    return EXIT.done;
  }
  return writeNewFile({ named: output, text, maker: 'wave', reader: 'wave' }, io);
}

/** Where the scope's leads go, when told. */
function probeOf(options: Options): { probe?: Probe } {
  const typed = options.text('measure');
  if (typed === undefined) return {};
  const probe = parseMeasure(typed);
  if ('words' in probe) throw new WrongUse(probe.words);
  if (probe.value.kind !== 'pattern')
    throw new WrongUse('--measure is "pattern PLUS MINUS" for a capture');
  return { probe: probe.value };
}
