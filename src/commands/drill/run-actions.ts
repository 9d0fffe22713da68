/** A drill without a person. */
import { type ActionsFile, commandsFor } from '../../drill/drill-actions.ts';
import { formatIssue } from '../../source/format-issue.ts';
import type { OpenedSession } from '../../ui/app-services.ts';

/**
 * Does the actions of a file, and returns null, or says which one could not be done. A test that the bench stops for
 * safety, and a caution passed over, are part of the drill: told in `tell`, and the next action follows.
 */
export function runActions(
  { driver, drill }: OpenedSession,
  file: ActionsFile,
  tell: (words: string) => void,
): string | null {
  const { circuit } = driver.session().opened;
  if (!drill || !circuit) throw new Error('run-actions: a drill has a circuit');
  for (const index of file.actions.keys()) {
    const wanted = commandsFor(file, index, circuit);
    if ('severity' in wanted) return formatIssue(wanted, file.source.text);
    // Where there is nothing to acknowledge, the file has said it for nothing.
    if (wanted.acknowledge) driver.perform(wanted.acknowledge);
    const before = driver.session().events.length;
    const refused = refusalOf(wanted.command);
    if (!refused) continue;
    if (driver.session().events.length > before) {
      tell(`action ${index + 1}: ${refused.words}. ${refused.fix}`);
      continue;
    }
    const at = file.source.locate(['actions', index]);
    const { words, fix } = refused;
    return formatIssue({ code: 'refused', severity: 'error', at, words, fix }, file.source.text);
  }
  return null;

  function refusalOf(
    command: Exclude<ReturnType<typeof commandsFor>, { severity: unknown }>['command'],
  ) {
    if (command.type !== 'add-note') return drill!.act(command).refused;
    const noted = driver.perform(command);
    return noted.ok ? null : noted;
  }
}
