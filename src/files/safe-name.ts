/**
 * Names for session files, made by us and by nobody else: `YYYYMMDDTHHMMSSZ-<slug>-<8 hex>.jsonl`, later parts
 * `....part2.jsonl`. They sort by time, hold no character any file system minds, and never leave their folder.
 */
import { randomBytes } from 'node:crypto';

const MAX_SLUG = 40;
/** Names Windows keeps for devices, whatever follows the first dot. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;
const SESSION_NAME = /^(\d{8}T\d{6}Z-[a-z0-9-]{0,40}-[0-9a-f]{8})(?:\.part(\d{1,3}))?\.jsonl$/;

/** A new session file's name from its start (RFC 3339), a few words, and 8 random hex digits. */
export function sessionFileName(
  at: string,
  words: string,
  random: string = randomBytes(4).toString('hex'),
): string {
  const start = new Date(at.replace(/:60(?=[.Z+-])/, ':59')); // Date knows no leap seconds
  if (Number.isNaN(start.getTime())) throw new Error(`sessionFileName: ${at} is no time`);
  if (!/^[0-9a-f]{8}$/.test(random)) throw new Error('sessionFileName: 8 hex digits expected');
  const stamp = start
    .toISOString()
    .replace(/\.\d+Z$/, 'Z')
    .replace(/[-:]/g, '');
  return `${stamp}-${slugOf(words)}-${random}.jsonl`;
}

/** Words as [a-z0-9-], at most 40, accents dropped; `session` when nothing is left. */
export function slugOf(words: string): string {
  const slug = words
    .slice(0, 400)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, MAX_SLUG)
    .replace(/^-|-$/g, '');
  if (slug === '') return 'session';
  return RESERVED.test(slug) ? `x-${slug}` : slug;
}

/** The parts of a session file's name, part 1 being the first file; null for any other name. */
export function sessionPart(name: string): { readonly stem: string; readonly part: number } | null {
  const match = SESSION_NAME.exec(name);
  if (!match) return null;
  const part = Number(match[2] ?? 1);
  return match[2] !== undefined && part < 2 ? null : { stem: match[1]!, part };
}

/** The name of another part of the same session. */
export function sessionPartName(stem: string, part: number): string {
  return part === 1 ? `${stem}.jsonl` : `${stem}.part${part}.jsonl`;
}
