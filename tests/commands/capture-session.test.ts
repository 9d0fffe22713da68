/** Captures and sums inside a session, by the whole program. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256 } from '../../src/log/hash.ts';
import { eventsOf, makePlace, type Place, runProgram, sessionWithCaptures } from './program.ts';

/** Begun at the picture: the way to it costs more than all the rest, and is others' matter. */
const AT_PICTURE = ['--from', 'picture', '--vehicle', '7', '--bench'];
const BENCH = ['run', 'hall-no-signal', ...AT_PICTURE, 'target.damaged'];

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

/** The lines of a person who reads the cautions of the picture, types `there`, and leaves; one "yes" too many is asked again. */
function linesTo(there: readonly string[]): string[] {
  return ['yes', 'yes', 'yes', 'yes', ...there, 'pause'];
}

function captured() {
  const file = sessionWithCaptures(place);
  const event = eventsOf(file).find((one) => one['capture'] !== undefined);
  return { file, event: event as Record<string, unknown> | undefined };
}

describe('a capture in a session', () => {
  it('comes from the simulated vehicle when no file is named, and stands in record and report', async () => {
    const lines = linesTo(['capture', 'yes']);
    const ran = await runProgram(place, [...BENCH, '--plain'], `${lines.join('\n')}\n`);
    expect(ran.out).toContain('Looks like:');
    const { file, event } = captured();
    expect(event).toMatchObject({
      type: 'look-recorded',
      look: 'uneven',
      capture: { from: 'bench', measures: { kind: 'switched', rpm: expect.closeTo(200, 1) } },
    });
    expect((await runProgram(place, ['records', 'verify', file])).code).toBe(0);
    const html = (await runProgram(place, ['records', 'export', file, '--as', 'html'])).out;
    expect(html).toContain('from a capture of the simulated vehicle: switched,');
    expect(html).toContain('<svg class="capture"');
    const json = JSON.parse(
      (await runProgram(place, ['records', 'export', file, '--as', 'json'])).out,
    );
    const capture = json.lines.find((line: { capture?: object }) => line.capture).capture;
    expect(capture.channels[0].points.length).toBeLessThanOrEqual(400);
  });

  it.each([
    ['reluctor-no-signal', 'target.damaged', 'uneven', 'alternating'],
    ['reluctor-no-signal', 'healthy', 'full', 'alternating'],
    ['wheel-speed-current', 'target.damaged', 'uneven', 'switched'],
  ])('answers the picture of %s with %s as %s', async (procedure, fault, look, kind) => {
    const words = ['run', procedure, ...AT_PICTURE, fault];
    const lines = linesTo(['capture', 'yes']);
    await runProgram(place, [...words, '--plain'], `${lines.join('\n')}\n`);
    expect(captured().event).toMatchObject({
      look,
      capture: { from: 'bench', measures: { kind } },
    });
  });

  it('answers AC volts where there is no scope at hand, as a meter would read them', async () => {
    const words = ['run', 'reluctor-no-signal', ...AT_PICTURE, 'healthy'];
    const lines = linesTo(['cannot no scope', 'yes', 'capture', 'yes']);
    await runProgram(place, [...words, '--plain'], `${lines.join('\n')}\n`);
    const { event } = captured();
    expect(event).toMatchObject({ type: 'reading-recorded', unit: 'V', outcome: 'good' });
    // By hand: even waves of that swing, two of 60 missing: swing / (2 sqrt 2), less a few per cent.
    const { low, high } = (event as { capture: { measures: { low: number; high: number } } })
      .capture.measures;
    const whole = (high - low) / Math.sqrt(8);
    expect(event?.['value']).toBeGreaterThan(0.85 * whole);
    expect(event?.['value']).toBeLessThan(whole);
  });

  it('comes from a file, whose digest is kept', async () => {
    const path = join(place.home, 'crank.csv');
    const make = [
      'wave',
      '--make',
      'hall-module-fed',
      '--fault',
      'target.damaged',
      '--vehicle',
      '7',
    ];
    expect((await runProgram(place, [...make, '--rpm', '240', '--output', path])).code).toBe(0);
    const lines = linesTo([`capture ${path}`, 'yes']);
    await runProgram(place, [...BENCH, '--plain'], `${lines.join('\n')}\n`);
    expect(captured().event).toMatchObject({
      look: 'uneven',
      capture: {
        name: 'crank.csv',
        from: 'file',
        sha256: sha256(readFileSync(path)),
        measures: { rpm: expect.closeTo(240, 1) },
      },
    });
  });

  it('that the bench makes is the one that wave --make writes', async () => {
    const out = join(place.home, 'same.csv');
    const make = [
      'wave',
      '--make',
      'hall-module-fed',
      '--fault',
      'target.damaged',
      '--vehicle',
      '7',
    ];
    const at = ['--measure', 'pattern sensor.signal battery.negative'];
    const lines = linesTo(['capture', 'yes']);
    await runProgram(place, [...BENCH, '--plain'], `${lines.join('\n')}\n`);
    const { event } = captured();
    const { capture } = event as { capture: { sha256: string } };
    await runProgram(place, [...make, ...at, '--output', out]);
    expect(capture.sha256).toBe(sha256(readFileSync(out)));
  });

  it('is not taken without a yes, nor one that cannot be read', async () => {
    const path = join(place.home, 'letter.csv');
    writeFileSync(path, 'Dear all,\nno numbers here.\n');
    const lines = linesTo(['capture', 'no', `capture ${path}`, 'capture nowhere.csv']);
    const ran = await runProgram(place, [...BENCH, '--plain'], `${lines.join('\n')}\n`);
    expect(ran.out).toContain('Nothing was saved.');
    expect(ran.out).toContain('no line of numbers was found');
    expect(ran.out).toMatch(/export the capture as text with one line for\s+each sample/i);
    expect(ran.out).toContain('nowhere.csv: there is no such file');
    expect(captured().event).toBeUndefined();
  });
});

describe('sums in a session', () => {
  it('are done with the values of the step, and again with others', async () => {
    const lines = linesTo(['calc', 'calc scope --rpm 4000', 'calc wire --size 0.5 --length 3']);
    const { out } = await runProgram(place, [...BENCH, '--plain'], `${lines.join('\n')}\n`);
    expect(out).toContain('Scope settings at 200 rpm');
    // By hand: 60 teeth at 200 rpm are 200 Hz; ten of them last 50 ms, over ten divisions 5 ms each.
    expect(out).toMatch(/time a division: +5 ms/);
    // By hand: 4000 Hz, ten of them last 2.5 ms; a quarter of a millisecond is no usual setting, half of one is.
    expect(out).toMatch(/time a division +500 µs/);
    // As `ohmward calc wire` has it, whose sources stand in tests/outside/quantity-wire.test.ts.
    expect(out).toMatch(/resistance +0\.111 Ω/);
  });
});
