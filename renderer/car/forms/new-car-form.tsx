import { NativeSelect, TextInput } from '@mantine/core';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useHousehold } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import type { Changed } from '../../ui/change.ts';
import { StartingFields } from '../start/starting-fields.tsx';
import { useStartingSets } from '../start/use-starting-sets.ts';
import { carDraft, knownSoFar, sendNewCar, severeChoices } from './car-draft.ts';
import { CarFields, MoreCarFields } from './car-fields.tsx';

interface NewCarFormProps {
  readonly onDone: (id: string) => void;
  readonly onCancel?: () => void;
}

/** A car to be added, with its first reading and the items that fit its kind. A name is enough to begin with. */
export function NewCarForm({ onDone, onCancel }: NewCarFormProps) {
  const household = useHousehold();
  const entry = useEntry({
    key: 'car.start',
    start: carDraft(null, household.unit),
    send: (draft) => sendNewCar(draft, sets),
    onDone: (reply) => {
      note(addedWords(reply), reply.undo);
      onDone(reply.car.id);
    },
  });
  const { draft } = entry;
  const sets = useStartingSets(knownSoFar(draft));
  return (
    <EntryForm entry={entry} submit={tell('car-form.add')} {...(onCancel === undefined ? {} : { onCancel })}>
      <CarFields entry={entry} />
      <FieldRow>
        <TextInput {...bindText(entry, 'odometer', 'reading.value')} label={tell('car-form.odometer')} description={tell('car-form.odometer-what')} inputMode="numeric" autoComplete="off" rightSection={tell(draft.unit === 'mi' ? 'unit.mi' : 'unit.km')} />
        <NativeSelect {...bindText(entry, 'severeUse')} label={tell('car-form.severe')} description={tell('car-form.severe-what')} data={severeChoices(draft.severeUse)} />
      </FieldRow>
      <StartingFields sets={sets} draft={draft.start} unit={draft.unit as 'km' | 'mi'} place={entry.at} onChange={(change) => entry.set({ start: { ...draft.start, ...change } })} />
      <MoreCarFields entry={entry} />
    </EntryForm>
  );
}

function addedWords({ car, items, reading }: Changed<'car.start'>): string {
  if (reading?.state === 'set-aside') return tell('car-form.added-aside', { car: car.name });
  return items.length === 0 ? tell('car-form.added', { car: car.name }) : tell('car-form.added-with', { car: car.name, n: items.length });
}
