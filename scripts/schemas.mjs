/**
 * From each JSON Schema in docs/schema: a validator that needs no library at run time, and its types.
 * `node scripts/schemas.mjs [NAME...] [--to FOLDER]` writes FOLDER/ROOM/generated/NAME.mjs and NAME.d.mts, by default
 * below src; both are checked in.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import Ajv from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { build } from 'esbuild';
import { compile } from 'json-schema-to-typescript';

const SCHEMAS = [
  { name: 'circuit', room: 'circuit', typeName: 'CircuitDraft' },
  { name: 'procedure', room: 'procedure', typeName: 'ProcedureDraft' },
  { name: 'job', room: 'procedure', typeName: 'JobDraft' },
  { name: 'cautions', room: 'procedure', typeName: 'CautionsDraft' },
  { name: 'answers', room: 'session', typeName: 'AnswersDraft' },
  { name: 'assignment', room: 'drill', typeName: 'AssignmentDraft' },
  { name: 'drill-actions', room: 'drill', typeName: 'ActionsDraft' },
  { name: 'session-event', room: 'log', typeName: 'CheckedEvent', firstOnly: true },
  { name: 'rpc', room: 'ui/rpc', typeName: 'Call', inlineRefs: false },
];

/** Keywords that say something to editors and to our wording of mistakes, and constrain nothing. */
const ANNOTATIONS = ['defaultSnippets', 'x-choices'];

const args = process.argv.slice(2);
const to = args.indexOf('--to');
const root = to < 0 ? 'src' : args[to + 1];
const wanted = to < 0 ? args : args.filter((_, index) => index !== to && index !== to + 1);
for (const entry of SCHEMAS) {
  if (wanted.length > 0 && !wanted.includes(entry.name)) continue;
  const path = `docs/schema/${entry.name}.schema.json`;
  if (!existsSync(path)) {
    console.error(`schemas: ${path} does not exist`);
    process.exitCode = 1;
    continue;
  }
  await generate(entry, JSON.parse(readFileSync(path, 'utf8')));
}

async function generate(
  { name, room, typeName, firstOnly = false, inlineRefs = !firstOnly },
  schema,
) {
  const folder = `${root}/${room}/generated`;
  mkdirSync(folder, { recursive: true });
  const ajv = new Ajv({
    // People are told all their mistakes at once; of what a program wrote the first one is enough.
    allErrors: !firstOnly,
    // The schema travels in each error, so that "did you mean" knows the allowed keys.
    verbose: !firstOnly,
    inlineRefs,
    messages: !firstOnly,
    discriminator: true,
    strict: true,
    strictTypes: false,
    strictRequired: false,
    allowUnionTypes: true,
    code: { source: true, esm: true },
  });
  for (const word of ANNOTATIONS) ajv.addKeyword(word);
  const source = standalone.default(ajv, ajv.compile(schema));
  // Bundled, so that ajv's small helpers (text length, deep equality) come along.
  const bundle = await build({
    stdin: { contents: source, resolveDir: process.cwd(), loader: 'js' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    // The same text where node_modules is a link.
    preserveSymlinks: true,
    minify: firstOnly,
    write: false,
    logLevel: 'warning',
  });
  const note = `// Made from docs/schema/${name}.schema.json by scripts/schemas.mjs. Change the schema, not this file.\n`;
  writeFileSync(`${folder}/${name}.mjs`, note + bundle.outputFiles[0].text);
  const types = await compile(withoutSiblings(schema), typeName, {
    bannerComment: note.trim(),
    additionalProperties: false,
    format: false,
    // As tuples, bounded lists make unreadable types; the validator counts.
    ignoreMinAndMaxItems: true,
    customName: (part, key) =>
      part.$id ? typeName : part.title === undefined || /\s/.test(part.title) ? key : part.title,
  });
  const validator = [
    "import type { SchemaError } from '../../source/schema-issues.ts';",
    `/** True when \`data\` has the shape of ${typeName}; \`errors\` of the last call otherwise. */`,
    `declare const validate: ((data: unknown) => data is ${typeName}) & { errors?: SchemaError[] | null };`,
    'export default validate;',
  ];
  writeFileSync(`${folder}/${name}.d.mts`, `${types}\n${validator.join('\n')}\n`);
}

/** A `$ref` beside title and description: in draft-07 the neighbours do not count, so types are read without them. */
function withoutSiblings(node) {
  if (Array.isArray(node)) return node.map(withoutSiblings);
  if (node === null || typeof node !== 'object') return node;
  if (typeof node.$ref === 'string') return { $ref: node.$ref };
  const kept = Object.entries(node).filter(([key]) => key !== 'discriminator');
  return Object.fromEntries(kept.map(([key, value]) => [key, withoutSiblings(value)]));
}
