/**
 * The order of the test files: first what takes up to ten times as long in a process that holds the models of much else,
 * then the long ones, so that none of them is left to run alone at the end.
 */
import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * What starts programs, each of which copies the tables of the process's memory, and what fills large buffers, for which all
 * of it is searched each time; the long ones first. None of them loads a model.
 */
export const SMALL_FIRST = [
  'tests/commands/package.test.ts',
  'tests/hostile/many-parts.test.ts',
  'tests/terminal/terminal-session.test.ts',
  'tests/log/fault-campaign.test.ts',
  'tests/outside/circuit-ngspice.test.ts',
  'tests/terminal/guided-session.test.ts',
  'tests/hostile/memory.test.ts',
  'tests/hostile/large-trees.test.ts',
  'tests/hostile/bytes-files.test.ts',
  'tests/hard/log-killed.test.ts',
  'tests/hard/log-two-writers.test.ts',
  'tests/hard/log-full-disk.test.ts',
  'tests/hard/system-calls.test.ts',
  'tests/outside/circuit-decks.test.ts',
  'tests/outside/circuit-diode.test.ts',
  'tests/outside/waveform-ngspice.test.ts',
];
/** Screens that are drawn most often; the others load models. */
const DRAWN_MOST = ['tests/ui/screens/sizes.test.tsx', 'tests/hostile/wide-text.test.tsx'];
/** From the longest down; on a fresh clone nothing else is known of how long a file takes. */
export const LONGEST = [
  'tests/library/proof.test.ts',
  'tests/rpc/client.test.ts',
  'tests/session/create-advisor.test.ts',
  'tests/session/cars.test.ts',
  'tests/records/odd-ways.test.ts',
  'tests/walks/walks.test.ts',
  'tests/hostile/yaml-files.test.ts',
  'tests/drill/command.test.ts',
  'tests/suspects/guide.test.ts',
  'tests/commands/capture-quantities.test.ts',
  'tests/rpc/rpc-server.test.ts',
  'tests/log/upgrade-events.test.ts',
  'tests/suspects/cloud.test.ts',
  'tests/proof/mutants.test.ts',
  'tests/drill/students.test.ts',
  'tests/proof/check.test.ts',
  'tests/records/shared.test.ts',
  'tests/commands/guided-session.test.ts',
  'tests/session/conclusion-evidence.test.ts',
  'tests/drill/class-report.test.ts',
  'tests/drill/score.test.ts',
  'tests/library/samples.test.ts',
  'tests/commands/way-out.test.ts',
  'tests/circuit/model.test.ts',
];

export class SlowFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ project, moduleId }: TestSpecification): number => {
      const file = relative(project.config.root, moduleId).replaceAll('\\', '/');
      const atFirst = SMALL_FIRST.indexOf(file);
      if (atFirst >= 0) return atFirst - 1000;
      if (DRAWN_MOST.includes(file)) return -2;
      if (file.endsWith('.test.tsx')) return -1;
      const at = LONGEST.indexOf(file);
      return at < 0 ? LONGEST.length : at;
    };
    const sorted = await super.sort(files);
    return sorted.sort((one, other) => place(one) - place(other));
  }
}
