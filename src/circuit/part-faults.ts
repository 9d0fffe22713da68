/** How each kind of part fails, and what the failure is called; sensors say it of themselves (`sensors/`). */
import type { Fault, FaultClass, Part, PartMode, Reference, SensorPart, Span } from './circuit.ts';

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
      return part.inside.flatMap((pin) => {
        const pinWords = spaced(pin.name);
        return [
          ...(pin.reference
            ? [
                make(
                  `${pin.name}.dead`,
                  'module',
                  1,
                  `${the} gives no ${pinWords}`,
                  'reference-dead',
                  pin.name,
                ),
                make(
                  `${pin.name}.low`,
                  'module',
                  0.5,
                  `${the} gives a low ${pinWords}`,
                  'reference-low',
                  pin.name,
                  followsBattery(pin.reference) ? BATTERY_LEFT : REFERENCE_LEFT,
                ),
              ]
            : []),
          ...(pin.pull
            ? [
                make(
                  `${pin.name}.pull-missing`,
                  'module',
                  1,
                  `the resistor behind the ${pinWords} pin of ${the} is open`,
                  'pull-missing',
                  pin.name,
                ),
              ]
            : []),
          ...(pin.input
            ? [
                make(
                  `${pin.name}.input-dead`,
                  'module',
                  1,
                  `${the} does not read its ${pinWords} pin`,
                  'input-dead',
                  pin.name,
                ),
              ]
            : []),
          ...(pin.ground
            ? [
                make(
                  `${pin.name}.open`,
                  'module',
                  1,
                  `${the} has lost its ${pinWords} inside`,
                  'ground-open',
                  pin.name,
                ),
              ]
            : []),
          ...(pin.driver
            ? [
                make(
                  `${pin.name}.driver-dead`,
                  'module',
                  1,
                  `${the} does not switch its ${pinWords} pin`,
                  'driver-dead',
                  pin.name,
                ),
              ]
            : []),
        ];
      });
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

/** It does so in some cars at least. */
function followsBattery({ volts, batteryChance }: Reference): boolean {
  return volts === 'battery' || batteryChance !== undefined;
}

/** `signal-plus` as people write it. */
export function spaced(name: string): string {
  return name.replace(/-/g, ' ');
}

/** `the crankshaft position sensor`. */
export function theWords(part: Part): string {
  return /^(the|fuse|relay) /i.test(part.words) ? part.words : `the ${part.words}`;
}
