/** What lies beside a file of one's own and comes before the shipped library, found as `ohmward check` finds it. */
import { basename, dirname } from 'node:path';
import type { LibraryPaths } from '../../files/load-library.ts';
import { CAUTIONS_FILE, fileKind } from '../check/file-kind.ts';
import { gatherFiles } from '../check/gather-files.ts';

/** Procedures, circuits and cautions in the folder of `path` and in the library's folders there. */
export function filesBeside(path: string): LibraryPaths {
  const kinds = gatherFiles([path], null).files.map(({ text, path: at }) => {
    const found = fileKind(text, at);
    return { path: at, kind: 'kind' in found ? found.kind : lostKind(at) };
  });
  const ofKind = (wanted: string) =>
    kinds.flatMap(({ path: at, kind }) => (kind === wanted ? [at] : []));
  return {
    procedures: ofKind('procedure'),
    circuits: ofKind('circuit'),
    cautions: ofKind('cautions'),
  };
}

/** A file that cannot be read is still what its place says: it is told where it is needed, and not passed over. */
function lostKind(path: string): 'cautions' | 'circuit' | 'job' | 'procedure' {
  if (CAUTIONS_FILE.test(basename(path))) return 'cautions';
  const folder = basename(dirname(path));
  return folder === 'circuits' ? 'circuit' : folder === 'jobs' ? 'job' : 'procedure';
}
