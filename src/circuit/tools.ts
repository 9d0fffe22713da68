/** What tests are made with, in the order in which it is ticked; its words for lists. Eyes everybody has. */
export const TOOLS = {
  meter: { words: 'Multimeter', about: 'Volts and ohms, 10 megohms input.' },
  'test-light': {
    words: 'LED test light',
    about:
      'Draws about 32 mA at battery voltage; each test works out whether an output can take it.',
  },
  lamp: { words: 'Filament test lamp', about: 'Draws a quarter of an ampere: never on a module.' },
  scope: {
    words: 'Oscilloscope',
    about: 'For patterns and timing. Its ground clip may be tied to mains earth.',
  },
  'live-data': { words: 'Live data', about: 'A scan tool that shows what the module counts.' },
  'spare-sensor': { words: 'Spare sensor', about: 'Known to be good, for this vehicle.' },
  resistor: { words: 'Resistors', about: 'To pull a signal down without a light.' },
  lead: {
    words: 'Jumper leads',
    about: 'Fused, to bypass a wire that may be open.',
  },
  milliammeter: {
    words: 'Milliammeter',
    about: 'A meter with a fused mA socket, for in-series use.',
  },
} as const;
export type Tool = keyof typeof TOOLS;
/** What has to be at hand for a test. */
export type Need = Tool | 'eyes';

/** All of them, in that order. */
export const TOOL_NAMES = Object.keys(TOOLS) as readonly Tool[];
