/** What lies beside a file of one's own and comes before the shipped library, found as `ohmward check` finds it. */
import { basename } from 'node:path';
import type { LibraryPaths } from '../../files/load-library.ts';
import { CAUTIONS_FILE, fileKind } from '../check/file-kind.ts';
import { gatherFiles } from '../check/gather-files.ts';

/** Procedures, circuits and cautions in the folder of `path` and in the library's folders there. */
export function filesBeside(path: string): LibraryPaths {
  const kinds = gatherFiles([path], null).files.map(({ text, path: at }) => {
    const found = fileKind(text, at);
    // A file of cautions that cannot be read is still one: it is told, not passed over.
    const lost = CAUTIONS_FILE.test(basename(at)) ? 'cautions' : null;
    return { path: at, kind: 'kind' in found ? found.kind : lost };
  });
  const ofKind = (wanted: string) =>
    kinds.flatMap(({ path: at, kind }) => (kind === wanted ? [at] : []));
  return {
    procedures: ofKind('procedure'),
    circuits: ofKind('circuit'),
    cautions: ofKind('cautions'),
  };
}
