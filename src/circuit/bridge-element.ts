/** A light or a lamp clipped in between two terminals. */
import { lampElement } from './instruments/filament-lamp.ts';
import { lightElement } from './instruments/led-light.ts';
import type { Element } from './netlist.ts';

/** An instrument clipped in as a bridge. */
export function bridgeElement(through: 'test-light' | 'lamp', a: number, b: number): Element {
  return through === 'test-light' ? lightElement(a, b) : lampElement(a, b);
}
