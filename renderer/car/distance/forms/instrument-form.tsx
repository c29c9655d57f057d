import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change } from '../../../ui/change.ts';
import { bindText, bindTick } from '../../../ui/form/bind.ts';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { unitChoices } from '../../../ui/household-choices.ts';
import { useWords } from '../../../ui/household.tsx';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { unitOn } from '../../forms/reading-units.ts';

interface InstrumentFormProps {
  readonly view: CarView;
  readonly instrument: CarView['instruments'][number];
  readonly onClose: () => void;
}

/** Puts right what the old instrument last showed: an estimate becomes what was read. */
export function InstrumentForm({ view: { car, units }, instrument, onClose }: InstrumentFormProps) {
  const words = useWords();
  const before = units.filter(({ from }) => from === null || from < instrument.date);
  const entry = useEntry({
    key: `instrument ${instrument.id}`,
    start: { value: '', unit: unitOn(before, instrument.date) as string, note: instrument.note, sure: false },
    send: async (draft) => {
      const read = new FieldsRead();
      const lastShown = { value: read.number('lastShown', draft.value), unit: draft.unit as 'km' };
      const whole = read.whole({ instrument: instrument.id, lastShown, note: draft.note, sure: draft.sure });
      const result = whole.ok ? await change('instrument.correct', whole.value) : whole;
      // It is judged like a new instrument's, whose field stands elsewhere.
      return !result.ok && result.refusal.path?.[0] === 'replaced' ? { ok: false, refusal: { ...result.refusal, path: ['lastShown'] } } : result;
    },
    onDone: (reply) => {
      note(tell('instrument-form.done', { car: car.name, date: words.date(reply.instrument.date) }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('instrument-form.submit')} onCancel={onClose}>
      <p>{tell('instrument-form.what')}</p>
      <FieldRow>
        <TextInput {...bindText(entry, 'value', 'lastShown')} data-autofocus label={tell('reading.last-shown')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('reading.old-unit')} data={unitChoices()} />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'sure')} label={tell('reading.sure-last')} />
      <TextInput {...bindText(entry, 'note')} label={tell('reading-form.note')} autoComplete="off" />
    </EntryForm>
  );
}
