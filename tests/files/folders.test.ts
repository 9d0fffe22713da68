import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  dataFolder,
  libraryFolder,
  sessionsFolder,
  settingsFolder,
} from '../../src/files/folders.ts';
import { scratchFolder } from '../log/built-child.ts';

let scratch: ReturnType<typeof scratchFolder>;
let clone: string;
let elsewhere: string;
beforeEach(() => {
  scratch = scratchFolder();
  clone = join(scratch.path, 'clone');
  elsewhere = join(scratch.path, 'elsewhere');
  mkdirSync(join(clone, 'procedures'), { recursive: true });
  mkdirSync(join(clone, 'dist', 'parts'), { recursive: true });
  mkdirSync(elsewhere);
  writeFileSync(join(clone, 'package.json'), '{"name":"ohmward"}');
});
afterEach(() => scratch.remove());

describe('sessions go', () => {
  const HOME = resolve('/home/someone');
  it('where OHMWARD_SESSIONS says, before anything else', () => {
    const env = { HOME, OHMWARD_SESSIONS: 'here' };
    expect(sessionsFolder({ env, cwd: clone, settings: '/set' })).toBe(join(clone, 'here'));
  });
  it('else where the settings say, ~ being home', () => {
    expect(sessionsFolder({ env: { HOME }, cwd: clone, settings: '~/shop' })).toBe(
      join(HOME, 'shop'),
    );
    expect(sessionsFolder({ env: { HOME }, cwd: clone, settings: '/mnt/shop' })).toBe(
      resolve('/mnt/shop'),
    );
  });
  it('else into ./sessions of a clone', () => {
    expect(sessionsFolder({ env: { HOME }, cwd: clone, settings: '' })).toBe(
      join(clone, 'sessions'),
    );
  });
  it('else to the data folder of XDG', () => {
    writeFileSync(join(elsewhere, 'package.json'), '{"name":"something-else"}');
    const standard = join(HOME, '.local', 'share', 'ohmward', 'sessions');
    expect(sessionsFolder({ env: { HOME }, cwd: elsewhere })).toBe(standard);
    const env = { HOME, XDG_DATA_HOME: resolve('/data') };
    expect(sessionsFolder({ env, cwd: elsewhere })).toBe(resolve('/data/ohmward/sessions'));
  });
});

it('a relative path in an XDG variable is passed over, as the specification says', () => {
  const HOME = resolve('/home/someone');
  expect(dataFolder({ HOME, XDG_DATA_HOME: 'data' })).toBe(
    join(HOME, '.local', 'share', 'ohmward'),
  );
  expect(settingsFolder({ HOME, XDG_CONFIG_HOME: './c' })).toBe(join(HOME, '.config', 'ohmward'));
  expect(settingsFolder({ HOME, XDG_CONFIG_HOME: '/c' })).toBe(resolve('/c/ohmward'));
});

describe('the library is found', () => {
  it('above the running file, in dist, in its parts, and in src', () => {
    for (const file of ['dist/ohmward.mjs', 'dist/parts/run-abc.mjs', 'src/files/folders.ts']) {
      const url = pathToFileURL(join(clone, file)).href;
      expect(libraryFolder(elsewhere, url)).toBe(join(clone, 'procedures'));
    }
  });
  it('else under the working folder, else nowhere', () => {
    const file = join(elsewhere, 'dist', 'ohmward.mjs');
    expect(libraryFolder(clone, file)).toBe(join(clone, 'procedures'));
    expect(libraryFolder(elsewhere, file)).toBeNull();
  });
});
