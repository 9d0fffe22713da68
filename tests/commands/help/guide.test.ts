import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { nearTopics } from '../../../src/commands/help/guide.ts';
import { guideText } from '../../../src/commands/help/guide-text.ts';
import { columnsOf } from '../../../src/ui/parts/wrap-words.ts';
import { makePlace, type Place, runProgram } from '../program.ts';

const TOPICS = readdirSync('docs')
  .filter((name) => name.endsWith('.md'))
  .map((name) => name.slice(0, -3));

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

describe('ohmward help', () => {
  it('fits a usual terminal', async () => {
    const { out } = await runProgram(place, ['help']);
    expect(out.split('\n').filter((line) => columnsOf(line) > 80)).toEqual([]);
    expect(out).toContain('technician');
  });
  it('lists every page of docs as a topic', async () => {
    const { out, code } = await runProgram(place, ['help']);
    expect(code).toBe(0);
    expect(TOPICS.length).toBeGreaterThan(5);
    expect(TOPICS.filter((topic) => !new RegExp(`^  ${topic} `, 'm').test(out))).toEqual([]);
  });

  it.each(TOPICS)('%s shows the page without marks of Markdown', async (topic) => {
    const { out, err, code } = await runProgram(place, ['help', topic]);
    expect({ err, code }).toEqual({ err: '', code: 0 });
    const prose = out.split('\n').filter((line) => !line.startsWith('    '));
    expect(prose.filter((line) => /^#|\]\(|\*\*(?![,.])/.test(line))).toEqual([]);
  });

  it('a command stays a command', async () => {
    expect((await runProgram(place, ['help', 'calc'])).out).toContain('Usage: ohmward calc');
  });

  it('a topic that is not there is an error that names the nearest', async () => {
    expect(await runProgram(place, ['help', 'format'])).toMatchObject({
      code: 2,
      out: '',
      err: 'ohmward help: no command or topic "format"; nearest: formats\nSee them all with: ohmward help\n',
    });
    expect((await runProgram(place, ['help', 'zzzz'])).err).toContain(
      'no command or topic "zzzz"\n',
    );
  });
});

it.each([
  ['math', ['maths']],
  ['drils', ['drill', 'drills']],
  ['procedures', ['writing-procedures']],
  ['xyz', []],
])('near "%s" lie %j', (typed, near) => {
  expect(nearTopics(typed, [...TOPICS, 'drill', 'records']).sort()).toEqual([...near].sort());
});

describe('a page in a terminal', () => {
  it('wraps prose and lists, and leaves drawings as they are', () => {
    const page =
      '# One\n\nwords **bold `code`** and\nmore words\n\n- an item that is long\n\n```text\n+-----------------------------+\n```\n';
    expect(guideText(page, 20).split('\n')).toEqual([
      'ONE',
      '',
      'words bold `code`',
      'and more words',
      '',
      '- an item that is',
      '  long',
      '',
      '    +-----------------------------+',
      '',
    ]);
  });

  it('names the topic that a link leads to', () => {
    expect(
      guideText('See [docs/maths.md](docs/maths.md), [the format](formats.md#events).', 90),
    ).toBe('See `ohmward help maths`, the format (`ohmward help formats`).\n');
  });

  it('sets a table in columns that fit, a bar in a cell too', () => {
    const page = '| a | b |\n| --- | --- |\n| one | this \\| that and some more words |\n';
    expect(guideText(page, 24).split('\n')).toEqual([
      'a    b',
      '---  -------------------',
      'one  this | that and',
      '     some more words',
      '',
    ]);
  });

  it.each([40, 60, 80])('no line of prose or table is wider than %i', (columns) => {
    for (const topic of ['maths', 'formats', 'security']) {
      const page = readGuide(topic);
      const wide = guideText(page, columns)
        .split('\n')
        .filter((line) => !line.startsWith('    ') && columnsOf(line) > columns);
      expect(wide, topic).toEqual([]);
    }
  });
});

function readGuide(topic: string): string {
  return readFileSync(`docs/${topic}.md`, 'utf8');
}
