import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { main } from '../../src/commands/program.ts';
import { debriefOf } from '../../src/drill/debrief.ts';
import { isToReveal, revealCommand } from '../../src/drill/drill-act.ts';
import { repairChoices } from '../../src/drill/drill-words.ts';
import { verifyDrill } from '../../src/drill/verify-drill.ts';
import { sha256 } from '../../src/log/hash.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile } from '../../src/log/read-session-file.ts';
import type { MeasureStep } from '../../src/procedure/procedure.ts';
import type { RecordDrill, SessionRecord } from '../../src/records/record-form.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import { plainDrill } from '../../src/ui/drill/plain-drill.ts';
import { sealed } from '../log/events.ts';
import { opened as openedSample, STILL_TREE } from '../session/sample-tree.ts';
import { SHORT } from './short-procedure.ts';
import { type DrillInTest, newDrill } from './students.ts';

const folder = mkdtempSync(join(tmpdir(), 'ohmward-drill-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run(...args: string[]) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    env: { XDG_CONFIG_HOME: folder, HOME: folder },
    cwd: process.cwd(),
  };
  const code = await main(['drill', ...args], io);
  return { code, out, err };
}

/** The events of a saved drill, checked as the program checks them. */
function eventsIn(path: string): readonly SessionEvent[] {
  const read = readSessionFile(nodeDisk, path);
  if (!read.ok) throw new Error(read.problem.problem);
  return read.events;
}

/** What `--json` prints of a drill. */
function recordOf(out: string): SessionRecord & { readonly drill: RecordDrill } {
  return JSON.parse(out);
}

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const ACTIONS = `procedure: reluctor-no-signal
level: named
seed: 18
actions:
  - measure: volts sensor.plus battery.negative
    acknowledge: true
  - test: module.signal-plus.counts
    acknowledge: true
  - follow: true
    acknowledge: true
  - note: odd
  - diagnose: [sensor.replace]
`;

describe('without a person', () => {
  test('a file of actions is done to the end, and what was written verifies', async () => {
    const sessions = join(folder, 'one');
    const { code, out, err } = await run(
      '--actions',
      file('a.yaml', ACTIONS),
      '--sessions',
      sessions,
    );
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toContain('Score: ');
    const drills = join(sessions, 'drills');
    const [name] = readdirSync(drills);
    const events = eventsIn(join(drills, name!));
    expect(verifyDrill(events, sha256)).toEqual({ verdict: 'true', problems: [] });
    const types = events.map(({ type }) => type);
    expect(types.slice(0, 5)).toEqual([
      'session-opened',
      'caution-acknowledged',
      'test-recorded',
      'caution-acknowledged',
      'test-recorded',
    ]);
    expect(types.at(-1)).toBe('answer-revealed');
  });

  test('a capture is an action, is kept in the file, and verifies', async () => {
    const sessions = join(folder, 'scope');
    const actions = `procedure: reluctor-no-signal
seed: 18
actions:
  - capture: module.signal-plus module.signal-minus
    state: cranking
    acknowledge: true
  - give-up: true
`;
    const path = file('scope.yaml', actions);
    const { code, out } = await run('--actions', path, '--sessions', sessions);
    expect(code).toBe(0);
    expect(out).toContain('Coil voltage on the scope: ');
    const [name] = readdirSync(join(sessions, 'drills'));
    const events = eventsIn(join(sessions, 'drills', name!));
    expect(events.find(({ type }) => type === 'test-recorded')).toMatchObject({
      capture: { from: 'bench', channels: [{ name: 'module.signal-plus' }] },
    });
    expect(verifyDrill(events, sha256)).toEqual({ verdict: 'true', problems: [] });
    const bad = file('still.yaml', actions.replace('cranking', 'key-on'));
    const refused = await run('--actions', bad, '--sessions', join(folder, 'still'));
    expect(refused.code).toBe(1);
    expect(refused.err).toContain(
      'nothing is moving past the sensor, so there is no pattern to see',
    );
  });

  test('the same file gives the same readings, score and debrief', async () => {
    const path = file('b.yaml', ACTIONS);
    const [first, second] = [
      await run('--actions', path, '--json', '--sessions', join(folder, 'two')),
      await run('--actions', path, '--json', '--sessions', join(folder, 'three')),
    ];
    const [one, other] = [first, second].map(({ out }) => recordOf(out).drill);
    expect(one!.debrief).not.toBeNull();
    expect(one!.debrief).toEqual(other!.debrief);
    expect(one!.answer!.points).toBeGreaterThanOrEqual(0);
  });

  test.each([
    [
      '  - measure: volts sensor.fed battery.negative\n    acknowledge: true\n',
      'did you mean "sensor.feed"',
    ],
    ['  - test: sensor.feed.vols\n', 'did you mean "sensor.feed.volts"'],
    ['  - diagnose: [wire.nowhere]\n', 'no repair "wire.nowhere"'],
    ['  - diagnose: [sensor.replce]\n', 'did you mean "sensor.replace"'],
    ['  - acknowledge: true\n', 'this action does nothing'],
  ])('an action that cannot be done stops the run at its line: %j', async (action, words) => {
    const path = file('bad.yaml', `procedure: hall-module-fed\nactions:\n${action}`);
    const { code, err } = await run('--actions', path, '--sessions', join(folder, 'bad'));
    expect(code).toBe(1);
    expect(err).toContain(words);
    expect(err).toMatch(/bad\.yaml:3:/);
  });
});

