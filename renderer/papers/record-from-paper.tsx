import { NativeSelect, TextInput } from '@mantine/core';
import type { PaperView } from '../../shared-core/views/papers-view.ts';
import { amountText } from '../../shared-core/units/money.ts';
import { change } from '../ui/change.ts';
import { bindDate, bindText } from '../ui/form/bind.ts';
import { DateField } from '../ui/form/date-field.tsx';
import { EntryForm } from '../ui/form/entry-form.tsx';
import { FieldRow } from '../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../ui/form/read-fields.ts';
import { useEntry } from '../ui/form/use-entry.ts';
import { note } from '../ui/notices/notice-store.ts';
import { tell } from '../ui/words/tell.ts';

interface Draft {
  readonly car: string;
  readonly date: string;
  readonly what: string;
  readonly where: string;
  readonly total: string;
}

/** Records the work that a paper shows, beginning with what could be read of it. */
export function RecordFromPaper({ view }: { readonly view: PaperView }) {
  const { paper, start, currency, cars, today } = view;
  const entry = useEntry({
    key: `paper.record ${paper.id}`,
    start: { car: start.car ?? cars[0]?.id ?? '', date: start.date ?? paper.day ?? today, what: '', where: start.placeName ?? '', total: start.totalMinor === null ? '' : amountText(start.totalMinor, currency) } as Draft,
    send: async (draft: Draft) => {
      const read = new FieldsRead();
      const whole = read.whole({ date: read.date('date', draft.date), printedTotalMinor: read.moneyOrNull('printedTotalMinor', draft.total, currency) });
      if (!whole.ok) return whole;
      const placeName = textOrNull(draft.where);
      return change('record.add', { ...whole.value, car: draft.car, lines: [{ name: draft.what }], place: placeName === null ? 'home' : 'garage', placeName, papers: [paper.id] });
    },
    onDone: ({ record, undo }) => note(tell('paper.recorded', { title: record.title }), undo),
  });
  return (
    <EntryForm entry={entry} submit={tell('paper.record-submit')}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'car')} label={tell('paper.choose-car')} data={cars.map(({ id, name }) => ({ value: id, label: name }))} />
        <DateField {...bindDate(entry, 'date')} label={tell('paper.record-date')} max={today} />
      </FieldRow>
      <TextInput {...bindText(entry, 'what', 'lines')} label={tell('paper.record-what')} autoComplete="off" />
      <FieldRow>
        <TextInput {...bindText(entry, 'where', 'placeName')} label={tell('paper.record-where')} autoComplete="off" />
        <TextInput {...bindText(entry, 'total', 'printedTotalMinor')} label={tell('paper.record-total', { currency })} inputMode="decimal" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}
