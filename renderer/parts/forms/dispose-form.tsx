import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface DisposeFormProps {
  readonly view: PartsView;
  readonly waste: PartsView['waste'][number];
  readonly onClose: () => void;
}

interface Draft {
  readonly how: string;
  readonly on: string;
  readonly files: readonly File[];
}

/** Says where waste was taken to, and when, with the paper for it where there is one. */
export function DisposeForm({ view, waste, onClose }: DisposeFormProps) {
  const entry = useEntry({
    key: `waste.dispose ${waste.id}`,
    start: { how: '', on: view.today as string, files: [] } satisfies Draft as Draft,
    send: (draft) => send(draft, waste.id),
    onDone: ({ undo }) => {
      note(tell('dispose.done', { what: waste.what }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('dispose.submit')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'how')} data-autofocus label={tell('dispose.how')} placeholder={tell('dispose.how-example')} autoComplete="off" />
        <DateField {...bindDate(entry, 'on')} max={view.today} label={tell('dispose.on')} />
      </FieldRow>
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files: files.slice(-1) })} />
    </EntryForm>
  );
}

async function send(draft: Draft, waste: string): Promise<Result<Changed<'waste.dispose'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ waste, how: draft.how, on: read.date('on', draft.on) });
  return whole.ok ? withPapers(draft.files, ([paper = null]) => change('waste.dispose', { ...whole.value, paper })) : whole;
}
