/** `ohmward records` with its words and options, over the sessions of a folder; what it says and its exit code. */
import { command } from '../../src/commands/records.ts';

export async function runRecords(
  home: string,
  positionals: string[],
  values: Record<string, string | boolean> = {},
): Promise<{ readonly exit: number; readonly out: string; readonly err: string }> {
  let [out, err] = ['', ''];
  const exit = await command.run(
    { positionals, values },
    {
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      env: { HOME: home, OHMWARD_SESSIONS: home },
      cwd: home,
    },
  );
  return { exit, out, err };
}
