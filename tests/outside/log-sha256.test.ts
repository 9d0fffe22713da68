/** SHA-256 against the examples of FIPS 180-4 (NIST, "Examples with Intermediate Values"; the last from FIPS 180-2 B.3). */
import { expect, it } from 'vitest';
import { sha256 } from '../../src/log/hash.ts';

// Message, digest. "abc" as published; the others also computed with coreutils sha256sum and Python hashlib.
const VECTORS: readonly (readonly [string, string, string])[] = [
  ['nothing', '', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'two blocks',
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'a million a',
    'a'.repeat(1_000_000),
    'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
  ],
];

it.each(VECTORS)('%s', (_name, message, digest) => {
  expect(sha256(message)).toBe(digest);
  expect(sha256(Buffer.from(message))).toBe(digest);
});
