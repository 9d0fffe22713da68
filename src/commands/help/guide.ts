/** The pages of the guide by topic: the file names of docs/*.md, so that a new page is a topic by being there. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { guideFolder } from '../../files/folders.ts';
import { readTextFile } from '../../files/read-text.ts';
import { editDistance } from '../../source/nearest-name.ts';

/** One page of the guide, by the word that shows it. */
export interface GuideTopic {
  /** What is typed after `ohmward help`. */
  readonly name: string;
  /** Its first heading. */
  readonly title: string;
  /** The whole page in Markdown. */
  readonly text: string;
}

/** Topics that an error lists at most. */
const NEAR_MAX = 3;
/** A name is near if no more than this share of its letters has to change. Our choice. */
const NEAR_SHARE = 0.34;

/** All pages that came with the program, by name; none where it was installed without them. */
export function guideTopics(folder: string | null = guideFolder()): GuideTopic[] {
  if (folder === null) return [];
  return readdirSync(folder)
    .filter((file) => /^[a-z0-9-]+\.md$/.test(file))
    .sort()
    .flatMap((file) => {
      const read = readTextFile(join(folder, file));
      if (!('text' in read)) return [];
      const title = /^# (.+)$/m.exec(read.text)?.[1] ?? file;
      return [{ name: file.slice(0, -'.md'.length), title, text: read.text }];
    });
}

/** Names that `typed` may have meant, nearest first, at most three: those that hold it or are held by it, then by spelling. */
export function nearTopics(typed: string, names: readonly string[]): string[] {
  const word = typed.toLowerCase();
  const distance = (name: string) => {
    if (word.length > 2 && (name.includes(word) || word.includes(name))) return 0;
    const parts = [name, ...name.split('-')];
    return Math.min(...parts.map((part) => editDistance(word.slice(0, 40), part) / part.length));
  };
  return names
    .map((name) => ({ name, far: distance(name) }))
    .filter(({ far }) => far <= NEAR_SHARE)
    .sort((a, b) => a.far - b.far)
    .slice(0, NEAR_MAX)
    .map(({ name }) => name);
}
