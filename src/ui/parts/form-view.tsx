/** A sheet of fields: the view. One row a field, the one being filled in marked and with its hint below. */
import { Box } from 'ink';
import { shownText, useLook } from '../term/use-look.ts';
import { useBody } from './body-size.ts';
import type { Form, FormField } from './form-state.ts';
import { Words } from './safe-words.tsx';
import { TextField } from './text-field.tsx';
import { overflowWords } from './text-field-state.ts';
import { windowRows, windowTop } from './window-state.ts';
import { columnsOf, padWords } from './wrap-words.ts';

export interface FormViewProps {
  readonly form: Form;
  readonly rows: number;
  /** Shown in place of the hint: what is wrong with the field, or what was understood. */
  readonly remark?: string | null;
}

const HINT_ROWS = 3;

/** The form with its hint in the last three rows. */
export function FormView({ form, rows, remark: given }: FormViewProps) {
  const { columns } = useBody();
  const look = useLook();
  const room = Math.max(1, rows - HINT_ROWS);
  const count = form.fields.length;
  const shown = windowRows(count, room);
  // The chosen field in the middle, so that what comes next is in view.
  const middle = Math.max(0, form.at - Math.floor(shown / 2));
  const top = windowTop({ count, rows: room, top: middle, keep: form.at });
  const widest = Math.max(...form.fields.map(({ label }) => columnsOf(shownText(label, look))));
  const labelWidth = Math.min(widest + 1, Math.floor(columns * 0.45));
  const current = form.fields[form.at];
  const remark = (current?.kind === 'text' ? overflowWords(current.field) : null) ?? given;
  const label = shownText(current?.label ?? '', look);
  // A label that is cut stands in its hint in full; what was understood takes the hint's place.
  const said = remark && columnsOf(label) > labelWidth ? `${label}: ${remark}` : remark;
  return (
    <Box flexDirection="column" height={rows} overflowY="hidden">
      <Box flexDirection="column" height={room} overflowY="hidden" flexShrink={0}>
        {form.fields.slice(top, top + shown).map((field, offset) => (
          <Row
            key={field.key}
            field={field}
            active={top + offset === form.at}
            labelWidth={labelWidth}
            width={columns}
          />
        ))}
        {count > shown ? <Words>{`field ${form.at + 1} of ${count}`}</Words> : null}
      </Box>
      <Box height={HINT_ROWS} flexDirection="column" justifyContent="flex-end" overflowY="hidden">
        <Words width={columns}>{said ?? current?.hint ?? ' '}</Words>
      </Box>
    </Box>
  );
}

function Row(props: { field: FormField; active: boolean; labelWidth: number; width: number }) {
  const { field, active, labelWidth, width } = props;
  const look = useLook();
  const mark = look.ascii ? '...' : '…';
  const lead = `${active ? '> ' : '  '}${padWords(shownText(field.label, look), labelWidth, mark)} `;
  const room = Math.max(4, width - columnsOf(lead));
  return (
    <Box height={1} flexShrink={0} overflowY="hidden">
      <Words bold={active}>{lead}</Words>
      {field.kind === 'text' ? (
        active ? (
          <TextField field={field.field} width={room} />
        ) : (
          <Words width={room} wrap="cut">
            {field.field.text === '' ? '-' : field.field.text}
          </Words>
        )
      ) : (
        <Words width={room} wrap="cut" bold={active}>
          {field.kind === 'check'
            ? field.on
              ? '[x]'
              : '[ ]'
            : choiceWords(field.options, field.chosen, room)}
        </Words>
      )}
    </Box>
  );
}

/** All options on one row, the chosen one in round brackets; that one and its place where they have no room. */
function choiceWords(options: readonly string[], chosen: number, room: number): string {
  const all = options
    .map((option, place) => (place === chosen ? `(${option})` : ` ${option} `))
    .join(' ');
  return columnsOf(all.trimEnd()) <= room
    ? all
    : `(${options[chosen] ?? ''})  ${chosen + 1} of ${options.length}`;
}
