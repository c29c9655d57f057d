import { Button, NativeSelect, TextInput } from '@mantine/core';
import { say } from '../../../../shared-core/result/words/say.ts';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import type { WearSeriesView } from '../../../../shared-core/views/wear-view.ts';
import { bindText } from '../../../ui/form/bind.ts';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { namesOf } from '../series-verdict.tsx';
import { subjectOf } from '../subject-words.ts';
import { unitChoicesOf, valueText } from '../value-words.ts';
import { limitDraft, sendLimit, standingLimit, takeBackLimit } from './limit-draft.ts';
import { WayFields } from './way-fields.tsx';

interface LimitFormProps {
  readonly view: CarView;
  readonly series: WearSeriesView;
  readonly onClose: () => void;
}

/** Sets the limit of what is measured, for this one alone or for all of its kind. */
export function LimitForm({ view, series, onClose }: LimitFormProps) {
  const { car, items } = view;
  const { what, laws } = series;
  const entry = useEntry({
    key: `wear-limit.set ${car.id} ${series.key}`,
    start: limitDraft(series, view.locale),
    send: (draft) => sendLimit(draft, series, car.id),
    onDone: ({ limit, undo }) => {
      note(tell(limit.limit === null ? 'limit-form.taken-back' : 'limit-form.done'), undo);
      onClose();
    },
  });
  const standing = standingLimit(series);
  const ofItem = series.limits.find((one) => one.from === 'item');
  const alone = series.wheel !== null || series.place !== null;
  const units = unitChoicesOf(what);
  const law = bindText(entry, 'law');
  return (
    <EntryForm entry={entry} submit={tell('limit-form.submit')} onCancel={onClose}>
      {ofItem !== undefined && <p>{tell('limit-form.of-item', { limit: valueText(ofItem.limit), items: namesOf(ofItem.items, items) })}</p>}
      {alone && (
        <NativeSelect {...bindText(entry, 'scope', 'place')} label={tell('limit-form.for')} data={[
          { value: 'all', label: tell('limit-form.for-all', { what: series.name ?? tell(`measured.${what}`) }) },
          { value: 'this', label: tell('limit-form.for-this', { subject: subjectOf(series) }) },
        ]} />
      )}
      {laws !== null && (
        <NativeSelect
          {...law}
          label={tell('limit-form.law')}
          data={[{ value: '', label: tell('limit-form.law-own') }, ...laws.map((one) => ({ value: one.law, label: say({ key: one.law, values: {} }) }))]}
          onChange={(event) => {
            const chosen = laws.find((one) => one.law === event.currentTarget.value);
            entry.set(chosen === undefined ? { law: '' } : { law: chosen.law, value: String(chosen.limit.value), unit: chosen.limit.unit, source: say({ key: chosen.law, values: {} }) });
          }}
        />
      )}
      <FieldRow>
        <TextInput {...bindText(entry, 'value')} data-autofocus label={tell('limit-form.value')} autoComplete="off" />
        {units.length > 1 && <NativeSelect {...bindText(entry, 'unit')} label={tell('measure-form.unit')} data={units} />}
      </FieldRow>
      {what === 'other' && <WayFields by={bindText(entry, 'by', 'way.by')} rises={bindText(entry, 'rises', 'way.rises')} />}
      <TextInput {...bindText(entry, 'source')} label={tell('limit-form.source')} placeholder={tell('limit-form.source-example')} autoComplete="off" />
      {standing !== null && (
        <div><Button size="compact-md" variant="subtle" onClick={() => void takeBackLimit(series, car.id, standing, onClose)}>{tell('limit-form.take-back', { limit: valueText(standing.limit) })}</Button></div>
      )}
    </EntryForm>
  );
}
