import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

/** What Ink offers to put text on the screen by itself, past `safeText`. */
const TEXT_OF_INK = ['Text', 'Static', 'Transform', 'Newline', 'useInput', 'useStderr'];

it("only Words takes Ink's Text, and nobody its input", () => {
  const offenders: string[] = [];
  const sources = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.tsx?$/.test(name),
  );
  for (const name of sources) {
    const code = readFileSync(`src/${name}`, 'utf8');
    for (const found of code.matchAll(/import\s*(?:type\s*)?\{([^}]*)\}\s*from 'ink'/g)) {
      const names = (found[1] ?? '').split(',').map((part) => part.trim());
      for (const taken of names.filter((part) => TEXT_OF_INK.includes(part)))
        offenders.push(`${name}: ${taken}`);
    }
    if (/from 'ink'/.test(code) && /import\s+\*/.test(code)) offenders.push(`${name}: *`);
  }
  expect(offenders).toEqual(['ui/parts/safe-words.tsx: Text']);
});
