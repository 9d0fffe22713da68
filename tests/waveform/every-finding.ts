/** Everything that can speak against a signal, with what it is in words of a channel named `crank`. */
import type { Finding } from '../../src/waveform/finding.ts';

const WHEEL = { teeth: 60, missing: 2 };

/** One of each, with every form of its sentence. */
export const FINDINGS: readonly (readonly [Finding, string])[] = [
  [
    { kind: 'coarse', samplesPerPulse: 4 },
    'crank: only 4.0 samples in a pulse; capture it at a higher sample rate',
  ],
  [{ kind: 'dead', level: 0.0071, unit: 'A' }, 'crank is dead: it stays at 7.1 mA'],
  [{ kind: 'stuck-high', volts: 4.9 }, 'crank is stuck high at 4.9 V: it never changes'],
  [{ kind: 'stuck-low', volts: 0.1 }, 'crank is stuck low at 0.1 V: it never changes'],
  [
    { kind: 'stuck-between', volts: 2.5 },
    'crank is stuck at 2.5 V, between low and high: it never changes',
  ],
  [
    { kind: 'low-not-low', of: 'level', volts: 1.8, limitVolts: 1.5 },
    'crank: the low level is 1.8 V, the module needs less than 1.5 V',
  ],
  [
    { kind: 'low-not-low', of: 'sweep', volts: 1.8, limitVolts: 1.5 },
    'crank: it only drops to 1.8 V, the module needs less than 1.5 V',
  ],
  [
    { kind: 'high-not-high', of: 'level', volts: 3.2, limitVolts: 3.5 },
    'crank: the high level is 3.2 V, the module needs more than 3.5 V',
  ],
  [
    { kind: 'high-not-high', of: 'sweep', volts: 3.2, limitVolts: 3.5 },
    'crank: it only rises to 3.2 V, the module needs more than 3.5 V',
  ],
  [
    { kind: 'noisy', noise: 0.001, swing: 0.007, unit: 'A' },
    'crank is noisy: 1 mA on a swing of 7 mA',
  ],
  [{ kind: 'drop-out', seconds: [0.2625], pitch: null }, 'crank: a tooth drops out at 263 ms'],
  [
    { kind: 'extra-pulses', seconds: [0.1, 0.2], pitch: 21 },
    'crank: a false pulse appears at 100 ms, 200 ms, always at pitch 21',
  ],
  [
    {
      kind: 'contact-lost',
      unit: 'V',
      places: [{ at: 0.8, seconds: 0.02, from: 2.1, to: 0 }],
    },
    'crank: contact is lost at 2.1 V (to 0 V for 20 ms)',
  ],
  [
    { kind: 'pattern', found: null, wanted: WHEEL },
    'crank: no full turn of a 60-2 wheel can be found',
  ],
  [
    { kind: 'pattern', found: { teeth: 36, missing: 1 }, wanted: { teeth: 24, missing: 0 } },
    'crank: the pattern is 36-1, it should be 24 teeth',
  ],
  [
    { kind: 'missing-teeth', teeth: [], seen: 55, of: 58 },
    'crank: only 55 of 58 teeth are seen in every turn',
  ],
  [
    { kind: 'missing-teeth', teeth: [17], seen: 57, of: 58 },
    'crank: tooth 17 is missing in every turn, counted from the gap',
  ],
  [
    { kind: 'missing-teeth', teeth: [17, 18], seen: 56, of: 58 },
    'crank: teeth 17, 18 are missing in every turn, counted from the gap',
  ],
  [
    { kind: 'weak', volts: 0.12, hertz: 200, limitVolts: 0.2 },
    'crank is weak at low speed: 0.12 V peak to peak at 200 Hz',
  ],
  [{ kind: 'weak-teeth', teeth: [5] }, 'crank: tooth 5 is weaker than the others'],
  [
    { kind: 'run-out', share: 0.404, limitShare: 0.3 },
    'crank: the amplitude varies by 40 % once a turn: run-out or a loose wheel',
  ],
  [{ kind: 'inverted', seen: 'high' }, 'crank is inverted: it is high while the gap passes'],
  [
    { kind: 'inverted', seen: 'positive' },
    'crank is inverted: the lobe before the gap is positive; the leads are swapped',
  ],
  [
    { kind: 'currents', state: 'high', amperes: 0.01, wantedAmperes: 0.014 },
    'crank: the high current is 10 mA instead of 14 mA',
  ],
  [
    { kind: 'slow-edges', edgeSeconds: 2e-4, pulseSeconds: 6e-4 },
    'crank: edges are rounded, 200 µs of a pulse of 600 µs',
  ],
];
