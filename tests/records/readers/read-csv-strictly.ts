/** CSV by the letter of RFC 4180: CRLF line ends, quotes doubled inside quoted fields, none in bare ones. Throws. */
export function readCsvStrictly(text: string): { value: string; quoted: boolean }[][] {
  const rows: { value: string; quoted: boolean }[][] = [];
  let at = 0;
  const fail = (words: string): never => {
    throw new Error(`CSV, sign ${at}: ${words}`);
  };
  while (at < text.length) {
    const row: { value: string; quoted: boolean }[] = [];
    for (;;) {
      if (text[at] === '"') {
        let value = '';
        at += 1;
        for (;;) {
          if (at >= text.length) fail('a quoted field does not end');
          if (text[at] !== '"') value += text[at++];
          else if (text[at + 1] === '"') {
            value += '"';
            at += 2;
          } else break;
        }
        at += 1;
        row.push({ value, quoted: true });
      } else {
        let value = '';
        while (at < text.length && text[at] !== ',' && text[at] !== '\r') {
          if (text[at] === '"' || text[at] === '\n') fail('a quote or line feed in a bare field');
          value += text[at++];
        }
        row.push({ value, quoted: false });
      }
      if (text[at] === ',') at += 1;
      else break;
    }
    if (text.slice(at, at + 2) !== '\r\n') fail('no CRLF behind a record');
    at += 2;
    rows.push(row);
  }
  return rows;
}
