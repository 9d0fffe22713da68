/**
 * What the generic codes of position and speed sensors mean, in our own words.
 *
 * The numbers and meanings are those of SAE J2012 / ISO 15031-6. Most come in blocks of five: circuit, range or
 * performance, low, high, intermittent. Makers' own codes are described by their structure only.
 */
import { type CodeSystem, readCode, type TroubleCode } from './trouble-code.ts';

export type SensorRole =
  | 'crankshaft'
  | 'camshaft'
  | 'throttle'
  | 'pedal'
  | 'wheel'
  | 'vehicle-speed'
  | 'transmission-input'
  | 'transmission-output';

/** What a trouble code says of its circuit; the first five in the order of a block of numbers. */
export type CodeKind = 'circuit' | 'range' | 'low' | 'high' | 'intermittent' | 'correlation';

export interface CodeDescription {
  readonly code: string;
  readonly system: CodeSystem;
  readonly definedBy: TroubleCode['definedBy'];
  /** Null for codes that are not about a position or speed sensor. */
  readonly sensorRole: SensorRole | null;
  /** Which of several: `A`, `B bank 2`, `left front`; '' when there is one. */
  readonly which: string;
  readonly kind: CodeKind | null;
  /** For correlation codes, what the signal is compared with. */
  readonly against: string | null;
  readonly words: string;
  readonly twoByte: number;
}

interface Block {
  readonly first: number;
  readonly role: SensorRole;
  readonly which: string;
  readonly kinds?: readonly CodeKind[];
}

const FIVE: readonly CodeKind[] = ['circuit', 'range', 'low', 'high', 'intermittent'];

const BLOCKS: readonly Block[] = [
  { first: 0x0335, role: 'crankshaft', which: 'A' },
  { first: 0x0340, role: 'camshaft', which: 'A bank 1' },
  { first: 0x0345, role: 'camshaft', which: 'A bank 2' },
  { first: 0x0365, role: 'camshaft', which: 'B bank 1' },
  { first: 0x0385, role: 'crankshaft', which: 'B' },
  { first: 0x0390, role: 'camshaft', which: 'B bank 2' },
  { first: 0x0120, role: 'throttle', which: 'A' },
  { first: 0x0220, role: 'throttle', which: 'B' },
  { first: 0x0225, role: 'throttle', which: 'C' },
  { first: 0x2120, role: 'pedal', which: 'D' },
  { first: 0x2125, role: 'pedal', which: 'E' },
  { first: 0x2130, role: 'pedal', which: 'F' },
  // Speed sensors leave the pattern of five: the third place is "no signal", kept here as a low.
  {
    first: 0x0500,
    role: 'vehicle-speed',
    which: '',
    kinds: ['circuit', 'range', 'low', 'intermittent'],
  },
  {
    first: 0x0715,
    role: 'transmission-input',
    which: '',
    kinds: ['circuit', 'range', 'low', 'intermittent'],
  },
  {
    first: 0x0720,
    role: 'transmission-output',
    which: '',
    kinds: ['circuit', 'range', 'low', 'intermittent'],
  },
  { first: 0x4035, role: 'wheel', which: 'left front', kinds: ['circuit'] },
  { first: 0x4040, role: 'wheel', which: 'right front', kinds: ['circuit'] },
  { first: 0x4045, role: 'wheel', which: 'left rear', kinds: ['circuit'] },
  { first: 0x4050, role: 'wheel', which: 'right rear', kinds: ['circuit'] },
];

const CORRELATIONS: Readonly<Record<number, readonly [SensorRole, string, string]>> = {
  22: ['camshaft', 'A bank 1', 'the crankshaft'],
  23: ['camshaft', 'B bank 1', 'the crankshaft'],
  24: ['camshaft', 'A bank 2', 'the crankshaft'],
  25: ['camshaft', 'B bank 2', 'the crankshaft'],
  8501: ['throttle', 'A', 'track B'],
  8502: ['throttle', 'A', 'track C'],
  8503: ['throttle', 'B', 'track C'],
  8504: ['pedal', 'D', 'track E'],
  8505: ['pedal', 'D', 'track F'],
  8512: ['pedal', 'E', 'track F'],
};

const ROLE_WORDS: Readonly<Record<SensorRole, string>> = {
  crankshaft: 'crankshaft position sensor',
  camshaft: 'camshaft position sensor',
  throttle: 'throttle position sensor',
  pedal: 'accelerator pedal position sensor',
  wheel: 'wheel speed sensor',
  'vehicle-speed': 'vehicle speed sensor',
  'transmission-input': 'transmission input speed sensor',
  'transmission-output': 'transmission output speed sensor',
};

const KIND_WORDS: Readonly<Record<Exclude<CodeKind, 'correlation'>, string>> = {
  circuit: 'something is wrong in its circuit, or its signal is missing',
  range: 'its signal is there but implausible',
  low: 'its signal stays too low',
  high: 'its signal stays too high',
  intermittent: 'its signal drops out now and then',
};
const SPEED_LOW = 'its signal is too low or missing';

const SYSTEM_WORDS: Readonly<Record<CodeSystem, string>> = {
  powertrain: 'engine and transmission',
  chassis: 'chassis: brakes, steering, suspension',
  body: 'body and comfort',
  network: 'communication between modules',
};

/** What `typed` means, or null when it is no trouble code. Case, blanks and a failure-type byte do not matter. */
export function describeCode(typed: string): CodeDescription | null {
  const read = readCode(typed);
  if (read.status === 'refused') return null;
  const { code, system, definedBy, twoByte } = read;
  const shared = { code, system, definedBy, twoByte };
  const pair = CORRELATIONS[twoByte];
  if (pair) {
    const [sensorRole, which, against] = pair;
    const words = `${named(sensorRole, which)}: its signal does not fit that of ${against}`;
    return { ...shared, sensorRole, which, kind: 'correlation', against, words };
  }
  for (const { first, role, which, kinds = FIVE } of BLOCKS) {
    const kind = kinds[twoByte - first];
    if (kind === undefined || kind === 'correlation') continue;
    const reason = kind === 'low' && kinds !== FIVE ? SPEED_LOW : KIND_WORDS[kind];
    const words = `${named(role, which)}: ${reason}`;
    return { ...shared, sensorRole: role, which, kind, against: null, words };
  }
  const whose =
    definedBy === 'maker'
      ? "a maker's own code, see the maker's list"
      : 'a code of the standard that is not about a position sensor';
  const words = `${SYSTEM_WORDS[system]}: ${definedBy === 'reserved' ? 'a reserved number' : whose}`;
  return { ...shared, sensorRole: null, which: '', kind: null, against: null, words };
}

function named(role: SensorRole, which: string): string {
  return which === '' ? ROLE_WORDS[role] : `${ROLE_WORDS[role]} ${which}`;
}
