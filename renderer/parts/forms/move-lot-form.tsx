import { TextInput } from '@mantine/core';
import type { LotView } from '../../../shared-core/views/parts-view-schema.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface MoveLotFormProps {
  readonly one: LotView;
  readonly onClose: () => void;
}

/** Puts a lot to another place. */
export function MoveLotForm({ one, onClose }: MoveLotFormProps) {
  const entry = useEntry({
    key: `lot.move ${one.lot.id}`,
    start: { where: one.lot.where ?? '' },
    send: ({ where }) => change('lot.move', { lot: one.lot.id, where: textOrNull(where) }),
    onDone: ({ undo }) => {
      note(tell('move-lot.done', { part: one.partName }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'where')} data-autofocus label={tell('lot.where')} autoComplete="off" />
    </EntryForm>
  );
}
