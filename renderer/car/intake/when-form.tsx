import { NativeSelect, TextInput } from '@mantine/core';
import { useEffect, type KeyboardEvent } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';
import type { IntakeItem } from './answers.ts';
import { sendWhen, whenDraft } from './when-draft.ts';
import styles from './intake.module.css';

interface WhenFormProps {
  readonly view: CarView;
  readonly item: IntakeItem;
  readonly answer: 'proven' | 'said';
  readonly onAnswered: (undo: readonly number[]) => void;
  readonly onCancel: () => void;
}

/** When an item was done, under its row: what is proven brings its paper, what is said has none. */
export function WhenForm({ view, item, answer, onAnswered, onCancel }: WhenFormProps) {
  const { car, today } = view;
  const entry = useEntry({
    key: `intake.answer ${item.item} ${answer}`,
    start: whenDraft(view, item, answer),
    send: (draft) => sendWhen(draft, view, item, answer),
    onDone: ({ undo }) => onAnswered(undo),
  });
  const date = entry.at('date').id;
  useEffect(() => document.getElementById(date)?.focus(), [date]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onCancel();
  };
  return (
    <div className={styles.when} onKeyDown={onKeyDown}>
      <EntryForm entry={entry} submit={tell('intake-form.submit')} onCancel={onCancel}>
        <FieldGroup legend={tell(`intake-form.${answer}`)}>
          <FieldRow>
            <DateField {...bindDate(entry, 'date')} max={today} label={tell('intake-form.date')} />
            {!item.readingGiven && <TextInput {...bindText(entry, 'reading')} label={tell('intake-form.reading', { unit: tell(`unit.${car.unit}`) })} inputMode="numeric" autoComplete="off" />}
            <TextInput {...bindText(entry, 'placeName')} label={tell('intake-form.place-name')} autoComplete="off" />
          </FieldRow>
          {answer === 'proven' && view.papers.length > 0 && <NativeSelect {...bindText(entry, 'paper')} label={tell('intake-form.paper')} data={[{ value: '', label: tell('intake-form.paper-new') }, ...view.papers.map(({ id, name }) => ({ value: id, label: name }))]} />}
          {answer === 'proven' && entry.draft.paper === '' && <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />}
          {item.readingGiven && <p className={styles.stand}>{tell('intake-form.reading-given')}</p>}
        </FieldGroup>
      </EntryForm>
    </div>
  );
}
