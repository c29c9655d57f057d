import { NativeSelect } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { carDraft, sendCar, severeChoices } from './car-draft.ts';
import { CarFields, MoreCarFields } from './car-fields.tsx';

interface CarFormProps {
  readonly car: CarView['car'];
  readonly onClose: () => void;
}

/** What is known of a car, to be changed. */
export function CarForm({ car, onClose }: CarFormProps) {
  const entry = useEntry({
    key: `car.change ${car.id}`,
    start: carDraft(car, car.unit),
    send: (draft) => sendCar(draft, car),
    onDone: (reply) => {
      note(tell('car-form.changed', { car: reply.car.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('car-form.save')} onCancel={onClose}>
      <CarFields entry={entry} />
      <NativeSelect {...bindText(entry, 'severeUse')} label={tell('car-form.severe')} description={tell('car-form.severe-what')} data={severeChoices(entry.draft.severeUse)} />
      <MoreCarFields entry={entry} />
    </EntryForm>
  );
}
