/**
 * What the generic codes of position and speed sensors mean, in our own words.
 *
 * The numbers and meanings are those of SAE J2012 / ISO 15031-6; those of the wheels, C0030 to C003B, are from memory, as
 * is the older numbering of them. Most come in blocks of five: circuit, range or performance, low, high, intermittent;
 * those of a wheel in blocks of three: ring, sensor, supply. Makers' own codes are described by their structure only.
 */
import { type CodeSystem, formatCode, readCode, type TroubleCode } from './trouble-code.ts';

/** What a sensor senses, as far as generic codes tell them apart. */
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

/** What a generic code means. */
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

interface CodeBlock {
  readonly first: number;
  readonly role: SensorRole;
  readonly which: string;
  readonly kinds?: readonly CodeKind[];
  /** What a code of the block says where that is not in the words of its kind. */
  readonly says?: Readonly<Record<number, string>>;
}

const FIVE: readonly CodeKind[] = ['circuit', 'range', 'low', 'high', 'intermittent'];

const WHEEL: Omit<CodeBlock, 'first' | 'which'> = {
  role: 'wheel',
  kinds: ['range', 'circuit', 'circuit'],
  says: {
    0: 'its ring or toothed wheel gives a wrong signal',
    2: 'something is wrong in its supply',
  },
};

const BLOCKS: readonly CodeBlock[] = [
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
  { first: 0x4030, which: 'left front', ...WHEEL },
  { first: 0x4033, which: 'right front', ...WHEEL },
  { first: 0x4036, which: 'left rear', ...WHEEL },
  { first: 0x4039, which: 'right rear', ...WHEEL },
];

/** An older numbering of the wheels, still met; one of its numbers has another meaning today. */
const OLDER_WHEELS: ReadonlyMap<number, string> = new Map([
  [0x4035, 'left front'],
  [0x4040, 'right front'],
  [0x4045, 'left rear'],
  [0x4050, 'right rear'],
]);

/** Sensor, which of several, and what its signal is compared with, by the code's two bytes. */
const CORRELATIONS: ReadonlyMap<number, readonly [SensorRole, string, string]> = new Map([
  [0x0016, ['camshaft', 'A bank 1', 'the crankshaft']],
  [0x0017, ['camshaft', 'B bank 1', 'the crankshaft']],
  [0x0018, ['camshaft', 'A bank 2', 'the crankshaft']],
  [0x0019, ['camshaft', 'B bank 2', 'the crankshaft']],
  [0x2135, ['throttle', 'A', 'track B']],
  [0x2136, ['throttle', 'A', 'track C']],
  [0x2137, ['throttle', 'B', 'track C']],
  [0x2138, ['pedal', 'D', 'track E']],
  [0x2139, ['pedal', 'D', 'track F']],
  [0x2140, ['pedal', 'E', 'track F']],
]);

/** All codes for position and speed sensors that this table knows, in their normal form. */
export function knownCodes(): string[] {
  const numbers = [
    ...BLOCKS.flatMap(({ first, kinds = FIVE }) => kinds.map((_, place) => first + place)),
    ...OLDER_WHEELS.keys(),
    ...CORRELATIONS.keys(),
  ];
  return [...new Set(numbers)].map(formatCode);
}

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
  intermittent: 'its signal is intermittent',
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
  const pair = CORRELATIONS.get(twoByte);
  if (pair) {
    const [sensorRole, which, against] = pair;
    const words = `${named(sensorRole, which)}: its signal does not match that of ${against}`;
    return { ...shared, sensorRole, which, kind: 'correlation', against, words };
  }
  const older = OLDER_WHEELS.get(twoByte);
  for (const { first, role, which, kinds = FIVE, says = {} } of BLOCKS) {
    const kind = kinds[twoByte - first];
    if (kind === undefined || kind === 'correlation') continue;
    const reason =
      says[twoByte - first] ?? (kind === 'low' && kinds !== FIVE ? SPEED_LOW : KIND_WORDS[kind]);
    const before = older === undefined ? '' : `; in an older numbering, still in use, ${older}`;
    const words = `${named(role, which)}: ${reason}${before}`;
    return { ...shared, sensorRole: role, which, kind, against: null, words };
  }
  if (older !== undefined) {
    const words = `${named('wheel', older)} in an older numbering still in use, of no wheel in today's: ${KIND_WORDS.circuit}`;
    const sensor = { sensorRole: 'wheel', which: older, kind: 'circuit', against: null } as const;
    return { ...shared, ...sensor, words };
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
