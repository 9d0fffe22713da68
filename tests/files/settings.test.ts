import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  openSettings,
  peekSettings,
  type SettingsProblem,
  type SettingsStore,
  STANDARD_SETTINGS,
} from '../../src/files/settings.ts';
import { shareOf } from '../campaign.ts';
import { scratchFolder } from '../log/built-child.ts';
import { asNobody } from './as-nobody.ts';

let scratch: ReturnType<typeof scratchFolder>;
let env: Record<string, string>;
let path: string;
beforeEach(() => {
  scratch = scratchFolder();
  env = { HOME: scratch.path, XDG_CONFIG_HOME: join(scratch.path, 'config') };
  path = join(scratch.path, 'config', 'ohmward', 'config.json');
});
afterEach(() => scratch.remove());

async function store(): Promise<SettingsStore> {
  const opened = await openSettings(env);
  if ('problem' in opened) throw new Error(opened.problem.words);
  return opened.store;
}
async function problem(text: string): Promise<SettingsProblem> {
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, text);
  const opened = await openSettings(env);
  if ('store' in opened) throw new Error('was opened');
  expect(readFileSync(path, 'utf8')).toBe(text);
  return opened.problem;
}

describe('settings', () => {
  it('hold standard values at first, and opening writes no file', async () => {
    const settings = await store();
    expect(settings.values).toEqual(STANDARD_SETTINGS);
    expect(settings.path).toBe(path);
    expect(existsSync(path)).toBe(false);
  });

  it('are kept across openings, in a file for its owner only', async () => {
    const settings = await store();
    expect(settings.set('person', 'Ada Example')).toBeNull();
    expect(settings.set('instruments', ['meter', 'lamp', 'scope'])).toBeNull();
    expect(settings.set('scope', { volts: 8, time: 10 })).toBeNull();
    const again = await store();
    expect(again.values).toEqual({
      ...STANDARD_SETTINGS,
      person: 'Ada Example',
      instruments: ['meter', 'lamp', 'scope'],
      scope: { volts: 8, time: 10 },
    });
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(statSync(join(path, '..')).mode & 0o777).toBe(0o700);
    expect(readdirSync(join(path, '..'))).toEqual(['config.json']);
    expect(again.reset('person')).toBeNull();
    expect((await store()).values.person).toBe('');
  });

  it('refuse a value they cannot have and keep the old one', async () => {
    const settings = await store();
    settings.set('theme', 'no-colour');
    const wrong = settings.set('theme', 'pink' as 'auto');
    expect(wrong?.words).toContain('a setting has a value it cannot have: "theme"');
    expect(settings.set('instruments', ['meter', 'meter'])?.words).toContain('instruments');
    expect(settings.set('meter', { ...STANDARD_SETTINGS.meter, inputOhms: 3 })?.words).toContain(
      'inputOhms',
    );
    expect(settings.values.theme).toBe('no-colour');
    expect((await store()).values.theme).toBe('no-colour');
  });
});

describe('a file from before live data and leads could be ticked', () => {
  const OLD = { person: 'Ada Example', instruments: ['meter', 'scope'] };
  const written = () => JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
  function write(kept: object): void {
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, JSON.stringify(kept));
  }

  it('has them at hand, and is not written for it', async () => {
    write(OLD);
    const { values } = await store();
    expect(values.instruments).toEqual(['meter', 'scope', 'live-data', 'lead']);
    expect(written()).toEqual(OLD);
  });

  it('keeps them through the next change, and what is unticked from then on stays so', async () => {
    write(OLD);
    const settings = await store();
    expect(settings.set('person', 'R. Example')).toBeNull();
    expect((await store()).values.instruments).toEqual(['meter', 'scope', 'live-data', 'lead']);
    expect(settings.set('instruments', ['scope'])).toBeNull();
    expect((await store()).values).toMatchObject({ person: 'R. Example', instruments: ['scope'] });
  });

  it('without a list of instruments has the usual ones', async () => {
    write({ person: 'Ada Example' });
    expect((await store()).values.instruments).toEqual(STANDARD_SETTINGS.instruments);
  });

  it('that took the multimeter off has none', async () => {
    write({ instruments: ['scope'] });
    expect((await store()).values.instruments).not.toContain('meter');
  });
});

it.skipIf(process.platform === 'win32')(
  'a link to a settings file stays one: the change goes where it leads',
  async () => {
    const kept = join(scratch.path, 'kept.json');
    writeFileSync(kept, '{"shop": "Example Garage"}');
    mkdirSync(join(path, '..'), { recursive: true });
    symlinkSync(kept, path);
    expect((await store()).set('person', 'Ada')).toBeNull();
    expect(readlinkSync(path)).toBe(kept);
    expect(JSON.parse(readFileSync(kept, 'utf8'))).toMatchObject({
      person: 'Ada',
      shop: 'Example Garage',
    });
    expect(readdirSync(scratch.path).sort()).toEqual(['config', 'kept.json']);
  },
);

