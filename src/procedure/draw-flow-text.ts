/** A tree as text for other programs: Mermaid for pages, DOT for layout programs. */
import type { GraphExit, GraphNode } from './draw-graph.ts';

/** A Mermaid flowchart. Own ids, every label quoted, signs that Mermaid or HTML would read as entities. */
export function drawMermaid(nodes: readonly GraphNode[]): string {
  const ids = new Map(nodes.map(({ id }, index) => [id, `n${index + 1}`]));
  const lines = ['flowchart TD'];
  for (const node of nodes) {
    const label = mermaidText(labelOf(node));
    const [open, close] =
      node.kind === 'task' ? ['[', ']'] : node.kind === 'conclusion' ? ['([', '])'] : ['((', '))'];
    lines.push(`  ${ids.get(node.id)}${open}"${label}"${close}`);
  }
  for (const node of nodes)
    for (const exit of node.exits) {
      const arrow = exit.kind === 'cannot' ? '-.->' : '-->';
      const text = exitText(exit);
      const label = text === '' ? '' : `|"${mermaidText([text])}"|`;
      lines.push(`  ${ids.get(node.id)} ${arrow}${label} ${ids.get(exit.to)}`);
    }
  return `${lines.join('\n')}\n`;
}

/** A tree as a digraph in the DOT language of Graphviz. */
export function drawDot(nodes: readonly GraphNode[], title: string): string {
  const lines = [
    `digraph ${dotText([title])} {`,
    '  rankdir=TB;',
    '  node [fontname="sans-serif", fontsize=10];',
    '  edge [fontname="sans-serif", fontsize=9];',
  ];
  for (const node of nodes) {
    const shape =
      node.kind === 'task'
        ? 'box'
        : node.kind === 'conclusion'
          ? 'box, style=rounded, peripheries=2'
          : 'box, style="rounded,dashed"';
    lines.push(`  ${dotText([node.id])} [label=${dotText(labelOf(node))}, shape=${shape}];`);
  }
  for (const node of nodes)
    for (const exit of node.exits) {
      const style = exit.kind === 'cannot' ? ', style=dashed' : '';
      lines.push(
        `  ${dotText([node.id])} -> ${dotText([exit.to])} [label=${dotText([exitText(exit)])}${style}];`,
      );
    }
  return `${[...lines, '}'].join('\n')}\n`;
}

function labelOf({ id, title, setting, faults }: GraphNode): string[] {
  return [id, ...[title, setting].filter((part) => part !== ''), ...faults];
}

function exitText({ name, words, passing }: GraphExit): string {
  const through =
    passing === null ? '' : ` (${passing.length === 0 ? 'nothing' : passing.join(', ')})`;
  return `${[name, words].filter((part) => part !== '').join(': ')}${through}`;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '"': '#quot;',
  '#': '#35;',
  '<': '#lt;',
  '>': '#gt;',
  '&': '#amp;',
};

function mermaidText(lines: readonly string[]): string {
  return lines.map((line) => line.replace(/["#<>&]/g, (sign) => ENTITIES[sign]!)).join('<br/>');
}

function dotText(lines: readonly string[]): string {
  return `"${lines.map((line) => line.replace(/[\\"]/g, (sign) => `\\${sign}`)).join('\\n')}"`;
}
