/** Whether two values of JSON are the same, whatever the order of their keys. */
export function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every(
      (key) => Object.hasOwn(other, key) && isSame(Reflect.get(one, key), Reflect.get(other, key)),
    )
  );
}
