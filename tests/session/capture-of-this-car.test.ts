/** A capture is held against the cars that the readings leave, not against any. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { signalTest } from '../../src/circuit/expected-signal.ts';
import type { Test } from '../../src/circuit/test.ts';
import { generateWheels } from '../../src/waveform/generate.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';
import { setupOf } from '../circuit/setup.ts';
import { newSession } from '../rpc/served.ts';

it('a signal down to 2 V is none where the pull-up leads to 5 V, and one where it leads to 8 V', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-this-car-'));
  try {
    const path = join(folder, 'signal.csv');
    const wheel = {
      sensor: 'hall',
      low: 2,
      high: 7,
      name: 'crank',
      teeth: 60,
      missing: 2,
    } as const;
    const taken = { rateHz: 20_000, seconds: 1.2, rpm: 240, random: seededRandom(3) };
    writeFileSync(path, csvOfCapture(generateWheels([wheel], taken)));
    const { opened } = newSession('hall-no-signal', null);
    const { circuit } = opened.driver.session().opened;
    const test = signalTest(circuit!, setupOf({ state: 'cranking' }))!;
    const shown = async () => {
      const found = await opened.measureCapture({ kind: 'test', test, expected: null }, path);
      if (!found.ok || found.command.type !== 'record-test') throw new Error('it shows nothing');
      return found.command.shown;
    };
    const read = (place: string, value: number, unplugged: string[] = []) => {
      const one: Test = {
        setup: setupOf({ unplugged }),
        probe: { kind: 'volts', plus: place, minus: 'battery.negative' },
      };
      opened.driver.perform({ type: 'acknowledge-cautions', test: one });
      const found = { kind: 'number', value, unit: 'V' } as const;
      const typed = `${value} V`;
      const command = {
        type: 'record-test',
        test: one,
        typed,
        shown: found,
        expected: null,
      } as const;
      expect(opened.driver.perform(command)).toMatchObject({ ok: true });
    };
    // By hand from the circuit file: low is below 30 % of what the pull-up leads to, 1.5 V of 5 V and 2.4 V of 8 V.
    expect(await shown()).toEqual({ kind: 'look', look: 'weak' });
    read('battery.positive', 12.5);
    read('module.signal', 8, ['sensor']);
    expect(await shown()).not.toEqual({ kind: 'look', look: 'weak' });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
