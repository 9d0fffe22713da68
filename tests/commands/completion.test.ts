import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { choicesIn, completeWords } from '../../src/commands/completion/complete-words.ts';
import { COMMANDS, main } from '../../src/commands/program.ts';
import { isInstalled } from '../installed.ts';
import { startProgram } from '../terminal/pty.ts';
import { makePlace, type Place, PROGRAM } from './program.ts';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

interface Answer {
  values: string[];
  files: boolean;
  lines: string[];
}

/** What is offered for the last of the words, in a folder with the library of the project. */
async function offered(...words: string[]): Promise<Answer> {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    out: (text: string) => void out.push(text),
    err: (text: string) => void err.push(text),
    env: place.env,
    cwd: process.cwd(),
  };
  const code = await completeWords(['--', ...words], COMMANDS, io);
  expect({ code, err }).toEqual({ code: 0, err: [] });
  const lines = out.join('').split('\n').slice(0, -1);
  const values = lines.filter((line) => line !== ':files').map((line) => line.split('\t')[0] ?? '');
  return { values, files: lines.includes(':files'), lines };
}

describe('what is offered', () => {
  it('first every command, with its summary', async () => {
    const { values, lines } = await offered('');
    expect(values).toEqual(Object.keys(COMMANDS));
    expect(lines).toContain('resume\tcontinue a session where it stopped');
  });

  it.each([
    // words, offered among others, never offered
    [['ru'], ['run'], ['resume']],
    [['--v'], ['--version'], ['run']],
    [['help', 'ca'], ['calc'], ['run']],
    [
      ['run', ''],
      ['hall-no-signal', 'hall-relay-no-signal'],
      ['bypass', 'spare-sensor'],
    ],
    [['run', '--'], ['--bench', '--plain', '--help'], ['bench']],
    [['run', '--plain', '--p'], [], ['--plain']],
    [['run', 'hall-no-signal', '--bench', 'wire.signal.'], ['wire.signal.open'], ['healthy']],
    [['run', 'hall-no-signal', '-b', ''], ['healthy', 'wire.feed.open'], []],
    // Bash hands over --bench=wire as three words, other shells as one.
    [['run', 'hall-no-signal', '--bench', '=', 'heal'], ['healthy'], []],
    [['run', 'hall-no-signal', '--bench', '='], ['healthy'], []],
    [['run', 'hall-no-signal', '--bench=heal'], ['--bench=healthy'], ['healthy']],
    [['--bench', 'heal'], ['healthy'], []],
    [['run', '--color', ''], ['always', 'never', 'auto'], []],
    [['predict', 'hall-m'], ['hall-module-fed'], ['hall-no-signal']],
    [['predict', 'hall-module-fed', '--fault', 'sensor.'], ['sensor.dead'], ['healthy']],
    [['predict', 'hall-module-fed', '--state', 'k'], ['key-off', 'key-on'], ['cranking']],
    [['predict', 'x', '--unplug', 'sensor', '--un'], ['--unplug'], []],
    [['calc', 'di'], ['divider'], ['drop']],
    [['completion', ''], ['bash', 'zsh', 'fish'], []],
    [['drill', '--level', 'mis'], ['misled'], ['named']],
    [['new', ''], ['procedure', 'circuit', 'job'], []],
    [['new', 'job', 'x', ''], ['--out'], []],
    [['records', 'ex'], ['export'], ['show']],
    [['records', 'verify', 'a', '--'], ['--head'], ['--plate', '--as']],
    [['records', 'find', '--pl'], ['--plate'], []],
    [['records', 'export', 'last', '--for', ''], ['shop', 'customer', 'class'], []],
    [['settings', 'per'], ['person'], ['shop']],
  ])('%j', async (words, among, never) => {
    const { values } = await offered(...words);
    expect(values).toEqual(expect.arrayContaining(among));
    for (const value of never) expect(values).not.toContain(value);
    const typed = words.at(-1) === '=' ? '' : (words.at(-1) ?? '');
    for (const value of values) expect(value.startsWith(typed)).toBe(true);
  });

  it('faults are those of the circuit that the procedure is about', async () => {
    const relay = await offered('run', 'hall-relay-no-signal', '--bench', '');
    const module = await offered('run', 'hall-no-signal', '--bench', '');
    expect(relay.values.some((id) => id.startsWith('relay.'))).toBe(true);
    expect(module.values.some((id) => id.startsWith('relay.'))).toBe(false);
    expect(module.values.length).toBeGreaterThan(20);
  });

  it('sessions newest first, each once by its last part, and nothing for foreign files', async () => {
    mkdirSync(place.sessions);
    const names = [
      '20310506T080000Z-blue-van-00000001.jsonl',
      '20310507T080000Z-red-car-00000002.jsonl',
      '20310507T080000Z-red-car-00000002.part2.jsonl',
      'notes.jsonl',
      '$(touch oops).jsonl',
    ];
    for (const name of names) writeFileSync(join(place.sessions, name), '');
    const { values, files } = await offered('resume', '');
    expect(values).toEqual([names[2], names[0]]);
    expect(files).toBe(true);
    expect((await offered('records', 'compare', names[0]!, '2031')).values).toEqual([
      names[2],
      names[0],
    ]);
    expect((await offered('retest', '2031')).values).toEqual([names[2], names[0]]);
  });

  it('files where a file is asked for, nothing where a text is', async () => {
    expect(await offered('run', '--job', 'x')).toMatchObject({ values: [], files: true });
    expect(await offered('wave', '')).toMatchObject({ values: [], files: true });
    expect(await offered('calc', 'wire', '--size', '')).toMatchObject({ values: [], files: false });
    expect(await offered('no-such', '')).toMatchObject({ values: [], files: false });
    expect(await offered('constructor', '')).toMatchObject({ values: [], files: false });
  });

  it('nothing that a shell could expand, and no escape to the terminal', async () => {
    const out: string[] = [];
    const io = { out: (text: string) => void out.push(text), err: () => {}, env: {}, cwd: '/' };
    const named = (name: string) => async () => ({
      command: {
        name,
        summary: 'a\u001b[31m\nb',
        usage: name,
        examples: [],
        options: {},
        run: async () => 0,
      },
    });
    const table = Object.fromEntries(
      ['fine', '$(touch oops)', '`x`', 'a;b'].map((n) => [n, named(n)]),
    );
    await completeWords(['--', ''], table, io);
    expect(out.join('')).toBe('fine\ta [31m b\n');
  });
});

