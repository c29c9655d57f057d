import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { CostLines } from '../../ui/form/cost-lines.tsx';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { itemsByName } from '../items-by-name.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';
import { composeRecord, recordDraft, type LineDraft, type RecordDraft } from './record-draft.ts';
import { RecordLines } from './record-lines.tsx';

interface RecordFormProps {
  readonly view: CarView;
  /** The item that one came from, or null. */
  readonly item: string | null;
  /** Lines that one came from, where it is none or several. */
  readonly lines?: readonly LineDraft[];
  readonly onClose: () => void;
}

/** Records work that was done: when, what, at which reading, what it cost, with its papers. */
export function RecordForm({ view, item, lines = [], onClose }: RecordFormProps) {
  const { car, currency, today } = view;
  const items = itemsByName(view, useWords().byName);
  const entry = useEntry({
    key: `record.add ${car.id} ${item ?? lines.map((line) => line.name).join(', ')}`,
    start: recordDraft(view, item, lines),
    send: (draft) => send(draft, view),
    onDone: ({ record, reading, observations, undo }) => {
      const key = reading?.state === 'set-aside' ? 'record-form.done-aside' : observations.length > 0 ? 'record-line.watched' : 'record-form.done';
      note(tell(key, { title: record.title, n: observations.length }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('record-form.submit')} onCancel={onClose}>
      <FieldRow>
        <DateField {...bindDate(entry, 'date')} data-autofocus max={today} label={tell('record-form.date')} />
        <TextInput {...bindText(entry, 'reading')} label={tell('record-form.reading', { unit: tell(`unit.${car.unit}`) })} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <RecordLines place={entry.at} group={entry.atGroup('lines')} items={items} lines={entry.draft.lines} begun={lines} onChange={(lines) => entry.set({ lines })} />
      <FieldRow>
        <NativeSelect {...bindText(entry, 'place')} label={tell('record-form.place')} data={choices('record-form.place-', ['home', 'garage'])} />
        {entry.draft.place === 'garage' && <TextInput {...bindText(entry, 'placeName')} label={tell('record-form.place-name')} autoComplete="off" />}
        <TextInput {...bindText(entry, 'doneBy')} label={tell('record-form.done-by')} autoComplete="off" />
      </FieldRow>
      <CostLines place={entry.at} group={entry.atGroup('costs')} currency={currency} costs={entry.draft.costs} onChange={(costs) => entry.set({ costs })} />
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />
      <MoreFields>
        <FieldRow>
          <TextInput {...bindText(entry, 'printedTotal', 'printedTotalMinor')} label={tell('record-form.printed-total', { currency })} description={tell('record-form.printed-total-what')} inputMode="decimal" autoComplete="off" />
          <TextInput {...bindText(entry, 'reference')} label={tell('record-form.reference')} autoComplete="off" />
        </FieldRow>
        <Textarea {...bindText(entry, 'note')} label={tell('record-form.note')} rows={3} />
        <Checkbox {...bindTick(entry, 'reconstructed')} label={tell('record-form.reconstructed')} />
      </MoreFields>
    </EntryForm>
  );
}

async function send(draft: RecordDraft, { car, currency }: CarView): Promise<Result<Changed<'record.add'>>> {
  const whole = composeRecord(draft, car, currency);
  if (!whole.ok) return whole;
  const result = await withPapers(draft.files, (papers) => change('record.add', { ...whole.value, papers }));
  // A refused reading names its own field, which stands here under another name.
  if (!result.ok && result.refusal.path?.[0] === 'value') return { ok: false, refusal: { ...result.refusal, path: ['reading'] } };
  return result;
}
