/** The command `predict`, as a person or a program calls it. */
import { describe, expect, test } from 'vitest';
import { command } from '../../src/commands/predict.ts';

async function predict(
  values: Record<string, string | boolean | string[] | undefined>,
  circuit = 'hall-module-fed',
) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    env: {},
    cwd: process.cwd(),
  };
  const code = await command.run({ positionals: [circuit], values }, io);
  return { code, out, err };
}

describe('a way out of what is not done', () => {
  test.each([
    [{ measure: 'counts module.signal', state: 'cranking' }, 'add --moving'],
    [{ measure: 'pattern sensor.signal battery.negative' }, 'add --moving'],
    [{ measure: 'ohms sensor.feed battery.negative' }, 'add --unplug module'],
    [{ measure: 'volts sensor.feed.pin battery.negative' }, 'add --unplug sensor'],
    [{ measure: 'ohms sensor.feed battery.negative', state: 'key-on' }, 'add --state key-off'],
    [{ measure: 'counts module.signal', state: 'key-off' }, 'add --state key-on'],
  ])('%o: %s', async (values, way) => {
    expect((await predict(values)).err).toMatch(new RegExp(`refused: .*\n  ${way}\n$`));
  });

  test('is not named where no option is one', async () => {
    // The battery stays where it is, whatever the key does.
    const { err } = await predict({ measure: 'ohms relay.30 battery.negative' }, 'hall-relay-fed');
    expect(err).toBe('refused: "relay.30" carries battery voltage even with the key off\n');
  });
  test('as JSON with the reason in words and as facts', async () => {
    const asked = { measure: 'volts sensor.feed.pin battery.negative', json: true };
    const { out } = await predict(asked);
    expect(JSON.parse(out)).toEqual({
      schemaVersion: 1,
      refused:
        '"sensor.feed.pin" is inside the connector and is only reached with "sensor" unplugged',
      refusal: { code: 'inside-connector', terminal: 'sensor.feed.pin', part: 'sensor' },
    });
  });
});

test('the table keeps to the fault that is asked for, with the healthy circuit beside it', async () => {
  const { out } = await predict({ table: true, csv: true, fault: 'wire.feed.open' });
  const faults = out.split('\r\n').map((line) => line.split(',')[0]);
  expect(faults).toEqual(['fault', 'healthy', 'wire.feed.open', '']);
  const wrong = await predict({ table: true, fault: 'wire.feed.opne' });
  expect(wrong.code).toBe(1);
  expect(wrong.err).toContain('did you mean "wire.feed.open"?');
});

describe('one measurement', () => {
  test('in words', async () => {
    expect(await predict({ measure: 'volts sensor.feed battery.negative' })).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^4\.99 V {2}\(4\.7\d to 5\.2\d V\)\n$/),
      err: '',
    });
  });

  test('as JSON', async () => {
    const { out } = await predict({ measure: 'volts sensor.feed battery.negative', json: true });
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual(['schemaVersion', 'low', 'nominal', 'high', 'unit']);
    expect(answer).toMatchObject({ schemaVersion: 1, unit: 'V' });
    expect(answer.low).toBeLessThan(answer.nominal);
    expect(answer.nominal).toBeLessThan(answer.high);
  });

  test('a light shows, an open wire is OL', async () => {
    expect(
      JSON.parse(
        (
          await predict({
            measure: 'light sensor.feed sensor.ground',
            unplug: ['sensor'],
            json: true,
          })
        ).out,
      ),
    ).toEqual({ schemaVersion: 1, shows: 'lit' });
    const open = await predict({
      measure: 'ohms module.signal sensor.signal',
      unplug: ['sensor', 'module'],
      fault: 'wire.signal.open',
      json: true,
    });
    expect(JSON.parse(open.out)).toEqual({
      schemaVersion: 1,
      low: 'OL',
      nominal: 'OL',
      high: 'OL',
      unit: 'ohm',
    });
  });

  test('a fault changes it', async () => {
    const { out } = await predict({
      measure: 'volts sensor.feed battery.negative',
      fault: 'wire.feed.open',
      json: true,
    });
    // what a ground stands above battery negative, 40 mV at most
    expect(JSON.parse(out).high).toBeLessThan(0.041);
  });

  test('a bridge with a light that cannot pull low enough is noted', async () => {
    const { code, err } = await predict({
      measure: 'volts module.signal battery.negative',
      unplug: ['sensor'],
      bridge: ['sensor.signal battery.negative test-light'],
    });
    expect(code).toBe(0);
    expect(err).toMatch(
      /^note: this pulls module\.signal only to 4\.\d+ V, and the module counts low below 1\.5 V\n$/,
    );
  });

  test('a spare sensor that moves', async () => {
    expect(
      (
        await predict({
          measure: 'counts module.signal',
          fault: 'sensor.dead',
          spare: true,
          moving: true,
          state: 'cranking',
        })
      ).out,
    ).toBe('follows\n');
    expect(
      (
        await predict({
          measure: 'counts module.signal',
          fault: 'sensor.dead',
          moving: true,
          state: 'cranking',
        })
      ).out,
    ).toBe('still\n');
  });
});