test.each<[string[], number, string]>([
  [['hall-no-signl', '--plain'], 1, 'did you mean "hall-no-signal"?'],
  [['hall-no-signal', '--level', 'easy', '--plain'], 2, 'the levels are: 1 named'],
  [['hall-no-signal', '--vehicle', '-3', '--plain'], 2, 'the option "--vehicle" needs a value'],
  [['hall-no-signal', '--vehicle', '1e3', '--plain'], 2, 'is not a vehicle number'],
  [['--level', 'easy', '--plain'], 2, 'the levels are: 1 named'],
  [['--csv'], 2, '--csv goes with --class'],
  [['--html', 'x.html'], 2, '--html goes with --class'],
  [['--part', '2'], 2, '--part goes with --assignment'],
  [['--assignment', 'week.yaml', '--level', 'blind'], 2, '--level does not go with --assignment'],
  [['--resume', 'a.jsonl', '--vehicle', '3'], 2, '--vehicle does not go with --resume'],
  [['hall-no-signal', '--class', folder], 2, '"hall-no-signal" does not go with --class'],
  [['--plain', '--actions', 'nowhere.yaml'], 1, 'nowhere.yaml'],
  [['--resume', 'nowhere.jsonl', '--plain'], 1, 'nowhere.jsonl'],
  [['--class', 'no-such-folder'], 1, 'the folder no-such-folder does not exist'],
  [['--class', 'package.json'], 1, 'package.json is a file, not a folder'],
  [['--resume', 'procedures/hall-no-signal.yaml', '--plain'], 1, 'is not a drill'],
  [['procedures/cautions.yaml', '--plain'], 1, 'is a list of cautions'],
])('drill %j ends with %i', async (args, code, words) => {
  const result = await run(...args, '--sessions', join(folder, 'wrong'));
  expect(result.code).toBe(code);
  expect(result.err).toContain(words);
});

test('a drill that was left goes on in the same file, with the same vehicle', async () => {
  const sessions = join(folder, 'left');
  const begin = file(
    'begin.yaml',
    'procedure: reluctor-two-wire\nlevel: blind\nseed: 9\nactions:\n  - measure: volts sensor.plus battery.negative\n    acknowledge: true\n',
  );
  const { out } = await run('--actions', begin, '--sessions', sessions);
  expect(out).toContain('Go on with: ohmward drill --resume');
  const [name] = readdirSync(join(sessions, 'drills'));
  const path = join(sessions, 'drills', name!);
  const end = file(
    'end.yaml',
    'actions:\n  - measure: volts sensor.plus battery.negative\n    acknowledge: true\n  - diagnose: [wire.plus]\n',
  );
  const resumed = await run('--resume', path, '--actions', end, '--sessions', sessions);
  expect(resumed.code).toBe(0);
  const events = eventsIn(path);
  const found = events.flatMap((event) => (event.type === 'test-recorded' ? [event.typed] : []));
  expect(found).toHaveLength(2);
  expect(found[0]).toBe(found[1]);
  expect(verifyDrill(events, sha256).verdict).toBe('true');
  const again = await run('--resume', path, '--actions', end, '--sessions', sessions);
  expect(again.err).toContain('this drill has ended');
});

