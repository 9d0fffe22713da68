/** The settings on the screen; each is saved as soon as its field is left. */
import { useState } from 'react';
import type { SettingsAccess } from '../app-services.ts';
import { type Form, formAfter, takesText } from '../parts/form-state.ts';
import { FormView } from '../parts/form-view.tsx';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useSize } from '../term/use-size.ts';
import { type SettingChange, settingsChange, settingsSheet } from './settings-state.ts';

export interface SettingsScreenProps {
  readonly settings: SettingsAccess;
  readonly onClose: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'save, next' },
  { keys: ['space'], show: 'Space', help: 'tick' },
  { keys: ['up', 'down'], show: 'Up/Down', help: 'move' },
  { keys: ['escape'], show: 'Esc', help: 'save, close' },
];

export function SettingsScreen({ settings, onClose }: SettingsScreenProps) {
  const [sheet, setSheet] = useState<Form>(() => settingsSheet(settings.values()));
  const [problem, setProblem] = useState<string | null>(null);
  const { rows } = bodySize(useSize(), KEYS);

  /** Saves the field at `at`; false when it was refused. */
  function save(form: Form, at: number): boolean {
    const { change, problem: refused } = settingsChange(form, at, settings.values());
    const failed = refused ?? (change === null ? null : put(settings, change));
    setProblem(failed);
    return failed === null;
  }

  useKeys(
    (event) => {
      const label = keyLabel(event);
      if (label === 'escape') {
        // A second Esc leaves without what was refused.
        if (save(sheet, sheet.at) || problem !== null) onClose();
        return;
      }
      if (label === 'return' && sheet.at === sheet.fields.length - 1) {
        save(sheet, sheet.at);
        return;
      }
      const next = formAfter(sheet, event);
      if (next === sheet) return;
      const field = next.fields[sheet.at];
      const moved = next.at !== sheet.at;
      if (moved || field?.kind !== 'text') {
        if (!save(next, sheet.at)) return;
      } else setProblem(null);
      setSheet(next);
    },
    { takesText: takesText(sheet) },
  );

  return (
    <Frame title="Settings" aside={settings.path} keys={KEYS}>
      <FormView form={sheet} rows={rows} remark={problem === null ? null : `! ${problem}`} />
    </Frame>
  );
}

function put(settings: SettingsAccess, change: SettingChange): string | null {
  // The union is spelled out one by one for the compiler; each pairs a key with its own type.
  return settings.set(change.key, change.value as never);
}
