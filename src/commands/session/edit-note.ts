/**
 * A note written in the person's own editor: $VISUAL or $EDITOR, started without a shell on a file that only the
 * person can read and that is gone afterwards. What comes back holds no sign that a terminal could obey.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { errorCodeOf } from '../../files/error-code.ts';
import type { Env } from '../../files/folders.ts';
import { readPlainFile } from '../../files/plain-file.ts';
import { safeText } from '../../source/safe-text.ts';
import type { EditedNote } from '../../ui/plain/dialogue.ts';

/** Longer than anybody writes at a vehicle; a larger file was saved by mistake. */
const NOTE_BYTES_MAX = 20_000;

/** Starts the editor, waits for it, and gives what was written; never throws. */
export async function editNote(env: Env, cwd: string): Promise<EditedNote> {
  const { execa, parseCommandString } = await import('execa');
  const [program, ...words] = parseCommandString((env['VISUAL'] || env['EDITOR'] || '').trim());
  if (program === undefined || program === '')
    return { problem: 'no editor is set: set EDITOR, or type: note TEXT' };
  let folder: string | null = null;
  // The key that interrupts belongs to the editor while it has the terminal.
  const ignore = () => undefined;
  process.on('SIGINT', ignore);
  try {
    folder = mkdtempSync(join(tmpdir(), 'ohmward-note-'));
    const path = join(folder, 'note.txt');
    writeFileSync(path, '', { mode: 0o600, flag: 'wx' });
    const ended = await execa(program, [...words, path], {
      shell: false,
      extendEnv: false,
      env: Object.fromEntries(Object.entries(env).filter(([, value]) => value !== undefined)),
      cwd,
      // Lines that wait in a pipe are for the session, not for the editor.
      stdin: process.stdin.isTTY === true ? 'inherit' : 'ignore',
      stdout: 'inherit',
      stderr: 'inherit',
      reject: false,
    });
    if (ended.failed)
      return { problem: `the editor ${safeText(program)} ${failureOf(ended)}; nothing was noted` };
    const bytes = readPlainFile(path, NOTE_BYTES_MAX + 1);
    if (bytes.length > NOTE_BYTES_MAX)
      return { problem: `a note has at most ${NOTE_BYTES_MAX} bytes; nothing was noted` };
    return { text: cleaned(bytes.toString('utf8')) };
  } catch (error) {
    return { problem: `the note could not be written in an editor (${errorCodeOf(error)})` };
  } finally {
    process.off('SIGINT', ignore);
    if (folder !== null) rmSync(folder, { recursive: true, force: true });
  }
}

function failureOf(ended: { exitCode?: number | undefined; signal?: string | undefined }): string {
  if (ended.exitCode !== undefined) return `ended with exit code ${ended.exitCode}`;
  return ended.signal === undefined ? 'could not be started' : `was ended by ${ended.signal}`;
}

/** Lines as they were written, without blanks at their ends, empty lines around them, or anything invisible. */
function cleaned(text: string): string {
  return safeText(text.replace(/^\ufeff/, ''), { lines: true })
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}
