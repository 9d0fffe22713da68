/** How many cars a command draws over what a circuit file leaves open. */
import { type Arguments, optionText } from './command.ts';

/** More take minutes and gigabytes and tell nothing new. */
export const CARS_MAX = 10_000;

/** The number of `--cars`; null where it was not given or is no such number. */
export function carsAsked(args: Arguments): number | null {
  const text = optionText(args, 'cars');
  if (text === undefined || !/^[1-9]\d{0,4}$/.test(text)) return null;
  const cars = Number(text);
  return cars <= CARS_MAX ? cars : null;
}
