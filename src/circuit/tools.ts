/** What tests are made with, in the order in which it is ticked; its words for lists. Eyes everybody has. */
export const TOOLS = {
  meter: { words: 'Multimeter', about: 'Volts and ohms, 10 megohms input.' },
  'test-light': {
    words: 'LED test light',
    about: 'Draws about 32 mA at battery voltage; each test works out whether an output bears it.',
  },
  lamp: { words: 'Filament test lamp', about: 'Draws a quarter of an ampere: never on a module.' },
  scope: {
    words: 'Oscilloscope',
    about: 'For patterns and timing. Its clip may be joined to the mains ground.',
  },
  'live-data': { words: 'Live data', about: 'A tester that shows what the module counts.' },
  'spare-sensor': { words: 'Spare sensor', about: 'Known to be good, for this vehicle.' },
  resistor: { words: 'Resistors', about: 'To pull a signal without a light.' },
  lead: {
    words: 'Jumper leads',
    about: 'With a fuse each, to lay a wire beside one that may be broken.',
  },
  milliammeter: {
    words: 'Milliammeter',
    about: 'A meter with a fused milliampere socket, to be put into an opened wire.',
  },
} as const;
export type Tool = keyof typeof TOOLS;
/** What has to be at hand for a test. */
export type Need = Tool | 'eyes';

/** All of them, in that order. */
export const TOOL_NAMES = Object.keys(TOOLS) as readonly Tool[];
