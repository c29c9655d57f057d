import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../../ui/form/bind.ts';
import { choices } from '../../../ui/form/choices.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow, MoreFields } from '../../../ui/form/fields.tsx';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { MEASURE_KINDS, type MeasureKind } from '../subject-words.ts';
import { unitChoicesOf, unitToStart } from '../value-words.ts';
import { composeMeasurements, measureDraft, type MeasureDraft } from './measure-draft.ts';
import { edgesOf } from './measure-spots.ts';
import { MeasureValues } from './measure-values.tsx';
import { placeChoices } from './place-choices.ts';

interface MeasureFormProps {
  readonly view: CarView;
  readonly what: MeasureKind;
  readonly name: string | null;
  readonly onClose: () => void;
}

/** Enters what was measured in one go: the kind decides the places and the units. */
export function MeasureForm({ view, what, name, onClose }: MeasureFormProps) {
  const { car, today } = view;
  const entry = useEntry({
    key: `measurements.add ${car.id} ${what} ${name ?? ''}`,
    start: measureDraft(view, what, name),
    send: (draft) => send(draft, view),
    onDone: ({ measurements, reading, undo }) => {
      note(tell(reading?.state === 'set-aside' ? 'measure-form.done-aside' : 'measure-form.done', { n: measurements.length }), undo);
      onClose();
    },
  });
  const { draft } = entry;
  const units = unitChoicesOf(draft.what);
  const kind = bindText(entry, 'what');
  return (
    <EntryForm entry={entry} submit={tell('measure-form.submit')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect
          {...kind}
          label={tell('measure-form.what')}
          data={choices('measured.', MEASURE_KINDS)}
          onChange={(event) => {
            const next = event.currentTarget.value as MeasureKind;
            entry.set({ what: next, unit: unitToStart(next, view.measured, view.locale), across: false, values: {} });
          }}
        />
        {units.length > 1 && <NativeSelect {...bindText(entry, 'unit')} label={tell('measure-form.unit')} data={units} />}
      </FieldRow>
      {draft.what === 'other' && (
        <FieldRow>
          <TextInput {...bindText(entry, 'name')} label={tell('measure-form.name')} placeholder={tell('measure-form.name-example')} autoComplete="off" />
          <NativeSelect {...bindText(entry, 'place')} label={tell('measure-form.place')} data={placeChoices()} />
        </FieldRow>
      )}
      <MeasureValues entry={entry} view={view} />
      {edgesOf(draft.what).length > 0 && (
        <Checkbox {...bindTick(entry, 'across')} label={tell(draft.what === 'tread' ? 'measure-form.across-tread' : 'measure-form.across-pad')} description={tell('measure-form.across-what')} onChange={(event) => entry.set({ across: event.currentTarget.checked, values: {} })} />
      )}
      <FieldRow>
        <DateField {...bindDate(entry, 'date')} max={today} label={tell('measure-form.date')} description={tell('measure-form.date-what')} />
        <TextInput {...bindText(entry, 'reading')} label={tell('measure-form.reading', { unit: tell(`unit.${car.unit}`) })} description={tell('measure-form.reading-what')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'fresh')} label={tell('measure-form.fresh')} description={tell('measure-form.fresh-what')} />
      <MoreFields>
        <FieldRow>
          <NativeSelect {...bindText(entry, 'source')} label={tell('measure-form.source')} data={choices('source.', ['keeper', 'garage', 'test'])} />
          <TextInput {...bindText(entry, 'gauge')} label={tell('measure-form.gauge')} placeholder={tell('measure-form.gauge-example')} autoComplete="off" />
        </FieldRow>
      </MoreFields>
    </EntryForm>
  );
}

async function send(draft: MeasureDraft, view: CarView): Promise<Result<Changed<'measurements.add'>>> {
  const whole = composeMeasurements(draft, view);
  if (!whole.ok) return whole;
  const result = await change('measurements.add', whole.value);
  // A refused reading names its own field, which stands here under another name.
  if (!result.ok && result.refusal.path?.[0] === 'value') return { ok: false, refusal: { ...result.refusal, path: ['reading'] } };
  return result;
}
