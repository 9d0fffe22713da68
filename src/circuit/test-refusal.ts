/** Why a test must not, or cannot, be done: a code with its facts, and the words made of it when it is shown. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { TerminalId, VehicleState } from './test.ts';

/** Why a test is refused, with the facts that its words are made of. */
export type TestRefusal =
  // Things that are not there, with the known name nearest to the one given.
  | { readonly code: 'no-connector'; readonly name: string; readonly near: string | null }
  | { readonly code: 'no-terminal'; readonly terminal: TerminalId; readonly near: string | null }
  | { readonly code: 'nothing-to-inspect'; readonly of: string; readonly near: string | null }
  | { readonly code: 'no-input'; readonly terminal: TerminalId }
  | { readonly code: 'nothing-turns' }
  // Places and states in which nothing can be read.
  | { readonly code: 'inside-connector'; readonly terminal: TerminalId; readonly part: string }
  | { readonly code: 'module-pin'; readonly terminal: TerminalId }
  | { readonly code: 'same-terminal'; readonly terminal: TerminalId }
  | { readonly code: 'spare-unplugged' }
  | { readonly code: 'wheel-turns'; readonly at: string; readonly state: VehicleState }
  | { readonly code: 'target-still' }
  | { readonly code: 'module-unplugged' }
  | { readonly code: 'module-off' }
  // What is clipped in, by a bridge or as the instrument itself.
  | { readonly code: 'bridge-same-terminal'; readonly terminal: TerminalId }
  | { readonly code: 'lamp-on-module'; readonly terminal: TerminalId }
  | {
      readonly code: 'few-ohms-on-module';
      readonly terminal: TerminalId;
      readonly ohms: number;
      readonly leastOhms: number;
    }
  | {
      readonly code: 'battery-on-module';
      readonly terminal: TerminalId;
      readonly is: 'reference' | 'input' | 'pin';
    }
  | { readonly code: 'module-to-ground'; readonly terminal: TerminalId }
  | { readonly code: 'pins-joined'; readonly terminals: readonly [TerminalId, TerminalId] }
  | { readonly code: 'short-circuit' }
  // What the circuit computes of it.
  | {
      readonly code: 'lifted';
      readonly terminal: TerminalId;
      readonly is: 'reference' | 'input' | 'feed';
      readonly volts: number;
      readonly madeForVolts: number;
      /** The module has no power. */
      readonly isDead: boolean;
    }
  | {
      readonly code: 'fuse-blows';
      readonly fuse: string;
      readonly amps: number;
      readonly ratedAmps: number;
    }
  | {
      readonly code: 'output-overloaded';
      readonly terminal: TerminalId;
      readonly bearsAmps: number;
    }
  // The ohmmeter, which drives a current of its own.
  | { readonly code: 'ohms-with-key'; readonly state: VehicleState }
  | { readonly code: 'ohms-on-battery'; readonly terminal: TerminalId }
  | { readonly code: 'ohms-on-electronics'; readonly terminal: TerminalId; readonly part: string }
  | {
      readonly code: 'ohms-across-electronics';
      readonly terminal: TerminalId;
      readonly part: string;
    }
  // The milliammeter, which joins its two places.
  | { readonly code: 'amps-across'; readonly terminals: readonly [TerminalId, TerminalId] }
  | { readonly code: 'amps-beside'; readonly terminals: readonly [TerminalId, TerminalId] };

/** The identity of a refusal, which tests and programs compare. */
export type TestRefusalCode = TestRefusal['code'];

/**
 * Whether the model can say what is shown although the test must not be done: earlier rules did not refuse it, and what
 * was read under them weighs.
 */
export function canBeAnswered({ code }: TestRefusal): boolean {
  return (
    code === 'lifted' ||
    code === 'fuse-blows' ||
    code === 'output-overloaded' ||
    code === 'ohms-on-battery' ||
    code === 'ohms-on-electronics' ||
    code === 'ohms-across-electronics'
  );
}

