/** The table of tests of a session: made once for its circuit, procedure and meter, and open to tests of the person's own. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Meter, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { ownEntry, type TestEntry, testEntries } from '../suspects/test-entries.ts';

/** The tests that one session can be asked about. */
export interface TestTable {
  /** The steps of the procedure first, then the standard tests of the circuit, each test once. */
  readonly entries: readonly TestEntry[];
  /** The entry of the table; made for a test that is not in it. */
  readonly entryOf: (test: Test) => TestEntry;
}

interface KeptTable {
  readonly procedure: Procedure | null;
  readonly meter: string;
  readonly table: TestTable;
}
/** Tables of one circuit that are kept, the last ones made: a program that runs for days links procedures again and again. */
const TABLES_KEPT = 8;
const kept = new WeakMap<Circuit, KeptTable[]>();

/** The table; the same object for the same circuit, procedure and meter. */
export function testTable(circuit: Circuit, procedure: Procedure | null, meter: Meter): TestTable {
  const tables = kept.get(circuit) ?? [];
  kept.set(circuit, tables);
  const key = JSON.stringify(meter);
  const known = tables.find((one) => one.procedure === procedure && one.meter === key);
  if (known) return known.table;
  const table = makeTable(circuit, procedure, meter);
  tables.push({ procedure, meter: key, table });
  if (tables.length > TABLES_KEPT) tables.shift();
  return table;
}

function makeTable(circuit: Circuit, procedure: Procedure | null, meter: Meter): TestTable {
  const entries = testEntries(circuit, procedure, meter);
  const byKey = new Map(entries.map((entry) => [entry.key, entry]));
  const own = new Map<string, TestEntry>();
  return {
    entries,
    entryOf: (test) => {
      const key = testKey(test);
      const known = byKey.get(key) ?? own.get(key);
      if (known) return known;
      const { wiggle, ...still } = test;
      const made = ownEntry(
        circuit,
        test,
        meter,
        wiggle ? (byKey.get(testKey(still)) ?? null) : null,
      );
      own.set(key, made);
      return made;
    },
  };
}
