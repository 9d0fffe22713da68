/** The program's door. */
import { main } from './commands/program.ts';
import { startProgram } from './commands/start-program.ts';

await startProgram(main);
