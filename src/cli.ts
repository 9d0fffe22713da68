/** The program's door. */
import './commands/compile-less.ts';
import { main } from './commands/program.ts';
import { startProgram } from './commands/start-program.ts';

await startProgram(main);
