/** How each kind of part fails, and what the failure is called. */
import type { Fault, FaultClass, Part, PartMode, Reference, Span } from './circuit.ts';

/** A bad joint, wire or contact, in ohms. Wide: what no module notices is cut off when a circuit is loaded. */
export const RESISTIVE_OHMS: Span = { low: 0.5, high: 100_000 };
/** A sensor shorted inside. */
const SENSOR_SHORT_OHMS: Span = { low: 0.1, high: 100 };
/** Share of turns left of a coil with shorted turns; resistance and voltage fall alike. */
const TURNS_LEFT: Span = { low: 0.05, high: 0.95 };
/** A weak reference, as a share of what it should be. */
const REFERENCE_LEFT: Span = { low: 0.1, high: 0.97 };
/** A weak output that should follow the battery: its switch has gone bad. */
const BATTERY_LEFT: Span = { low: 0.1, high: 0.97 };
/** Where a track breaks, as a share of its length. */
const BREAK_AT: Span = { low: 0.05, high: 0.95 };
const ONE: Span = { low: 1, high: 1 };

/** The part's own failures, each with its share in its class as weight. */
export function partFaults(part: Part): Fault[] {
  const replace = { repair: `${part.name}.replace`, repairWords: `Replace ${theWords(part)}.` };
  const make = (
    id: string,
    of: FaultClass,
    share: number,
    words: string,
    mode: PartMode,
    at = '',
    size: Span = ONE,
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
  const the = theWords(part);
  switch (part.kind) {
    case 'hall-switch':
      return [
        make('dead', 'sensor', 1.5, `${the} is dead`, 'dead'),
        make('stuck-low', 'sensor', 0.7, `the output of ${the} stays on`, 'stuck-low'),
        make('stuck-high', 'sensor', 1, `the output of ${the} stays off`, 'stuck-high'),
        make(
          'weak-pull-down',
          'sensor',
          0.5,
          `the output of ${the} pulls down weakly`,
          'weak-pull-down',
          '',
          RESISTIVE_OHMS,
        ),
        make(
          'shorted',
          'sensor',
          0.3,
          `${the} is shorted inside from feed to ground`,
          'shorted',
          '',
          SENSOR_SHORT_OHMS,
        ),
      ];
    case 'current-switch':
      return [
        make('dead', 'sensor', 1.5, `${the} is dead`, 'dead'),
        make('stuck-low', 'sensor', 0.8, `${the} stays at its small current`, 'stuck-low'),
        make('stuck-high', 'sensor', 0.8, `${the} stays at its large current`, 'stuck-high'),
        make(
          'shorted',
          'sensor',
          0.3,
          `${the} is shorted inside`,
          'shorted',
          '',
          SENSOR_SHORT_OHMS,
        ),
      ];
    case 'reluctor':
      return [
        make('coil-open', 'sensor', 1.5, `the coil of ${the} is broken`, 'coil-open'),
        make(
          'shorted-turns',
          'sensor',
          1,
          `the coil of ${the} has shorted turns`,
          'shorted-turns',
          '',
          TURNS_LEFT,
        ),
        make(
          'coil-resistive',
          'sensor',
          0.5,
          `the coil of ${the} has a bad joint inside`,
          'coil-resistive',
          '',
          RESISTIVE_OHMS,
        ),
        make(
          'leads-swapped',
          'connector',
          0.5,
          `the two wires of ${the} are swapped`,
          'leads-swapped',
          '',
          ONE,
          {
            repair: 'leads.swap',
            repairWords: `Swap the two wires of ${the} back.`,
            subject: [part.name, `connector.${part.name}`],
            visibleChance: 0.6,
          },
        ),
      ];
    case 'potentiometer':
      return part.tracks.flatMap(({ name }) => {
        const track = part.tracks.length > 1 ? trackWords(name) : 'the track';
        return [
          make(
            `${name}.track-open`,
            'sensor',
            1,
            `${track} of ${the} is broken`,
            'track-open',
            name,
            BREAK_AT,
          ),
          make(
            `${name}.wiper-open`,
            'sensor',
            1,
            `the wiper of ${track} of ${the} makes no contact`,
            'wiper-open',
            name,
          ),
          make(
            `${name}.worn-spot`,
            'sensor',
            2,
            `${track} of ${the} has a worn spot`,
            'worn-spot',
            name,
          ),
          make(
            `${name}.shorted`,
            'sensor',
            0.3,
            `${track} of ${the} is shorted inside from feed to ground`,
            'shorted',
            name,
            SENSOR_SHORT_OHMS,
          ),
        ];
      });
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
        make('blown', 'supply', 2, `${the} is blown`, 'blown', '', ONE, {
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
          ONE,
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

/** `track-1` is "track 1", any other name stands behind the word. */
function trackWords(name: string): string {
  const words = spaced(name);
  return words.startsWith('track') ? words : `track ${words}`;
}
