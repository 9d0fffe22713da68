import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { familiesPage, readingPage } from './guide-pages.ts';

it('docs/families.md is what the files say now; make it with: node scripts/guide.mjs', () => {
  const page = familiesPage();
  expect(readFileSync('docs/families.md', 'utf8')).toBe(page);
  const names = readdirSync('procedures/families').map((name) => name.replace('.yaml', ''));
  expect(names.filter((name) => !page.includes(`\n## ${name}\n`))).toEqual([]);
});

// By hand from procedures/families/feed-way.yaml: 6 + 0 at the least (the reference is down), 6 + 1 at the most.
it('minutes are those of the shortest and of the longest way through', () => {
  expect(familiesPage()).toMatch(
    /^\| \[feed-way\].* \| 6 to 7 \| dragged, contact, wire, way \|$/m,
  );
});

it('docs/reading.md is what the sample session gives now; make it with: node scripts/guide.mjs', () => {
  expect(readFileSync('docs/reading.md', 'utf8')).toBe(readingPage());
});
