/** Drawings of a tree: nothing lost, nothing wider than the terminal, nothing that another program would trip over. */
import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { command } from '../../src/commands/draw.ts';
import { drawDot, drawMermaid } from '../../src/procedure/draw-flow-text.ts';
import { type GraphNode, treeGraph } from '../../src/procedure/draw-graph.ts';
import { drawSvg } from '../../src/procedure/draw-svg.ts';
import { drawTree } from '../../src/procedure/draw-tree.ts';
import { layerGraph } from '../../src/procedure/layer-graph.ts';
import { passingOf } from '../../src/proof/passing.ts';
import { isInstalled } from '../installed.ts';
import { checkExample } from '../proof/example.ts';
import { link, TREES } from '../proof/library.ts';
import { run } from '../proof/run-command.ts';

const EXAMPLE = checkExample();
const NODES = treeGraph(EXAMPLE.linked!.procedure);

/** Names as they are sent to try the quoting. */
const HOSTILE: GraphNode[] = [
  {
    id: 'end',
    kind: 'task',
    title: 'say "no" & <stop> #1 \\ end',
    setting: '',
    faults: [],
    exits: [{ name: 'o', kind: 'outcome', words: 'x "y" <z>', to: 'x-ray', passing: ['a"b'] }],
  },
  { id: 'x-ray', kind: 'no-fault', title: '', setting: '', faults: [], exits: [] },
];

describe('text', () => {
  test('the worked example, line by line', () => {
    const lines = drawTree(NODES, { width: 80, ascii: true });
    expect(lines.slice(0, 9)).toEqual([
      'bias: Bias at the controller (key-on, 2 min)',
      '|- low: too low',
      "|  coil-low: Coil and wires from the controller's connector (key-off, module",
      '|    unplugged, 4 min)',
      '|  |- low: resistance too low -> = shorted-turns',
      '|  |- good: coil and wires are right',
      '|  |  to-ground: High wire to ground (key-off, module and sensor unplugged, 3',
      '|  |    min)',
      '|  |  |- shorted: touches ground -> = high-to-ground',
    ]);
  });

  test('with the proof, each branch tells which faults pass', () => {
    const nodes = treeGraph(EXAMPLE.linked!.procedure, passingOf(EXAMPLE.proof!.ways));
    const text = drawTree(nodes, { width: 80, ascii: true }).join('\n');
    expect(text).toContain('in-step -> = no-fault [a healthy circuit,');
    expect(text).toContain(
      'battery: battery voltage -> = high-to-battery [wire.high.short-to-battery]',
    );
  });

  describe.each([40, 60, 80])('in %i columns', (width) => {
    test.each(TREES)('%s fits, and every step and outcome is there', (_, parsed) => {
      const { procedure } = link(parsed).linked!;
      const nodes = treeGraph(procedure);
      const lines = drawTree(nodes, { width, ascii: false });
      expect(Math.max(...lines.map((line) => [...line].length))).toBeLessThanOrEqual(width);
      const bare = lines.map((line) => line.replace(/^[│├└─ ]*/, ''));
      const words = bare.join(' ');
      for (const { id, kind, title } of nodes) {
        expect(words, id).toContain(id.slice(0, width / 3));
        const head = `${id}: ${title.split(' ')[0]}`;
        if (kind === 'task' && title !== '' && head.length < width / 2)
          expect(bare.filter((line) => line.startsWith(head)).length, id).toBe(1);
      }
      // An exit begins a line of its own, so there are as many such lines as exits of that name.
      const names = nodes.flatMap(({ exits }) => exits.map(({ name }) => name));
      for (const name of new Set(names.filter((one) => one !== ''))) {
        const begun = bare.filter(
          (line) => line === name || line.startsWith(`${name}:`) || line.startsWith(`${name} `),
        );
        expect(begun.length, name).toBeGreaterThanOrEqual(
          names.filter((one) => one === name).length,
        );
      }
    });
  });
});

describe('layout', () => {
  test.each(TREES)('%s: arrows run right, and no two boxes overlap', (_, parsed) => {
    const nodes = treeGraph(link(parsed).linked!.procedure);
    const boxes = nodes.map(({ id, exits }) => ({
      id,
      height: 40 + 15 * exits.length,
      to: exits.map(({ to }) => to),
    }));
    const { places, height } = layerGraph(boxes, 10);
    for (const box of boxes) {
      const { column, y } = places.get(box.id)!;
      expect(y + box.height).toBeLessThanOrEqual(height);
      for (const other of boxes) {
        const there = places.get(other.id)!;
        if (other.id === box.id || there.column !== column) continue;
        expect(
          y + box.height <= there.y || there.y + other.height <= y,
          `${box.id} and ${other.id}`,
        ).toBe(true);
      }
    }
  });

  test('a way to a far column passes between the boxes of those in between', () => {
    const boxes = [
      { id: 'a', height: 10, to: ['b', 'd'] },
      { id: 'b', height: 10, to: ['c'] },
      { id: 'c', height: 10, to: ['d'] },
      { id: 'd', height: 10, to: ['a'] }, // a loop back does not count
    ];
    const { places, bends, columns } = layerGraph(boxes, 5);
    expect(columns).toBe(4);
    expect(['a', 'b', 'c', 'd'].map((id) => places.get(id)!.column)).toEqual([0, 1, 2, 3]);
    const way = bends.get('a>d')!;
    expect(way.map(({ column }) => column)).toEqual([1, 2]);
    for (const { column, y } of way) {
      const box = places.get(column === 1 ? 'b' : 'c')!;
      expect(y + 2 <= box.y || y >= box.y + 10).toBe(true);
    }
  });
});

