/**
 * YAML 1.2 core as plain data, with the place of every key and value.
 *
 * Authors' files are untrusted: no tags, anchors or aliases, bounded depth and size, no invisible or control characters,
 * objects without prototype. Places are needed only when something is wrong, so what is plain is read without them.
 */

import type { Checked } from './issue.ts';
import { readPlainYaml } from './plain-yaml.ts';
import { readWholeYaml, refusedText } from './whole-yaml.ts';
import type { YamlSource } from './yaml-source.ts';

/** Above these a file is no procedure, circuit or job that a person wrote. */
export const MAX_CHARACTERS = 1_000_000;
/** Empty lines cost the parser more than their letters. */
const MAX_LINES = 50_000;

/** What was read last: first it is asked what a file is, and then what it holds. */
let last: {
  readonly text: string;
  readonly file: string;
  readonly read: Checked<YamlSource>;
} | null = null;

/** Reads one YAML document. `value` is null only when there is nothing usable at all. */
export function parseYaml(text: string, file: string): Checked<YamlSource> {
  if (last?.file !== file || last.text !== text) last = { text, file, read: readYaml(text, file) };
  return last.read;
}

function readYaml(text: string, file: string): Checked<YamlSource> {
  if (text.length > MAX_CHARACTERS || lineFeeds(text) > MAX_LINES)
    return refusedText(
      { file, line: 1, column: 1, endLine: 1, endColumn: 1 },
      'file-too-large',
      text.length > MAX_CHARACTERS
        ? `this file is larger than ${MAX_CHARACTERS} characters`
        : `this file has more than ${MAX_LINES} lines`,
    );
  const data = readPlainYaml(text);
  if (data === null) return readWholeYaml(text, file);
  let whole: YamlSource | null = null;
  const locate: YamlSource['locate'] = (path, what) => {
    whole ??= readWholeYaml(text, file).value!;
    return whole.locate(path, what);
  };
  return { value: { file, text, data, locate }, issues: [] };
}

function lineFeeds(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}
