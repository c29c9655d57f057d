import { NativeSelect } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface CloseFormProps {
  readonly view: CarView;
  readonly observation: string;
  readonly onClose: () => void;
}

/** Settles an observation by the work that dealt with it. */
export function CloseForm({ view, observation, onClose }: CloseFormProps) {
  const words = useWords();
  const records = view.records.map(({ record }) => ({ value: record.id, label: `${words.date(record.date)}: ${record.title}` }));
  const entry = useEntry({
    key: `observation.close ${observation}`,
    start: { record: records[0]?.value ?? '' },
    send: ({ record }) => change('observation.close', { observation, record }),
    onDone: ({ undo }) => {
      note(tell('close-form.done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('close-form.submit')} onCancel={onClose}>
      <p>{tell('close-form.what')}</p>
      <NativeSelect {...bindText(entry, 'record')} data-autofocus label={tell('close-form.record')} data={records} />
    </EntryForm>
  );
}
