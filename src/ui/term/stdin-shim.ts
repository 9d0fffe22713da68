/**
 * What Ink is given as its keyboard: nothing. Ink 6.8 loses keys that come together and dies on Ctrl+F1
 * (ink#782, ink#901), so our own keyboard reads the terminal and Ink only needs something to hold.
 */
import { EventEmitter } from 'node:events';

/** A stream that says it is a terminal and never has anything to read. */
export function silentStdin(): NodeJS.ReadStream {
  const shim = Object.assign(new EventEmitter(), {
    isTTY: true,
    setRawMode: () => shim,
    setEncoding: () => shim,
    ref: () => shim,
    unref: () => shim,
    resume: () => shim,
    pause: () => shim,
    read: () => null,
  });
  return shim as unknown as NodeJS.ReadStream;
}
