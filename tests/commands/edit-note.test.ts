import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { editNote } from '../../src/commands/session/edit-note.ts';
import { eventsOf, makePlace, type Place, runProgram, sessionFiles } from './program.ts';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

/** An editor that does what `source` says to the file `path`; the words that start it. */
function editor(source: string, ...words: string[]): string {
  const script = join(place.home, 'fake editor.mjs');
  writeFileSync(
    script,
    `import * as fs from 'node:fs';\nconst args = process.argv.slice(2);\nconst path = args.at(-1);\n${source}\n`,
  );
  return [process.execPath, script, ...words].map((one) => one.replaceAll(' ', '\\ ')).join(' ');
}

function edit(source: string, ...words: string[]) {
  const { PATH } = process.env;
  return editNote({ PATH, EDITOR: editor(source, ...words), TMPDIR: place.home }, place.home);
}

it('what was written in the editor is a note of the session, line by line', async () => {
  place.env['EDITOR'] = editor(
    'fs.writeFileSync(path, "Plug was green.\\r\\nCleaned it.  \\n\\n"); fs.writeFileSync("mode.txt", (fs.statSync(path).mode & 0o777).toString(8) + " " + args.slice(0, -1).join("|"));',
    '--wait',
    'a b',
  );
  const ran = await runProgram(
    place,
    ['run', 'hall-no-signal', '--bench', 'wire.signal.open', '--plain'],
    'yes\nedit\nnote short\npause\n',
  );
  expect(ran.code).toBe(0);
  expect(ran.out).toContain('Noted.');
  const notes = eventsOf(sessionFiles(place)[0]!).filter(({ type }) => type === 'note-added');
  // The line after "edit" in the pipe is still the session's.
  expect(notes.map((note) => note['text'])).toEqual(['Plug was green.\nCleaned it.', 'short']);
  expect(readdirSync(place.home)).toContain('mode.txt');
}, 30_000);

it('gets its own words, then a file that nobody else may read', async () => {
  const source =
    'fs.writeFileSync(path, [(fs.statSync(path).mode & 0o777).toString(8), ...args.slice(0, -1)].join("\\n"));';
  expect(await edit(source, '--wait', '$(touch owned)')).toEqual({
    text: '600\n--wait\n$(touch owned)',
  });
  expect(readdirSync(place.home)).not.toContain('owned');
});

it('nothing that a terminal obeys comes back, and no more lines than were meant', async () => {
  const source =
    'fs.writeFileSync(path, "\\ufeff\\n\\nred\\u001b[31m \\t\\r\\n\\n\\n\\nend\\u202e\\u0007\\n\\n");';
  expect(await edit(source)).toEqual({ text: 'red␛[31m\n\nend‹U+202E›␇' });
});

it('an editor that fails, is missing, or leaves too much or nothing gives no note', async () => {
  expect(await edit('fs.writeFileSync(path, "lost"); process.exit(4);')).toEqual({
    problem: expect.stringContaining('ended with exit code 4; nothing was noted'),
  });
  expect(await editNote({ EDITOR: '/nowhere/editor' }, place.home)).toEqual({
    problem: expect.stringContaining('could not be started'),
  });
  expect(await editNote({}, place.home)).toEqual({
    problem: expect.stringContaining('set EDITOR'),
  });
  expect(await edit('fs.writeFileSync(path, "x".repeat(20001));')).toEqual({
    problem: expect.stringContaining('at most 20000 bytes'),
  });
  expect(await edit('fs.rmSync(path);')).toEqual({ problem: expect.stringContaining('ENOENT') });
  expect(await edit('')).toEqual({ text: '' });
});
