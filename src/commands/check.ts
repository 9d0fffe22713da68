/** `ohmward check`: everything that can be wrong with the files people write, and the proof of every tree. */
import { relative } from 'node:path';
import { libraryFolder } from '../files/folders.ts';
import { compareCost } from '../proof/compare-cost.ts';
import { safeText } from '../source/safe-text.ts';
import { CARS_MAX, carsAsked } from './cars-option.ts';
import {
  Checker,
  type CheckReport,
  type OnProgress,
  type ProvedFile,
  SAMPLES,
  SAMPLES_WATCHING,
} from './check/check-files.ts';
import { type Gathered, gatherFiles } from './check/gather-files.ts';
import { keepVerdicts } from './check/kept-verdicts.ts';
import { counted, reportJson, reportSarif } from './check/report-json.ts';
import { costText, reportText, tableText } from './check/report-text.ts';
import { watchFiles } from './check/watch-files.ts';
import { type Arguments, type CliCommand, EXIT, type Io, optionText } from './command.ts';
import { type Progress, progressOn } from './progress.ts';

export const command: CliCommand = {
  name: 'check',
  summary:
    'find mistakes in trees, circuits, jobs, assignments, answers and actions, and prove trees',
  usage: 'check [PATH...] [options]',
  examples: [
    'ohmward check                        the library that comes with the program',
    'ohmward check my-tree.yaml           one file, with what it refers to',
    'ohmward check my-folder --watch      again after each save',
    'ohmward check my-tree.yaml --table   where each fault ends',
    'ohmward check my-tree.yaml --cost    its minutes against the cheapest strategy',
    'ohmward check . --sarif > ohmward.sarif',
  ],
  options: {
    table: { type: 'boolean', help: 'where each fault ends, after how many steps and minutes' },
    cost: {
      type: 'boolean',
      help: 'expected minutes against the cheapest strategy and the suggestions; takes seconds per tree',
    },
    cars: {
      type: 'string',
      value: 'NUMBER',
      help: `number of cars per fault, drawn over everything its circuit file leaves open; ${SAMPLES} when left out`,
    },
    watch: { type: 'boolean', help: 'check again after each save, until interrupted' },
    json: { type: 'boolean', help: 'one JSON document' },
    sarif: { type: 'boolean', help: 'one SARIF 2.1.0 document' },
    color: { type: 'string', value: 'WHEN', help: 'always, never or auto' },
  },
  failure: 'an error was found',
  run: async (args: Arguments, io: Io) => {
    const wrong = wrongUse(args);
    if (wrong !== null) {
      io.err(`ohmward check: ${wrong}\n`);
      return EXIT.wrongUse;
    }
    const found = libraryFolder(io.cwd);
    const library = found === null ? null : shortPath(found, io.cwd);
    const paths =
      args.positionals.length > 0 ? args.positionals : library === null ? [] : [library];
    if (paths.length === 0) {
      io.err('ohmward check: there is no library here; name a file or a folder\n');
      return EXIT.wrongUse;
    }
    const isWatching = args.values['watch'] === true;
    const asked = carsAsked(args);
    const cars = asked ?? (isWatching ? SAMPLES_WATCHING : SAMPLES);
    const checker = new Checker(cars, 'proved', asked !== null);
    const gather = () => gatherFiles(paths, library);
    const progress = progressOn(io);
    if (!isWatching) {
      const report = checker.check(gather(), progress.at);
      // With fewer cars than usual it says less than a session must be able to rely on.
      const at = new Date().toISOString();
      if (cars >= SAMPLES)
        keepVerdicts(
          io.env,
          report.verdicts.map((one) => ({ ...one, at })),
        );
      show(report, args, io, progress);
      return counted(report.issues).errors > 0 ? EXIT.wrongInput : EXIT.done;
    }
    io.err(
      `While watching, each fault is tried with ${cars} cars; a check by itself takes ${SAMPLES}.\n`,
    );
    const stop = new AbortController();
    process.once('SIGINT', () => stop.abort());
    await watchFiles<Gathered>({
      read: gather,
      foldersOf: ({ folders }) => folders,
      contentOf: ({ files }) => JSON.stringify(files),
      changed: (gathered) => {
        progress.end();
        show(checker.check(gathered, progress.at), args, io, progress);
        io.out('\n');
      },
      signal: stop.signal,
    });
    return EXIT.interrupted;
  },
};

/** Relative where the folder lies below the current one, so that addresses are short. */
function shortPath(path: string, cwd: string): string {
  const near = relative(cwd, path);
  return near === '' || near.startsWith('..') ? path : near;
}

function wrongUse(args: Arguments): string | null {
  const { json, sarif, watch } = args.values;
  if (json && sarif) return 'choose --json or --sarif, not both';
  if (watch && (json || sarif)) return '--watch goes with text only';
  const colour = optionText(args, 'color') ?? 'auto';
  if (!['always', 'never', 'auto'].includes(colour)) return '--color is always, never or auto';
  const cars = optionText(args, 'cars');
  if (cars !== undefined && carsAsked(args) === null)
    return `--cars is a whole number from 1 to ${CARS_MAX}, not "${safeText(cars)}"`;
  return null;
}

function show(report: CheckReport, args: Arguments, io: Io, progress: Progress): void {
  const { json, sarif, table, cost } = args.values;
  const costs = cost ? report.proofs.map((proved) => costOf(proved, progress.at)) : [];
  progress.end();
  if (json)
    io.out(`${JSON.stringify(reportJson(report, { table: table === true, costs }), null, 2)}\n`);
  else if (sarif) io.out(`${JSON.stringify(reportSarif(report, io.cwd), null, 2)}\n`);
  else {
    if (table) for (const proved of report.proofs) io.out(`${tableText(proved)}\n\n`);
    for (const one of costs) io.out(`${costText(one)}\n`);
    io.out(`${reportText(report, { colour: wantsColour(args, io) })}\n`);
  }
}

function costOf({ linked, proof, model }: ProvedFile, onProgress: OnProgress) {
  const { name } = linked.procedure;
  const cost = compareCost(linked.procedure, model, proof.ways, (share) =>
    onProgress(`comparing the cost of ${name}`, share),
  );
  return { procedure: name, ...cost };
}

/** NO_COLOR (no-color.org) and a pipe turn colours off; the option beats both. */
function wantsColour(args: Arguments, io: Io): boolean {
  const colour = optionText(args, 'color') ?? 'auto';
  if (colour !== 'auto') return colour === 'always';
  return !io.env['NO_COLOR'] && io.env['TERM'] !== 'dumb' && process.stdout.isTTY === true;
}
