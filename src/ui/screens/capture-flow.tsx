/** From "a capture" to the answer it gives: the simulated vehicle's own at once, else the choice of a file; then what was found. */
import { useState } from 'react';
import type { CaptureFolder } from '../../files/list-captures.ts';
import type { CaptureAnswer, CaptureAsk } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { OpenedSession } from '../app-services.ts';
import { CapturePicker } from './capture-picker.tsx';
import { CaptureScreen } from './capture-screen.tsx';
import { WaitPage } from './wait-page.tsx';

export interface CaptureFlowProps {
  readonly opened: OpenedSession;
  readonly ask: CaptureAsk;
  /** Why the last command was refused, or null. */
  readonly message: string | null;
  readonly clock: () => number;
  readonly onTake: (command: Command) => void;
  readonly onClose: () => void;
}

type Place =
  | { readonly name: 'bench' | 'files' }
  | { readonly name: 'found'; readonly found: CaptureAnswer };

/** The pages, one after the other. */
export function CaptureFlow(props: CaptureFlowProps) {
  const { opened, ask, message, clock, onTake, onClose } = props;
  // After the repair a simulated vehicle has another fault, or none.
  const fault = ask.kind === 'retest' ? opened.repaired?.fault : undefined;
  const onBench = opened.driver.session().opened.vehicle.kind === 'bench';
  const [place, setPlace] = useState<Place>({ name: onBench ? 'bench' : 'files' });
  const [folder, setFolder] = useState<CaptureFolder | null>(() =>
    onBench ? null : opened.captures.begin(),
  );
  const [note, setNote] = useState<string | null>(null);

  /** Reading a large file takes a while; the choice may be left meanwhile, and nothing is lost then. */
  async function measure(path: string) {
    setNote('Measuring ...');
    const found = await opened.measureCapture(ask, path);
    const stays = !found.ok && !found.channels;
    setNote(stays ? `! ${found.words}; ${found.fix}` : null);
    if (!stays) setPlace((now) => (now.name === 'files' ? { name: 'found', found } : now));
  }

  function toFiles() {
    setNote(null);
    setFolder(folder ?? opened.captures.begin());
    setPlace({ name: 'files' });
  }

  switch (place.name) {
    case 'bench':
      return (
        <WaitPage
          title="The capture"
          words="One moment: the scope on the simulated vehicle is saving a capture."
          onShown={async () =>
            setPlace({ name: 'found', found: await opened.measureCapture(ask, null, fault) })
          }
        />
      );
    case 'files': {
      const present = folder ?? opened.captures.begin();
      return (
        <CapturePicker
          key={present.path}
          folder={present}
          message={note}
          onName={(name) => {
            const to = opened.captures.follow(present.path, name);
            if ('file' in to) return void measure(to.file);
            setNote(null);
            setFolder(to);
          }}
          onClose={onClose}
        />
      );
    }
    case 'found': {
      const { found } = place;
      return (
        <CaptureScreen
          key={found.channels?.judged ?? 0}
          found={found}
          message={message}
          clock={clock}
          onTake={() => found.ok && onTake(found.command)}
          onChannel={(channel) =>
            found.channels && setPlace({ name: 'found', found: found.channels.judge(channel) })
          }
          onFile={toFiles}
          onClose={onClose}
        />
      );
    }
  }
}
