import { Checkbox } from '@mantine/core';
import type { QuoteView } from '../../../shared-core/views/quotes-view.ts';
import { change } from '../../ui/change.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

/** Chooses the records of the work that was done in place of a quote. */
export function HeldAgainstForm({ view, onClose }: { readonly view: QuoteView; readonly onClose: () => void }) {
  const words = useWords();
  const entry = useEntry({
    key: `quote.set records ${view.quote.id}`,
    start: { records: view.quote.records },
    send: ({ records }) => change('quote.set', { ...view.quote, records: [...records] }),
    onDone: ({ undo }) => {
      note(tell('held-quote.records-done'), undo);
      onClose();
    },
  });
  const { records } = entry.draft;
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <p>{tell('held-quote.records-what')}</p>
      <FieldGroup legend={tell('held-quote.records-of', { car: view.carName })} place={entry.atGroup('records')}>
        {view.records.map((one) => (
          <Checkbox
            key={one.record}
            label={tell('held-quote.record', { title: one.title, date: words.date(one.date) })}
            checked={records.includes(one.record)}
            onChange={(event) => entry.set({ records: event.currentTarget.checked ? [...records, one.record] : records.filter((id) => id !== one.record) })}
          />
        ))}
      </FieldGroup>
    </EntryForm>
  );
}
