/** Previews of a tree: from any step, without a trace, with what lies beside the file, and again after a save. */
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  eventsOf,
  makePlace,
  type Place,
  runProgram,
  sessionFiles,
  startProgram,
} from './program.ts';

/** The procedure whose circuit takes least, and a fault of it. */
const TREE = 'reluctor-no-signal';
const CIRCUIT = 'reluctor-two-wire';
const FAULT = 'wire.plus.open';
const BENCH = ['--bench', FAULT, '--unattended'];
/** First step of the sub-procedure that its step "battery" uses. */
const BATTERY = 'battery/battery';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

describe('a session from the middle', () => {
  it('walks from that step, and file, record and verification say so', async () => {
    const ran = await runProgram(place, ['run', TREE, ...BENCH, '--from', 'battery']);
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(ran.out).toContain(`Started in the middle of the procedure, at the step "${BATTERY}"`);
    const [path = ''] = sessionFiles(place);
    const [opened, ...rest] = eventsOf(path);
    expect(opened?.['from']).toBe(BATTERY);
    const answered = rest.find(({ type }) => type === 'reading-recorded');
    expect(answered?.['step']).toBe(BATTERY);
    expect(rest.some(({ step }) => step === 'prepare')).toBe(false);
    const shown = await runProgram(place, ['records', 'show', path]);
    expect(shown.out).toContain('the session started in the middle of the procedure');
    expect((await runProgram(place, ['records', 'verify', path])).code).toBe(0);
  });

  it('is no session of a real vehicle, whatever a file says', async () => {
    const refused = await runProgram(place, ['run', TREE, '--plain', '--from', 'battery']);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('--from needs a simulated vehicle');
    await runProgram(place, ['run', TREE, ...BENCH, '--from', 'battery']);
    const [path = ''] = sessionFiles(place);
    writeFileSync(
      path,
      readFileSync(path, 'utf8').replace(`"from":"${BATTERY}"`, '"from":"nowhere"'),
    );
    expect((await runProgram(place, ['records', 'verify', path])).code).toBe(1);
  });

  it('names the nearest step when there is none of that name', async () => {
    const ran = await runProgram(place, ['run', TREE, ...BENCH, '--from', 'batery']);
    expect(ran.code).toBe(1);
    expect(ran.err).toContain('did you mean "battery"?');
    expect(sessionFiles(place)).toEqual([]);
  });
});

describe('a preview', () => {
  it('comes to the same conclusion and leaves nothing behind', async () => {
    const run = ['run', TREE, ...BENCH];
    const kept = await runProgram(place, run);
    const files = readdirSync(place.home, { recursive: true });
    const preview = await runProgram(place, [...run, '--preview']);
    expect(preview.code).toBe(0);
    expect(preview.out.split('\n')[0]).toBe(kept.out.split('\n')[0]);
    expect(preview.out).toContain('Preview: nothing was saved.');
    expect(readdirSync(place.home, { recursive: true })).toEqual(files);
  });

  it('takes circuits and sub-procedures from beside the file', async () => {
    const folder = ownFolder();
    const ran = await runProgram(place, ['run', join(folder, 'own.yaml'), ...BENCH, '--preview']);
    expect(ran.code).toBe(0);
    expect(ran.err).toMatch(/^This tree has not been checked as it is now: .*\n$/);
    expect(ran.out).toContain('Conclusion: ');
  });
});

describe('watching', () => {
  it('runs again after a save of the file', async () => {
    const file = join(ownFolder(), 'own.yaml');
    const child = startProgram(place, ['run', file, ...BENCH, '--watch']);
    const waiting = `Waiting for the next save of ${file}`;
    const until = heard(child);
    await until(waiting);
    writeFileSync(file, readFileSync(file, 'utf8').replace('start: prepare', 'start: nowhere'));
    expect(await until(waiting)).toContain('no step named "nowhere"');
    child.kill('SIGINT');
    await new Promise((resolve) => child.once('exit', resolve));
    expect(sessionFiles(place)).toEqual([]);
  });

  it('cuts short a dialogue that is under way', async () => {
    const file = join(ownFolder(), 'own.yaml');
    const child = startProgram(place, [
      ...['run', file, '--bench', FAULT, '--plain', '--watch'],
      ...['--from', 'battery'],
    ]);
    const until = heard(child);
    child.stdin.write('yes\n');
    await until('Reading in V: ');
    writeFileSync(file, readFileSync(file, 'utf8').replace(/^title: .*$/m, 'title: Second draft'));
    await until('Saved: the preview starts again.');
    child.stdin.write('yes\n');
    expect(await until('Reading in V: ')).toContain('Second draft');
    child.stdin.end();
    await new Promise((resolve) => child.once('exit', resolve));
    expect(sessionFiles(place)).toEqual([]);
  });

  it('asks for a file and for answers that need no screen', async () => {
    expect((await runProgram(place, ['run', TREE, ...BENCH, '--watch'])).code).toBe(2);
    expect((await runProgram(place, ['run', './a.yaml', '--watch'])).code).toBe(2);
  });
});

/** A folder with the shipped tree, its circuit and a sub-procedure under names of their own. */
function ownFolder(): string {
  const folder = join(place.home, 'own');
  mkdirSync(join(folder, 'circuits'), { recursive: true });
  mkdirSync(join(folder, 'families'));
  const copy = (from: string, to: string, change: (text: string) => string) => {
    cpSync(join('procedures', from), join(folder, to));
    writeFileSync(join(folder, to), change(readFileSync(join(folder, to), 'utf8')));
  };
  copy(`${TREE}.yaml`, 'own.yaml', (text) =>
    text
      .replace(`procedure: ${TREE}`, 'procedure: own')
      .replace(`circuit: ${CIRCUIT}`, 'circuit: own-circuit')
      .replaceAll('use: look-at-connector', 'use: own-look'),
  );
  copy(`circuits/${CIRCUIT}.yaml`, 'circuits/own-circuit.yaml', (text) =>
    text.replace(`circuit: ${CIRCUIT}`, 'circuit: own-circuit'),
  );
  copy('families/look-at-connector.yaml', 'families/own-look.yaml', (text) =>
    text.replace('procedure: look-at-connector', 'procedure: own-look'),
  );
  return folder;
}

/** Waits until the program says `words`; all that it said since the last time. */
function heard(child: ReturnType<typeof startProgram>): (words: string) => Promise<string> {
  let said = '';
  let tell: () => void = () => {};
  const hear = (bytes: Buffer) => {
    said += bytes.toString();
    tell();
  };
  child.stdout.on('data', hear);
  child.stderr.on('data', hear);
  return async (words) => {
    while (!said.includes(words))
      await new Promise<void>((resolve) => {
        tell = resolve;
      });
    const end = said.indexOf(words) + words.length;
    const before = said.slice(0, end);
    said = said.slice(end);
    return before;
  };
}
