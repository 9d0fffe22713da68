/** A procedure of one step and its conclusion. */
import { ARRANGEMENT } from '../../src/circuit/arrange-test.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';

export const SHORT: Procedure = {
  name: 'short',
  title: 'Short',
  about: '',
  circuit: 'hall-module-fed',
  codes: [],
  start: 'feed',
  steps: {
    feed: {
      id: 'feed',
      kind: 'measure',
      title: 'Feed at {sensor.feed}',
      family: 'reference',
      setup: ARRANGEMENT.setup,
      say: '',
      why: '',
      minutes: 5,
      cautions: [],
      cannot: null,
      probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
      unit: 'V',
      expected: null,
      outcomes: [{ name: 'any', words: '', from: null, to: null, go: 'bad' }],
    },
    bad: {
      id: 'bad',
      kind: 'conclude',
      title: 'Sensor bad',
      faults: [],
      say: 'Everything around the sensor is sound.',
      repair: 'Replace the sensor.',
      customer: '',
      retest: [],
    },
  },
};
