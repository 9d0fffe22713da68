/** The text of docs/library.md: what the shipped trees do with every fault. Run by scripts/library.mjs. */
import { drawCircuit } from '../../src/circuit/draw-circuit.ts';
import { bindText } from '../../src/procedure/bind-text.ts';
import { treeGraph } from '../../src/procedure/draw-graph.ts';
import { drawTree } from '../../src/procedure/draw-tree.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { type Conclusion, stepOf } from '../../src/procedure/procedure.ts';
import { type ProofRow, proveProcedure } from '../../src/proof/prove-procedure.ts';
import { library, shipped, trees } from './shipped.ts';
import { compareMinutes } from './tree-minutes.ts';

const WIDTH = 96;

/** The whole page in Markdown. */
export function libraryPages(): string {
  const pages = trees.map(({ draft }) => treePage(draft.procedure));
  const overview = pages.map(({ row }) => row);
  return `${[
    '# The shipped library',
    '',
    'Written by `node scripts/library.mjs`; do not edit. Every fault that follows from a circuit was driven through its tree',
    'with what the instruments would show, in 256 cars drawn over all that the circuit file leaves open. "Test minutes" are',
    'those of the planner, with getting at terminals, plugs and changes of the vehicle state; questions and preparations are',
    'not counted, nor is a car with nothing wrong, in which the trees go on to look for faults that come and go. "Minutes in',
    'all", in the table of each tree and from `ohmward check --table` and `--cost`, count the questions and preparations too,',
    'and are some 3 to 12 more. Their parts, the sub-procedures: [families.md](families.md).',
    '',
    "The cheapest order is the best found of the tree's own tests. It begins with the battery, as the trees do, and is told",
    'only what the tree reads: between which limits a number lies, and by which outcome a look leaves its step. It was made',
    'from 512 other cars of each fault. So it leads some of these 256 astray, to another repair; they then go through the tree',
    'as well. Over the cars that it was made from no order takes less than the bound. It concludes as soon as one repair is',
    'left. The trees do not: they measure before they open a connector, go through one track after the other, and try what',
    'they are about to name.',
    '',
    '| tree | circuit | faults | repairs | ends right | test minutes | cheapest found | of it astray | bound | ratio |',
    '| --- | --- | --: | --: | --: | --: | --: | --: | --: | --: |',
    ...overview,
    '',
    ...pages.flatMap(({ lines }) => lines),
    ...jobLines(),
  ].join('\n')}\n`;
}

function treePage(name: string): { row: string; lines: string[] } {
  const { linked, model } = shipped(name);
  const { procedure } = linked;
  const { circuit } = model;
  const proof = proveProcedure(linked, model);
  const { tree, optimum, astray, bound } = compareMinutes(procedure, model);
  const faults = proof.rows.filter(({ fault }) => fault !== 'healthy');
  const right = faults.reduce((sum, row) => sum + row.chance * rightShare(row), 0);
  const repairs = new Set(circuit.faults.map(({ repair }) => repair)).size;
  const row = [
    `[${name}](#${name})`,
    circuit.name,
    circuit.faults.length,
    repairs,
    `${(100 * right).toFixed(1)} %`,
    tree.toFixed(1),
    optimum.toFixed(1),
    `${(100 * astray).toFixed(1)} %`,
    bound.toFixed(1),
    (tree / optimum).toFixed(2),
  ];
  const lines = [
    `## ${name}`,
    '',
    `${procedure.title}. ${procedure.about}`,
    '',
    ...(procedure.codes.length > 0 ? [`Trouble codes: ${procedure.codes.join(', ')}.`, ''] : []),
    ...fenced(drawCircuit(circuit, { width: WIDTH, ascii: false })),
    ...openEnds(name),
    '| fault | chance | ends at | steps | minutes in all |',
    '| --- | --: | --- | --: | --: |',
    ...proof.rows.map(
      ({ fault, chance, ends, steps, minutes }) =>
        `| ${fault} | ${(100 * chance).toFixed(1)} % | ${endWords(ends)} | ${steps.toFixed(1)} | ${minutes.toFixed(1)} |`,
    ),
    '',
    'Minutes in all count questions and preparations too, as their author gives them.',
    '',
    ...fenced(
      drawTree(
        treeGraph(procedure, undefined, (text) => bindText(text, emptyJob(''), circuit)),
        { width: WIDTH, ascii: false },
      ),
    ),
  ];
  return { row: `| ${row.join(' | ')} |`, lines };
}

function rightShare({ ends }: ProofRow): number {
  return ends.reduce((sum, { verdict, share }) => sum + (verdict === 'right' ? share : 0), 0);
}

function endWords(ends: ProofRow['ends']): string {
  return ends
    .map(({ step, verdict, share }) => {
      const part = share > 0.9995 ? '' : ` ${(100 * share).toFixed(0)} %`;
      return `${step}${part}${verdict === 'right' ? '' : ` (${verdict})`}`;
    })
    .join(', ');
}

/** Conclusions that leave more than one repair open although everything could be measured. */
function openEnds(name: string): string[] {
  const { linked, model } = shipped(name);
  const repairOf = new Map(model.circuit.faults.map(({ id, repair }) => [id, repair]));
  const ends = new Set(
    proveProcedure(linked, model).rows.flatMap((row) => row.ends.map(({ step }) => step)),
  );
  const open = [...ends].flatMap((id) => {
    const { title, faults } = stepOf(linked.procedure, id) as Conclusion;
    const repairs = [...new Set(faults.map((fault) => repairOf.get(fault)!))];
    return repairs.length > 1 ? [`- **${id}** (${title}): ${repairs.join(', ')}`] : [];
  });
  return open.length === 0
    ? ['Every fault ends at a single repair.', '']
    : ['Ends where no instrument tells the repairs further apart:', '', ...open, ''];
}

function jobLines(): string[] {
  return [
    '## Demo jobs',
    '',
    'Vehicles, people and numbers are invented. Each runs without a person by',
    '`ohmward run --job procedures/jobs/NAME.yaml --answers sessions/sample-NAME.answers.yaml`.',
    '',
    ...library
      .jobFiles()
      .flatMap(({ value }) =>
        value ? [`- **${value.job.name}** (${value.procedure}): ${value.job.complaint}`] : [],
      ),
  ];
}

function fenced(lines: readonly string[]): string[] {
  return ['```text', ...lines, '```', ''];
}
