/** Checks and predicts one circuit file and prints the most memory this process ever held, in megabytes. */
import { command as check } from '../../src/commands/check.ts';
import type { CliCommand } from '../../src/commands/command.ts';
import { command as predict } from '../../src/commands/predict.ts';
import { mostMb } from './most-mb.ts';

const [file, how] = process.argv.slice(2);
const said: string[] = [];
const say = (text: string) => said.push(text);
const io = { out: say, err: say, env: {}, cwd: process.cwd() };
const run = (command: CliCommand, values: Record<string, string>) =>
  command.run({ positionals: [file!], values, words: [] } as never, io);
const code =
  how === 'check'
    ? await run(check, {})
    : await run(predict, { measure: 'volts sensor.feed battery.negative' });
process.stdout.write(JSON.stringify({ code, said: said.join(''), mostMb: mostMb() }));
