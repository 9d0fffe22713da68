/** What is said when the procedures that come with the program are not there. */
import type { Problem } from '../../source/problem.ts';

export const NO_LIBRARY: Problem = {
  problem: 'the folder "procedures" that comes with the program is missing',
  fix: 'install Ohmward again, or run it in a folder that has one',
};
