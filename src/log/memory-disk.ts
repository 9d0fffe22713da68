/** A disk that is gone when the program ends: previews run through the same code as sessions and leave nothing behind. */
import { basename, dirname } from 'node:path';
import type { Disk, FileFacts } from './disk.ts';

interface Content {
  readonly identity: string;
  bytes: Uint8Array;
}

/** An empty disk. Every folder is there. */
export function memoryDisk(): Disk {
  const names = new Map<string, Content>();
  const opened = new Map<number, Content>();
  let made = 0;
  let handles = 0;
  const open = (content: Content): number => {
    handles += 1;
    opened.set(handles, content);
    return handles;
  };
  const named = (path: string) => names.get(path) ?? fail('ENOENT', path);
  const inHand = (file: number) => opened.get(file) ?? fail('EBADF', String(file));
  return {
    openNew: (path) => {
      if (names.has(path)) fail('EEXIST', path);
      made += 1;
      const content = { identity: String(made), bytes: new Uint8Array(0) };
      names.set(path, content);
      return open(content);
    },
    openAppend: (path) => open(named(path)),
    write: (file, bytes) => {
      const content = inHand(file);
      content.bytes = Buffer.concat([content.bytes, bytes]);
      return bytes.length;
    },
    syncData: () => {},
    syncFolder: () => {},
    truncate: (file, bytes) => {
      const content = inHand(file);
      content.bytes = content.bytes.slice(0, bytes);
    },
    factsOpen: (file) => factsOf(inHand(file)),
    facts: (path) => {
      const content = names.get(path);
      return content ? factsOf(content) : null;
    },
    rename: (from, to) => {
      names.set(to, named(from));
      names.delete(from);
    },
    remove: (path) => {
      named(path);
      names.delete(path);
    },
    read: (path) => named(path).bytes,
    readOpen: (file) => inHand(file).bytes,
    list: (folder) =>
      [...names.keys()].flatMap((path) => (dirname(path) === folder ? [basename(path)] : [])),
    close: (file) => {
      opened.delete(file);
    },
    rest: () => {},
    makeFolder: () => {},
  };
}

function factsOf({ identity, bytes }: Content): FileFacts {
  return { identity, bytes: bytes.length };
}

/** As a system error, which is what users of a disk know how to take. */
function fail(code: string, what: string): never {
  throw Object.assign(new Error(`${code}: ${what}`), { code });
}
