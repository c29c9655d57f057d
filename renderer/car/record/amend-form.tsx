import { Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { amendDraft, composeAmendment, type AmendDraft } from '../forms/amend-draft.ts';
import { RecordFields } from '../forms/record-fields.tsx';

interface AmendFormProps {
  readonly view: RecordView;
  readonly car: CarView;
  readonly onClose: () => void;
}

/** Corrects a record and says why; what was written first stays to be read. */
export function AmendForm({ view, car, onClose }: AmendFormProps) {
  const entry = useEntry({
    key: `record.amend ${view.record.id}`,
    start: amendDraft(view),
    send: (draft) => send(draft, view),
    onDone: ({ undo }) => {
      note(tell('amend-form.done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('amend-form.submit')} onCancel={onClose}>
      <p>{tell('amend-form.what')}</p>
      <Textarea {...bindText(entry, 'why')} data-autofocus label={tell('amend-form.why')} rows={2} maxLength={300} />
      <TextInput {...bindText(entry, 'title')} label={tell('amend-form.title')} autoComplete="off" />
      <RecordFields view={car} entry={entry} begun={[]} />
    </EntryForm>
  );
}

async function send(draft: AmendDraft, view: RecordView): Promise<Result<Changed<'record.amend'>>> {
  return withPapers(draft.files, async (papers) => {
    const whole = composeAmendment(draft, view, papers);
    return whole.ok ? change('record.amend', whole.value) : whole;
  });
}
