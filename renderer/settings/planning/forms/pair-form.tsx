import { NativeSelect, TextInput } from '@mantine/core';
import type { RequestOf } from '../../../../shared-core/contract/contract.ts';
import type { PlanningCar } from '../../../../shared-core/views/planning-view.ts';
import { change } from '../../../ui/change.ts';
import { bindText } from '../../../ui/form/bind.ts';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { useHousehold } from '../../../ui/household.tsx';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';

interface PairFormProps {
  readonly car: PlanningCar;
  readonly onClose: () => void;
}

type Task = RequestOf<'worth-while.set'>['when'];

/** A task that is worth doing while another is done. */
export function PairForm({ car, onClose }: PairFormProps) {
  const { currency } = useHousehold();
  const data = [{ value: '', label: tell('pair-form.choose') }, ...car.tasks.map(({ task, name }) => ({ value: `${task.kind}/${task.id}`, label: name }))];
  const entry = useEntry({
    key: `worth-while.set ${car.id}`,
    start: { when: '', also: '', savesMinor: '' },
    send: async (draft) => {
      const read = new FieldsRead();
      const request = read.whole({ when: taskOf(read, 'when', draft.when), also: taskOf(read, 'also', draft.also), savesMinor: read.moneyOrNull('savesMinor', draft.savesMinor, currency) });
      return request.ok ? change('worth-while.set', request.value) : request;
    },
    onDone: ({ undo }) => {
      note(tell('pair-form.saved'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('pair-form.submit')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'when')} data-autofocus label={tell('pair-form.when')} data={data} />
      <NativeSelect {...bindText(entry, 'also')} label={tell('pair-form.also')} data={data} />
      <TextInput {...bindText(entry, 'savesMinor')} label={tell('pair-form.saves')} description={tell('pair-form.saves-what')} inputMode="decimal" autoComplete="off" />
    </EntryForm>
  );
}

function taskOf(read: FieldsRead, path: string, chosen: string): Task {
  const [kind, id = ''] = chosen.split('/');
  if (chosen === '') read.refuse(path, 'no-task-chosen');
  return { kind: kind === 'obligation' ? 'obligation' : 'item', id };
}
