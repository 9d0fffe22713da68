/** The superuser reads and writes everything, so it is somebody else for a moment. */
export function asNobody<T>(action: () => T): T {
  const isRoot = process.getuid?.() === 0;
  if (isRoot) process.seteuid?.(65534);
  try {
    return action();
  } finally {
    if (isRoot) process.seteuid?.(0);
  }
}
