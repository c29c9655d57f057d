import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { useWords } from '../../ui/household.tsx';
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
  readonly paid: string;
  readonly boughtOn: string;
  readonly spreadOver: string;
}

/** States a tool: one's own, borrowed until a day, or missing. */
export function ToolForm({ now, onClose }: ToolFormProps) {
  const { currency } = useWords();
  const entry = useEntry({
    key: `tool.set ${now?.id ?? ''}`,
    start: { name: now?.name ?? '', state: now?.state ?? 'owned', where: now?.where ?? '', lender: now?.lender ?? '', until: now?.until ?? '', note: now?.note ?? '', paid: now?.paidMinor === undefined ? '' : amountText(now.paidMinor, currency), boughtOn: now?.boughtOn ?? '', spreadOver: now?.spreadOver === undefined ? '' : String(now.spreadOver) } satisfies Draft as Draft,
    send: (draft) => send(draft, now?.id ?? null, currency),
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
      <FieldGroup legend={tell('tool.cost')} hint={tell('tool.cost-what')}>
        <FieldRow>
          <TextInput {...bindText(entry, 'paid', 'paidMinor')} label={tell('tool.paid', { currency })} inputMode="decimal" autoComplete="off" />
          <DateField {...bindDate(entry, 'boughtOn')} label={tell('tool.bought-on')} />
          <TextInput {...bindText(entry, 'spreadOver')} label={tell('tool.spread-over')} inputMode="numeric" autoComplete="off" />
        </FieldRow>
      </FieldGroup>
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, id: string | null, currency: string): Promise<Result<Changed<'tool.set'>>> {
  const read = new FieldsRead();
  const borrowed = draft.state === 'borrowed';
  const paid = read.moneyOrNull('paidMinor', draft.paid, currency);
  const uses = read.wholeOrNull('spreadOver', draft.spreadOver);
  const boughtOn = read.dateOrNull('boughtOn', draft.boughtOn);
  const whole = read.whole({
    ...(id === null ? {} : { id }), name: draft.name, state: draft.state as 'owned', where: textOrNull(draft.where), note: draft.note,
    ...(paid === null ? {} : { paidMinor: paid }), ...(boughtOn === null ? {} : { boughtOn }), ...(uses === null ? {} : { spreadOver: uses }),
    lender: borrowed ? textOrNull(draft.lender) : null, until: borrowed ? read.dateOrNull('until', draft.until) : null,
  });
  return whole.ok ? change('tool.set', whole.value) : whole;
}
