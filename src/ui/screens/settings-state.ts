/** The settings as a sheet of fields: each field to one setting. No React. */
import { functionOf, METER_UNITS } from '../../circuit/meter-units.ts';
import type { Meter, MeterFunction, MeterUnit } from '../../circuit/test.ts';
import { INSTRUMENTS, type Settings } from '../../files/settings.ts';
import { readRates } from '../../records/read-rates.ts';
import { type Form, fieldChoice, fieldText, textInput } from '../parts/form-state.ts';
import { sentenceStart } from '../parts/sentence.ts';
import { instrumentFields, tickedIn } from './instruments-state.ts';

/** A setting with the value it is to have from now on. */
export type SettingChange = {
  readonly [K in keyof Settings]: { readonly key: K; readonly value: Settings[K] };
}[keyof Settings];

/** The sheet with the present values. */
export function settingsSheet(settings: Settings): Form {
  const { meter, scope } = settings;
  return {
    at: 0,
    fields: [
      textInput('person', 'Your name', settings.person, 'As shown on reports.'),
      textInput('shop', 'Workshop', settings.shop, 'As shown on reports.'),
      ...instrumentFields(settings.instruments),
      textInput('meter-name', 'Meter', meter.name, 'Its name, for the record.'),
      ...UNITS.flatMap((unit) => functionFields(unit, functionOf(meter, unit))),
      textInput(
        'counts',
        'Counts of the display',
        String(meter.volts.counts),
        '6000 for a meter that reads up to 5.999.',
      ),
      textInput(
        'input-megohms',
        'Input resistance, megohms',
        String(meter.inputOhms / 1e6),
        'Usually 10. It loads weak signals.',
      ),
      textInput(
        'scope-volts',
        'Scope: divisions up',
        String(scope.volts),
        'Full screen is volts a division times this.',
      ),
      textInput(
        'scope-time',
        'Scope: divisions across',
        String(scope.time),
        'One sweep is time a division times this.',
      ),
      textInput(
        'rates',
        'Rates',
        settings.rates,
        'Labour rate, then price lines, for the call to the customer and their paper: 96 EUR; sensor connector 38. Empty: no prices are quoted.',
      ),
      textInput('sessions', 'Folder for sessions', settings.sessions, 'Empty for the default.'),
      {
        kind: 'check',
        key: 'ascii',
        label: 'ASCII characters only',
        hint: 'Space changes it. For fonts and terminals that draw lines wrong. Takes effect at the next start.',
        on: settings.ascii,
      },
      {
        kind: 'choice',
        key: 'theme',
        label: 'Colours',
        hint: 'Left or Right changes it. Nothing is shown by colour alone. Takes effect at the next start.',
        options: ['auto', 'no-colour'],
        chosen: settings.theme === 'auto' ? 0 : 1,
      },
    ],
  };
}

const UNITS = Object.keys(METER_UNITS) as readonly MeterUnit[];
const FUNCTION_LABELS: Readonly<Record<MeterUnit, string>> = {
  V: 'Volts DC',
  ohm: 'Ohms',
  A: 'mA DC',
};

function functionFields(unit: MeterUnit, { ofReading, digits }: MeterFunction) {
  const { by } = METER_UNITS[unit];
  const label = FUNCTION_LABELS[unit];
  return [
    textInput(
      `${by}-percent`,
      `${label}: +/- % of reading`,
      String(Number((ofReading * 100).toPrecision(6))),
      "From the meter's data sheet. It decides what counts as borderline.",
    ),
    textInput(
      `${by}-digits`,
      `${label}: + digits`,
      String(digits),
      'Counts of the last digit, from the data sheet.',
    ),
  ];
}

/** The meter with another function; the same one where nothing in it changes. */
function meterWith(meter: Meter, unit: MeterUnit, changed: Partial<MeterFunction>): SettingChange {
  const before = functionOf(meter, unit);
  const after = { ...before, ...changed };
  const isSame = before.ofReading === after.ofReading && before.digits === after.digits;
  const value = isSame ? meter : { ...meter, [METER_UNITS[unit].by]: after };
  return { key: 'meter', value };
}

/** What the field at `at` changes in the settings, nothing when it changes nothing, or why its text is refused. */
export function settingsChange(
  sheet: Form,
  at: number,
  settings: Settings,
): { readonly change: SettingChange | null; readonly problem: string | null } {
  const key = sheet.fields[at]?.key;
  if (key === undefined) return { change: null, problem: null };
  const change = changeOf(sheet, key, settings);
  if (typeof change === 'string') return { change: null, problem: change };
  const same = JSON.stringify(change.value) === JSON.stringify(settings[change.key]);
  return { change: same ? null : change, problem: null };
}

function changeOf(sheet: Form, key: string, settings: Settings): SettingChange | string {
  const { meter, scope } = settings;
  const text = fieldText(sheet, key);
  if (INSTRUMENTS.some((name) => name === key))
    return { key: 'instruments', value: tickedIn(sheet) };
  const withNumber = (
    low: number,
    high: number,
    whole: boolean,
    take: (value: number) => SettingChange,
  ) => {
    const value = Number(text.replace(',', '.'));
    const fits =
      text !== '' && value >= low && value <= high && (!whole || Number.isInteger(value));
    return fits
      ? take(value)
      : `Enter a ${whole ? 'whole ' : ''}number from ${low} to ${high}; "${text}" was not accepted.`;
  };
  const [by, what] = key.split('-');
  const unit = UNITS.find((one) => METER_UNITS[one].by === by);
  if (unit && what === 'percent')
    return withNumber(0, 20, false, (value) => meterWith(meter, unit, { ofReading: value / 100 }));
  if (unit && what === 'digits')
    return withNumber(0, 100, true, (digits) => meterWith(meter, unit, { digits }));
  switch (key) {
    case 'person':
    case 'shop':
    case 'sessions':
      return { key, value: text };
    case 'rates': {
      const rates = readRates(text);
      return rates && 'fix' in rates
        ? `${sentenceStart(rates.words)}: ${rates.fix}. It was not accepted.`
        : { key, value: text };
    }
    case 'meter-name':
      return text === ''
        ? 'The meter needs a name.'
        : { key: 'meter', value: { ...meter, name: text } };
    case 'counts':
      return withNumber(1, 1_000_000, true, (counts) => ({
        key: 'meter',
        value: { ...meter, volts: { ...meter.volts, counts }, ohms: { ...meter.ohms, counts } },
      }));
    case 'input-megohms':
      return withNumber(0.01, 1_000_000, false, (value) => ({
        key: 'meter',
        value: { ...meter, inputOhms: value * 1e6 },
      }));
    case 'scope-volts':
      return withNumber(2, 40, true, (volts) => ({ key: 'scope', value: { ...scope, volts } }));
    case 'scope-time':
      return withNumber(2, 40, true, (time) => ({ key: 'scope', value: { ...scope, time } }));
    case 'ascii':
      return {
        key: 'ascii',
        value: sheet.fields.some(
          (field) => field.key === key && field.kind === 'check' && field.on,
        ),
      };
    case 'theme':
      return {
        key: 'theme',
        value: fieldChoice(sheet, key) === 'no-colour' ? 'no-colour' : 'auto',
      };
    default:
      throw new Error(`settings: nothing is said of the field "${key}"`);
  }
}
