/**
 * Writes the pages of the guide that are made from the library and a sample session: docs/families.md, docs/reading.md.
 * `node scripts/guide.mjs`; a test compares the pages.
 */
import { writeFileSync } from 'node:fs';
import { bundled } from './bundled.mjs';

const { familiesPage, readingPage } = await bundled('tests/library/guide-pages.ts');
writeFileSync('docs/families.md', familiesPage());
writeFileSync('docs/reading.md', readingPage());
