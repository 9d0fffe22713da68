/** Cautions of one's own stand beside the shipped ones, whoever reads them: a check, a session, a session in free order. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { Checker } from '../../src/commands/check/check-files.ts';
import { gatherFiles } from '../../src/commands/check/gather-files.ts';
import { filesBeside } from '../../src/commands/session/files-beside.ts';
import { openDesk } from '../../src/commands/session/open-desk.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { isProblem } from '../../src/source/problem.ts';

const SHIPPED = loadLibrary('procedures').cautions;
const TREE = `procedure: lift-work
title: Work on the lift
steps:
  look:
    title: Look at the plug
    test: inspection
    state: key-off
    say: Look at the plug of the sensor.
    why: Water in it is seen.
    cautions: [our-lift]
    outcomes:
      dry: { go: done }
      wet: { go: wet }
  done: { title: Nothing found, conclude: [], say: Nothing was seen., repair: Nothing. }
  wet: { title: Wet plug, conclude: [], say: The plug is wet., repair: Dry it. }
start: look
`;
const LIFT = `  our-lift:
    word: WARNING
    hazards: [vehicle-secured]
    say: Nobody stands under a vehicle that the lift's latch does not hold.
`;

const folder = mkdtempSync(join(tmpdir(), 'ohmward-cautions-'));
const at = (name: string) => join(folder, name);
afterEach(() => rmSync(at('cautions.yaml'), { force: true }));
writeFileSync(at('lift-work.yaml'), TREE);

function own(text: string): void {
  writeFileSync(at('cautions.yaml'), text);
}
function libraryHere() {
  return loadLibrary('procedures', filesBeside(at('lift-work.yaml')));
}
/** One for all: it keeps the library. */
const checker = new Checker(32);
/** `code line` of what a check of the tree alone finds, all of it in the cautions beside it. */
function found(): string[] {
  const { issues } = checker.check(gatherFiles([at('lift-work.yaml')], 'procedures'));
  return issues.map(({ code, at: { file, line } }) => {
    expect(file).toBe(at('cautions.yaml'));
    return `${code} ${line}`;
  });
}

describe('own cautions add', () => {
  test('the shipped ones all stand, with the DANGER of a hybrid', () => {
    own(`cautions:\n${LIFT}`);
    const { cautions } = libraryHere();
    expect(cautions.map(({ id }) => id)).toEqual([...SHIPPED.map(({ id }) => id), 'our-lift']);
    expect(cautions.find(({ id }) => id === 'high-voltage-drive')?.word).toBe('DANGER');
  });

  test('a check takes them so as well', () => {
    own(`cautions:\n${LIFT}`);
    expect(found()).toEqual([]);
  });

  test('a file of them that cannot be read is told by a check of the tree', () => {
    own('cautions: [\n');
    const { issues } = checker.check(gatherFiles([at('lift-work.yaml')], 'procedures'));
    expect(issues).toMatchObject([
      { code: 'yaml-syntax', at: { file: at('cautions.yaml') } },
      { code: 'unknown-caution', at: { file: at('lift-work.yaml') } },
    ]);
  });

  test('a copy of the shipped file changes nothing', () => {
    own(readFileSync('procedures/cautions.yaml', 'utf8') + LIFT);
    expect(found()).toEqual([]);
    expect(libraryHere().cautions.slice(0, -1)).toEqual(SHIPPED);
  });
});

describe('one that nobody ever reads is told', () => {
  const rule = (more = '') =>
    `cautions:\n${LIFT}  two-people:\n    word: CAUTION\n    hazards: [other]\n${more}    say: Two people lift the bumper.\n`;
  test.each([
    ['named by no step and shown by no rule', rule(), ['caution-never-shown 6']],
    ['of a drive without a state', rule('    drives: [electric]\n'), ['caution-never-shown 6']],
    ['with a state', rule('    states: [key-off]\n'), []],
    ['with an occasion', rule('    when: [ohms]\n'), []],
  ])('%s', (_, text, codes) => {
    own(text);
    expect(found()).toEqual(codes);
  });

  test('but not where a tree beside it cannot be read, and might name it', () => {
    own(rule());
    writeFileSync(at('other.yaml'), 'procedure: other\nsteps: [\n');
    try {
      expect(found()).toEqual([]);
    } finally {
      rmSync(at('other.yaml'));
    }
  });
});