describe('what goes wrong', () => {
  test.each([
    // values, exit code, words
    [{}, 2, 'say what to measure'],
    [{ measure: 'vols sensor.feed battery.negative' }, 2, 'did you mean "volts"?'],
    [{ measure: 'volts sensor.feed' }, 2, 'needs two terminals'],
    [{ measure: 'volts sensor.feed battery.negative', state: 'idle' }, 2, 'not a vehicle state'],
    [
      { measure: 'volts sensor.feed battery.negative', bridge: ['sensor.feed'] },
      2,
      'is not a bridge',
    ],
    [{ measure: 'volts sensor.fed battery.negative' }, 1, 'did you mean "sensor.feed"?'],
    [
      { measure: 'volts sensor.feed battery.negative', fault: 'wire.fed.open' },
      1,
      'did you mean "wire.feed.open"?',
    ],
    [{ measure: 'ohms sensor.feed battery.negative' }, 1, 'refused: unplug'],
  ])('%j', async (values, code, words) => {
    const answer = await predict(values);
    expect(answer.code).toBe(code);
    expect(answer.err).toContain(words);
    expect(answer.out).toBe('');
  });

  test.each([
    ['nothing-like-it', 'known: current-two-wire, hall-module-fed'],
    ['hall-modul-fed', 'did you mean "hall-module-fed"?'],
    ['./nowhere.yaml', 'there is no such file'],
  ])('no circuit %s', async (name, words) => {
    const answer = await predict({ table: true }, name);
    expect(answer).toMatchObject({ code: 1, out: '' });
    expect(answer.err).toContain(words);
  });
});

describe('the whole table', () => {
  test('as CSV: a row for each fault, a column for each test', async () => {
    const { out } = await predict({ table: true, csv: true });
    const rows = out
      .trimEnd()
      .split('\r\n')
      .map((row) => row.split(','));
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    const column = rows[0]!.indexOf('sensor.feed.volts');
    const cell = (fault: string) => rows.find((row) => row[0] === fault)![column];
    expect(Number(cell('healthy'))).toBeCloseTo(4.994, 2);
    // the ground's own 0.2 to 40 mV, in their geometric middle
    expect(Number(cell('wire.feed.open'))).toBeCloseTo(0.0028, 3);
  });

  test('as JSON', async () => {
    const table = JSON.parse((await predict({ table: true, json: true })).out);
    expect(table).toMatchObject({ schemaVersion: 1, circuit: 'hall-module-fed' });
    for (const row of table.rows) expect(row.shows).toHaveLength(table.tests.length);
  });

  test('in words, faults that show alike together', async () => {
    const { out } = await predict({ table: true });
    expect(out).toContain('[sensor.feed.volts, 1 min]');
    expect(out).toMatch(/lit +healthy/);
  });
});
