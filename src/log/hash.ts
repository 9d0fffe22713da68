/** SHA-256 (FIPS 180-4) as lower-case hex. */
import { hash } from 'node:crypto';

/** 64 hex digits over the bytes, or over the UTF-8 form of a text. */
export function sha256(data: string | Uint8Array): string {
  return hash('sha256', data);
}
