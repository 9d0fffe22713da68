/** Ctrl+C leaves at once; everything done is saved by then. The whole program has this of its own, a drill alone needs it. */
import type { ReactNode } from 'react';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';

export interface LeaveOnControlCProps {
  readonly onLeave: () => void;
  readonly children?: ReactNode;
}

/** Its children, and the key. */
export function LeaveOnControlC({ onLeave, children }: LeaveOnControlCProps) {
  useKeys((event) => {
    if (keyLabel(event) === 'ctrl-c') onLeave();
  });
  return <>{children}</>;
}