describe('choices are read from help texts', () => {
  it.each([
    ['always, never or auto', ['always', 'never', 'auto']],
    ['text, svg, mermaid, dot; text when left out', ['text', 'svg', 'mermaid', 'dot']],
    [
      'export: shop (everything), customer (plain words, lines to sign), class (no names)',
      ['shop', 'customer', 'class'],
    ],
    ['volts, ohms or light with two terminals, red first', []],
    ['job sheet: complaint, vehicle, pins and wire colours', []],
    ['where the session is saved', []],
  ])('%s', (help, choices) => {
    expect(choicesIn(help)).toEqual(choices);
  });
});

it('an unknown shell is a wrong use, and says which there are', async () => {
  const err: string[] = [];
  const io = { out: () => {}, err: (text: string) => void err.push(text), env: {}, cwd: '/' };
  expect(await main(['completion', 'powershell'], io)).toBe(2);
  expect(err.join('')).toContain('bash, zsh, fish');
});

/** A folder with `ohmward` in it, as an installation has, and the scripts of the shells. */
function install(): { env: NodeJS.ProcessEnv; script: (shell: string) => string } {
  const bin = join(place.home, 'bin');
  mkdirSync(bin);
  chmodSync(PROGRAM, 0o755);
  symlinkSync(PROGRAM, join(bin, 'ohmward'));
  const env = { ...place.env, PATH: `${bin}:${process.env['PATH']}`, INPUTRC: '/dev/null' };
  const script = (shell: string) => {
    const text = execFileSync(process.execPath, [PROGRAM, 'completion', shell], { env });
    const path = join(place.home, `completion.${shell}`);
    writeFileSync(path, text);
    return path;
  };
  return { env, script };
}

describe('in a real shell', () => {
  it('bash completes a command, a procedure, a fault after = and a file by the Tab key', async () => {
    const { env, script } = install();
    mkdirSync(join(place.home, 'jobs'));
    writeFileSync(join(place.home, 'jobs', 'blue van.yaml'), '');
    const shell = startProgram({
      command: 'bash',
      args: ['--norc', '--noprofile', '-i'],
      columns: 160,
      cwd: place.home,
      env: { ...env, PS1: 'ready> ' },
    });
    await shell.waitFor('ready>');
    shell.type(`source ${script('bash')}; clear\r`);
    await shell.waitFor(/^ready>$/m);
    shell.type('ohmward ru\t');
    await shell.waitFor('ohmward run');
    shell.type('hall-r\t');
    await shell.waitFor('ohmward run hall-relay-no-signal');
    shell.type('--bench=wire.signal.o\t');
    await shell.waitFor('no-signal --bench=wire.signal.open');
    shell.type('--job jobs/b\t');
    await shell.waitFor('wire.signal.open --job jobs/blue\\ van.yaml');
    shell.kill('SIGKILL');
    await shell.exit;
  }, 60_000);

  it.for(['bash', 'zsh', 'fish'])(
    '%s reads its script without a complaint',
    { timeout: 60_000 },
    (shell, { skip }) => {
      skip(!isInstalled(shell), `${shell} is not installed`);
      const { env, script } = install();
      const path = script(shell);
      const prepare = shell === 'zsh' ? 'autoload -U compinit; compinit -u; ' : '';
      const ask =
        shell === 'fish'
          ? `; complete -C 'ohmward ru'`
          : shell === 'bash'
            ? '; complete -p ohmward'
            : '; print $_comps[ohmward]';
      const out = execFileSync(shell, ['-c', `${prepare}source ${path}${ask}`], {
        env,
        encoding: 'utf8',
      });
      expect(out).toContain(shell === 'fish' ? 'run' : '_ohmward');
    },
  );
});