test('an assignment on a procedure and a circuit of one\u2019s own, beside it', async () => {
  const page = readFileSync('docs/writing-procedures.md', 'utf8');
  const [circuit, procedure] = [...page.matchAll(/```yaml\n([\s\S]*?)```/g)].map(
    ([, text]) => text!,
  );
  mkdirSync(join(folder, 'own', 'circuits'), { recursive: true });
  file('own/circuits/rake-wheel-pickup.yaml', circuit!);
  file('own/rake-wheel-no-speed.yaml', procedure!);
  const set = 'assignment: own\ndrills:\n  - { procedure: rake-wheel-no-speed, level: named }\n';
  const assignment = file('own/own.yaml', set);
  const sessions = join(folder, 'own-sessions');
  const actions = file('own-actions.yaml', 'actions:\n  - diagnose: [wire.high]\n');
  const rest = ['--actions', actions, '--sessions', sessions, '--json'];
  const byName = await run('--assignment', assignment, '--student', 'Ada Example', ...rest);
  expect(byName.err).toMatch(/^This tree has not been checked as it is now: .*\n$/);
  expect(byName.code).toBe(0);
  const byPath = await run(join(folder, 'own', 'rake-wheel-no-speed.yaml'), ...rest);
  expect(byPath.code).toBe(0);
  const report = await run('--class', join(sessions, 'drills'), '--assignment', assignment);
  expect(report.out).toContain('(no name)');
  expect(report.out).not.toContain('other-circuit');
});

test('a circuit of one\u2019s own is drilled on by its file', async () => {
  const give = file('give-up.yaml', 'actions:\n  - give-up: true\n');
  const { code, out } = await run(
    'procedures/circuits/reluctor-two-wire.yaml',
    '--actions',
    give,
    '--json',
    '--sessions',
    join(folder, 'by-file'),
  );
  expect(code).toBe(0);
  const { procedure, drill } = recordOf(out);
  expect(procedure).toBeNull();
  expect(drill.answer).not.toBeNull();
  const broken = file('broken-circuit.yaml', 'circuit: broken\nwires: 3\n');
  const told = await run(broken, '--plain', '--sessions', join(folder, 'by-file'));
  expect(told.code).toBe(1);
  expect(told.err).toContain('broken-circuit.yaml:2:');
  expect(told.err).not.toContain('"steps"');
});

test('a session is no drill, and is said to be one', async () => {
  const { text } = sealed([{ ...openedSample(), procedure: STILL_TREE }]);
  const path = file('session.jsonl', text);
  const { code, err } = await run('--resume', path, '--plain', '--sessions', folder);
  expect(code).toBe(1);
  expect(readFileSync(path, 'utf8')).toBe(text);
  expect(err).toContain(`${path} is a session, not a drill`);
  expect(err).toContain(`ohmward resume ${path}`);
});

test('a folder without drills is said to be one', async () => {
  mkdirSync(join(folder, 'empty'), { recursive: true });
  const { code, err } = await run('--class', join(folder, 'empty'));
  expect(code).toBe(1);
  expect(err).toContain('there is no drill in');
});

