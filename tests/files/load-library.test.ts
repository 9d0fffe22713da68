/** What a folder of procedures and circuits offers before any of it is worked out. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadLibrary } from '../../src/files/load-library.ts';
import { freeOrder } from '../../src/procedure/free-order.ts';

const LONG = `a${'b'.repeat(60)}`;

test('circuits are offered by name and title; what has no name of a circuit is left out', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-library-'));
  mkdirSync(join(folder, 'circuits'));
  const files = {
    'a.yaml': `circuit: ${LONG}\ntitle: Long\n`,
    'b.yaml': 'circuit: My Circuit\ntitle: Mine\n',
    'c.yaml': 'circuit: hidden\ntitle: "odd \\u202E"\n',
    'd.yaml': 'circuit: untitled\n',
    'e.yaml': 'circuit: [\n',
  };
  for (const [name, text] of Object.entries(files))
    writeFileSync(join(folder, 'circuits', name), text);
  const heads = loadLibrary(folder).circuitHeads();
  expect(heads).toEqual([
    { name: LONG, title: 'Long' },
    { name: 'hidden', title: 'odd \u202E' },
  ]);
  expect(heads.map((head) => freeOrder(head).circuit)).toEqual([LONG, 'hidden']);
});
