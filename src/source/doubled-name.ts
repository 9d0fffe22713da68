/** A name that stands twice in one group of JSON: what reads JSON takes the last of them without a word. */

/** The first such name in a text that is JSON; null where there is none. */
export function doubledName(text: string): string | null {
  const groups: Set<string>[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '{') groups.push(new Set());
    else if (sign === '}') groups.pop();
    else if (sign === '"') {
      const from = at;
      for (at += 1; text[at] !== '"' && at < text.length; at += 1) if (text[at] === '\\') at += 1;
      if (!isBeforeColon(text, at + 1)) continue;
      const name = String(JSON.parse(text.slice(from, at + 1)));
      if (groups.at(-1)?.has(name)) return name;
      groups.at(-1)?.add(name);
    }
  }
  return null;
}

function isBeforeColon(text: string, from: number): boolean {
  let at = from;
  while (text[at] === ' ' || text[at] === '\n' || text[at] === '\r' || text[at] === '\t') at += 1;
  return text[at] === ':';
}
