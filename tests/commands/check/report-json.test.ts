/** What `check` says to other programs: our own JSON, and SARIF 2.1.0. */
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import type { CheckReport } from '../../../src/commands/check/check-files.ts';
import { reportJson, reportSarif } from '../../../src/commands/check/report-json.ts';
import type { Issue } from '../../../src/source/issue.ts';

const CWD = resolve('/shop/trees');
const at = (file: string, line = 3) => ({ file, line, column: 5, endLine: line, endColumn: 9 });
const bare: Issue = {
  code: 'unknown-step',
  severity: 'error',
  at: at('a b.yaml'),
  words: 'no step named "batery"',
};
const full: Issue = {
  ...bare,
  severity: 'warning',
  at: at(resolve('/elsewhere/c.yaml')),
  fix: 'did you mean "battery"?',
  notes: ['first note', 'second note'],
  cars: [{ fault: 'wire.open', wrong: 2, of: 256, share: 0.5, value: null }],
};
const report = { files: [], issues: [bare, full], proofs: [] } as unknown as CheckReport;

interface Sarif {
  readonly runs: readonly {
    readonly results: readonly {
      readonly ruleId: string;
      readonly level: string;
      readonly message: { readonly text: string };
      readonly properties?: unknown;
      readonly locations: readonly {
        readonly physicalLocation: { artifactLocation: { uri: string }; region: object };
      }[];
      readonly partialFingerprints: Readonly<Record<string, string>>;
    }[];
  }[];
}
const resultsOf = (issues: readonly Issue[]) =>
  (reportSarif({ ...report, issues } as CheckReport, CWD) as Sarif).runs[0]!.results;

test('SARIF: the message is what is wrong, then the notes, then the way out, and nothing else', () => {
  const texts = resultsOf([bare, full]).map(({ message }) => message.text);
  expect(texts).toEqual([
    'no step named "batery"',
    'no step named "batery". first note. second note. did you mean "battery"?',
  ]);
});

test('SARIF: level, place and cars', () => {
  const [first, second] = resultsOf([bare, full]);
  expect([first!.level, second!.level]).toEqual(['error', 'warning']);
  expect([first, second].map((one) => one!.ruleId)).toEqual(['unknown-step', 'unknown-step']);
  const place = first!.locations[0]!.physicalLocation;
  expect(place.artifactLocation.uri).toBe('a%20b.yaml');
  expect(place.region).toEqual({ startLine: 3, startColumn: 5, endLine: 3, endColumn: 9 });
  expect(second!.locations[0]!.physicalLocation.artifactLocation.uri).toMatch(
    /^file:.*\/elsewhere\/c\.yaml$/,
  );
  expect(first).not.toHaveProperty('properties');
  expect(second!.properties).toEqual({ cars: full.cars });
});

test('SARIF: the print stays when a line moves or a number changes, and goes with code, file or words', () => {
  const printOf = (issue: Issue) => Object.values(resultsOf([issue])[0]!.partialFingerprints)[0];
  const share = { ...bare, words: 'lost by 3.5 % of the cars' };
  expect(printOf({ ...bare, at: at('a b.yaml', 40) })).toBe(printOf(bare));
  expect(printOf({ ...share, words: 'lost by 12 % of the cars' })).toBe(printOf(share));
  for (const other of [
    { ...bare, code: 'unknown-fault' },
    { ...bare, words: 'no step named "x"' },
    { ...bare, at: at('b.yaml') },
  ])
    expect(printOf(other)).not.toBe(printOf(bare));
});

test('JSON: counts, and each issue with its place and no key that it lacks', () => {
  expect(reportJson(report, { table: false, costs: [] })).toEqual({
    schemaVersion: 1,
    files: [],
    errors: 1,
    warnings: 1,
    issues: [
      { code: 'unknown-step', severity: 'error', ...bare.at, words: bare.words },
      {
        ...{ code: 'unknown-step', severity: 'warning', ...full.at, words: full.words },
        ...{ fix: full.fix, cars: full.cars },
      },
    ],
  });
  expect(reportJson(report, { table: true, costs: [{ minutes: 1 }] })).toMatchObject({
    costs: [{ minutes: 1 }],
    proofs: [],
  });
});
