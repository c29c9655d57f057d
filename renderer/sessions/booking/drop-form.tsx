import { NativeSelect, TextInput } from '@mantine/core';
import type { BookingView } from '../../../shared-core/views/booking-view-schema.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

/** Says that a booking comes to nothing, and why; the session stays. */
export function DropForm({ view, onClose }: { readonly view: BookingView; readonly onClose: () => void }) {
  const entry = useEntry({
    key: `booking.drop ${view.session.id}`,
    start: { why: 'cancelled', reason: '' },
    send: ({ why, reason }) => change('booking.drop', { session: view.session.id, why: why === 'declined' ? 'declined' : 'cancelled', reason }),
    onDone: ({ undo }) => {
      note(tell('booking.dropped'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('drop.save')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'why')} data-autofocus label={tell('drop.why')} data={choices('drop.', ['cancelled', 'declined'])} />
      <TextInput {...bindText(entry, 'reason')} label={tell('drop.reason')} autoComplete="off" />
    </EntryForm>
  );
}
