/** Reads every hostile file in turn and prints the most memory this process ever held, in megabytes. */
import { BYTES_ATTACKS } from './bytes-attacks.ts';
import { GOOD } from './good-files.ts';
import { mostMb } from './most-mb.ts';
import { readAs, YAML_KINDS } from './readers.ts';
import { attacksOn } from './yaml-attacks.ts';

let count = 0;
for (const { kind, bytes } of BYTES_ATTACKS) {
  readAs(kind, bytes);
  count += 1;
}
for (const kind of YAML_KINDS)
  for (const { text } of attacksOn(kind)) {
    readAs(kind, text(GOOD[kind]));
    count += 1;
  }
process.stdout.write(JSON.stringify({ count, mostMb: mostMb() }));