describe('a NOTICE is for damage to things', () => {
  const rule = (word: string, hazards: string) =>
    `cautions:\n${LIFT}  jack:\n    word: ${word}\n    hazards: [${hazards}]\n    when: [unplug]\n    say: Mind the jack under the sill.\n`;
  test.each([
    [
      'of what falls on people',
      'NOTICE',
      'harness-damage, vehicle-secured',
      ['notice-for-people 7'],
    ],
    ['of fire', 'NOTICE', 'raw-fuel', ['notice-for-people 7']],
    ['of the same under a CAUTION', 'CAUTION', 'harness-damage, vehicle-secured', []],
    ['of things', 'NOTICE', 'harness-damage, module-damage, engine-damage', []],
    ['of what only its author knows', 'NOTICE', 'other', []],
  ])('%s', (_, word, hazards, codes) => {
    own(rule(word, hazards));
    expect(found()).toEqual(codes);
  });
});

describe('a shipped text', () => {
  const texts = (rest: string, language = '') =>
    `${language}cautions:\n${LIFT}  engine-runs-hot:\n${rest}`;
  const GERMAN = 'language: de\n';
  const rule = (word: string, hazards: string, more = '') =>
    `    word: ${word}\n    hazards: [${hazards}]\n${more}    say: Auspuff und Kühlmittel sind heiß, Abgas tötet.\n`;

  test('in another language takes the place of the English one, wherever that stands', () => {
    own(texts(rule('WARNING', 'hot-parts, exhaust-gas'), GERMAN));
    expect(found()).toEqual([]);
    const said = libraryHere().cautions.find(({ id }) => id === 'engine-runs-hot');
    expect(said).toEqual({
      ...SHIPPED.find(({ id }) => id === 'engine-runs-hot'),
      say: 'Auspuff und Kühlmittel sind heiß, Abgas tötet.',
    });
  });

  test.each([
    ['worded otherwise in English', rule('WARNING', 'hot-parts, exhaust-gas'), '', 'changed', 9],
    [
      'in British English too',
      rule('WARNING', 'hot-parts, exhaust-gas'),
      'language: en-GB\n',
      'changed',
      10,
    ],
    ['with a lower signal word', rule('NOTICE', 'hot-parts, exhaust-gas'), GERMAN, 'changed', 8],
    ['without one of its hazards', rule('WARNING', 'hot-parts'), GERMAN, 'narrowed', 9],
    [
      'for another state only',
      rule('WARNING', 'hot-parts, exhaust-gas', '    states: [key-on]\n'),
      GERMAN,
      'narrowed',
      10,
    ],
    [
      'for some drives only',
      rule('WARNING', 'hot-parts, exhaust-gas', '    drives: [electric]\n'),
      GERMAN,
      'narrowed',
      10,
    ],
  ])('%s is an error at its line, and the shipped one stands', (_, text, language, code, line) => {
    own(texts(text, language));
    expect(found()).toEqual([`caution-${code} ${line}`]);
    expect(libraryHere().cautions.slice(0, -1)).toEqual(SHIPPED);
  });
});

test.each(['hybrid', 'electric'] as const)(
  'a tree for a %s without its DANGER is not accepted',
  (drive) => {
    const { procedures, circuits, cautions } = loadLibrary('procedures');
    const less = cautions.filter(({ id }) => id !== 'high-voltage-drive');
    const linked = linkProcedure(
      parseProcedure(TREE.replace('    cautions: [our-lift]\n', ''), 'lift-work.yaml').value!,
      { procedures, circuits, cautions: less },
      { drive, modelOf: () => expect.unreachable('no circuit') },
    );
    expect(linked.issues).toMatchObject([
      {
        code: 'missing-caution',
        words: `a step in key-off needs a caution on high voltage where the drive is ${drive}`,
      },
    ]);
  },
);

describe('without its cautions no session begins', () => {
  const io = {
    out: () => {},
    err: () => {},
    env: { NO_COLOR: '1', XDG_CONFIG_HOME: folder },
    cwd: process.cwd(),
  } as unknown as Parameters<typeof openDesk>[0];
  const desk = () => openDesk(io, 'ohmward test', { sessions: folder, file: at('lift-work.yaml') });

  test.each([
    ['a file that is no YAML', 'cautions: [\n', /yaml-syntax/],
    [
      'a hazard taken away',
      `language: de\ncautions:\n  high-voltage-drive: { word: DANGER, hazards: [battery], say: Vorsicht mit Strom. }\n`,
      /caution-narrowed/,
    ],
  ])('%s is told with its place and the way out', async (_, text, told) => {
    own(text);
    const opened = await desk();
    expect(isProblem(opened)).toBe(true);
    if (!isProblem(opened)) return;
    expect(opened.problem).toMatch(told);
    expect(opened.problem).toContain(`${at('cautions.yaml')}:`);
    expect(opened.fix).toContain(`ohmward check ${at('cautions.yaml')}`);
  });

  test('with them it does', async () => {
    own(`cautions:\n${LIFT}`);
    expect(isProblem(await desk())).toBe(false);
  });
});
