/** Starters pass the check as they are. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { Checker } from '../../src/commands/check/check-files.ts';
import { gatherFiles } from '../../src/commands/check/gather-files.ts';
import { command } from '../../src/commands/new.ts';
import { folderWith, run } from './run-command.ts';

const folder = folderWith({ 'there.yaml': 'mine' });
afterAll(folder.remove);

test.each([
  // The first thing to do with a new tree: part its one conclusion.
  ['procedure', 'my-tree.yaml', ['warning ambiguity-group']],
  ['circuit', 'circuits/my-circuit.yaml', []],
  ['job', 'jobs/my-job.yaml', []],
])('a new %s passes the check, and explains itself', async (kind, file, findings) => {
  const name = file.replace(/^.*\/|\.yaml$/g, '');
  const { code } = await run(command, [kind, name, '--out', file], folder.path);
  expect(code).toBe(0);
  const path = join(folder.path, file);
  expect(readFileSync(path, 'utf8').match(/#/g)!.length).toBeGreaterThanOrEqual(4);
  const report = new Checker().check(gatherFiles([path], 'procedures'));
  expect(report.files.map((one) => one.kind)).toEqual([kind]);
  expect(report.issues.map(({ severity, code }) => `${severity} ${code}`)).toEqual(findings);
  const written = readFileSync(path, 'utf8');
  const [, schema = ''] = /\$schema=(.*)$/m.exec(written)!;
  const printed = (await run(command, [kind, name])).out;
  expect(printed.replace(`$schema=${kind}.schema.json`, `$schema=${schema}`)).toBe(written);
  // An editor looks for it from where the file is.
  const found = JSON.parse(readFileSync(join(dirname(path), schema), 'utf8')) as { $id: string };
  expect(found.$id).toBe(`${kind}.schema.json`);
});

test('a file that exists is left as it is', async () => {
  const { code, err } = await run(command, ['job', 'x', '--out', 'there.yaml'], folder.path);
  expect(code).toBe(1);
  expect(err).toContain('already exists');
  expect(readFileSync(join(folder.path, 'there.yaml'), 'utf8')).toBe('mine');
});

test('a wrong word or name is told', async () => {
  expect((await run(command, ['procedur', 'x'])).err).toContain('did you mean "procedure"?');
  expect((await run(command, ['job', 'Big Job', '--out', 'x.yaml'], folder.path)).code).toBe(2);
  expect(existsSync(join(folder.path, 'x.yaml'))).toBe(false);
});
