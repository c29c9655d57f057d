import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { IntervalFields } from './interval-fields.tsx';
import { itemDraft, sendItem, type ItemDraft } from './item-draft.ts';
import { ItemMeasureFields } from './item-measure-fields.tsx';

interface ItemFormProps {
  readonly view: CarView;
  /** The item to change, or null: a new one. */
  readonly item: CarView['items'][number]['item'] | null;
  readonly onClose: () => void;
}

/** One thing that is cared for, with its interval and where that comes from. */
export function ItemForm({ view, item, onClose }: ItemFormProps) {
  const { car, currency } = view;
  const entry = useEntry({
    key: item === null ? `item.add ${car.id}` : `item.change ${item.id}`,
    start: itemDraft(item, car, currency),
    send: (draft) => sendItem(draft, item, car, currency),
    onDone: (reply) => {
      note(tell(item === null ? 'item-form.added' : 'item-form.changed', { item: reply.item.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell(item === null ? 'item-form.add' : 'item-form.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('item-form.name')} placeholder={tell('item-form.name-example')} autoComplete="off" />
      <FieldRow>
        <NativeSelect {...bindText(entry, 'work')} label={tell('item-form.work')} data={choices('item-form.work-', ['replace', 'check'])} />
        <NativeSelect {...bindText(entry, 'harm')} label={tell('item-form.harm')} data={choices('item-form.harm-', ['safety', 'damage', 'comfort'])} />
      </FieldRow>
      <IntervalFields entry={entry} />
      <CountingFields entry={entry} />
      <ItemMeasureFields entry={entry} view={view} />
      <FieldRow>
        <TextInput {...bindText(entry, 'source')} label={tell('item-form.source')} placeholder={tell('item-form.source-example')} autoComplete="off" />
        <DateField {...bindDate(entry, 'printedDate')} label={tell('item-form.printed-date')} />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'confirmed')} label={tell('item-form.confirmed')} />
      <FieldGroup legend={tell('item-form.effort')}>
        <FieldRow>
          <TextInput {...bindText(entry, 'minutes')} label={tell('item-form.minutes')} inputMode="numeric" autoComplete="off" />
          <NativeSelect {...bindText(entry, 'place')} label={tell('item-form.place')} data={choices('place.', ['either', 'home', 'garage'])} />
          <TextInput {...bindText(entry, 'garagePrice')} label={tell('item-form.garage-price', { currency })} inputMode="decimal" autoComplete="off" />
        </FieldRow>
      </FieldGroup>
    </EntryForm>
  );
}

function CountingFields({ entry }: { readonly entry: Entry<ItemDraft> }) {
  const { anchor } = entry.draft;
  return (
    <FieldRow>
      <NativeSelect {...bindText(entry, 'anchor')} label={tell('item-form.anchor')} data={choices('anchor.', ['completion', 'calendar', 'keep-date'])} />
      {anchor === 'completion' && <NativeSelect {...bindText(entry, 'history')} label={tell('item-form.history')} description={tell('item-form.history-what')} data={choices('history.', ['unknown', 'never-done', 'from-purchase'])} />}
      {anchor === 'calendar' && <DateField {...bindDate(entry, 'firstDate', 'anchor.firstDate')} label={tell('item-form.first-date')} />}
      {anchor === 'keep-date' && <DateField {...bindDate(entry, 'lastValidDay', 'anchor.lastValidDay')} label={tell('item-form.last-valid-day')} />}
    </FieldRow>
  );
}
