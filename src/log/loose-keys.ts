/** Objects of JSON of which nothing is known: what is not as it should be is passed on as it stands. */

/** An object by its keys, whatever stands behind them. */
export type Keys = Readonly<Record<string, unknown>>;

/** Whether it is an object and no list. */
export function isKeys(value: unknown): value is Keys {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Its keys; none of what is no object. */
export function looseKeysOf(value: unknown): Keys {
  return isKeys(value) ? value : {};
}

/** Whether it is a list with nothing in it. */
export function isEmpty(value: unknown): boolean {
  return Array.isArray(value) && value.length === 0;
}

/** The same but for one key. */
export function without(keys: Keys, name: string): Keys {
  const { [name]: _gone, ...rest } = keys;
  return rest;
}

/** Each item changed; what is no list, and items that are not of the kind that is changed, as they stand. */
export function each(list: unknown, change: (item: Keys) => unknown): unknown {
  return Array.isArray(list)
    ? list.map((item: unknown) => (isKeys(item) ? change(item) : item))
    : list;
}
