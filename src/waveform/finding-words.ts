/** What speaks against a signal, in words a technician would use. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import type { WheelExpected } from './find-wheel.ts';
import type { Finding } from './finding.ts';

/** Places and teeth named one by one; more are counted. */
const PLACES_NAMED = 5;

/** One sentence without a full stop. `name` is the channel's: text from a file, to be made harmless by who shows it. */
export function findingWords(finding: Finding, name: string): string {
  switch (finding.kind) {
    case 'coarse':
      return `${name}: only ${finding.samplesPerPulse.toFixed(1)} samples in a pulse; capture it at a higher sample rate`;
    case 'dead':
      return `${name} is dead: it stays at ${show(finding.level, finding.unit)}`;
    case 'stuck-high':
      return `${name} is stuck high at ${show(finding.volts, 'V')}: it never changes`;
    case 'stuck-low':
      return `${name} is stuck low at ${show(finding.volts, 'V')}: it never changes`;
    case 'stuck-between':
      return `${name} is stuck at ${show(finding.volts, 'V')}, between low and high: it never changes`;
    case 'low-not-low':
      return `${name}: ${finding.of === 'level' ? 'the low level is' : 'it only drops to'} ${show(finding.volts, 'V')}, the module needs less than ${show(finding.limitVolts, 'V')}`;
    case 'high-not-high':
      return `${name}: ${finding.of === 'level' ? 'the high level is' : 'it only rises to'} ${show(finding.volts, 'V')}, the module needs more than ${show(finding.limitVolts, 'V')}`;
    case 'noisy':
      return `${name} is noisy: ${show(finding.noise, finding.unit)} on a swing of ${show(finding.swing, finding.unit)}`;
    case 'drop-out':
    case 'extra-pulses': {
      const what = finding.kind === 'drop-out' ? 'a tooth drops out' : 'a false pulse appears';
      const places = named(
        finding.seconds.map((seconds) => show(seconds, 's')),
        finding.more,
      );
      return `${name}: ${what} at ${places}${finding.pitch === null ? '' : `, always at pitch ${finding.pitch}`}`;
    }
    case 'contact-lost': {
      const places = finding.places.map(
        ({ from, to, seconds }) =>
          `${show(from, finding.unit)} (to ${show(to, finding.unit)} for ${show(seconds, 's')})`,
      );
      return `${name}: contact is lost at ${named(places, finding.more)}`;
    }
    case 'pattern':
      return finding.found === null
        ? `${name}: no full turn of a ${finding.wanted.teeth}-${finding.wanted.missing} wheel can be found`
        : `${name}: the pattern is ${wheelWords(finding.found)}, it should be ${wheelWords(finding.wanted)}`;
    case 'missing-teeth':
      return finding.teeth.length === 0
        ? `${name}: only ${finding.seen} of ${finding.of} teeth are seen in every turn`
        : `${name}: ${teethAre(finding.teeth, finding.more)} missing in every turn, counted from the gap`;
    case 'weak':
      return `${name} is weak at low speed: ${show(finding.volts, 'V')} peak to peak at ${show(finding.hertz, 'Hz')}`;
    case 'weak-teeth':
      return `${name}: ${teethAre(finding.teeth, finding.more)} weaker than the others`;
    case 'run-out':
      return `${name}: the amplitude varies by ${Math.round(finding.share * 100)} % once a turn: run-out or a loose wheel`;
    case 'inverted':
      return finding.seen === 'low' || finding.seen === 'high'
        ? `${name} is inverted: it is ${finding.seen} while the gap passes`
        : `${name} is inverted: the lobe before the gap is ${finding.seen}; the leads are swapped`;
    case 'currents':
      return `${name}: the ${finding.state} current is ${show(finding.amperes, 'A')} instead of ${show(finding.wantedAmperes, 'A')}`;
    case 'slow-edges':
      return `${name}: edges are rounded, ${show(finding.edgeSeconds, 's')} of a pulse of ${show(finding.pulseSeconds, 's')}`;
  }
}

function wheelWords({ teeth, missing }: WheelExpected): string {
  return missing === 0 ? `${teeth} teeth` : `${teeth}-${missing}`;
}

function teethAre(teeth: readonly number[], more = 0): string {
  const one = teeth.length + more === 1;
  return `${one ? 'tooth' : 'teeth'} ${named(teeth.map(String), more)} ${one ? 'is' : 'are'}`;
}

function named(places: readonly string[], more = 0): string {
  const rest = places.length + more - PLACES_NAMED;
  return `${places.slice(0, PLACES_NAMED).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

function show(value: number, unit: Unit): string {
  return formatQuantity({ value, unit });
}
