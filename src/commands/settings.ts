/** `ohmward settings`: shows and changes who works here, with what, and where sessions go. */
import { functionOf, METER_UNITS } from '../circuit/meter-units.ts';
import type { Meter, MeterUnit } from '../circuit/test.ts';
import { INSTRUMENTS, openSettings, type Settings, STANDARD_SETTINGS } from '../files/settings.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import { readRates } from '../records/read-rates.ts';
import { harmlessJson } from '../records/record-json.ts';
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import {
  type Arguments,
  type CliCommand,
  EXIT,
  type Io,
  tellProblem,
  wordTooMany,
} from './command.ts';

export const command: CliCommand = {
  name: 'settings',
  summary: 'who works here, with which instruments, and where sessions go',
  usage: 'settings [NAME [VALUE]] [options]',
  examples: [
    'ohmward settings                                     show all',
    'ohmward settings person "R. Example"                 set one',
    'ohmward settings instruments meter,test-light,scope  what is at hand',
    'ohmward settings sessions ~/records                  where sessions go',
    'ohmward settings rates "96 EUR; connector 38"        what an hour costs, and price lines',
    'ohmward settings database postgresql://HOST/NAME      where records share puts them',
  ],
  options: {
    json: { type: 'boolean', help: 'print all settings, or the one named, as JSON' },
    reset: { type: 'boolean', help: 'back to the standard value' },
  },
  run: async (args: Arguments, io: Io) => {
    const tooMany = wordTooMany(args, 2);
    if (tooMany) return tellProblem(io, tooMany, EXIT.wrongUse);
    const opened = await openSettings(io.env);
    if ('problem' in opened) {
      io.err(`ohmward: ${safeText(opened.problem.words)}\n  ${safeText(opened.problem.fix)}\n`);
      return EXIT.wrongInput;
    }
    const { store } = opened;
    const [name, value] = args.positionals;
    if (name === undefined) {
      io.out(
        args.values['json']
          ? harmlessJson({ ...store.values, database: withoutPassword(store.values.database) })
          : listing(store.values, store.path),
      );
      return EXIT.done;
    }
    if (!Object.hasOwn(STANDARD_SETTINGS, name)) {
      const near = nearestName(name, Object.keys(STANDARD_SETTINGS));
      io.err(
        `ohmward: there is no setting "${safeText(name)}"${near ? `; did you mean "${near}"?` : `\n  one of: ${Object.keys(STANDARD_SETTINGS).join(', ')}`}\n`,
      );
      return EXIT.wrongUse;
    }
    const key = name as keyof Settings;
    if (args.values['reset']) {
      const problem = store.reset(key);
      if (problem) io.err(`ohmward: ${safeText(problem.words)}\n  ${safeText(problem.fix)}\n`);
      return problem ? EXIT.wrongInput : EXIT.done;
    }
    if (value === undefined) {
      const own = key === 'database' ? withoutPassword(store.values.database) : store.values[key];
      io.out(args.values['json'] ? harmlessJson(own) : `${safeText(shown(key, store.values))}\n`);
      return EXIT.done;
    }
    const read = readValue(key, value);
    if ('fix' in read) {
      io.err(`ohmward: "${safeText(value)}" is not a valid ${key}\n  ${read.fix}\n`);
      return EXIT.wrongUse;
    }
    const problem = store.set(key, read.value);
    if (problem) io.err(`ohmward: ${safeText(problem.words)}\n  ${safeText(problem.fix)}\n`);
    return problem ? EXIT.wrongInput : EXIT.done;
  },
};

function listing(values: Settings, path: string): string {
  const lines = Object.keys(values).map(
    (name) => `  ${name.padEnd(13)} ${safeText(shown(name, values))}`,
  );
  return ['Settings', ...lines, '', `File: ${safeText(path)}`, ''].join('\n');
}

