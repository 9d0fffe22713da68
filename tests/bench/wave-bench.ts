/** Speed and memory of reading and measuring a large capture. */
import { generateWheels } from '../../src/waveform/generate.ts';
import { measureCapture } from '../../src/waveform/measure-phase.ts';
import { CsvReader } from '../../src/waveform/read-csv.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

export interface WaveBench {
  readonly readMs: number;
  readonly measureMs: number;
  /** Most memory held in typed arrays while reading, over the size of the samples alone. */
  readonly memoryRatio: number;
}

const SAMPLES = 1_000_000;
const CHUNK = 1 << 18;
const REPEATS = 5;
/** Milliseconds allowed for measuring, and for reading and measuring together; times the samples' own size. */
const TARGET = { measureMs: 250, totalMs: 1500, memoryRatio: 3 } as const;

/** One million samples of two channels; prints a table row and returns the medians. */
export function benchWave(print: (line: string) => void = console.log): WaveBench {
  const rateHz = 100_000;
  const hall = { teeth: 60, missing: 2, sensor: 'hall', low: 0.2, high: 5, noise: 0.05 } as const;
  const coil = {
    teeth: 60,
    missing: 2,
    sensor: 'inductive',
    low: 2.5,
    high: 5,
    noise: 0.05,
  } as const;
  const turning = { rateHz, seconds: SAMPLES / rateHz, rpm: 800, random: seededRandom(1) };
  const [first, second] = generateWheels([hall, coil], turning).channels;
  const bytes = csvBytes(first!.samples, second!.samples, rateHz);
  const reads: number[] = [];
  const measures: number[] = [];
  let memory = 0;
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    const before = process.memoryUsage().arrayBuffers;
    const start = performance.now();
    const reader = new CsvReader({ file: 'bench.csv' });
    for (let from = 0; from < bytes.length; from += CHUNK) {
      reader.push(bytes.subarray(from, from + CHUNK));
      if (from % (CHUNK * 16) === 0)
        memory = Math.max(memory, process.memoryUsage().arrayBuffers - before);
    }
    const { capture, issues } = reader.end();
    if (!capture) throw new Error(`benchWave: ${issues[0]?.words}`);
    memory = Math.max(memory, process.memoryUsage().arrayBuffers - before);
    const between = performance.now();
    const found = measureCapture(capture);
    const end = performance.now();
    if (found.channels.some((channel) => channel.wheel?.pulses !== 58))
      throw new Error('benchWave: the wheel was not found');
    reads.push(between - start);
    measures.push(end - between);
  }
  const result = {
    readMs: median(reads),
    measureMs: median(measures),
    memoryRatio: memory / (2 * SAMPLES * Float32Array.BYTES_PER_ELEMENT),
  };
  const total = result.readMs + result.measureMs;
  const within =
    result.measureMs <= TARGET.measureMs &&
    total <= TARGET.totalMs &&
    result.memoryRatio <= TARGET.memoryRatio;
  print(
    `| capture, 1 M x 2 | read ${result.readMs.toFixed(0)} ms | measured ${result.measureMs.toFixed(0)} ms (target ${TARGET.measureMs}) | together ${total.toFixed(0)} ms (target ${TARGET.totalMs}) | memory ${result.memoryRatio.toFixed(2)} x samples (target ${TARGET.memoryRatio}) | ${within ? 'within' : 'MISSED'} |`,
  );
  return result;
}

function csvBytes(a: Float32Array, b: Float32Array, rateHz: number): Uint8Array {
  const lines = ['time (s),crank (V),coil (V)'];
  for (let i = 0; i < a.length; i += 1)
    lines.push(`${(i / rateHz).toFixed(5)},${a[i]!.toFixed(4)},${b[i]!.toFixed(4)}`);
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}

function median(values: number[]): number {
  return values.sort((x, y) => x - y)[values.length >> 1]!;
}