test('an assignment goes on from part to part, and then says that all is done', async () => {
  const assignment = file(
    'week.yaml',
    'assignment: week-3\ndrills:\n  - { procedure: reluctor-two-wire, level: named, seed: 4 }\n  - { procedure: reluctor-no-signal, level: unnamed }\n',
  );
  const give = file('give.yaml', 'actions:\n  - give-up: true\n');
  const one = () =>
    run(
      '--assignment',
      assignment,
      '--student',
      'Ada Example',
      '--actions',
      give,
      '--json',
      '--sessions',
      join(folder, 'class'),
    );
  const first = recordOf((await one()).out).drill;
  expect(first.assignment).toEqual({ name: 'week-3', part: 1, limitMinutes: null });
  expect(first.seed).toBe(4);
  const second = recordOf((await one()).out).drill;
  expect(second.assignment!.part).toBe(2);
  const third = await one();
  expect(third.code).toBe(1);
  expect(third.err).toContain('are done');
  const page = join(folder, 'page.html');
  const table = await run('--class', join(folder, 'class'), '--html', page);
  expect(table.code).toBe(0);
  expect(readFileSync(page, 'utf8')).toContain('Ada Example');
  const csv = await run('--class', join(folder, 'class'), '--csv');
  const lines = csv.out.split('\r\n');
  expect(lines).toHaveLength(4);
  const at = lines[0]!.split(',').indexOf('"from_actions"');
  expect(lines.slice(1, 3).map((line) => line.split(',')[at])).toEqual(['"yes"', '"yes"']);
}, 120_000);

test('cut off between diagnosis and reveal, the next command reveals', () => {
  const begun = newDrill(3, { circuit: 'reluctor-two-wire' });
  begun.drill.act({ type: 'diagnose', repairs: ['wire.plus'] });
  const cut = begun.driver.session().events.slice(0, -1);
  expect(cut.at(-1)?.type).toBe('concluded');
  const before = replay(cut);
  expect(isToReveal(before)).toBe(true);
  expect(isToReveal(begun.driver.session())).toBe(false);
  const { answer } = revealCommand(begun.world, debriefOf(before, begun.world));
  const { points, salt } = begun.driver.session().revealed!;
  expect(answer).toMatchObject({ points, salt });
  expect(verifyDrill(begun.driver.session().events, sha256).verdict).toBe('true');
});