describe('a broken settings file is left as it is, and named with the way out, when it', () => {
  it.each([
    ['is no JSON', '{"person": "Ada",', 'is not valid JSON'],
    ['is empty', '', 'is not valid JSON'],
    ['has a wrong type', '{"person": 7}', '"person" must be string'],
    ['has an unknown setting', '{"persn": "Ada"}', '"persn" is no setting'],
    [
      'has a setting twice',
      '{"person": "Ada", "shop": "x", "pers\\u006fn": "Bo"}',
      '"person" stands there twice',
    ],
    ['is a list', '[]', 'must be object'],
    ['has a shell line for a list', '{"afterSession": "rm -rf x"}', '"afterSession" must be array'],
  ])('%s', async (_what, text, words) => {
    const found = await problem(text);
    expect(found.path).toBe(path);
    expect(found.words).toContain(words);
    expect(found.fix).toMatch(/^correct .* or move it away to start with the standard settings$/);
  });

  it('was left by a crash in the middle of a change: the copy from before it is named', async () => {
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(join(path, '..', 'config.before.json'), '{}');
    expect((await problem('{"per')).fix).toContain(
      'config.before.json, its state before the last change',
    );
  });

  it('cannot be read', async () => {
    mkdirSync(path, { recursive: true });
    const opened = await openSettings(env);
    expect('problem' in opened && opened.problem.words).toContain('EISDIR');
  });

  it.skipIf(process.platform === 'win32').each([
    ['links that lead in a circle', 'config.json', 'lead in a circle'],
    ['a link to nothing', 'gone.json', 'a link to a file that is not there'],
  ])('is %s', async (_, to, words) => {
    mkdirSync(join(path, '..'), { recursive: true });
    symlinkSync(to, path);
    const opened = await openSettings(env);
    expect('problem' in opened && [opened.problem.words, opened.problem.fix]).toEqual([
      expect.stringContaining(words),
      'remove the link, or lead it to a file',
    ]);
    expect(readlinkSync(path)).toBe(to);
  });

  it('cannot be written: the change is refused and the old value holds', async () => {
    const settings = await store();
    settings.set('shop', 'Example Garage');
    const before = readFileSync(path, 'utf8');
    chmodSync(scratch.path, 0o755);
    chmodSync(join(scratch.path, 'config'), 0o755);
    chmodSync(join(path, '..'), 0o555);
    chmodSync(path, 0o644);
    const refused = asNobody(() => settings.set('shop', 'Another'));
    expect(refused?.words).toContain('EACCES');
    expect(refused?.fix).toContain('check the rights');
    expect(settings.values.shop).toBe('Example Garage');
    expect(readFileSync(path, 'utf8')).toBe(before);
  });
});

describe('the look at the settings before the first frame', () => {
  it('sees what was set', async () => {
    const settings = await store();
    expect(peekSettings(env)).toEqual({ theme: 'auto', ascii: false, sessions: '' });
    settings.set('theme', 'no-colour');
    settings.set('ascii', true);
    settings.set('sessions', '/srv/cart');
    expect(peekSettings(env)).toEqual({ theme: 'no-colour', ascii: true, sessions: '/srv/cart' });
  });

  it.each(['', '{', 'null', '[]', '{"theme": 7, "ascii": "yes", "sessions": null}'])(
    'has standard values for a file with %j in it, and leaves it as it is',
    (text) => {
      mkdirSync(join(path, '..'), { recursive: true });
      writeFileSync(path, text);
      expect(peekSettings(env)).toEqual({ theme: 'auto', ascii: false, sessions: '' });
      expect(readFileSync(path, 'utf8')).toBe(text);
    },
  );
});

/** What a hand, another program or a bad disk may put in the place of a value. */
const PUT_IN: readonly unknown[] = [
  ...[null, true, 0, -1, 1e308, '', ' ', 'x', '\u202eabc', '\u0000', 'x'.repeat(1_000_000), [], {}],
  ...[[null], [[]], ['meter', 'meter'], { volts: -1, time: 1e9 }, { name: 'x' }, { length: 1e9 }],
  ...[Array.from({ length: 10_000 }, () => 'x'), JSON.parse('{"__proto__": {"theme": "auto"}}')],
];
const LONGEST_WORDS = 1500;

it('with half a sign in a text are refused, since no session could hold it', async () => {
  expect((await problem(String.raw`{"format":2,"person":"a\ud800"}`)).words).toContain(
    'half of a sign',
  );
});

it('with any value in the place of any other, are opened as the schema has them or refused in words', async () => {
  mkdirSync(join(path, '..'), { recursive: true });
  const deep = `${'['.repeat(50_000)}${']'.repeat(50_000)}`;
  const texts = [
    ...Object.keys(STANDARD_SETTINGS).flatMap((key) =>
      PUT_IN.map((value) => JSON.stringify({ [key]: value })),
    ),
    ...PUT_IN.map((value) => JSON.stringify({ ...STANDARD_SETTINGS, unheard: value })),
    ...['person', 'meter'].map((key) => `{"${key}": ${deep}}`),
    ...[
      '{"a"',
      '{"person":"a"',
      '\ufeff{}',
      '{}{}',
      '1e999',
      '"x"',
      `{"person": "a"${' '.repeat(1_000_000)}`,
    ],
  ];
  let refused = 0;
  const spoilt = JSON.stringify({ instruments: Array.from({ length: 10_000 }, () => 'x') });
  const tried = new Set([spoilt, ...shareOf(texts, 5)]);
  for (const text of tried) {
    const what = text.slice(0, 80);
    writeFileSync(path, text);
    const opened = await openSettings(env);
    peekSettings(env);
    expect(readFileSync(path, 'utf8') === text, what).toBe(true);
    if (!('problem' in opened)) {
      for (const [key, value] of Object.entries(STANDARD_SETTINGS))
        expect(typeof opened.store.values[key as keyof typeof STANDARD_SETTINGS], what).toBe(
          typeof value,
        );
      continue;
    }
    refused += 1;
    const { words, fix } = opened.problem;
    expect(words.trim() === '' || fix.trim() === '', what).toBe(false);
    expect(words.length, what).toBeLessThan(LONGEST_WORDS);
  }
  expect(refused).toBeGreaterThan(tried.size / 2);
  console.info(`settings: cases=${tried.size} of ${texts.length} refused=${refused}`);
});
