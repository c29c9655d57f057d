import { TextInput } from '@mantine/core';
import type { PlanningCar } from '../../../../shared-core/views/planning-view.ts';
import { change } from '../../../ui/change.ts';
import { bindText } from '../../../ui/form/bind.ts';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';

interface AccessFormProps {
  readonly car: PlanningCar;
  /** What stands and is to change; null: something new. */
  readonly access: PlanningCar['access'][number] | null;
  readonly onClose: () => void;
}

/** What is opened up on a car, and how long that takes. */
export function AccessForm({ car, access, onClose }: AccessFormProps) {
  const entry = useEntry({
    key: `access.set ${car.id} ${access?.id ?? ''}`,
    start: { name: access?.name ?? car.accessUnstated[0] ?? '', minutes: access === null ? '' : String(access.minutes) },
    send: async (draft) => {
      const read = new FieldsRead();
      const request = read.whole({ ...(access === null ? {} : { id: access.id }), car: car.id, name: draft.name, minutes: read.number('minutes', draft.minutes, '20') });
      return request.ok ? change('access.set', request.value) : request;
    },
    onDone: (reply) => {
      note(tell('access-form.saved', { name: reply.access.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('access-form.submit')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('access-form.name')} description={tell('access-form.name-what')} autoComplete="off" />
        <TextInput {...bindText(entry, 'minutes')} label={tell('access-form.minutes')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}
