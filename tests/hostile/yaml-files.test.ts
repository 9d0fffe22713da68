/** Hostile files of every kind are refused at their line or harmless; the table is yaml-attacks.ts. */
import { describe, expect, it } from 'vitest';
import { GOOD } from './good-files.ts';
import { cpuMs, flawOfAnswer, prototypesNow, readAs, YAML_KINDS } from './readers.ts';
import { attacksOn } from './yaml-attacks.ts';

/** No file may keep a person waiting longer (processor time, the same on a busy machine). */
const ANSWER_MS = 2000;

it.each(YAML_KINDS)('the good %s that the hostile ones are made of is good', (kind) => {
  expect(readAs(kind, GOOD[kind].lines.join('\n'))).toEqual({ usable: true, issues: [] });
});

describe.each(YAML_KINDS)('a %s with', (kind) => {
  it.each(attacksOn(kind).map((attack) => [attack.what, attack] as const))('%s', (_, attack) => {
    const good = GOOD[kind];
    const text = attack.text(good);
    const before = prototypesNow();
    const { value: answered, ms } = cpuMs(() => readAs(kind, text));
    expect(prototypesNow()).toBe(before);
    expect(flawOfAnswer(answered, text)).toBeNull();
    expect(ms).toBeLessThan(ANSWER_MS);
    const codes = answered.issues.map(({ code }) => code);
    const code = attack.but && kind in attack.but ? attack.but[kind]! : attack.code;
    if (code === null) expect(codes).toEqual([]);
    else expect(codes).toContain(code);
    expect(answered.usable).toBe(code === null);
    const line = attack.line(good);
    const lines = answered.issues.filter((one) => one.code === code).map(({ at }) => at.line);
    if (line !== null) expect(lines).toContain(line);
  });
});
