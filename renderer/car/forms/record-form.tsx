import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { composeRecord, recordDraft, type LineDraft, type RecordDraft } from './record-draft.ts';
import { RecordFields } from './record-fields.tsx';
import { RecordMeasured } from './record-measured.tsx';
import { RecordSettles } from './record-settles.tsx';

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
  const { car } = view;
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
      <RecordFields
        view={view}
        entry={entry}
        begun={lines}
        besideDay={<TextInput {...bindText(entry, 'reading')} label={tell('record-form.reading', { unit: tell(`unit.${car.unit}`) })} inputMode="numeric" autoComplete="off" />}
        afterLines={(
          <>
            <RecordSettles view={view} settles={entry.draft.settles} group={entry.atGroup('settles')} onChange={(settles) => entry.set({ settles })} />
            <RecordMeasured view={view} measured={entry.draft.measured} place={entry.at} group={entry.atGroup('measured')} onChange={(measured) => entry.set({ measured })} />
          </>
        )}
      />
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
