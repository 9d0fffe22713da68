/** The cautions of the library, as a session opens with them. */
import { readFileSync } from 'node:fs';
import { loadCautions } from '../../src/procedure/cautions.ts';

export const LIBRARY_CAUTIONS = loadCautions(
  readFileSync('procedures/cautions.yaml', 'utf8'),
  'cautions.yaml',
).value!.rules;
