/** From "a capture" to the answer it gives: the simulated vehicle's own at once, else the choice of a file; then what was found. */
import { useState } from 'react';
import type { CaptureFolder } from '../../files/list-captures.ts';
import { asksPosition, type CaptureAnswer, type CaptureAsk } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import { statedOnSheet } from '../../session/instead-of-sheet.ts';
import { safeText } from '../../source/safe-text.ts';
import { looksStated, STATED_FORM } from '../../waveform/stated-edges.ts';
import type { CaptureBeside, OpenedSession } from '../app-services.ts';
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

/** Which file is chosen: the capture, the other channels of the same crank, or what it is held against. */
type Choosing = 'capture' | 'second' | 'against';
type CapturePage =
  | { readonly name: 'bench' }
  /** `back` is what was found before, and is shown again when nothing is chosen. */
  | { readonly name: 'files'; readonly choosing: Choosing; readonly back: CaptureAnswer | null }
  | { readonly name: 'found'; readonly found: CaptureAnswer };
/** What is measured; null for the simulated vehicle's own capture. */
type Measured = Pick<CaptureBeside, 'second' | 'against'> & { readonly path: string | null };

/** The pages, one after the other. */
export function CaptureFlow(props: CaptureFlowProps) {
  const { opened, ask, message, clock, onTake, onClose } = props;
  // After the repair a simulated vehicle has another fault, or none.
  const fault = ask.kind === 'retest' ? opened.repaired?.fault : undefined;
  const onBench = opened.driver.session().opened.vehicle.kind === 'bench';
  const [place, setPlace] = useState<CapturePage>(
    onBench ? { name: 'bench' } : { name: 'files', choosing: 'capture', back: null },
  );
  const [measured, setMeasured] = useState<Measured>({ path: null });
  const [folder, setFolder] = useState<CaptureFolder | null>(() =>
    onBench ? null : opened.captures.begin(),
  );
  const [note, setNote] = useState<string | null>(null);

  function answerTo({ path, ...beside }: Measured): Promise<CaptureAnswer> {
    return opened.measureCapture(ask, path, {
      ...beside,
      ...(fault === undefined ? {} : { fault }),
    });
  }

  /** Reading a large file takes a while; the choice may be left meanwhile, and nothing is lost then. */
  async function measure(wanted: Measured) {
    setNote('Measuring ...');
    const found = await answerTo(wanted);
    const stays = !found.ok && !found.channels && !found.lines;
    setNote(stays ? `! ${found.words}; ${found.fix}` : null);
    if (stays) return;
    setMeasured(wanted);
    setPlace((now) => (now.name === 'files' ? { name: 'found', found } : now));
  }

  function toFiles(choosing: Choosing, back: CaptureAnswer) {
    setNote(null);
    setFolder(folder ?? opened.captures.begin());
    setPlace({ name: 'files', choosing, back });
  }

  function chosen(choosing: Choosing, name: string) {
    if (choosing === 'against' && looksStated(name))
      return void measure({ ...measured, against: name });
    const to = opened.captures.follow(present().path, name);
    if (!('file' in to)) {
      setNote(null);
      return setFolder(to);
    }
    if (choosing === 'capture') return void measure({ path: to.file });
    void measure({ ...measured, [choosing]: to.file });
  }

  /** Where the sheet states edges, what is chosen here takes their place: it is said before. */
  function hint(choosing: Choosing): string | null {
    const stated = statedOnSheet(ask, opened.driver.session().opened.job);
    return choosing === 'against' && stated !== null
      ? `The sheet states: ${safeText(stated)}. A choice here takes its place; Esc keeps it.`
      : HINTS[choosing];
  }

  function present(): CaptureFolder {
    return folder ?? opened.captures.begin();
  }

  switch (place.name) {
    case 'bench':
      return (
        <WaitPage
          title="The capture"
          words="One moment: saving a capture from the simulated vehicle."
          onShown={async () => setPlace({ name: 'found', found: await answerTo(measured) })}
        />
      );
    case 'files': {
      const { choosing, back } = place;
      return (
        <CapturePicker
          key={`${choosing} ${present().path}`}
          title={TITLES[choosing]}
          folder={present()}
          message={note ?? (present().problem ? null : hint(choosing))}
          typed={(text) => (choosing === 'against' && looksStated(text) ? AS_STATED : null)}
          onName={(name) => chosen(choosing, name)}
          onClose={() => (back ? setPlace({ name: 'found', found: back }) : onClose())}
        />
      );
    }
    case 'found': {
      const { found } = place;
      return (
        <CaptureScreen
          key={found.channels?.judged ?? 0}
          found={found}
          enter={
            ask.kind === 'step' && ask.step.kind === 'ask'
              ? 'keep it as a round'
              : 'use it as the answer'
          }
          wantsSecond={asksPosition(ask) && measured.path !== null}
          message={message}
          clock={clock}
          onTake={() => found.ok && onTake(found.command)}
          onChannel={(channel) =>
            found.channels && setPlace({ name: 'found', found: found.channels.judge(channel) })
          }
          onFile={(choosing) => toFiles(choosing, found)}
          onClose={onClose}
        />
      );
    }
  }
}

const AS_STATED = "The maker's edge positions: Enter takes them, Esc clears them.";
const TITLES: Readonly<Record<Choosing, string>> = {
  capture: 'Choose a capture',
  second: 'The other channel of the same crank',
  against: 'Choose a known-good capture',
};
const HINTS: Readonly<Record<Choosing, string | null>> = {
  capture: null,
  second: null,
  against: `Or type the maker's edge positions: ${STATED_FORM}.`,
};
