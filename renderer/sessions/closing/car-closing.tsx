import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core';
import { useId } from 'react';
import type { ClosingCar } from '../../../shared-core/views/closing-schema.ts';
import { CostLines } from '../../ui/form/cost-lines.tsx';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { PapersField } from '../../ui/form/papers-field.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { carNote, isWithoutRecord, takenOf, taskDraft, type CarChanges, type ValueChanges } from './closing-changes.ts';
import styles from './closing.module.css';
import { LotLines } from './lot-lines.tsx';
import { TaskLine } from './task-line.tsx';
import { valueWords } from './value-words.ts';

interface CarClosingProps {
  readonly car: ClosingCar;
  readonly told: CarChanges;
  readonly at: number;
  readonly place: (path: string) => FieldPlace;
  readonly group: (path: string, ...parts: readonly string[]) => FieldPlace;
  readonly currency: string;
  readonly garage: boolean;
  readonly onChange: (change: CarChanges) => void;
}

/** What is written of one car: its reading, its tasks with their outcome, parts, measurements, money and papers. */
export function CarClosing({ car, told, at, place, group, currency, garage, onChange }: CarClosingProps) {
  const id = useId();
  const before = `cars.${at}.`;
  const bare = isWithoutRecord(car, told);
  const measured = car.values.filter(({ read }) => read.kind === 'measured');
  const setValue = (value: string, change: ValueChanges) => onChange({ values: { ...told.values, [value]: { ...told.values?.[value], ...change } } });
  return (
    <section className={styles.car} aria-labelledby={id}>
      <h2 id={id}>{car.carName}</h2>
      <div className={styles.reading}><TextInput {...place(`${before}reading`)} label={tell('record-form.reading', { unit: tell(`unit.${car.unit}`) })} value={told.reading ?? ''} inputMode="numeric" autoComplete="off" onChange={(event) => onChange({ reading: event.currentTarget.value })} /></div>
      <fieldset className={styles.group} id={group(`${before}lines`).id} tabIndex={-1}>
        <legend>{tell('closing.tasks')}</legend>
        {car.tasks.map((task, index) => <TaskLine key={task.key} task={task} draft={taskDraft(task, told.tasks?.[task.key])} at={`${before}tasks.${index}.`} place={place} currency={currency} onChange={(change) => onChange({ tasks: { ...told.tasks, [task.key]: { ...told.tasks?.[task.key], ...change } } })} />)}
        {car.recorded.map((one) => <p key={one.key} className={styles.soft}>{one.said.text}</p>)}
      </fieldset>
      {!garage && <LotLines taken={takenOf(car, told)} told={told.lots ?? {}} at={before} place={place} group={group(`${before}lotsUsed`)} onChange={(lots) => onChange({ lots: { ...told.lots, ...lots } })} />}
      {measured.length > 0 && (
        <fieldset className={styles.group} id={group(`${before}measured`).id} tabIndex={-1}>
          <legend>{tell('closing.measured')}</legend>
          {measured.map(({ id: value, read }) => (
            <div key={value} className={styles.pair}>
              <Checkbox label={valueWords(read)} checked={told.values?.[value]?.keep ?? true} onChange={(event) => setValue(value, { keep: event.currentTarget.checked })} />
              <Checkbox label={tell('closing.fresh')} aria-label={tell('closing.fresh-of', { what: valueWords(read) })} checked={told.values?.[value]?.fresh ?? false} onChange={(event) => setValue(value, { fresh: event.currentTarget.checked })} />
            </div>
          ))}
        </fieldset>
      )}
      {car.photos > 0 && bare && <NativeSelect {...place(`${before}photos`)} label={tell('closing.photos-bare', { n: car.photos, car: car.carName })} value={told.photosAside === true ? 'set-aside' : 'keep'} onChange={(event) => onChange({ photosAside: event.currentTarget.value === 'set-aside' })} data={[{ value: 'keep', label: tell('closing.photos-keep') }, { value: 'set-aside', label: tell('closing.photos-aside') }]} />}
      {(car.found > 0 || (car.photos > 0 && !bare)) && <p>{[...(car.found > 0 ? [tell(bare ? 'closing.found-bare' : 'closing.found', { n: car.found })] : []), ...(car.photos > 0 && !bare ? [tell('closing.photos', { n: car.photos })] : [])].join(' ')}</p>}
      <CostLines place={place} group={group(`${before}costs`)} at={before} currency={currency} costs={told.costs ?? []} onChange={(costs) => onChange({ costs })} />
      <PapersField place={place(`${before}papers`)} files={told.files ?? []} onChange={(files) => onChange({ files })} />
      <MoreFields>
        <FieldRow>
          <TextInput label={tell('record-form.done-by')} value={told.doneBy ?? ''} autoComplete="off" onChange={(event) => onChange({ doneBy: event.currentTarget.value })} />
          <TextInput label={tell('record-form.reference')} value={told.reference ?? ''} autoComplete="off" onChange={(event) => onChange({ reference: event.currentTarget.value })} />
          <TextInput {...place(`${before}printedTotalMinor`)} label={tell('record-form.printed-total', { currency })} value={told.printedTotal ?? ''} inputMode="decimal" autoComplete="off" onChange={(event) => onChange({ printedTotal: event.currentTarget.value })} />
        </FieldRow>
        <Textarea {...place(`${before}note`)} label={tell('record-form.note')} rows={3} value={carNote(car, told)} onChange={(event) => onChange({ note: event.currentTarget.value, noteOver: car.note })} />
      </MoreFields>
    </section>
  );
}
