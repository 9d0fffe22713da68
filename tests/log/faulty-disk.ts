/**
 * A disk in memory that fails when told to and forgets what was not synced when the power goes.
 *
 * What is seen (page cache) and what would survive (medium) are kept apart: bytes go from one to the other by
 * syncData, names by syncFolder. A power cut takes each unsynced 512-byte sector, and each unsynced name, or not.
 */
import type { Disk, FileFacts } from '../../src/log/disk.ts';

export const FAULTS = [
  'ENOSPC',
  'EIO',
  'EROFS',
  'short',
  'no-progress',
  'sync-drops',
  'EINTR',
] as const;
type FaultKind = (typeof FAULTS)[number];

export interface Fault {
  readonly kind: FaultKind;
  /** The operation, counted from 1, at which it begins to lurk; it strikes the next one of its kind. */
  readonly at: number;
  /** From then on, or only once. */
  readonly persistent: boolean;
  /** A failing write still takes some of its bytes. */
  readonly partial: boolean;
  /** Only files and folders below this path are struck. */
  readonly below: string;
}

interface Inode {
  id: number;
  seen: Uint8Array;
  medium: Uint8Array;
  /** Byte ranges not on the medium yet. */
  dirty: [number, number][];
}

type Operation =
  | 'open'
  | 'write'
  | 'sync'
  | 'folder-sync'
  | 'truncate'
  | 'rename'
  | 'remove'
  | 'facts';

const SECTOR = 512;

export class FaultyDisk implements Disk {
  /** Operations so far that a fault could have struck. */
  operations = 0;
  /** How often a fault did strike. */
  strikes = 0;
  fault: Fault | null = null;
  readonly #random: () => number;
  #names = new Map<string, Inode>();
  #durableNames = new Map<string, Inode>();
  #open = new Map<number, { inode: Inode; path: string }>();
  #nextHandle = 3;
  #nextInode = 1;

  constructor(random: () => number) {
    this.#random = random;
  }

