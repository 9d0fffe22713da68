/** A sheet of fields to fill in from top to bottom: the rules, without React. */
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { type TextFieldState, textField, textFieldAfter } from './text-field-state.ts';

interface FieldBase {
  readonly key: string;
  readonly label: string;
  /** Shown while the field is being filled in. */
  readonly hint: string;
}

/** A field that text is typed into. */
export interface TextInput extends FieldBase {
  readonly kind: 'text';
  readonly field: TextFieldState;
}

/** A field that is on or off. */
export interface CheckInput extends FieldBase {
  readonly kind: 'check';
  readonly on: boolean;
}

/** A field that is one of a few options. */
export interface ChoiceInput extends FieldBase {
  readonly kind: 'choice';
  readonly options: readonly string[];
  readonly chosen: number;
}

/** Any field of a sheet, told apart by its `kind`. */
export type FormField = TextInput | CheckInput | ChoiceInput;

/** The whole sheet, and the field that keys go to. */
export interface Form {
  readonly fields: readonly FormField[];
  /** The field being filled in. */
  readonly at: number;
}

/** A text to fill in that holds `value`, the cursor behind it. */
export function textInput(key: string, label: string, value: string, hint: string): TextInput {
  return { kind: 'text', key, label, hint, field: textField(value) };
}

/** The form after a key: Enter, Tab and arrows move, Space ticks, Left and Right choose, the rest is typed. The same object when nothing came of it. */
export function formAfter(form: Form, event: KeyEvent): Form {
  const label = keyLabel(event);
  const field = form.fields[form.at];
  if (!field) return form;
  const last = form.fields.length - 1;
  const moves: Readonly<Record<string, number>> = {
    return: form.at + 1,
    tab: form.at + 1,
    down: form.at + 1,
    up: form.at - 1,
    'shift-tab': form.at - 1,
    'page-down': form.at + 8,
    'page-up': form.at - 8,
  };
  const to = moves[label];
  if (to !== undefined) {
    const at = Math.max(0, Math.min(last, to));
    return at === form.at ? form : { ...form, at };
  }
  const changed = fieldAfter(field, event, label);
  if (changed === field) return form;
  return { ...form, fields: form.fields.map((old, index) => (index === form.at ? changed : old)) };
}

function fieldAfter(field: FormField, event: KeyEvent, label: string): FormField {
  switch (field.kind) {
    case 'text': {
      const typed = textFieldAfter(field.field, event);
      return typed === field.field ? field : { ...field, field: typed };
    }
    case 'check':
      return label === 'space' || label === 'x' ? { ...field, on: !field.on } : field;
    case 'choice': {
      const step = label === 'left' ? -1 : label === 'right' || label === 'space' ? 1 : 0;
      const count = field.options.length;
      return step === 0 ? field : { ...field, chosen: (field.chosen + step + count) % count };
    }
  }
}

/** Whether what is typed goes into a text. */
export function takesText({ fields, at }: Form): boolean {
  return fields[at]?.kind === 'text';
}

/** The text of a field, '' when there is no such text field. */
export function fieldText(form: Form, key: string): string {
  const field = form.fields.find((one) => one.key === key);
  return field?.kind === 'text' ? field.field.text.trim() : '';
}

/** The chosen option of a field, '' when there is no such field. */
export function fieldChoice(form: Form, key: string): string {
  const field = form.fields.find((one) => one.key === key);
  return field?.kind === 'choice' ? (field.options[field.chosen] ?? '') : '';
}
