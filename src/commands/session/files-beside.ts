/** What lies beside a file of one's own and comes before the shipped library, found as `ohmward check` finds it. */
import type { LibraryPaths } from '../../files/load-library.ts';
import { fileKind } from '../check/file-kind.ts';
import { gatherFiles } from '../check/gather-files.ts';

/** Procedures, circuits and cautions in the folder of `path` and in the library's folders there. */
export function filesBeside(path: string): LibraryPaths {
  const kinds = gatherFiles([path], null).files.map(({ text, path: at }) => {
    const found = fileKind(text, at);
    return { path: at, kind: 'kind' in found ? found.kind : null };
  });
  const ofKind = (wanted: string) =>
    kinds.flatMap(({ path: at, kind }) => (kind === wanted ? [at] : []));
  return {
    procedures: ofKind('procedure'),
    circuits: ofKind('circuit'),
    cautions: ofKind('cautions'),
  };
}
