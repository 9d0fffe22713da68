/** A test outside the tree, from its cautions to what it showed, by hand or by a capture. */
import { useState } from 'react';
import type { Proposal } from '../../session/advisor.ts';
import type { Command } from '../../session/command.ts';
import { readNote, unreadCautions } from '../../session/pending-cautions.ts';
import type { OpenedSession } from '../app-services.ts';
import { CaptureFlow } from './capture-flow.tsx';
import { CautionScreen } from './caution-screen.tsx';
import { ExtraScreen } from './extra-screen.tsx';
import { nextLine } from './step-words.ts';

export interface ExtraFlowProps {
  readonly opened: OpenedSession;
  readonly proposal: Proposal;
  readonly message: string | null;
  readonly clock: () => number;
  /** True when it is saved. */
  readonly perform: (command: Command) => boolean;
  readonly onRecord: (command: Command) => void;
  readonly onClose: () => void;
}

/** The pages: the cautions first, which go into the record as a note, since they belong to no step. */
export function ExtraFlow(props: ExtraFlowProps) {
  const { opened, proposal, clock, perform, onClose } = props;
  const { test } = proposal;
  const [isRead, setIsRead] = useState(false);
  const [isCapturing, setIsCapturing] = useState(false);
  const cautions = isRead
    ? []
    : unreadCautions(opened.driver.session(), test, opened.cautionsFor(test));
  if (isCapturing)
    return (
      <CaptureFlow
        opened={opened}
        ask={{ kind: 'test', test, expected: proposal.expected }}
        message={props.message}
        clock={clock}
        onTake={props.onRecord}
        onClose={() => setIsCapturing(false)}
      />
    );
  if (cautions.length === 0)
    return (
      <ExtraScreen
        opened={opened}
        proposal={proposal}
        message={props.message}
        clock={clock}
        onRecord={props.onRecord}
        onCapture={() => setIsCapturing(true)}
        onClose={onClose}
      />
    );
  return (
    <CautionScreen
      cautions={cautions}
      aside="a test outside the procedure"
      before={nextLine(opened.bind(proposal.words), test.setup)}
      message={props.message}
      clock={clock}
      keys={[{ keys: ['escape'], show: 'Esc', help: 'not now' }]}
      onKey={onClose}
      onAcknowledge={() => {
        if (perform(readNote(cautions))) setIsRead(true);
      }}
    />
  );
}
