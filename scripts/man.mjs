/**
 * The man page from the command table: `node scripts/man.mjs` writes man/ohmward.1, `--print` prints it instead.
 * The page is checked in; a test compares it with the table.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundled } from './bundled.mjs';

const { COMMANDS } = await bundled('src/commands/program.ts');
const commands = await Promise.all(
  Object.values(COMMANDS).map(async (load) => (await load()).command),
);
const { version, description } = JSON.parse(readFileSync('package.json', 'utf8'));
const page = manPage();
if (process.argv.includes('--print')) process.stdout.write(page);
else {
  mkdirSync('man', { recursive: true });
  writeFileSync('man/ohmward.1', page);
}

function manPage() {
  return `${[
    '.\\" Made from the command table by scripts/man.mjs. Change the table, not this file.',
    `.TH OHMWARD 1 "" "ohmward ${version}" "User Commands"`,
    '.SH NAME',
    'ohmward \\- guided electrical diagnosis of vehicle position sensors',
    '.SH SYNOPSIS',
    '.B ohmward',
    '.RI [ COMMAND ]',
    '.RI [ OPTIONS ]',
    '.SH DESCRIPTION',
    plain(`${description}.`),
    '.PP',
    plain(
      'Without a command it opens the start screen. Everything it shows defers to the maker’s procedure, local rules and qualified practice.',
    ),
    '.SH COMMANDS',
    ...commands.flatMap(commandPart),
    '.SH GUIDE',
    plain(
      'ohmward help lists commands and topics. ohmward help TOPIC shows one page of the guide:',
    ),
    ...tagged(guideTopics()),
    '.SH EXIT STATUS',
    ...tagged([
      ['0', 'Done.'],
      ['1', 'Something is wrong in the input: a file, a session, a circuit.'],
      ['2', 'Used wrongly: an unknown command, option or value.'],
      ['70', 'A fault of the program itself.'],
      ['130', 'Interrupted; what was entered is saved.'],
    ]),
    '.SH ENVIRONMENT',
    ...tagged([
      ['OHMWARD_SESSIONS', 'Folder of sessions, before the one in the settings.'],
      ['NO_COLOR', 'When set, no colour is used.'],
      ['XDG_DATA_HOME', 'Sessions are in its folder ohmward/sessions; ~/.local/share when unset.'],
      ['XDG_CONFIG_HOME', 'Settings are in its folder ohmward; ~/.config when unset.'],
      ['TERM', 'With “dumb” a dialogue of lines is used instead of screens.'],
    ]),
    '.SH FILES',
    ...tagged([
      ['~/.config/ohmward/config.json', 'Settings.'],
      [
        '~/.local/share/ohmward/sessions/*.jsonl',
        'Sessions, one event a line; a transcript beside each.',
      ],
    ]),
  ].join('\n')}\n`;
}

/** Topic and title of each page in docs, as `ohmward help` lists them. */
function guideTopics() {
  return readdirSync('docs')
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => [
      name.slice(0, -'.md'.length),
      `${/^# (.+)$/m.exec(readFileSync(join('docs', name), 'utf8'))[1]}.`,
    ]);
}

function commandPart({ usage, summary, examples, options }) {
  const listed = Object.entries(options).map(([name, { short, type, value, help }]) => {
    const names = short
      ? `\\fB\\-${short}\\fR, \\fB\\-\\-${dashes(name)}\\fR`
      : `\\fB\\-\\-${dashes(name)}\\fR`;
    return `.TP\n${names}${type === 'string' ? ` \\fI${plain(value ?? 'TEXT')}\\fR` : ''}\n${plain(help)}`;
  });
  return [
    `.SS ohmward ${plain(usage)}`,
    plain(`${summary[0].toUpperCase()}${summary.slice(1)}.`),
    ...listed,
    '.PP',
    'Examples:',
    '.PP',
    '.nf',
    '.RS 4',
    ...examples.map(plain),
    '.RE',
    '.fi',
  ];
}

function tagged(pairs) {
  return pairs.map(([tag, words]) => `.TP\n.B ${plain(tag)}\n${plain(words)}`);
}

function dashes(text) {
  return text.replace(/-/g, '\\-');
}

/** Text for roff: nothing in it is a request or an escape; hyphens stay hyphens when copied. */
function plain(text) {
  const escaped = text
    .replace(/\\/g, '\\e')
    .replace(/-/g, '\\-')
    .replace(/~/g, '\\(ti')
    .replace(/\^/g, '\\(ha')
    .replace(/`/g, '\\(ga')
    .replace(/’/g, '\\(cq')
    .replace(/'/g, '\\(aq')
    .replace(/“/g, '\\(lq')
    .replace(/”/g, '\\(rq');
  return escaped.replace(/^([.'])/, '\\&$1');
}