describe('as a dialogue of lines', () => {
  async function talk(hand: DrillInTest, lines: string[]) {
    const said: string[] = [];
    const end = await plainDrill(hand, {
      say: (line) => said.push(line),
      ask: (question) => {
        said.push(question);
        return Promise.resolve(lines.shift() ?? null);
      },
    });
    return { end, text: said.join('\n') };
  }

  test.each(['blind', 'unnamed'] as const)(
    'help promises nothing that level %s has not',
    async (level) => {
      const { text } = await talk(newDrill(3, { level }), ['help']);
      expect(text).toContain('  diagnose NUMBER');
      for (const none of ['suspects  ', '  next  ', 'do NUMBER', 'aside', 'made NUMBER'])
        expect(text).not.toContain(none);
    },
  );

  test('help of a level with suspects lists their words', async () => {
    const { text } = await talk(newDrill(3, { level: 'named' }), ['help']);
    for (const word of ['  suspects  ', '  next  ', 'do NUMBER']) expect(text).toContain(word);
    // At a bench every test can be done, and none was done before.
    for (const none of ['aside', 'made NUMBER']) expect(text).not.toContain(none);
  });

  test('a step that is followed where what is good is hidden tells its reading and no verdict', async () => {
    const feed = SHORT.steps['feed'] as MeasureStep;
    const outcomes = [{ name: 'good', words: 'as computed', from: null, to: null, go: 'bad' }];
    const procedure = { ...SHORT, steps: { ...SHORT.steps, feed: { ...feed, outcomes } } };
    const { text } = await talk(newDrill(3, { level: 'blind', procedure }), ['follow', 'readings']);
    expect(text.match(/Feed at .* [\d.]+ m?V$/gm)).toHaveLength(2);
    expect(text).not.toContain('as computed');
  });

  test('captures at a place, draws the picture when asked, and says what is missing', async () => {
    const hand = newDrill(3, { level: 'named' });
    const { text } = await talk(hand, [
      'plot',
      'capture',
      'capture module.signal',
      'state cranking',
      'capture module.signal battery.negative',
      'yes',
      'plot',
    ]);
    expect(text).toContain('Nothing has been captured yet.');
    expect(text).toContain('The procedure does not ask for a capture now; name two places');
    expect(hand.driver.session().tests).toHaveLength(1);
    expect(hand.driver.session().tests[0]!.capture).toBeDefined();
    expect(text).toContain('To see it: plot');
    expect(text).toMatch(/^module\.signal$/m);
    // Drawn with letters: a screen reader makes nothing of braille patterns.
    expect(text).not.toMatch(/[\u2800-\u28ff]/);
  });

  test('arrange, measure, look, diagnose', async () => {
    const hand = newDrill(3, { level: 'named' });
    const { end, text } = await talk(hand, [
      'help',
      'places',
      'state key-on',
      'volts sensor.feed battery.negative',
      'yes',
      'suspects',
      'readings',
      'sketch',
      'note looks fine',
      'ohms sensor.feed battery.negative',
      'unplug sensor',
      'volts sensor.signal battery.negative',
      'yes',
      'diagnose',
      'diagnose 2',
      'no',
      'diagnose 2',
      'yes',
    ]);
    expect(end).toBe('revealed');
    const { words } = repairChoices(hand.driver.session().opened.circuit!)[1]!;
    expect(text).toContain(`Hand in: ${words} This ends the drill. Type yes: `);
    expect(text).toContain('Not handed in; the drill goes on.');
    expect(hand.driver.session().tests).toHaveLength(2);
    expect(hand.driver.session().stopped).toHaveLength(1);
    expect(text).toContain('The bench stops this test');
    expect(text).toContain('It costs safety points.');
    expect(text).toContain('Good is: ');
    expect(text).toContain('Give numbers from the list');
    expect(text).toContain('Score: ');
  });

  test('a mistyped place is two whole sentences, and a word that is none leads to help', async () => {
    const { text } = await talk(newDrill(3), ['foo', 'volts sensor.fed battery.negative']);
    expect(text).toContain('All words: help');
    expect(text).toContain('There is no terminal "sensor.fed"; did you mean "sensor.feed"?');
    expect(text).toContain('Change the leads, the state, or what is unplugged');
    expect(text).not.toContain('?.');
  });

  test('what has no connector does not come off', async () => {
    const lines = ['unplug foo', 'unplug sensr', 'unplug', 'unplug sensor'];
    const { text } = await talk(newDrill(3), lines);
    expect(text).toContain('"foo" has no connector; these can be unplugged: ');
    expect(text).toContain('"sensr" has no connector; did you mean "sensor"?');
    expect(text).not.toContain('foo unplugged');
  });

  test('the end of the procedure says what it concludes, and is no end of the drill', async () => {
    const hand = newDrill(3, { level: 'blind', procedure: SHORT });
    const { text } = await talk(hand, ['follow', 'follow']);
    expect(hand.driver.session().answers).toHaveLength(1);
    expect(text).toContain('The procedure ends here.\nSensor bad\nEverything around the sensor');
    expect(text.split('Repair: Replace the sensor.')).toHaveLength(3);
    expect(hand.driver.session().revealed).toBeNull();
  });

  test('given up is called so', async () => {
    const { text } = await talk(newDrill(3), ['give up']);
    expect(text).toContain('GIVEN UP.');
    expect(text).not.toContain('NOT RIGHT.');
  });

  test('a caution not acknowledged means nothing is done', async () => {
    const hand = newDrill(3, { level: 'blind' });
    const { end, text } = await talk(hand, [
      'state key-on',
      'volts sensor.feed battery.negative',
      'maybe',
      'suspects',
      'flibble',
      'leave',
    ]);
    expect(end).toBe('left');
    expect(text).toContain('Nothing was done');
    expect(text).toContain('This drill level shows no suspects');
    expect(text).toContain('is not a measurement');
    expect(text).not.toContain('Good is: ');
    expect(hand.driver.session().tests).toHaveLength(0);
  });

  test('the end of input leaves the drill as it is', async () => {
    const hand = newDrill(3, { level: 'blind' });
    expect((await talk(hand, [])).end).toBe('input-ended');
    expect(hand.driver.session().revealed).toBeNull();
  });
});
