/** A drill is the session it is for every verb of `ohmward records`. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { main } from '../../src/commands/program.ts';
import { debriefLines } from '../../src/drill/drill-words.ts';
import { markdownText } from '../../src/records/markdown.ts';
import { writeDrill } from '../drill/drill-files.ts';
import { measure, newDrill, partsChanger } from '../drill/students.ts';
import { readMarkdownStrictly } from './readers/read-markdown-strictly.ts';

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

/** The circuit on which a drill takes least. */
const circuit = 'reluctor-two-wire';
const begun = newDrill(41, { circuit, student: 'Ada \u001b[2J Example' });
partsChanger(begun);
const done = begun.driver.session();
writeDrill(WHOLE, done.events);

it('a finished drill is shown with its debrief, by path and by name, harmless to a terminal', async () => {
  const { code, out, err } = await records('show', WHOLE);
  expect(code).toBe(0);
  expect(err).toMatch(/^Shown as its file has it; nothing was recomputed\..*\n$/);
  for (const line of debriefLines(begun.drill.debrief()!))
    if (line !== '') expect(out).toContain(markdownText(line.trim()));
  expect(out).toContain(markdownText('Ada ␛[2J Example'));
  expect((await records('show', STEM)).out).toBe(out);
  const json = JSON.parse((await records('show', STEM, '--json')).out);
  expect(json).toMatchObject({
    vehicle: 'drill',
    drill: { answer: { right: false }, debrief: { lines: debriefLines(begun.drill.debrief()!) } },
  });
});

it('it is listed and found as a drill, and exported like any session', async () => {
  const { out } = await records('list', '--json');
  expect(JSON.parse(out).sessions).toMatchObject([
    { stem: STEM, source: 'drill', real: false, status: 'closed' },
  ]);
  expect((await records('find', 'ada')).out).toMatch(
    new RegExp(`\\[closed, drill\\][^\\n]*\\n +${STEM}`),
  );
  const exported = await records('export', STEM, '--for', 'class');
  expect(exported.code).toBe(0);
  expect(exported.out).not.toContain('Ada');
  expect(readMarkdownStrictly(exported.out).join(' ')).toContain('Debrief');
});

it('an unfinished drill is shown without a word of the answer', async () => {
  const open = newDrill(42, { circuit });
  const { wires, faults } = open.driver.session().opened.circuit!;
  const [feed] = wires;
  measure(open, {
    setup: { state: 'key-on', unplugged: [], bridges: [], sensor: 'fitted', target: 'still' },
    probe: { kind: 'volts', plus: feed!.to, minus: 'battery.negative' },
  });
  const session = open.driver.session();
  expect(session.tests).toHaveLength(1);
  const path = join(home, 'drills', '20310506T090000Z-drill-bo-0000000b.jsonl');
  writeDrill(path, session.events);
  const { out } = await records('show', path);
  expect(out).toContain('## Tests\n');
  expect(out).toContain('This diagnosis is not finished.');
  expect(out).not.toContain('## Debrief');
  const hidden = faults.filter(({ id }) => open.world.vehicle.hidden.answer.faults.includes(id));
  expect(hidden).toHaveLength(1);
  for (const { id, words, repairWords } of hidden)
    for (const secret of [id, words, repairWords]) expect(out).not.toContain(secret);
  const { code, out: verified } = await records('verify', path);
  expect([code, verified]).toEqual([0, expect.stringContaining('it is not finished')]);
});

it('verify: 0 for a drill as the program wrote it, 1 with the line for a score of one’s own', async () => {
  const good = await records('verify', WHOLE, STEM);
  expect(good.code).toBe(0);
  expect(good.out).toContain('ok     drill: every answer matches the seed');
  const path = join(home, 'clever.jsonl');
  const at = done.events.findIndex(({ type }) => type === 'answer-revealed');
  writeDrill(
    path,
    done.events.map((event) =>
      event.type === 'answer-revealed' ? { ...event, points: 100, right: true } : event,
    ),
  );
  const bad = await records('verify', path, '--json');
  expect(bad.code).toBe(1);
  expect(JSON.parse(bad.out).sessions[0]).toMatchObject({
    genuine: false,
    firstBad: { path, line: at + 1 },
  });
  const edited = join(home, 'edited.jsonl');
  writeFileSync(edited, readFileSync(WHOLE, 'utf8').replace('no signal', 'no Signal'));
  expect(await records('verify', edited)).toMatchObject({
    code: 1,
    out: expect.stringContaining('FAILED chain'),
  });
});

it('a class is shown as a table, as CSV, as a page', async () => {
  const folder = join(home, 'class');
  const cy = newDrill(43, { circuit, student: 'Cy Example' });
  partsChanger(cy);
  writeDrill(join(folder, 'cy', 'one.jsonl'), cy.driver.session().events);
  const di = newDrill(44, { circuit, student: 'Di Example' });
  writeDrill(join(folder, 'di.jsonl'), di.driver.session().events);
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
