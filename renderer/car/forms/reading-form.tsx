import { Checkbox, FileInput, NativeSelect, TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { say } from '../../../shared-core/result/words/say.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { FilePlace } from '../../ui/file-place.tsx';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { unitChoices } from '../../ui/household-choices.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { ReadingQuestion } from '../../ui/reading-question.tsx';
import { tell } from '../../ui/words/tell.ts';
import { sendReading, type ReadingDraft, type RecordedReading } from './reading-draft.ts';
import { readingDraft } from './reading-start.ts';
import { unitOfDraft, unitOfLast } from './reading-units.ts';

interface ReadingFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

/** Enters a reading; one that is set aside is asked about at once. */
export function ReadingForm({ view, onClose }: ReadingFormProps) {
  const words = useWords();
  const { car, today } = view;
  const [aside, setAside] = useState<RecordedReading | null>(null);
  const entry = useEntry({
    key: `reading.record ${car.id}`,
    start: readingDraft(today),
    send: (draft) => sendReading(draft, view),
    onDone: (reply) => {
      const { typed } = reply.reading;
      note(tell(reply.state === 'set-aside' ? 'reading.recorded-aside' : 'reading.recorded', { car: car.name, value: words.distance(typed.value, typed.unit) }), reply.undo);
      if (reply.state === 'set-aside') setAside(reply);
      else onClose();
    },
  });
  if (aside !== null) return <AskedAbout view={view} recorded={aside} onClose={onClose} />;
  return (
    <EntryForm entry={entry} submit={tell('reading-form.submit')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'value')} data-autofocus label={tell('reading-form.value')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} value={unitOfDraft(entry.draft, view)} label={tell('reading-form.unit')} data={unitChoices()} />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'date')} max={today} label={tell('reading-form.date')} />
        <NativeSelect {...bindText(entry, 'source')} label={tell('reading-form.source')} data={choices('source.', ['keeper', 'garage', 'test', 'purchase'])} />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('reading-form.note')} autoComplete="off" />
      <FilePlace onFiles={(files) => entry.set({ files: [...files] })}>
        <FileInput
          {...entry.at('papers')}
          clearable
          clearButtonProps={{ 'aria-label': tell('record-form.papers-clear') }}
          value={entry.draft.files[0] ?? null}
          onChange={(file) => entry.set({ files: file === null ? [] : [file] })}
          label={tell('reading-form.paper')}
          description={tell('reading-form.paper-what')}
          placeholder={tell('reading-form.paper-choose')}
          accept="application/pdf,image/jpeg,image/png,image/webp"
        />
      </FilePlace>
      <Checkbox {...bindTick(entry, 'replaced')} label={tell('reading-form.replaced')} />
      {entry.draft.replaced && <ReplacedFields entry={entry} view={view} />}
    </EntryForm>
  );
}

function ReplacedFields({ entry, view }: { readonly entry: Entry<ReadingDraft>; readonly view: CarView }) {
  return (
    <FieldGroup legend={tell('reading-form.old-one')} hint={tell('reading-form.last-shown-what')} place={entry.atGroup('replaced')}>
      <FieldRow>
        <TextInput {...bindText(entry, 'lastShown', 'replaced.lastShown')} label={tell('reading-form.last-shown')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'lastUnit')} value={unitOfLast(entry.draft, view)} label={tell('reading.old-unit')} data={unitChoices()} />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'sure')} label={tell('reading.sure-last')} />
      <Checkbox {...bindTick(entry, 'laterOfNew', 'replaced.laterOfNew')} label={tell('reading.later-of-new')} />
    </FieldGroup>
  );
}

function AskedAbout({ view: { car, due }, recorded, onClose }: { readonly view: CarView; readonly recorded: RecordedReading; readonly onClose: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { reading, code, repairs } = recorded;
  const justTyped = { reading: reading.id, date: reading.date, value: reading.typed.value, unit: reading.typed.unit, text: say({ key: `doubt-${code ?? 'decrease'}`, values: {} }), repairs };
  // What else speaks for and against it comes with the car, a moment later.
  const doubtful = due.doubtful.find((one) => one.reading === reading.id) ?? justTyped;
  return (
    <section aria-labelledby="reading-aside">
      <h3 id="reading-aside" tabIndex={-1} ref={heading}>{tell('reading-form.aside-title')}</h3>
      <p>{tell('reading.set-aside')}</p>
      <ReadingQuestion car={car.name} doubtful={doubtful} onSettled={onClose} />
    </section>
  );
}