/** The reason in one sentence without a full stop. */
export function testRefusalWords(refusal: TestRefusal): string {
  switch (refusal.code) {
    case 'no-connector':
      return `there is no connector "${refusal.name}" to unplug${didYouMean(refusal.near)}`;
    case 'no-terminal':
      return `there is no terminal "${refusal.terminal}"${didYouMean(refusal.near)}`;
    case 'nothing-to-inspect':
      return `there is no "${refusal.of}" to look at${didYouMean(refusal.near)}`;
    case 'no-input':
      return `"${refusal.terminal}" is not an input of the module`;
    case 'nothing-turns':
      return 'nothing turns here, so there is no position to compare';
    case 'inside-connector':
      return `"${refusal.terminal}" is inside the connector and is only reached with "${refusal.part}" unplugged`;
    case 'module-pin':
      return `"${refusal.terminal}" is a pin of an unpowered module; there is nothing to measure there`;
    case 'same-terminal':
      return `both leads are at the same terminal, "${refusal.terminal}"`;
    case 'spare-unplugged':
      return 'a spare sensor that is not plugged in shows nothing';
    case 'wheel-turns':
      return `the wheel at the ${refusal.at} cannot stand still with the engine ${refusal.state}`;
    case 'target-still':
      return 'nothing is moving past the sensor, so there is no pattern to see';
    case 'module-unplugged':
      return 'the module has no supply with its connector off';
    case 'module-off':
      return 'the module shows no data with the key off';
    case 'bridge-same-terminal':
      return `both ends of the bridge are at "${refusal.terminal}"`;
    case 'lamp-on-module':
      return `a filament lamp draws too much for "${refusal.terminal}" of the module; use the LED light`;
    case 'few-ohms-on-module':
      return `${refusal.ohms} ohm may draw too much for "${refusal.terminal}" of the module; use ${refusal.leastOhms} ohm or more`;
    case 'battery-on-module':
      return `battery voltage must not reach "${refusal.terminal}", ${refusal.is === 'input' ? 'an' : 'a'} ${refusal.is} of the module`;
    case 'module-to-ground':
      return `"${refusal.terminal}" may only be pulled to ground through an LED light or a resistor`;
    case 'pins-joined':
      return `a plain jumper must not connect "${refusal.terminals[0]}" and "${refusal.terminals[1]}"`;
    case 'short-circuit':
      return 'a plain jumper from battery positive to ground is a dead short';
    case 'lifted':
      return `this can lift "${refusal.terminal}" to ${volts(refusal.volts)}, ${liftedWords(refusal)}`;
    case 'fuse-blows':
      return `this can draw ${amps(refusal.amps)} through the ${refusal.fuse}, which is rated ${amps(refusal.ratedAmps)}`;
    case 'output-overloaded':
      return `this puts more than ${amps(refusal.bearsAmps)} into the sensor's output "${refusal.terminal}"`;
    case 'ohms-with-key':
      return 'resistance is only measured with the key off';
    case 'ohms-on-battery':
      return `"${refusal.terminal}" carries battery voltage even with the key off`;
    case 'ohms-on-electronics':
      return `unplug "${refusal.part}" first: resistance is measured with nothing electronic in the circuit`;
    case 'ohms-across-electronics':
      return `"${refusal.part}" has electronics inside: ohms at its own pins say nothing and can damage it`;
    case 'amps-across':
      return `a meter on milliamperes connects "${refusal.terminals[0]}" and "${refusal.terminals[1]}" like a plain jumper: it goes in series, into an opened wire`;
    case 'amps-beside':
      return `"${refusal.terminals[0]}" and "${refusal.terminals[1]}" are still connected in parallel with the meter: open the wire at its connector first`;
  }
}

function liftedWords({
  is,
  madeForVolts,
  isDead,
}: Extract<TestRefusal, { code: 'lifted' }>): string {
  if (isDead) return 'and the module behind it has no power';
  if (is === 'reference') return `a supply that gives ${volts(madeForVolts)}`;
  return is === 'input'
    ? `an input that sees at most ${volts(madeForVolts)}`
    : `the feed of a part made for ${volts(madeForVolts)}`;
}

function volts(value: number): string {
  return formatQuantity({ value, unit: 'V' });
}

function amps(value: number): string {
  return formatQuantity({ value, unit: 'A' });
}

function didYouMean(near: string | null): string {
  return near === null ? '' : `; did you mean "${near}"?`;
}