/** The address as it may stand on a screen: what is known to be no secret, and stars for the rest. */
function withoutPassword(address: string): string {
  if (address === '') return '';
  const url = URL.canParse(address) ? new URL(address) : null;
  // Signs that should have been written otherwise have put a part of the password elsewhere.
  const isPlain = url && /^(\/[^/@:]*|)$/.test(url.pathname) && url.hash === '';
  if (!isPlain || (url.pathname === '' && url.search !== '')) return HIDDEN;
  const { protocol, username, password, host, pathname } = url;
  const user = username === '' && password === '' ? '' : `${username}${password && ':***'}@`;
  const asked = [...url.searchParams].map(([name, value]) => {
    if (OPEN.includes(name) && !/[@:]/.test(value)) return `${name}=${value}`;
    return CLOSED.includes(name) ? `${name}=***` : '***';
  });
  return `${protocol}//${user}${host}${pathname}${asked.length > 0 ? '?' : ''}${asked.join('&')}`;
}
const HIDDEN = '(an address that cannot be read, not shown since a password may be in it)';
const CLOSED: readonly string[] = ['password', 'sslpassword', 'sslrootcert', 'sslcert', 'sslkey'];
const OPEN: readonly string[] = ['sslmode', 'user', 'application_name', 'connect_timeout'];

function shown(key: string, values: Settings): string {
  switch (key) {
    case 'meter':
      return meterWords(values.meter);
    case 'scope':
      return `${values.scope.volts} divisions up, ${values.scope.time} across`;
    case 'database':
      return withoutPassword(values.database) || '-';
    case 'ascii':
      return values.ascii ? 'yes' : 'no';
    default: {
      const value = values[key as keyof Settings];
      return (Array.isArray(value) ? value.join(', ') : String(value)) || '-';
    }
  }
}

/** A meter as its data sheet has it. */
function meterWords(meter: Meter): string {
  const input = formatQuantity({ value: meter.inputOhms, unit: 'ohm' }, ASCII);
  const units = Object.keys(METER_UNITS) as MeterUnit[];
  return [`${meter.name}, input ${input}`, ...units.map((unit) => functionWords(meter, unit))].join(
    '; ',
  );
}

function functionWords(meter: Meter, unit: MeterUnit): string {
  const { ranges, counts, ofReading, digits } = functionOf(meter, unit);
  const ends = [ranges[0], ranges.at(-1)].map((value) =>
    formatQuantity({ value: value ?? 0, unit }, ASCII),
  );
  const percent = Number((ofReading * 100).toPrecision(4));
  return `${METER_UNITS[unit].functionWords} ${ends.join(' to ')} in ${ranges.length} ranges of ${counts} counts, ${percent} % + ${digits}`;
}

const ASCII = { ascii: true, digits: 4 };

/** What docs/formats.md gives to be run after each session. */
const SHARE_AFTER = ['ohmward', 'records', 'share'];

/** The text a person types for a setting, as its value; or how it is written. */
function readValue<K extends keyof Settings>(
  key: K,
  text: string,
): { value: Settings[K] } | { fix: string } {
  const standard = STANDARD_SETTINGS[key];
  if (key === 'rates') {
    const rates = readRates(text);
    if (rates && 'fix' in rates) return { fix: `${rates.words}; ${rates.fix}` };
  }
  if (typeof standard === 'string') return { value: text as Settings[K] };
  if (typeof standard === 'boolean') {
    const words: Record<string, boolean> = { yes: true, true: true, no: false, false: false };
    const value = words[text.toLowerCase()];
    return value === undefined ? { fix: 'write yes or no' } : { value: value as Settings[K] };
  }
  if (key === 'instruments') {
    const names = text.split(/[,\s]+/).filter(Boolean);
    const unknown = names.find((name) => !(INSTRUMENTS as readonly string[]).includes(name));
    return unknown === undefined
      ? { value: names as unknown as Settings[K] }
      : { fix: `known: ${INSTRUMENTS.join(', ')}` };
  }
  try {
    return { value: JSON.parse(text) as Settings[K] };
  } catch {
    const example = key === 'afterSession' ? SHARE_AFTER : standard;
    return { fix: `write it as JSON, for example: ${JSON.stringify(example)}` };
  }
}
