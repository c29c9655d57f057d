import { Textarea } from '@mantine/core';
import { useLocation } from 'wouter';
import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface TakeBackFormProps {
  readonly view: RecordView;
  readonly onClose: () => void;
}

/** Takes a record back: it no longer counts, and the journal keeps that it was written and why it was taken back. */
export function TakeBackForm({ view, onClose }: TakeBackFormProps) {
  const [, go] = useLocation();
  const { goes, stays } = view.beside;
  const entry = useEntry({
    key: `record.take-back ${view.record.id}`,
    start: { why: '' },
    send: ({ why }) => change('record.take-back', { record: view.record.id, why }),
    onDone: () => {
      note(tell('take-back.done', { title: view.record.title }));
      onClose();
      go(`/car/${view.car.id}`);
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('take-back.submit')} onCancel={onClose}>
      <p>{tell('take-back.what')}{view.reading === null ? '' : ` ${tell('take-back.reading-stays')}`}</p>
      {goes.length > 0 && <p>{tell('take-back.goes', { what: goes.join(', ') })}</p>}
      {stays.length > 0 && <p>{tell('take-back.stays', { what: stays.join(', ') })}</p>}
      <Textarea {...bindText(entry, 'why')} data-autofocus label={tell('take-back.why')} rows={2} maxLength={300} />
    </EntryForm>
  );
}
