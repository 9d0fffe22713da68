/**
 * The settings: who works here, with which instruments, and how the screen should look.
 *
 * Kept as JSON in the user's configuration folder by the `conf` package, checked against the schema below. A broken
 * file is never repaired or replaced: the person is told where it is and what is wrong with it. Before each change
 * the old file is copied aside, and put back should the new one not have arrived whole.
 */
import {
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  lstatSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import type { Meter } from '../circuit/test.ts';
import { TOOL_NAMES, type Tool } from '../circuit/tools.ts';
import { doubledName } from '../source/doubled-name.ts';
import { isWhole } from '../source/is-whole.ts';
import { type Env, settingsFolder } from './folders.ts';
import { makeFolders } from './make-folders.ts';
import { NOT_A_FILE, openPlainFile, readPlainFile } from './plain-file.ts';

/** What and who a person may have at hand. */
export type AtHand = Tool | 'helper';
export const INSTRUMENTS: readonly AtHand[] = [...TOOL_NAMES, 'helper'];

/** What a file of settings from before it could be ticked does not list, and everybody had. */
const ALWAYS_HAD: readonly AtHand[] = ['live-data', 'lead'];
/** Form of the file: from 2 on what is not listed among the instruments is not at hand. */
const SETTINGS_FORMAT = 2;

/** What a person has set once and for all sessions. */
export interface Settings {
  /** Name of the person at the vehicle, as reports show it. */
  readonly person: string;
  readonly shop: string;
  readonly instruments: readonly AtHand[];
  readonly meter: Meter;
  /** Folder for sessions; empty for the usual one. */
  readonly sessions: string;
  /** Folder where the last capture was read; empty for none yet. */
  readonly captures: string;
  readonly theme: 'auto' | 'no-colour';
  /** Draw with ASCII characters only. */
  readonly ascii: boolean;
  /** Divisions of the scope's screen, up and across. */
  readonly scope: { readonly volts: number; readonly time: number };
  /** Program and arguments to start after a session; empty for none. Never a shell line. */
  readonly afterSession: readonly string[];
  /** What the shop asks for an hour, and price lines: see `records/read-rates.ts`; empty where prices are not told. */
  readonly rates: string;
  /** Address of the shared PostgreSQL database, `postgresql://...`; empty for none. */
  readonly database: string;
}

/** What holds until the person says otherwise: a usual 6000-count workshop meter, a scope of 8 by 10 divisions. */
export const STANDARD_SETTINGS: Settings = {
  person: '',
  shop: '',
  instruments: ['meter', 'test-light', 'live-data', 'lead'],
  meter: {
    name: '6000-count meter',
    inputOhms: 10e6,
    volts: { ranges: [0.6, 6, 60, 600], counts: 6000, ofReading: 0.005, digits: 3 },
    ohms: { ranges: [600, 6e3, 60e3, 600e3, 6e6, 60e6], counts: 6000, ofReading: 0.01, digits: 3 },
  },
  sessions: '',
  captures: '',
  theme: 'auto',
  ascii: false,
  scope: { volts: 8, time: 10 },
  afterSession: [],
  rates: '',
  database: '',
};

/** What is wrong with the settings file, where it is, and the way out. Nothing in it was touched. */
export interface SettingsProblem {
  readonly path: string;
  readonly words: string;
  readonly fix: string;
}

/** The settings with their file. */
export interface SettingsStore {
  readonly path: string;
  /** The settings now, standard values where the file says nothing. */
  readonly values: Settings;
  /** Saves one setting; the problem when it is refused or cannot be saved, and then nothing has changed. */
  readonly set: <K extends keyof Settings>(key: K, value: Settings[K]) => SettingsProblem | null;
  /** Back to the standard value. */
  readonly reset: (key: keyof Settings) => SettingsProblem | null;
}

/** Opens the settings; a missing file is fine and is not created before something is set. */
export async function openSettings(
  env: Env,
): Promise<{ readonly store: SettingsStore } | { readonly problem: SettingsProblem }> {
  const folder = settingsFolder(env);
  const path = join(folder, 'config.json');
  try {
    const found = lstatSync(path, { throwIfNoEntry: false });
    // What was set stands on a disk that is not there now; the package below would put a file in the place of the link.
    if (found && !statSync(path, { throwIfNoEntry: false }))
      throw Object.assign(new Error(LEADS_NOWHERE), { code: LEADS_NOWHERE });
    // It reads whatever bears the name, and would wait for a pipe.
    if (found) closeSync(openPlainFile(path));
    else makeFolders(folder, 0o700);
  } catch (error) {
    return { problem: problemFrom(error, path) };
  }
  const { default: Conf } = await import('conf');
  const checked = await settingsCheck();
  try {
    const conf = new Conf<KeptSettings>({
      projectName: 'ohmward',
      projectSuffix: '',
      cwd: folder,
      clearInvalidConfig: false,
      configFileMode: 0o600,
      accessPropertiesByDotNotation: false,
      // The package would compile the schema anew each time.
      deserialize: (text) => checked(parsed(text)),
      serialize: (kept) => JSON.stringify(checked(kept), undefined, '\t'),
    });
    return { store: storeOver(conf, path) };
  } catch (error) {
    return { problem: problemFrom(error, path) };
  }
}

function parsed(text: string): KeptSettings {
  const kept: KeptSettings = JSON.parse(text);
  const doubled = doubledName(text);
  if (doubled !== null) throw new SchemaViolation(`"${doubled}" stands there twice`);
  return kept;
}

type SettingsCheck = <T>(kept: T) => T;
let known: SettingsCheck | null = null;

/** Gives back what keeps the schema, and throws all that is wrong with it; compiled once in a process. */
async function settingsCheck(): Promise<SettingsCheck> {
  if (known) return known;
  const { default: ajv } = await import('ajv/dist/2020.js');
  const validate = new ajv.Ajv2020({ allErrors: true }).compile({
    type: 'object',
    properties: SCHEMA,
    additionalProperties: false,
  });
  known = (kept) => {
    if (!isWhole(kept)) throw new SchemaViolation('a text holds half of a sign');
    if (validate(kept)) return kept;
    const wrong = (validate.errors ?? []).map(({ instancePath, message = '', params }) => {
      const unknown: unknown = params['additionalProperty'];
      const name = typeof unknown === 'string' ? `${instancePath}/${unknown}` : instancePath;
      return `"${name.slice(1)}" ${unknown === undefined ? message : 'is no setting'}`;
    });
    throw new SchemaViolation(firstOf(wrong));
  };
  return known;
}

/** A setting has a value it cannot have. */
class SchemaViolation extends Error {}

/**
 * What the first frame needs of the settings, before they are opened and checked: standard values for whatever is
 * missing or odd. Opening tells of a broken file a moment later.
 */
export function peekSettings(env: Env): Pick<Settings, 'theme' | 'ascii' | 'sessions'> {
  const { theme, ascii, sessions } = STANDARD_SETTINGS;
  try {
    const file = join(settingsFolder(env), 'config.json');
    const kept: unknown = JSON.parse(readPlainFile(file).toString('utf8'));
    const found = (kept ?? {}) as Readonly<Record<string, unknown>>;
    return {
      theme: found['theme'] === 'no-colour' ? 'no-colour' : theme,
      ascii: typeof found['ascii'] === 'boolean' ? found['ascii'] : ascii,
      sessions: typeof found['sessions'] === 'string' ? found['sessions'] : sessions,
    };
  } catch {
    return { theme, ascii, sessions };
  }
}

/** The file: what was set, and its form where the program has written it since there was one. */
type KeptSettings = Partial<Settings> & { readonly format?: number };

interface SettingsFile {
  store: KeptSettings;
}

function storeOver(conf: SettingsFile, path: string): SettingsStore {
  let values = withStandard(upgraded(conf.store));
  const save = (change: (kept: KeptSettings) => KeptSettings): SettingsProblem | null => {
    try {
      const wanted = change(upgraded(conf.store));
      withCopyAside(path, () => {
        conf.store = wanted;
        return sameSettings(conf.store, wanted);
      });
      values = withStandard(wanted);
      return null;
    } catch (error) {
      return problemFrom(error, path);
    }
  };
  return {
    path,
    get values() {
      return values;
    },
    set: (key, value) => save((kept) => ({ ...kept, [key]: value })),
    reset: (key) =>
      save((kept) => {
        const { [key]: _, ...rest } = kept;
        return rest;
      }),
  };
}

function withStandard({ format, ...kept }: KeptSettings): Settings {
  return { ...STANDARD_SETTINGS, ...kept };
}

/** A file from before some instruments could be ticked, as it would be written now. */
function upgraded(kept: KeptSettings): KeptSettings {
  if (kept.format !== undefined) return kept;
  const { instruments } = kept;
  return {
    ...kept,
    ...(instruments ? { instruments: [...new Set([...instruments, ...ALWAYS_HAD])] } : {}),
    format: SETTINGS_FORMAT,
  };
}

function sameSettings(a: KeptSettings, b: KeptSettings): boolean {
  const text = (kept: KeptSettings) => JSON.stringify(Object.entries(kept).sort());
  return text(a) === text(b);
}

/** The package's own writing may leave a cut file on a full disk; with the copy beside it nothing is lost. */
function withCopyAside(path: string, write: () => boolean): void {
  const aside = copyOf(path);
  const old = existsSync(path);
  if (old) {
    rmSync(aside, { force: true });
    copyFileSync(path, aside, constants.COPYFILE_EXCL);
    if (!readPlainFile(aside).equals(readPlainFile(path))) throw new Error('the disk is full');
  }
  let arrived = false;
  try {
    arrived = write();
  } finally {
    if (old && arrived) rmSync(aside, { force: true });
    else if (old) renameSync(aside, path);
    else if (!arrived) rmSync(path, { force: true });
  }
  if (!arrived) throw new Error('the new settings did not arrive whole on the disk');
}

function copyOf(path: string): string {
  return join(dirname(path), 'config.before.json');
}

function problemFrom(error: unknown, path: string): SettingsProblem {
  const { code, name, message } = error as NodeJS.ErrnoException;
  const start = existsSync(copyOf(path))
    ? `replace it with ${copyOf(path)}, its state before the last change`
    : 'move it away to start with the standard settings';
  if (name === 'SyntaxError')
    return {
      path,
      words: `the settings file is not valid JSON: ${message}`,
      fix: `correct it in an editor, or ${start}`,
    };
  if (error instanceof SchemaViolation)
    return {
      path,
      words: `a setting has a value it cannot have: ${message}`,
      fix: `correct that setting in the file, or ${start}`,
    };
  const wrongLink = WRONG_LINKS[code ?? ''];
  if (wrongLink) return { path, words: wrongLink, fix: 'remove the link, or lead it to a file' };
  if (code === NOT_A_FILE)
    return {
      path,
      words: 'a pipe or a device is where the settings file should be',
      fix: 'move it away',
    };
  return {
    path,
    words: `the settings file cannot be used: ${code ?? message}`,
    fix: 'check the rights on this file and its folder, and the space on the disk',
  };
}

const LEADS_NOWHERE = 'leads-nowhere';
const WRONG_LINKS: Readonly<Record<string, string>> = {
  ELOOP: 'the links at the settings file lead in a circle',
  [LEADS_NOWHERE]: 'the settings file is a link to a file that is not there',
};

/** So many are named; a file that another program has spoilt may have thousands. */
const VIOLATIONS_TOLD = 5;

function firstOf(all: readonly string[]): string {
  const more = all.length - VIOLATIONS_TOLD;
  const told = all.slice(0, VIOLATIONS_TOLD).join('; ');
  return more > 0 ? `${told}; and ${more} more` : told;
}

const text = { type: 'string', maxLength: 200 } as const;
const count = { type: 'integer', minimum: 1, maximum: 1_000_000 } as const;
const meterFunction = {
  type: 'object',
  additionalProperties: false,
  required: ['ranges', 'counts', 'ofReading', 'digits'],
  properties: {
    ranges: {
      type: 'array',
      minItems: 1,
      maxItems: 50,
      items: { type: 'number', exclusiveMinimum: 0 },
    },
    counts: count,
    ofReading: { type: 'number', minimum: 0, maximum: 0.2 },
    digits: { type: 'integer', minimum: 0, maximum: 100 },
  },
} as const;

const SCHEMA = {
  format: { type: 'integer', minimum: SETTINGS_FORMAT, maximum: SETTINGS_FORMAT },
  person: text,
  shop: text,
  instruments: { type: 'array', uniqueItems: true, items: { enum: [...INSTRUMENTS] } },
  meter: {
    type: 'object',
    additionalProperties: false,
    required: ['name', 'inputOhms', 'volts', 'ohms'],
    properties: {
      name: text,
      inputOhms: { type: 'number', minimum: 1e4, maximum: 1e12 },
      volts: meterFunction,
      ohms: meterFunction,
      amps: meterFunction,
    },
  },
  sessions: { type: 'string', maxLength: 4000 },
  captures: { type: 'string', maxLength: 4000 },
  theme: { enum: ['auto', 'no-colour'] },
  ascii: { type: 'boolean' },
  scope: {
    type: 'object',
    additionalProperties: false,
    required: ['volts', 'time'],
    properties: {
      volts: { type: 'integer', minimum: 2, maximum: 40 },
      time: { type: 'integer', minimum: 2, maximum: 40 },
    },
  },
  afterSession: { type: 'array', maxItems: 50, items: { type: 'string', minLength: 1 } },
  rates: { type: 'string', maxLength: 2000 },
  database: { type: 'string', maxLength: 2000, pattern: '^(postgres(ql)?://.*)?$' },
};
