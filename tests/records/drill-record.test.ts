import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { main } from '../../src/commands/program.ts';
import { revealedBy } from '../../src/drill/decide-drill.ts';
import { debriefLines } from '../../src/drill/drill-words.ts';
import { safeText } from '../../src/source/safe-text.ts';
import { writeDrill } from '../drill/drill-files.ts';
import { doIt, measure, newDrill, partsChanger } from '../drill/students.ts';

const home = mkdtempSync(join(tmpdir(), 'ohmward-drill-records-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));
const STEM = '20310506T090000Z-drill-ada-0000000a';
const WHOLE = join(home, 'drills', `${STEM}.jsonl`);

async function records(...args: string[]) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    env: { HOME: home, XDG_CONFIG_HOME: home, OHMWARD_SESSIONS: home },
    cwd: process.cwd(),
  };
  const code = await main(['records', ...args], io);
  return { code, out, err };
}

const begun = newDrill(41, { more: { student: 'Ada \u001b[2J Example' } });
const done = partsChanger(begun.drill, begun.world);
writeDrill(WHOLE, done);

it('a finished drill is shown with its debrief, by path and by name, harmless to a terminal', async () => {
  const { code, out, err } = await records('show', WHOLE);
  expect([code, err]).toEqual([0, '']);
  const { debrief } = revealedBy(done, begun.world, done.revealed!);
  expect(out).toContain(
    debriefLines(debrief)
      .map((line) => safeText(line))
      .join('\n'),
  );
  expect(out).toContain('Ada ␛[2J Example');
  expect((await records('show', STEM)).out).toBe(out);
  const json = JSON.parse((await records('show', STEM, '--json')).out);
  expect(json).toMatchObject({ id: 'drill-41', path: WHOLE, debrief: { truth: debrief.truth } });
});

it('an unfinished drill is shown without a word of the answer', async () => {
  const { drill, world } = newDrill(42);
  const tests = world.mind([]).tests;
  const measured = measure(drill, tests[0]!.test, world);
  const path = join(home, 'drills', '20310506T090000Z-drill-bo-0000000b.jsonl');
  writeDrill(path, measured);
  const { out } = await records('show', path);
  expect(out).toContain(measured.readings[0]!.words);
  expect(out).toContain('The drill is not finished.');
  for (const fault of world.vehicle.hidden.answer.faults) {
    const { words } = drill.opened.circuit.faults.find(({ id }) => id === fault)!;
    expect(out).not.toContain(words);
  }
  const { code, out: verified } = await records('verify', path);
  expect([code, verified]).toEqual([0, expect.stringContaining('it is not finished')]);
});

it('verify: 0 for a drill as the program wrote it, 1 with the line for a score of one’s own', async () => {
  const good = await records('verify', WHOLE, STEM);
  expect(good.code).toBe(0);
  expect(good.out).toContain('ok     drill: every answer is the one that the seed gives');
  const path = join(home, 'clever.jsonl');
  const at = done.events.findIndex(({ type }) => type === 'drill-revealed');
  writeDrill(path, {
    events: done.events.map((event) =>
      event.type === 'drill-revealed' ? { ...event, points: 100, right: true } : event,
    ),
  });
  const bad = await records('verify', path, '--json');
  expect(bad.code).toBe(1);
  expect(JSON.parse(bad.out).sessions[0]).toMatchObject({
    genuine: false,
    firstBad: { path, line: at + 1, words: expect.stringContaining('the score is not what') },
  });
  const edited = join(home, 'edited.jsonl');
  writeFileSync(edited, readFileSync(WHOLE, 'utf8').replace('no signal', 'no Signal'));
  expect(await records('verify', edited)).toMatchObject({
    code: 1,
    out: expect.stringContaining('FAILED chain'),
  });
  const odd = join(home, 'odd.jsonl');
  writeDrill(odd, { events: [{ ...done.events[0]!, circuit: 7 } as never] });
  expect((await records('verify', odd)).code).toBe(1);
  expect((await records('show', odd)).code).toBe(1);
});

it('a class is shown as a table, as CSV, as a page', async () => {
  const folder = join(home, 'class');
  const { drill, world } = newDrill(43, { more: { student: 'Cy Example' } });
  writeDrill(join(folder, 'cy', 'one.jsonl'), partsChanger(drill, world));
  const left = newDrill(44, { more: { student: 'Di Example' } });
  writeDrill(
    join(folder, 'di.jsonl'),
    doIt(left.drill, { type: 'diagnose', repairs: [] }, left.world).drill,
  );
  const table = await records('show', '--class', folder);
  expect([table.code, table.err]).toEqual([0, '']);
  expect(table.out).toMatch(/Cy Example[\s\S]*Di Example/);
  expect((await records('show', '--class', folder, '--csv')).out.split('\r\n')).toHaveLength(4);
  const page = join(home, 'class.html');
  expect((await records('show', '--class', folder, '--html', page)).out).toBe('');
  expect(readFileSync(page, 'utf8')).toContain('Di Example');
  expect((await records('show', 'last', '--class', folder)).code).toBe(2);
  expect((await records('show', '--class', join(home, 'nothing'))).code).toBe(1);
});
