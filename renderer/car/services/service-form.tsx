import { Button, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { itemsByName } from '../items-by-name.ts';
import { composeService, serviceDraft, type Service } from './service-draft.ts';
import { ServiceLines } from './service-lines.tsx';

interface ServiceFormProps {
  readonly view: CarView;
  /** The service to change, or null: a new one. */
  readonly service: Service | null;
  readonly onClose: () => void;
  readonly onNamed: (service: string) => void;
}

/** A service: its name, the days whose work counts, and its lines. */
export function ServiceForm({ view, service, onClose, onNamed }: ServiceFormProps) {
  const { car, today } = view;
  const items = itemsByName(view, useWords().byName);
  const entry = useEntry({
    key: service === null ? `service-plan.set ${car.id}` : `service-plan.set ${service.id}`,
    start: serviceDraft(service, today),
    send: async (draft) => {
      const whole = composeService(draft, car.id, service);
      return whole.ok ? change('service-plan.set', whole.value) : whole;
    },
    onDone: ({ plan, undo }) => {
      note(tell(service === null ? 'service-form.added' : 'service-form.changed', { name: plan.name }), undo);
      onNamed(plan.id);
      onClose();
    },
  });
  const takeAway = async () => {
    if (service === null) return;
    const result = await change('service-plan.remove', { id: service.id });
    note(result.ok ? tell('service-form.removed', { name: service.name }) : sayFault(result.refusal), result.ok ? result.value.undo : []);
    if (result.ok) onClose();
  };
  return (
    <EntryForm entry={entry} submit={tell(service === null ? 'service-form.add' : 'service-form.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('service-form.name')} placeholder={tell('service-form.name-example')} autoComplete="off" maxLength={80} />
      <FieldRow>
        <DateField {...bindDate(entry, 'from')} label={tell('service-form.from')} />
        <DateField {...bindDate(entry, 'to')} label={tell('service-form.to')} />
      </FieldRow>
      <ServiceLines place={entry.at} group={entry.atGroup('lines')} items={items} lines={entry.draft.lines} onChange={(lines) => entry.set({ lines })} />
      {service !== null && <div><Button variant="subtle" size="compact-md" onClick={() => void takeAway()}>{tell('service-form.remove')}</Button></div>}
    </EntryForm>
  );
}
