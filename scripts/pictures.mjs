/**
 * Pictures of real screens: `node scripts/pictures.mjs` drives the built program in a pseudo-terminal of 80 by 24 through one
 * session on the simulated vehicle and writes docs/pictures/*.svg. The seed is fixed and times are masked, so that a
 * picture changes only when its screen does.
 */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import { screenSvg } from './screen-svg.mjs';

const COLUMNS = 80;
const ROWS = 24;
const SETTLE_MS = 250;
const WAIT_MS = 15_000;
const TURNS_MAX = 120;
const OUT = 'docs/pictures';
const F5 = '\x1b[15~';
const ESCAPE = '\x1b';
const PAGE_DOWN = '\x1b[6~';

const JOB = `job: blue-van
complaint: Cranks but does not start; the sensor was replaced last week.
codes: [P0335]
vehicle: { words: blue van, plate: EX 47 AM, drive: combustion }
terminals:
  sensor.feed: { pin: 1, colour: RD/BU }
  sensor.signal: { pin: 2, colour: YE }
  sensor.ground: { pin: 3, colour: BN }
  module.signal: { pin: 47, colour: YE }
`;

const home = realpathSync(mkdtempSync(join(tmpdir(), 'ohmward-pictures-')));
const job = join(home, 'job.yaml');
writeFileSync(job, JOB);
mkdirSync(OUT, { recursive: true });
const taken = new Set();
try {
  await pictureStart();
  await pictureSession();
  const missing = ['start', 'caution', 'step', 'suspects', 'conclusion'].filter(
    (name) => !taken.has(name),
  );
  if (missing.length > 0) throw new Error(`pictures: never came to ${missing.join(', ')}`);
} finally {
  rmSync(home, { recursive: true, force: true });
}

async function pictureStart() {
  const program = start([]);
  await program.until((text) => text.includes('[q]'));
  take(program, 'start', 'The start screen');
  program.type('q');
  await program.ended;
}

/** The whole session; each screen is taken when it is first worth showing. */
async function pictureSession() {
  const program = start([
    'run',
    'hall-no-signal',
    '--job',
    job,
    '--bench',
    'wire.signal.open',
    '--vehicle',
    '7',
  ]);
  await program.until((text) => /Step|Before you go on/.test(text));
  let readings = 0;
  for (let turn = 0; turn < TURNS_MAX && !taken.has('conclusion'); turn += 1) {
    const text = program.text();
    const shown = /The simulated vehicle: (-?[\d.]+ m?V)/.exec(text)?.[1];
    if (text.includes('┌─ Before you go on')) {
      take(program, 'caution', 'A caution, before the step it belongs to');
      await program.press(text.includes('-- more below') ? PAGE_DOWN : 'y');
    } else if (readings >= 2 && !taken.has('suspects')) {
      await program.press(F5);
      await program.until((now) => now.includes('┌─ Suspects') && !now.includes('One moment'));
      take(program, 'suspects', 'The suspects after a few readings');
      await program.press(ESCAPE);
    } else if (text.includes('┌─ Conclusion')) {
      await program.until((now) => !now.includes('One moment'));
      take(program, 'conclusion', 'The conclusion, and what it rests on');
    } else if (shown) {
      await program.press(shown);
      readings += 1;
      take(program, 'step', 'A step with a reading and its judgement while typing');
      await program.press('\r');
    } else {
      if (text.includes('[Tab]')) await program.press('\t');
      await program.press('\r');
    }
  }
  program.kill();
  await program.ended;
}

function take(program, name, title) {
  if (taken.has(name)) return;
  taken.add(name);
  writeFileSync(join(OUT, `${name}.svg`), screenSvg(masked(program.cells()), title));
}

/** Times, random parts of names and the folder of this run, each by as many characters. */
function masked(rows) {
  return rows.map((row) => {
    const line = row.map(({ char }) => char).join('');
    const clean = line
      .replace(/\d{8}T\d{6}Z/g, '20310506T093012Z')
      .replace(/\b\d\d:\d\d(:\d\d)?\b/g, (time) => '09:30:12'.slice(0, time.length))
      .replace(/-[0-9a-f]{8}(?=\.jsonl)/g, '-0a1b2c3d')
      .replaceAll(home, '~'.padEnd(home.length));
    return row.map((cell, at) => ({ ...cell, char: [...clean][at] ?? ' ' }));
  });
}

function start(args) {
  const terminal = new xterm.Terminal({ cols: COLUMNS, rows: ROWS, allowProposedApi: true });
  const { PATH } = process.env;
  const child = spawn(process.execPath, [resolve('dist/ohmward.mjs'), ...args], {
    name: 'xterm-256color',
    cols: COLUMNS,
    rows: ROWS,
    cwd: home,
    env: { PATH, HOME: home, LANG: 'C.UTF-8', TERM: 'xterm-256color', TZ: 'UTC' },
  });
  let last = Date.now();
  child.onData((data) => {
    last = Date.now();
    terminal.write(data);
  });
  let over = false;
  const ended = new Promise((done) => {
    child.onExit(() => {
      over = true;
      done();
    });
  });
  const line = (row) => terminal.buffer.active.getLine(row);
  const text = () =>
    Array.from({ length: ROWS }, (_, row) => line(row)?.translateToString(true) ?? '').join('\n');
  const settled = async () => {
    while (!over && Date.now() - last < SETTLE_MS) await sleep(25);
  };
  return {
    ended,
    text,
    kill: () => over || child.kill(),
    type: (keys) => child.write(keys),
    /** Types, and waits until the screen has changed and is at rest; a key that comes too early is given again. */
    press: async (keys) => {
      const before = text();
      child.write(keys);
      const begin = Date.now();
      while (!over && text() === before && Date.now() - begin < 1500) await sleep(25);
      await settled();
    },
    until: async (fits) => {
      const begin = Date.now();
      while (!fits(text())) {
        if (over || Date.now() - begin > WAIT_MS)
          throw new Error(`pictures: waited in vain at\n${text()}`);
        await sleep(25);
      }
      await settled();
    },
    cells: () =>
      Array.from({ length: ROWS }, (_, row) =>
        Array.from({ length: COLUMNS }, (_, column) => cellOf(line(row)?.getCell(column))),
      ),
  };
}

function cellOf(cell) {
  return {
    char: cell?.getChars() || ' ',
    colour: cell?.isFgPalette() ? cell.getFgColor() % 8 : null,
    back: cell?.isBgPalette() ? cell.getBgColor() % 8 : null,
    bold: Boolean(cell?.isBold()),
    inverse: Boolean(cell?.isInverse()),
    underline: Boolean(cell?.isUnderline()),
  };
}
