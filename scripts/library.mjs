/**
 * Writes docs/library.md from the shipped library: where each fault of each tree ends, minutes beside the cheapest
 * strategy, and the pictures of trees and circuits. `node scripts/library.mjs` takes a minute or two.
 */
import { writeFileSync } from 'node:fs';
import { bundled } from './bundled.mjs';

const { libraryPages } = await bundled('tests/library/library-pages.ts');
writeFileSync('docs/library.md', libraryPages());
