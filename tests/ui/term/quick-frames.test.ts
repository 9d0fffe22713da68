/** What the bundle does otherwise than Ink to make a frame draws what Ink draws. The library as it is tells what is right. */
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, type Plugin } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { quickFrames } from '../../../scripts/bundle-plugins.mjs';
import { scratchFolder } from '../../log/built-child.ts';
import fc from '../../seeded-check.ts';

interface Write {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}
type Draw = (writes: readonly Write[], clip: readonly number[] | null) => string;

const SIZE = { width: 24, height: 6 };
/** More lines than are kept from one frame to the next. */
const MANY_LINES = 1500;
const scratch = scratchFolder();
afterAll(scratch.remove);
let library: Draw;
let quick: Draw;
beforeAll(async () => {
  library = await drawing('library', []);
  quick = await drawing('quick', [quickFrames]);
});

/** Ink's own way from texts at places to a frame, bundled. */
async function drawing(name: string, plugins: Plugin[]): Promise<Draw> {
  const outfile = join(scratch.path, `${name}.mjs`);
  await build({
    entryPoints: [resolve('node_modules/ink/build/output.js')],
    ...{ outfile, plugins, bundle: true, format: 'esm', platform: 'node' },
  });
  const { default: Output } = await import(pathToFileURL(outfile).href);
  return (writes, clip) => {
    const output = new Output(SIZE);
    if (clip) output.clip({ x1: clip[0], x2: clip[1], y1: clip[2], y2: clip[3] });
    for (const { x, y, text } of writes) output.write(x, y, text, { transformers: [] });
    if (clip) output.unclip();
    return output.get().output;
  };
}

const styled = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ...[0, 1, 2, 4, 7, 22, 24, 27, 31, 32, 39, 44, 49].map((n) => `\u001b[${n}m`),
      ),
      fc.constantFrom('a', ' ', 'reading', '4.97 V', '測定', 'e\u0301', '\u{1f697}', '│'),
    ),
    { maxLength: 12 },
  )
  .map((pieces) => pieces.join(''));
const writes = fc.array(
  fc.record({
    x: fc.integer({ min: 0, max: 20 }),
    y: fc.integer({ min: 0, max: 5 }),
    text: styled,
  }),
  { maxLength: 8 },
);
const clips = fc.option(fc.constantFrom([2, 15, 1, 4], [0, 24, 0, 6]), { nil: null });

it('any styled texts, over one another or clipped, give the frame of the library', () => {
  fc.assert(
    fc.property(writes, clips, (some, clip) => {
      expect(quick(some, clip)).toBe(library(some, clip));
    }),
  );
});

it('a frame is the same the second time, and after very many other lines', () => {
  const frame = [
    { x: 0, y: 0, text: '\u001b[1mReading\u001b[22m in \u001b[31mvolts\u001b[39m' },
    { x: 3, y: 1, text: '測定 4.97 V' },
  ];
  const first = library(frame, null);
  expect(quick(frame, null)).toBe(first);
  for (let n = 0; n < MANY_LINES; n += 1) quick([{ x: 0, y: 0, text: `line ${n}` }], null);
  expect(quick(frame, null)).toBe(first);
});
