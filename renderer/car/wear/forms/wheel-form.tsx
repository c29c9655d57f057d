import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import type { WheelView } from '../../../../shared-core/views/wheel-view.ts';
import { change, type Changed } from '../../../ui/change.ts';
import { bindDate, bindText } from '../../../ui/form/bind.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { wheelPlaces } from './place-choices.ts';
import { wheelDraft, type WheelDraft } from './wheel-draft.ts';

type Wheel = WheelView['wheel'];

interface WheelFormProps {
  readonly view: CarView;
  /** The wheel to change, or null: a new one. */
  readonly wheel: Wheel | null;
  readonly onClose: () => void;
}

/** A wheel with its mark, its tyre's code and size; a new one also with its place. */
export function WheelForm({ view, wheel, onClose }: WheelFormProps) {
  const { car, today } = view;
  const entry = useEntry({
    key: wheel === null ? `wheel.add ${car.id}` : `wheel.change ${wheel.id}`,
    start: wheelDraft(view, wheel),
    send: (draft) => send(draft, wheel, car.id),
    onDone: (reply) => {
      note(tell(wheel === null ? 'wheel-form.added' : 'wheel-form.changed', { name: reply.wheel.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell(wheel === null ? 'wheel-form.add' : 'wheel-form.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('wheel-form.name')} description={tell('wheel-form.name-what')} autoComplete="off" />
      {wheel === null && (
        <FieldRow>
          <NativeSelect {...bindText(entry, 'place', 'moves')} label={tell('wheel-form.place')} description={tell('wheel-form.place-what')} data={wheelPlaces()} />
          <DateField {...bindDate(entry, 'on')} max={today} label={tell('wheel-form.on')} description={tell('measure-form.date-what')} />
        </FieldRow>
      )}
      <FieldRow>
        <TextInput {...bindText(entry, 'dateCode')} label={tell('wheel-form.code')} description={tell('wheel-form.code-what')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'size')} label={tell('wheel-form.size')} description={tell('wheel-form.size-what')} autoComplete="off" />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('wheel-form.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: WheelDraft, wheel: Wheel | null, car: string): Promise<Result<Changed<'wheel.change'>>> {
  const about = { name: draft.name, dateCode: textOrNull(draft.dateCode.trim()), size: textOrNull(draft.size), note: draft.note };
  if (wheel !== null) return change('wheel.change', { ...about, id: wheel.id });
  const read = new FieldsRead();
  const whole = read.whole({ ...about, car, place: draft.place as WheelView['place'], on: read.date('on', draft.on) });
  return whole.ok ? change('wheel.add', whole.value) : whole;
}
