import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core';
import { useId, type ReactNode } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { CostLines } from '../../ui/form/cost-lines.tsx';
import { DateField } from '../../ui/form/date-field.tsx';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { PapersField } from '../../ui/form/papers-field.tsx';
import type { Entry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { itemsByName } from '../items-by-name.ts';
import type { LineDraft, RecordDraft } from './record-draft.ts';
import { RecordLines } from './record-lines.tsx';
import { RecordMinutes } from './record-minutes.tsx';
import { RecordShelf } from './record-shelf.tsx';
import { RecordVouched } from './record-vouched.tsx';

interface RecordFieldsProps {
  readonly view: CarView;
  readonly entry: Entry<RecordDraft>;
  /** Lines that one came with: they stand before everything else. */
  readonly begun: readonly LineDraft[];
  /** What stands beside the day. */
  readonly besideDay?: ReactNode;
  /** What comes after the lines of work. */
  readonly afterLines?: ReactNode;
}

const NOTHING = { shelf: [], names: { placeName: [], doneBy: [], approvedBy: [], method: [] } };

/** The fields of a work record, one form for home and garage. */
export function RecordFields({ view, entry, begun, besideDay, afterLines }: RecordFieldsProps) {
  const { car, currency, today } = view;
  const id = useId();
  const answer = useAsk('record.entering', { car: car.id }, { hold: true });
  const { shelf, names } = answer.state === 'answered' ? answer.value : NOTHING;
  const lists = { placeName: `${id}-garages`, doneBy: `${id}-people`, approvedBy: `${id}-approvers`, method: `${id}-methods` } as const;
  return (
    <>
      {Object.entries(names).map(([field, known]) => <datalist key={field} id={lists[field as keyof typeof lists]}>{known.map((name) => <option key={name} value={name} />)}</datalist>)}
      <FieldRow>
        <DateField {...bindDate(entry, 'date')} data-autofocus max={today} label={tell('record-form.date')} />
        {besideDay}
      </FieldRow>
      <RecordLines place={entry.at} group={entry.atGroup('lines')} items={itemsByName(view, useWords().byName)} lines={entry.draft.lines} begun={begun} onChange={(lines) => entry.set({ lines })} />
      {afterLines}
      <FieldRow>
        <NativeSelect {...bindText(entry, 'place')} label={tell('record-form.place')} data={choices('record-form.place-', ['home', 'garage'])} />
        {entry.draft.place === 'garage' && <TextInput {...bindText(entry, 'placeName')} label={tell('record-form.place-name')} list={lists.placeName} autoComplete="off" />}
        <TextInput {...bindText(entry, 'doneBy')} label={tell('record-form.done-by')} list={lists.doneBy} autoComplete="off" />
      </FieldRow>
      <RecordVouched entry={entry} names={lists} />
      <RecordShelf shelf={shelf} lots={entry.draft.lots} place={entry.at} group={entry.atGroup('lotsUsed')} onChange={(lots) => entry.set({ lots })} />
      <CostLines place={entry.at} group={entry.atGroup('costs')} currency={currency} items={entry.draft.lines.flatMap((line) => (line.item === null || line.outcome === 'not-done' ? [] : [{ value: line.item, label: line.name }]))} costs={entry.draft.costs} onChange={(costs) => entry.set({ costs })} />
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />
      <MoreFields>
        <RecordMinutes lines={entry.draft.lines} place={entry.at} onChange={(lines) => entry.set({ lines })} />
        <FieldRow>
          <TextInput {...bindText(entry, 'printedTotal', 'printedTotalMinor')} label={tell('record-form.printed-total', { currency })} description={tell('record-form.printed-total-what')} inputMode="decimal" autoComplete="off" />
        </FieldRow>
        <Textarea {...bindText(entry, 'note')} label={tell('record-form.note')} rows={3} />
        <Checkbox {...bindTick(entry, 'reconstructed')} label={tell('record-form.reconstructed')} />
      </MoreFields>
    </>
  );
}
