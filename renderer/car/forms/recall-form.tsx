import { Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';

type Recall = CarView['recalls'][number]['recall'];

interface RecallFormProps {
  readonly view: CarView;
  /** The recall to change, or null: a new one. */
  readonly now: Recall | null;
  readonly onClose: () => void;
}

interface Draft {
  readonly number: string;
  readonly what: string;
  readonly doneOn: string;
  readonly how: string;
  readonly doneBy: string;
  readonly nextOn: string;
  readonly files: readonly File[];
}

/** A recall of the maker: what it is about; and, once it is done, how, when and by whom. */
export function RecallForm({ view: { car, today }, now, onClose }: RecallFormProps) {
  const entry = useEntry({
    key: now === null ? `recall.add ${car.id}` : `recall.set ${now.id}`,
    start: draftOf(now),
    send: (draft) => send(draft, now, car.id),
    onDone: ({ recall, undo }) => {
      note(tell(now === null ? 'recall-form.entered' : 'recall-form.changed', { number: recall.number }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell(now === null ? 'recall-form.submit' : 'recall-form.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'number')} {...(now === null ? FIRST : {})} label={tell('recall-form.number')} autoComplete="off" />
      <Textarea {...bindText(entry, 'what')} label={tell('recall-form.what')} rows={2} />
      <FieldRow>
        <DateField {...bindDate(entry, 'doneOn')} {...(now === null ? {} : FIRST)} max={today} label={tell('recall-form.done-on')} description={tell('recall-form.done-on-what')} />
        <DateField {...bindDate(entry, 'nextOn')} label={tell(entry.draft.doneOn === '' ? 'recall-form.booked' : 'recall-form.again')} />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'how')} label={tell('recall-form.how')} placeholder={tell('recall-form.how-example')} autoComplete="off" />
        <TextInput {...bindText(entry, 'doneBy')} label={tell('recall-form.done-by')} autoComplete="off" />
      </FieldRow>
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />
    </EntryForm>
  );
}

/** Marks the field that has the focus at first. */
const FIRST = { 'data-autofocus': true };

function draftOf(now: Recall | null): Draft {
  return { number: now?.number ?? '', what: now?.what ?? '', doneOn: now?.doneOn ?? '', how: now?.how ?? '', doneBy: now?.doneBy ?? '', nextOn: now?.nextOn ?? '', files: [] };
}

async function send(draft: Draft, now: Recall | null, car: string): Promise<Result<Changed<'recall.set'>>> {
  const read = new FieldsRead();
  const whole = read.whole({
    ...(now === null ? {} : { id: now.id }),
    car,
    number: draft.number,
    what: draft.what,
    how: textOrNull(draft.how),
    doneBy: textOrNull(draft.doneBy),
    doneOn: read.dateOrNull('doneOn', draft.doneOn),
    nextOn: read.dateOrNull('nextOn', draft.nextOn),
  });
  if (!whole.ok) return whole;
  return withPapers(draft.files, (papers) => change('recall.set', { ...whole.value, papers: [...(now?.papers ?? []), ...papers] }));
}
