import { constants } from 'node:os';
import { describe, expect, it } from 'vitest';
import { errorCodeOf, systemCode } from '../../src/files/error-code.ts';
import { errorCode } from '../../src/log/disk.ts';
import { failed } from '../../src/log/write-problem.ts';

/** As Node 20 throws it where the library below has no name for the number (seen with strace, fdatasync). */
const QUOTA = Object.assign(new Error('Unknown system error -122, fdatasync'), {
  errno: -constants.errno.EDQUOT,
  code: `Unknown system error -${constants.errno.EDQUOT}`,
});

describe('the name of a system error', () => {
  it('is told by its number where Node has none', () => {
    expect([systemCode(QUOTA), errorCode(QUOTA), errorCodeOf(QUOTA)]).toEqual([
      'EDQUOT',
      'EDQUOT',
      'EDQUOT',
    ]);
    expect(systemCode(Object.assign(QUOTA, { code: 'UNKNOWN' }))).toBe('EDQUOT');
    const { words, fix } = failed({
      ...{ code: errorCode(QUOTA), path: 'x', safeEvents: 1, canRetry: true },
    }).problem;
    expect(words).toMatch(/^Your disk quota is used up/);
    expect(fix).toMatch(/^Free some space, then try again/);
  });

  it('is the code where there is one, and nothing for other errors', () => {
    expect(systemCode(Object.assign(new Error('x'), { code: 'ENOSPC', errno: -28 }))).toBe(
      'ENOSPC',
    );
    expect(systemCode(new Error('x'))).toBeNull();
    expect(errorCodeOf(new Error('x'))).toBe('Error: x');
    expect(() => errorCode(new Error('x'))).toThrow('x');
  });
});
