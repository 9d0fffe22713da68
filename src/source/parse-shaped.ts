/** A file whose shape a schema gives: read as YAML, then held against the schema. */
import { type Checked, isUsable } from './issue.ts';
import { parseYaml } from './parse-yaml.ts';
import { type SchemaError, schemaIssues } from './schema-issues.ts';
import type { YamlSource } from './yaml-source.ts';

/** What a schema is compiled to. */
type Validator<T> = ((data: unknown) => data is T) & { errors?: readonly SchemaError[] | null };

/** The data of a file in the shape of its schema, and where each key stands. */
interface Shaped<T> {
  readonly data: T;
  readonly source: YamlSource;
}

/** The data in `text`; null with issues where it is no YAML, or has another shape than `validate` asks for. */
export function parseShaped<T>(
  text: string,
  file: string,
  validate: Validator<T>,
): Checked<Shaped<T>> {
  const { value: source, issues } = parseYaml(text, file);
  if (!source || !isUsable(issues)) return { value: null, issues };
  const { data } = source;
  if (validate(data)) return { value: { data, source }, issues };
  return { value: null, issues: [...issues, ...schemaIssues(validate.errors, source)] };
}
