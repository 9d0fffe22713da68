/**
 * The licences of what is bundled, as their authors ask for with every copy: `node scripts/licences.mjs` reads the source
 * maps of dist/ to see which packages are in it and writes dist/THIRD-PARTY.txt.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const LICENCE_FILE = /^(licen[cs]e|copying|notice)([.-].*)?$/i;

/** A package's folder in the path of one of its files; it can lie within another package. */
const PACKAGE_FOLDER = /node_modules\/(?:.*\/node_modules\/)?(?:@[^/]+\/)?[^/]+/;

/** Folders of the packages that are in the bundle of this folder, in order. */
export function bundledPackages(folder) {
  const maps = [folder, join(folder, 'parts')].flatMap((place) =>
    readdirSync(place)
      .filter((name) => name.endsWith('.mjs.map'))
      .map((name) => join(place, name)),
  );
  const folders = maps
    .flatMap((path) => JSON.parse(readFileSync(path, 'utf8')).sources)
    .map((source) => PACKAGE_FOLDER.exec(source)?.[0])
    .filter((one) => one !== undefined);
  return [...new Set(folders)].sort();
}

/** One part for each package: name, version, kind of licence, and its text as the package brings it. */
export function licenceText(folders) {
  const parts = folders.map((folder) => {
    const { name, version, license, author } = JSON.parse(
      readFileSync(join(folder, 'package.json'), 'utf8'),
    );
    const texts = readdirSync(folder)
      .filter((file) => LICENCE_FILE.test(file))
      .sort()
      .map((file) => readFileSync(join(folder, file), 'utf8').trim());
    const by = typeof author === 'string' ? author : (author?.name ?? '');
    if (texts.length === 0) texts.push(`Licence: ${license}${by === '' ? '' : `, by ${by}`}`);
    return [`${name} ${version} (${license})`, ...texts].join('\n\n');
  });
  const line = `\n\n${'-'.repeat(80)}\n\n`;
  return `${['Ohmward is bundled with parts of these packages.', ...new Set(parts)].join(line)}\n`;
}

if (import.meta.url === pathToFileURL(resolve(process.argv[1] ?? '')).href)
  writeFileSync('dist/THIRD-PARTY.txt', licenceText(bundledPackages('dist')));