describe('for other programs', () => {
  test('the SVG holds every step, is well formed, and has no script and nothing from elsewhere', () => {
    const svg = drawSvg(NODES, 'A & B');
    for (const { id } of NODES) expect(svg).toContain(`>${id}</text>`);
    expect(svg).toContain('<title id="title">A &amp; B</title>');
    expect(svg).not.toMatch(
      /<script|<image|<foreignObject|href=|@import|url\((?!#tip\))|on[a-z]+=/i,
    );
    expect([...svg.matchAll(/https?:\/\/[^"]*/g)].map(([url]) => url)).toEqual([
      'http://www.w3.org/2000/svg',
    ]);
    expect(unclosed(svg)).toEqual([]);
    expect(unclosed(drawSvg(HOSTILE, '<">&'))).toEqual([]);
  });

  test('in the SVG a step stands right of all that lead to it, and the way round a step only where no other does', () => {
    const task = (id: string, exits: readonly [to: string, kind: 'outcome' | 'cannot'][]) => ({
      ...{ id, kind: 'task' as const, title: '', setting: '', faults: [] },
      exits: exits.map(([to, kind]) => ({ name: '', kind, words: 'o', to, passing: null })),
    });
    const svg = drawSvg(
      [
        task('first', [
          ['second', 'outcome'],
          ['round', 'cannot'],
        ]),
        task('second', [['third', 'outcome']]),
        task('round', [['beside', 'cannot']]),
        task('third', [['last', 'cannot']]),
        // Read from the first step alone, however far away the way round another one comes from.
        task('beside', [['third', 'cannot']]),
        task('last', []),
      ],
      'columns',
    );
    const column = (id: string) =>
      Number(new RegExp(`<g><rect class="box" x="(\\d+)"(?:(?!<g>).)*>${id}</text>`).exec(svg)![1]);
    const [first, second] = [column('first'), column('second')];
    const place = (id: string) => (column(id) - first) / (second - first);
    expect(['first', 'second', 'third', 'last', 'round', 'beside'].map(place)).toEqual([
      0, 1, 2, 3, 1, 2,
    ]);
  });

  test('a Mermaid chart has own ids, quoted labels and no signs that it would read', () => {
    expect(drawMermaid(HOSTILE)).toBe(
      [
        'flowchart TD',
        '  n1["end<br/>say #quot;no#quot; #amp; #lt;stop#gt; #35;1 \\ end"]',
        '  n2(("x-ray"))',
        '  n1 -->|"o: x #quot;y#quot; #lt;z#gt; (a#quot;b)"| n2',
        '',
      ].join('\n'),
    );
  });

  test('a DOT graph quotes everything', () => {
    const dot = drawDot(HOSTILE, 'x');
    expect(dot).toContain('"end" [label="end\\nsay \\"no\\" & <stop> #1 \\\\ end", shape=box];');
    expect(dot).toContain('"end" -> "x-ray" [label="o: x \\"y\\" <z> (a\\"b)"];');
  });

  test.skipIf(!isInstalled('dot', '-V'))('Graphviz reads it', () => {
    const drawn = execFileSync('dot', ['-Tplain'], {
      input: drawDot(HOSTILE, 'x'),
      encoding: 'utf8',
    });
    expect(drawn).toMatch(/^graph /);
  });
});

describe('the command', () => {
  test('draws a tree and a circuit of the library by name', async () => {
    const tree = await run(command, [TREES[0]![0]]);
    expect(tree.code).toBe(0);
    expect(tree.out).toContain(TREES[0]![1].draft.title);
    const circuit = await run(command, ['hall-module-fed', '--ascii']);
    expect(circuit.out).toMatch(/^\+- engine control module/);
  });

  test('says what it does not draw', async () => {
    expect((await run(command, ['no-such-tree'])).code).toBe(1);
    expect((await run(command, ['hall-module-fed', '--as', 'svg'])).err).toContain(
      'not drawn as svg',
    );
    expect((await run(command, ['sessions/sample-rainy-camshaft.answers.yaml'])).err).toContain(
      'a file of answers is not drawn at all',
    );
    expect((await run(command, ['feed-check', '--as', 'paint'])).code).toBe(2);
  });
});

/** Tags left open or closed wrongly, and bare signs: a small reader of our own, since the standard library has none. */
function unclosed(xml: string): string[] {
  const open: string[] = [];
  const wrong: string[] = [];
  for (const [, close, name, inside, self] of xml.matchAll(
    /<(\/?)([a-zA-Z]+)((?:\s+[\w-]+="[^"<]*")*)\s*(\/?)>/g,
  )) {
    if (self || inside === undefined) continue;
    if (close) {
      if (open.pop() !== name) wrong.push(name!);
    } else open.push(name!);
  }
  const text = xml.replace(/<[^>]*>/g, '');
  if (/[<>]|&(?!(amp|lt|gt|quot);)/.test(text)) wrong.push('bare sign');
  return [...wrong, ...open];
}

describe('a sub-procedure by itself', () => {
  test('is drawn with its needs open and its results as ends', async () => {
    const { code, out } = await run(command, ['end-to-end', '--ascii']);
    expect(code).toBe(0);
    expect(out).toContain('Wire from end to end: {here}');
    for (const result of ['carries', 'broken', 'unknown'])
      expect(out).toContain(`ends in "${result}"`);
  });

  test('in a tree, a need in a title is what the caller gave', async () => {
    const { out } = await run(command, ['hall-no-signal', '--ascii']);
    expect(out).toContain("Look into the sensor's connector");
    expect(out).toContain("Look into the module's connector");
  });
});
