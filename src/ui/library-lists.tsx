/** The lists that lead to a session: procedures, simulated vehicles with what is wrong with them, and saved sessions. */
import { searchWords } from '../identify/search-words.ts';
import { codeSpans } from '../identify/trouble-code.ts';
import type { AppServices, DemoJob, ProcedureEntry, SavedSession } from './app-services.ts';
import { PickScreen } from './screens/pick-screen.tsx';

interface HiddenChoice {
  readonly id: string;
  readonly intermittent: boolean;
}

interface ListProps {
  readonly services: AppServices;
  readonly onClose: () => void;
}

/** The procedures of the library; `search` is what one was looked for by. */
export function ProcedureList({
  services,
  onPick,
  onClose,
}: ListProps & { readonly onPick: (entry: ProcedureEntry, search: string) => void }) {
  return (
    <PickScreen
      key="which-procedure"
      title="Which procedure?"
      items={services.listProcedures().map((entry) => ({
        text:
          entry.codes.length === 0 ? entry.title : `${entry.title}  (${codeSpans(entry.codes)})`,
        // Found by any of its codes, also by one within a span, by their neighbours, and by the places that they speak of.
        also: [entry.about, ...searchWords(entry.codes)].join(' '),
        about:
          entry.circuit === null
            ? `${entry.about} No circuit model: no suspects, no suggested tests.`
            : entry.about,
        entry,
      }))}
      empty="There are no procedures yet. Write one with: ohmward new procedure NAME"
      onPick={({ entry }, search) => onPick(entry, search)}
      onClose={onClose}
    />
  );
}

/** The ready-made jobs on simulated vehicles. */
export function DemoJobList({
  services,
  onPick,
  onClose,
}: ListProps & { readonly onPick: (demo: DemoJob) => void }) {
  return (
    <PickScreen
      key="which-simulated-vehicle"
      title="Which simulated vehicle?"
      items={services.listDemoJobs().map((demo) => ({
        text: demo.sensor === '' ? demo.words : `${demo.words}: ${demo.sensor}`,
        also: demo.job.codes.join(' '),
        about: `Complaint: ${demo.complaint}`,
        demo,
      }))}
      empty="There are no ready-made jobs yet. Write one with: ohmward new job NAME"
      onPick={({ demo }) => onPick(demo)}
      onClose={onClose}
    />
  );
}

/** First in the list of faults: the one the job comes with, unsaid. */
const OWN_FAULT = {
  text: 'find it yourself: the vehicle has the fault the customer complains of',
  also: '',
  about: 'The fault that belongs to this job. It is not revealed until the end.',
};

/** What can be wrong with the simulated vehicle; `own` is the fault that the job comes with, which is not named. */
export function FaultList({
  services,
  procedureFile,
  own,
  onPick,
  onClose,
}: ListProps & {
  readonly procedureFile: string;
  readonly own: HiddenChoice | null;
  readonly onPick: (choice: HiddenChoice) => void;
}) {
  return (
    <PickScreen
      key="what-is-wrong-with-it"
      title="What is wrong with it?"
      items={[
        ...(own === null ? [] : [{ ...OWN_FAULT, ...own }]),
        ...services.benchFaults(procedureFile).map(({ id, words }) => ({
          text: words,
          also: id,
          about: `Fault: ${id}. The simulated vehicle gives every reading as it would be with this fault.`,
          id,
          intermittent: false,
        })),
      ]}
      empty="This procedure has no circuit model, so there is no vehicle to simulate."
      onPick={onPick}
      onClose={onClose}
    />
  );
}

/** Saved sessions, the newest first; each is read when it is drawn. */
export function SessionList({
  services,
  onPick,
  onClose,
}: ListProps & { readonly onPick: (path: string) => void }) {
  return (
    <PickScreen
      key="which-session"
      title="Which session?"
      keepsOrder
      items={services.listSessions().map((read) => ({
        get text() {
          return sessionWords(read());
        },
        get about() {
          return read().path;
        },
      }))}
      empty="There are no sessions yet."
      onPick={({ about }) => onPick(about)}
      onClose={onClose}
    />
  );
}

const STATUS_WORDS: Readonly<Record<SavedSession['status'], string>> = {
  open: 'not finished',
  paused: 'paused',
  concluded: 'concluded',
  closed: 'closed',
  damaged: 'DAMAGED',
};

function sessionWords({ when, status, simulated, words }: SavedSession): string {
  return `${when}  ${STATUS_WORDS[status].padEnd(12)}  ${simulated ? 'simulated, ' : ''}${words}`;
}
