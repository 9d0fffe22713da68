/** The way to each screen of the program, for what must hold on all of them. */
import { ENTER, F, TAB } from './keys.ts';

/** Keys to every screen there is, from the start. */
export const SCREENS: Readonly<Record<string, readonly string[]>> = {
  start: [],
  procedures: ['1'],
  job: ['1', ENTER],
  'simulated vehicle': ['2'],
  faults: ['2', ENTER],
  sessions: ['4'],
  settings: ['5'],
  caution: ['3'],
  step: ['3', 'y'],
  'step with a long remark': ['3', 'y', '500', ENTER],
  doubt: ['3', 'y', '5 M', ENTER],
  'simulated step': ['2', ENTER, 'open', ENTER, 'y', TAB],
  look: ['3', 'y', '5', ENTER],
  'second caution': ['3', 'y', '5', ENTER, '1'],
  help: ['3', 'y', '?'],
  suspects: ['3', 'y', F.suspects],
  'best tests': ['3', 'y', F.nextTests],
  'extra test': ['3', 'y', F.nextTests, ENTER],
  way: ['3', 'y', F.way],
  sketch: ['3', 'y', F.sketch],
  note: ['3', 'y', F.note],
  cannot: ['3', 'y', F.cannot],
  instruments: ['3', 'y', F.instruments],
  paused: ['3', 'y', F.pause],
  'about to conclude': ['3', 'y', '0.02'],
  conclusion: ['3', 'y', '0.02', ENTER],
  'own conclusion': ['3', 'y', F.suspects, 'c'],
  saved: ['3', 'y', '0.02', ENTER, ENTER],
};
