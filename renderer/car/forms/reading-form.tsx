import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import type { Result } from '../../../shared-core/result/result.ts';
import { say } from '../../../shared-core/result/words/say.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { unitChoices } from '../../ui/household-choices.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { ReadingQuestion } from '../../ui/reading-question.tsx';
import { tell } from '../../ui/words/tell.ts';

interface ReadingFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

type Recorded = Changed<'reading.record'>;

/** Enters a reading; one that is set aside is asked about at once. */
export function ReadingForm({ view, onClose }: ReadingFormProps) {
  const words = useWords();
  const { car, today } = view;
  const [aside, setAside] = useState<Recorded | null>(null);
  const entry = useEntry({
    key: `reading.record ${car.id}`,
    start: { value: '', unit: car.unit as string, date: today as string, source: 'keeper', note: '', replaced: false, lastShown: '' },
    send: async (draft): Promise<Result<Recorded>> => {
      const read = new FieldsRead();
      const unit = draft.unit as 'km' | 'mi';
      const whole = read.whole({
        car: car.id,
        value: read.number('value', draft.value),
        unit,
        date: read.date('date', draft.date),
        source: draft.source as 'keeper',
        note: draft.note,
        replaced: draft.replaced ? { lastShown: read.distanceOrNull('replaced.lastShown', draft.lastShown, unit) } : null,
      });
      return whole.ok ? change('reading.record', whole.value) : whole;
    },
    onDone: (reply) => {
      const { typed } = reply.reading;
      note(tell(reply.state === 'set-aside' ? 'reading.recorded-aside' : 'reading.recorded', { car: car.name, value: words.distance(typed.value, typed.unit) }), reply.undo);
      if (reply.state === 'set-aside') setAside(reply);
      else onClose();
    },
  });
  if (aside !== null) return <AskedAbout car={car.name} recorded={aside} onClose={onClose} />;
  return (
    <EntryForm entry={entry} submit={tell('reading-form.submit')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'value')} data-autofocus label={tell('reading-form.value')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'date')} max={today} label={tell('reading-form.date')} />
        <NativeSelect {...bindText(entry, 'source')} label={tell('reading-form.source')} data={choices('source.', ['keeper', 'garage', 'test', 'purchase'])} />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('reading-form.note')} autoComplete="off" />
      <Checkbox {...bindTick(entry, 'replaced')} label={tell('reading-form.replaced')} />
      {entry.draft.replaced && <TextInput {...bindText(entry, 'lastShown', 'replaced.lastShown')} label={tell('reading-form.last-shown')} description={tell('reading-form.last-shown-what')} inputMode="numeric" autoComplete="off" />}
    </EntryForm>
  );
}

function AskedAbout({ car, recorded, onClose }: { readonly car: string; readonly recorded: Recorded; readonly onClose: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { reading, code, repairs } = recorded;
  const doubtful = { reading: reading.id, date: reading.date, value: reading.typed.value, unit: reading.typed.unit, text: say({ key: `doubt-${code ?? 'decrease'}`, values: {} }), repairs };
  return (
    <section aria-labelledby="reading-aside">
      <h3 id="reading-aside" tabIndex={-1} ref={heading}>{tell('reading-form.aside-title')}</h3>
      <p>{tell('reading.set-aside')}</p>
      <ReadingQuestion car={car} doubtful={doubtful} onSettled={onClose} />
    </section>
  );
}