  openNew = (path: string): number => {
    this.#strike('open', path);
    if (this.#names.has(path)) fail('EEXIST');
    const inode: Inode = {
      id: this.#nextInode++,
      seen: new Uint8Array(),
      medium: new Uint8Array(),
      dirty: [],
    };
    this.#names.set(path, inode);
    return this.#handle(inode, path);
  };

  openAppend = (path: string): number => {
    this.#strike('open', path);
    return this.#handle(this.#names.get(path) ?? fail('ENOENT'), path);
  };

  write = (file: number, bytes: Uint8Array): number => {
    const { inode, path } = this.#of(file);
    const struck = this.#struck('write', path);
    if (!struck) return this.#append(inode, bytes);
    if (struck.kind === 'no-progress') return 0;
    const part = bytes.subarray(0, this.#part(bytes.length));
    if (struck.kind === 'short') return this.#append(inode, part);
    // The system reports a partial write first and the error at the next; a lying one does both at once.
    if (struck.partial && struck.kind !== 'EINTR') this.#append(inode, part);
    return fail(struck.kind);
  };

  syncData = (file: number): void => {
    const { inode, path } = this.#of(file);
    const struck = this.#struck('sync', path);
    if (struck) {
      // Linux after a failed fsync: the pages count as clean and are never written.
      inode.dirty = [];
      fail(struck.kind === 'sync-drops' ? 'EIO' : struck.kind);
    }
    const medium = new Uint8Array(inode.seen.length);
    medium.set(inode.medium.subarray(0, medium.length));
    for (const [from, to] of inode.dirty)
      medium.set(inode.seen.subarray(from, to), Math.min(from, medium.length));
    inode.medium = medium;
    inode.dirty = [];
  };

  syncFolder = (folder: string): void => {
    this.#strike('folder-sync', `${folder}/`);
    const inside = (path: string) => path.startsWith(`${folder}/`);
    for (const path of this.#durableNames.keys()) if (inside(path)) this.#durableNames.delete(path);
    for (const [path, inode] of this.#names) if (inside(path)) this.#durableNames.set(path, inode);
  };

  truncate = (file: number, bytes: number): void => {
    const { inode, path } = this.#of(file);
    this.#strike('truncate', path);
    inode.seen = inode.seen.slice(0, bytes);
    inode.dirty = inode.dirty
      .map(([from, to]): [number, number] => [from, Math.min(to, bytes)])
      .filter(([from, to]) => from < to);
  };

  factsOpen = (file: number): FileFacts => {
    const { inode, path } = this.#of(file);
    this.#strike('facts', path);
    return factsOf(inode);
  };

  facts = (path: string): FileFacts | null => {
    this.#strike('facts', path);
    const inode = this.#names.get(path);
    return inode ? factsOf(inode) : null;
  };

  rename = (from: string, to: string): void => {
    this.#strike('rename', from);
    const inode = this.#names.get(from) ?? fail('ENOENT');
    this.#names.delete(from);
    this.#names.set(to, inode);
  };

  remove = (path: string): void => {
    this.#strike('remove', path);
    if (!this.#names.delete(path)) fail('ENOENT');
  };

  read = (path: string): Uint8Array => (this.#names.get(path) ?? fail('ENOENT')).seen.slice();
  readOpen = (file: number): Uint8Array => this.#of(file).inode.seen.slice();
  list = (folder: string): string[] => {
    this.#strike('facts', `${folder}/`);
    const inside = [...this.#names.keys()].filter((path) => path.startsWith(`${folder}/`));
    return inside.map((path) => path.slice(folder.length + 1));
  };
  close = (file: number): void => {
    this.#open.delete(file);
  };
  rest = (): void => {};
  makeFolder = (): void => {};

  paths(): string[] {
    return [...this.#names.keys()].sort();
  }

  /** Changes a file as another program would. */
  meddle(path: string, bytes: Uint8Array): void {
    const inode = this.#names.get(path)!;
    inode.seen = bytes;
    inode.medium = bytes.slice();
  }

  /** The process dies, and with `power` the page cache as well. Faults are over. */
  crash(power: boolean): void {
    this.#open.clear();
    this.fault = null;
    if (!power) return;
    for (const path of new Set([...this.#names.keys(), ...this.#durableNames.keys()])) {
      const now = this.#names.get(path);
      const then = this.#durableNames.get(path);
      const kept = now === then || this.#random() < 0.5 ? then : now;
      if (kept) this.#names.set(path, kept);
      else this.#names.delete(path);
    }
    for (const inode of new Set(this.#names.values())) this.#loseCache(inode);
    this.#durableNames = new Map(this.#names);
  }

  /** Any length between the old and the new, and of the dirty sectors a random choice; the others are zeros. */
  #loseCache(inode: Inode): void {
    const { seen, medium } = inode;
    const shorter = Math.min(seen.length, medium.length);
    const length =
      shorter + Math.floor(this.#random() * (Math.abs(seen.length - medium.length) + 1));
    const kept = new Uint8Array(length);
    kept.set(medium.subarray(0, length));
    for (const [from, to] of inode.dirty) {
      for (let at = from; at < to; ) {
        const end = Math.min(to, (Math.floor(at / SECTOR) + 1) * SECTOR, length);
        if (end <= at) break;
        if (this.#random() < 0.5) kept.set(seen.subarray(at, end), at);
        at = end;
      }
    }
    inode.seen = kept;
    inode.medium = kept.slice();
    inode.dirty = [];
  }

  #append(inode: Inode, bytes: Uint8Array): number {
    const seen = new Uint8Array(inode.seen.length + bytes.length);
    seen.set(inode.seen);
    seen.set(bytes, inode.seen.length);
    inode.dirty.push([inode.seen.length, seen.length]);
    inode.seen = seen;
    return bytes.length;
  }

  #part(length: number): number {
    return Math.max(1, Math.floor(this.#random() * length));
  }

  #handle(inode: Inode, path: string): number {
    this.#open.set(this.#nextHandle, { inode, path });
    return this.#nextHandle++;
  }

  #of(file: number): { inode: Inode; path: string } {
    return this.#open.get(file) ?? fail('EBADF');
  }

  #strike(operation: Operation, path: string): void {
    const struck = this.#struck(operation, path);
    if (struck) fail(struck.kind === 'sync-drops' ? 'EIO' : struck.kind);
  }

  /** The fault that strikes this operation, null for none. Each kind can strike only where it happens in life. */
  #struck(operation: Operation, path: string): Fault | null {
    const { fault } = this;
    if (fault && !path.startsWith(fault.below)) return null;
    this.operations += 1;
    if (!fault || this.operations < fault.at) return null;
    if (!CAN_STRIKE[fault.kind].includes(operation)) return null;
    this.strikes += 1;
    if (!fault.persistent) this.fault = null;
    return fault;
  }
}

/** A transient fault waits for the first operation of its kind from `at` on. */
const CAN_STRIKE: Readonly<Record<FaultKind, readonly Operation[]>> = {
  ENOSPC: ['open', 'write', 'rename'],
  EIO: ['open', 'write', 'sync', 'folder-sync', 'truncate', 'rename', 'remove', 'facts'],
  EROFS: ['open', 'write', 'truncate', 'rename', 'remove'],
  short: ['write'],
  'no-progress': ['write'],
  'sync-drops': ['sync', 'folder-sync'],
  EINTR: ['write'],
};

function factsOf(inode: Inode): FileFacts {
  return { identity: `1:${inode.id}`, bytes: inode.seen.length };
}

/** Without a stack trace, which would cost more than all the rest of a run. */
function fail(code: string): never {
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  const error = Object.assign(new Error(code), { code });
  Error.stackTraceLimit = stackTraceLimit;
  throw error;
}
