/** `ohmward draw`: a tree or a circuit as a drawing in the terminal, or a tree as SVG, Mermaid or DOT. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { drawCircuit } from '../circuit/draw-circuit.ts';
import { libraryFolder } from '../files/folders.ts';
import { bindText } from '../procedure/bind-text.ts';
import { draftGraph } from '../procedure/draw-draft.ts';
import { drawDot, drawMermaid } from '../procedure/draw-flow-text.ts';
import { type GraphNode, treeGraph } from '../procedure/draw-graph.ts';
import { drawSvg } from '../procedure/draw-svg.ts';
import { drawTree } from '../procedure/draw-tree.ts';
import { emptyJob } from '../procedure/job.ts';
import { passingOf } from '../proof/passing.ts';
import { isUsable } from '../source/issue.ts';
import { safeText } from '../source/safe-text.ts';
import { Checker, type CheckReport } from './check/check-files.ts';
import { KIND_WORDS } from './check/file-kind.ts';
import { gatherFiles } from './check/gather-files.ts';
import { reportText } from './check/report-text.ts';
import { type Arguments, type CliCommand, EXIT, type Io, optionText } from './command.ts';

const FORMS = ['text', 'svg', 'mermaid', 'dot'] as const;
type DrawForm = (typeof FORMS)[number];

const WIDTH = 80;

/** Folders of the library that are looked through, in this order. */
const PLACES = ['', 'circuits', 'families', 'jobs'];

export const command: CliCommand = {
  name: 'draw',
  summary: 'draw a tree or a circuit as text, or a tree as SVG, Mermaid or DOT',
  usage: 'draw FILE [options]',
  examples: [
    'ohmward draw hall-no-signal                    a tree of the library in the terminal',
    'ohmward draw hall-no-signal --proved           with the faults that pass each branch',
    'ohmward draw my-tree.yaml --as svg > tree.svg  a picture to print',
    'ohmward draw end-to-end                        a sub-procedure by itself',
    'ohmward draw hall-module-fed                   a circuit',
  ],
  options: {
    as: { type: 'string', value: 'FORM', help: `${FORMS.join(', ')}; text when left out` },
    proved: { type: 'boolean', help: 'show which faults pass through which branch' },
    ascii: { type: 'boolean', help: 'plain characters instead of lines' },
  },
  run: async (args: Arguments, io: Io) => {
    const [name, ...rest] = args.positionals;
    const form = FORMS.find((one) => one === (optionText(args, 'as') ?? 'text'));
    if (name === undefined || rest.length > 0 || !form) {
      io.err(`ohmward draw: ${form ? 'name one file' : `--as is one of ${FORMS.join(', ')}`}\n`);
      return EXIT.wrongUse;
    }
    const library = libraryFolder(io.cwd);
    const checker = new Checker(undefined, args.values['proved'] === true ? 'proved' : 'linked');
    const report = checker.check(gatherFiles([findFile(name, library)], library));
    const drawing = draw(report, form, args, io);
    if (drawing === null) {
      io.err(`${reportText(report, { colour: false })}\n`);
      return EXIT.wrongInput;
    }
    io.out(drawing.endsWith('\n') ? drawing : `${drawing}\n`);
    return EXIT.done;
  },
};

/** The drawing, or null when the file has mistakes that keep it from being drawn. */
function draw(report: CheckReport, form: DrawForm, args: Arguments, io: Io): string | null {
  const [file] = report.files;
  const ascii = args.values['ascii'] === true || io.env['TERM'] === 'linux';
  if (file?.loaded?.kind === 'circuit' && form === 'text')
    return safeText(drawCircuit(file.loaded.value, { width: WIDTH, ascii }).join('\n'), {
      lines: true,
    });
  if (file?.loaded && file.loaded.kind !== 'procedure') {
    io.err(
      `ohmward draw: ${KIND_WORDS[file.loaded.kind]} is not drawn ${file.loaded.kind === 'circuit' ? `as ${form}` : 'at all'}\n`,
    );
    return null;
  }
  if (file?.loaded?.kind === 'procedure' && file.loaded.value.draft.needs !== undefined) {
    const { draft } = file.loaded.value;
    if (args.values['proved'] === true)
      io.err('ohmward draw: a sub-procedure is proved with a tree that uses it; draw that one\n');
    return drawn(draftGraph(draft), draft.procedure, draft.title, form, ascii);
  }
  const tree = report.trees[0];
  if (!tree || (!isUsable(report.issues) && !report.proofs[0])) return null;
  const { procedure } = tree.linked;
  const proof = args.values['proved'] === true ? report.proofs[0]?.proof : undefined;
  const nodes = treeGraph(procedure, proof && passingOf(proof.ways), (text) =>
    bindText(text, emptyJob(''), tree.linked.circuit),
  );
  return drawn(nodes, procedure.name, procedure.title, form, ascii);
}

function drawn(
  nodes: readonly GraphNode[],
  name: string,
  words: string,
  form: DrawForm,
  ascii: boolean,
): string {
  const title = `${name}: ${words}`;
  switch (form) {
    case 'text':
      return safeText([title, '', ...drawTree(nodes, { width: WIDTH, ascii })].join('\n'), {
        lines: true,
      });
    case 'svg':
      return drawSvg(nodes, title);
    case 'mermaid':
      return drawMermaid(nodes);
    case 'dot':
      return drawDot(nodes, name);
  }
}

/** The path itself if there is such a file, else the library's file of that name, else the path as it was given. */
function findFile(name: string, library: string | null): string {
  if (library === null || existsSync(name) || !/^[a-z][a-z0-9-]*$/.test(name)) return name;
  return PLACES.map((place) => join(library, place, `${name}.yaml`)).find(existsSync) ?? name;
}
