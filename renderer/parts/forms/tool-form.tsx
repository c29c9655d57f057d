import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface ToolFormProps {
  /** What stands, or null: a new one. */
  readonly now: PartsView['tools'][number] | null;
  readonly onClose: () => void;
}

interface Draft {
  readonly name: string;
  readonly state: string;
  readonly where: string;
  readonly lender: string;
  readonly until: string;
  readonly note: string;
}

/** States a tool: one's own, borrowed until a day, or missing. */
export function ToolForm({ now, onClose }: ToolFormProps) {
  const entry = useEntry({
    key: `tool.set ${now?.id ?? ''}`,
    start: { name: now?.name ?? '', state: now?.state ?? 'owned', where: now?.where ?? '', lender: now?.lender ?? '', until: now?.until ?? '', note: now?.note ?? '' } satisfies Draft as Draft,
    send: (draft) => send(draft, now?.id ?? null),
    onDone: ({ set, undo }) => {
      note(tell('tool.done', { tool: set.name }), undo);
      onClose();
    },
  });
  const borrowed = entry.draft.state === 'borrowed';
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('tool.name')} placeholder={tell('tool.name-example')} autoComplete="off" />
        <NativeSelect {...bindText(entry, 'state')} label={tell('tool.state')} data={choices('tool.state-', ['owned', 'borrowed', 'missing'])} />
      </FieldRow>
      {borrowed && (
        <FieldRow>
          <TextInput {...bindText(entry, 'lender')} label={tell('tool.lender')} autoComplete="off" />
          <DateField {...bindDate(entry, 'until')} label={tell('tool.until')} />
        </FieldRow>
      )}
      <TextInput {...bindText(entry, 'where')} label={tell('lot.where')} autoComplete="off" />
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, id: string | null): Promise<Result<Changed<'tool.set'>>> {
  const read = new FieldsRead();
  const borrowed = draft.state === 'borrowed';
  const whole = read.whole({
    ...(id === null ? {} : { id }), name: draft.name, state: draft.state as 'owned', where: textOrNull(draft.where), note: draft.note,
    lender: borrowed ? textOrNull(draft.lender) : null, until: borrowed ? read.dateOrNull('until', draft.until) : null,
  });
  return whole.ok ? change('tool.set', whole.value) : whole;
}
