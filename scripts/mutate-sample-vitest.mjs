/** The tests that look for one fault of a drawn sample, in the order of OHMWARD_ORDER, where the first red one ends the run. */
import { relative } from 'node:path';
import { defineConfig, mergeConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';
import base from '../vitest.config.ts';

const ORDER = JSON.parse(process.env.OHMWARD_ORDER);

class AsOrdered extends BaseSequencer {
  async sort(files) {
    const place = ({ project, moduleId }) =>
      ORDER.indexOf(relative(project.config.root, moduleId).replaceAll('\\', '/'));
    return [...files].sort((one, other) => place(one) - place(other));
  }
}

export default mergeConfig(
  base,
  defineConfig({
    test: {
      bail: 1,
      maxWorkers: 1,
      sequence: { sequencer: AsOrdered },
    },
  }),
);
