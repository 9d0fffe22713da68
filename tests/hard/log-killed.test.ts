/** Killed at random moments (SIGKILL), the real writer on real files loses no event it has acknowledged. */
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { openSessionFile, resumeSession } from '../../src/log/open-session.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG, SEED } from '../campaign.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import { NAME, sampleEvent } from '../log/events.ts';

const KILLS = LONG ? 300 : 18;
const MIN_EVENTS = LONG ? 30_000 : 150;
/** Each session is killed this often: once while new, then after each resumption. */
const KILLS_A_SESSION = 3;

const scratch = scratchFolder();
let child: string;
beforeAll(async () => {
  child = await bundleChild('tests/log/writing-child.ts', scratch.path);
});
afterAll(scratch.remove);

/** Starts the writer, kills it so many ms after its first words, and returns what it acknowledged. */
function writeUntilKilled(folder: string, path: string, ms: number): Promise<number[]> {
  return new Promise((resolve, reject) => {
    const process = spawn(globalThis.process.execPath, [child, folder, path, '300'], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let said = '';
    process.stdout.on('data', (bytes: Buffer) => {
      said += bytes.toString();
    });
    process.stdout.once('data', () => setTimeout(() => process.kill('SIGKILL'), ms));
    process.on('error', reject);
    process.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') return reject(new Error(`the writer ended by itself: ${said}`));
      // A cut last line is an acknowledgement that was not heard.
      const lines = said.slice(0, said.lastIndexOf('\n') + 1).split('\n');
      resolve(lines.filter((line) => line.startsWith('a ')).map((line) => Number(line.slice(2))));
    });
  });
}

it(
  'keeps every acknowledged event, resumes and goes on',
  async () => {
    const random = seededRandom(SEED);
    let kills = 0;
    let acknowledgedInAll = 0;
    let lost = 0;
    let torn = 0;
    const campaign = async (lane: number): Promise<void> => {
      for (let session = 0; kills < KILLS || acknowledgedInAll < MIN_EVENTS; session += 1) {
        const folder = join(scratch.path, `lane${lane}-${session}`);
        mkdirSync(folder);
        const path = join(folder, NAME);
        const acknowledged = new Set<number>();
        for (let kill = 0; kill < KILLS_A_SESSION; kill += 1) {
          const ms = Math.floor(random() * (LONG ? 120 : 60));
          const heard = await writeUntilKilled(folder, kill === 0 ? '-' : path, ms);
          for (const n of heard) acknowledged.add(n);
          kills += 1;
          acknowledgedInAll += heard.length;
          const opened = openSessionFile(nodeDisk, path);
          if (!opened.ok) throw new Error(opened.problem.words);
          expect(opened.value.log.verdict).not.toBe('damaged');
          const ids = new Set(opened.value.events.map(({ id }) => id));
          for (const n of acknowledged) if (!ids.has(n)) lost += 1;
        }
        const resumed = resumeSession(nodeDisk, path, { at: '2031-05-06T10:00:00Z', elapsed: 0 });
        if (!resumed.ok) throw new Error(resumed.problem.words);
        for (let n = 0; n < 5; n += 1)
          expect(resumed.value.writer.append(sampleEvent(1_000_000 + n)).ok).toBe(true);
        resumed.value.writer.close();
        const whole = openSessionFile(nodeDisk, path);
        expect(whole.ok && whole.value.log.verdict).toBe('whole');
        torn += readdirSync(folder).filter((name) => name.includes('.torn-')).length;
      }
    };
    await Promise.all([campaign(0), campaign(1)]);
    console.info(
      `kill -9: kills=${kills} acknowledged=${acknowledgedInAll} lost=${lost} torn=${torn} seed=${SEED}`,
    );
    expect(lost).toBe(0);
    expect(kills).toBeGreaterThanOrEqual(KILLS);
    expect(acknowledgedInAll).toBeGreaterThanOrEqual(MIN_EVENTS);
  },
  LONG ? 600_000 : 60_000,
);
