/** How each kind of part fails, and what the failure is called; sensors say it of themselves (`sensors/`). */
import {
  type Fault,
  type FaultClass,
  followsBattery,
  type ModulePart,
  type Part,
  type PartMode,
  type SensorPart,
  type Span,
} from './circuit.ts';

/** A bad joint, wire or contact, in ohms. Wide: what no module notices is cut off when a circuit is loaded. */
export const RESISTIVE_OHMS: Span = { low: 0.5, high: 100_000 };
/** A sensor shorted inside. */
export const SENSOR_SHORT_OHMS: Span = { low: 0.1, high: 100 };
/** A weak reference, as a share of what it should be. */
const REFERENCE_LEFT: Span = { low: 0.1, high: 0.97 };
/** A weak output that should follow the battery: its switch has gone bad. */
const BATTERY_LEFT: Span = { low: 0.1, high: 0.97 };
/** Of a failure that is there or not. */
export const ONE_SIZE: Span = { low: 1, high: 1 };

/** Makes failures of a part, each with its share in its class as weight. */
export function partFault(part: Part) {
  const replace = { repair: `${part.name}.replace`, repairWords: `Replace ${theWords(part)}.` };
  return (
    id: string,
    of: FaultClass,
    share: number,
    words: string,
    mode: PartMode,
    at = '',
    size: Span = ONE_SIZE,
    other: Partial<Pick<Fault, 'repair' | 'repairWords' | 'subject' | 'visibleChance'>> = {},
  ): Fault => ({
    id: `${part.name}.${id}`,
    words,
    ...replace,
    subject: [part.name],
    visibleChance: 0.05,
    ...other,
    weight: share,
    class: of,
    effect: { kind: 'part', part: part.name, mode, at, size },
  });
}

/** The own failures of a part that is no sensor. */
export function partFaults(part: Exclude<Part, SensorPart>): Fault[] {
  const make = partFault(part);
  const the = theWords(part);
  switch (part.kind) {
    case 'module':
      return moduleFaults(part);
    case 'fuse':
      return [
        make('blown', 'supply', 2, `${the} is blown`, 'blown', '', ONE_SIZE, {
          visibleChance: 0.9,
          subject: [part.name, `connector.${part.name}`],
        }),
      ];
    case 'relay':
      return [
        make('contact-open', 'supply', 1, `the contact of ${the} does not close`, 'contact-open'),
        make(
          'contact-resistive',
          'supply',
          0.7,
          `the contact of ${the} is burnt`,
          'contact-resistive',
          '',
          RESISTIVE_OHMS,
        ),
        ...(part.coil
          ? [make('coil-open', 'supply', 0.5, `the coil of ${the} is broken`, 'coil-open')]
          : []),
      ];
    case 'neighbour':
      return [
        make(
          'shorted',
          'neighbour',
          1,
          `${the} is shorted and drags the shared feed down`,
          'shorted',
          '',
          ONE_SIZE,
          { visibleChance: 0.1 },
        ),
      ];
    case 'ground-point':
    case 'joint':
      return [];
  }
}

/** What can fail behind each pin of a module. */
function moduleFaults(part: ModulePart): Fault[] {
  const make = partFault(part);
  const the = theWords(part);
  return part.inside.flatMap(({ name, reference, pull, input, ground, driver }) => {
    const pin = spaced(name);
    const fault = (what: string, weight: number, words: string, mode: PartMode, size?: Span) =>
      make(`${name}.${what}`, 'module', weight, words, mode, name, size);
    return [
      ...(reference
        ? [
            fault('dead', 1, `${the} gives no ${pin}`, 'reference-dead'),
            fault(
              'low',
              0.5,
              `${the} gives a low ${pin}`,
              'reference-low',
              followsBattery(reference) ? BATTERY_LEFT : REFERENCE_LEFT,
            ),
          ]
        : []),
      ...(pull
        ? [
            fault(
              'pull-missing',
              1,
              `the resistor behind the ${pin} pin of ${the} is open`,
              'pull-missing',
            ),
          ]
        : []),
      ...(input
        ? [fault('input-dead', 1, `${the} does not read its ${pin} pin`, 'input-dead')]
        : []),
      ...(ground ? [fault('open', 1, `${the} has lost its ${pin} inside`, 'ground-open')] : []),
      ...(driver
        ? [fault('driver-dead', 1, `${the} does not switch its ${pin} pin`, 'driver-dead')]
        : []),
    ];
  });
}

/** `signal-plus` as people write it. */
export function spaced(name: string): string {
  return name.replace(/-/g, ' ');
}

/** `the crankshaft position sensor`, `the fuse of the engine sensors`, and `fuse F12`, which is its name. */
export function theWords(part: Part): string {
  return /^(?:the |(?:fuse|relay) (?!of\b))/i.test(part.words) ? part.words : `the ${part.words}`;
}
