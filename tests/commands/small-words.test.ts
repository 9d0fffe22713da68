/** What the smaller commands say, through the whole program. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { LEVELS } from '../../src/drill/levels.ts';
import { helpLine } from '../../src/ui/plain/plain-words.ts';
import { makePlace, type Place, runProgram } from './program.ts';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

it('settings shows the meter as its data sheet has it, and as JSON when asked', async () => {
  const words =
    '6000-count meter, input 10 Mohm; volts 0.6 V to 600 V in 4 ranges of 6000 counts, 0.5 % + 3; ohms 600 ohm to 60 Mohm in 6 ranges of 6000 counts, 1 % + 3; amperes 60 mA to 400 mA in 2 ranges of 6000 counts, 1 % + 3';
  const all = (await runProgram(place, ['settings'])).out;
  expect(all).toContain(`meter         ${words}\n`);
  expect(all).toContain('scope         8 divisions up, 10 across');
  expect(all).not.toContain('{');
  expect((await runProgram(place, ['settings', 'meter'])).out).toBe(`${words}\n`);
  const json = (await runProgram(place, ['settings', 'meter', '--json'])).out;
  expect(JSON.parse(json)).toMatchObject({ inputOhms: 1e7 });
});

it('a name that is too long for any file is no session, and no fault of the program', async () => {
  for (const command of [['resume'], ['records', 'show']]) {
    const { code, err } = await runProgram(place, [...command, 'x'.repeat(5000)]);
    expect(code).toBe(1);
    expect(err).toContain('no session');
    expect(err).not.toContain('bug');
  }
});

it('the levels of a drill are named where they are asked for', async () => {
  const { out } = await runProgram(place, ['drill', '--help']);
  for (const { name } of LEVELS) expect(out.replace(/\s+/g, ' ')).toContain(name);
  expect(out).not.toContain('undefined');
  const { err } = await runProgram(place, ['drill', 'hall-no-signal', '--level', 'nine']);
  expect(err).toContain('1 named, 2 ');
});

it('settings that are not there, or not so written, name what can be written', async () => {
  const none = await runProgram(place, ['settings', 'price', '85']);
  expect([none.code, none.err]).toEqual([2, expect.stringMatching(/"price"\n.*rates, database/)]);
  const bad = await runProgram(place, ['settings', 'afterSession', 'share']);
  expect([bad.code, bad.err]).toEqual([
    2,
    expect.stringContaining('["ohmward","records","share"]'),
  ]);
});

it('no word of a list of help runs into what it does', () => {
  expect(helpLine('capture RED BLACK', 'save')).toEqual(['  capture RED BLACK  save']);
  expect(helpLine('note TEXT', 'write')).toEqual(['  note TEXT       write']);
});

it('calc says what several codes mean, one after the other', async () => {
  const both = await runProgram(place, ['calc', 'code', 'P0340', 'P2127']);
  expect(both.code).toBe(0);
  expect(both.out).toMatch(/^P0340 .*^P2127 /ms);
  const wrong = await runProgram(place, ['calc', 'code', 'P0340', 'XYZ']);
  expect(wrong.code).toBe(1);
  expect(wrong.out).toMatch(/^P0340 .*^XYZ .*a trouble code is/ms);
  expect((await runProgram(place, ['calc', 'code', 'P', '0335'])).out).toMatch(/^P0335/);
});

it('records list says that a named folder is missing', async () => {
  const listed = await runProgram(place, ['records', 'list', '--folder', '/nope']);
  expect([listed.code, listed.err]).toEqual([
    1,
    expect.stringContaining('there is no folder /nope'),
  ]);
  expect((await runProgram(place, ['records', 'list'])).err).toContain('no session matches');
});

it('a file of one’s own that is named like one of the library is named back with its path', async () => {
  writeFileSync(join(place.home, 'brook-no-cam.yaml'), 'procedure: brook-no-cam\n');
  const named = 'name a file by its path: ./brook-no-cam.yaml';
  expect((await runProgram(place, ['run', 'brook-no-cam', '--plain'])).err).toContain(named);
  expect((await runProgram(place, ['predict', 'brook-no-cam', '--table'])).err).toContain(named);
});
