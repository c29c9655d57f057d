import { Button, FileInput, NativeSelect, TextInput } from '@mantine/core';
import { useId, type FormEvent, type KeyboardEvent } from 'react';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FilePlace } from '../../ui/file-place.tsx';
import { bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { sourcesOf } from './card-order.ts';
import { figureDraft, isTorque, type FigureDraft } from './figure-draft.ts';
import { everyUnit, unitsOf } from './figure-units.ts';
import { isAdded } from './own-figure.ts';
import { sendFigure } from './send-figure.ts';
import styles from './card.module.css';

interface FigureFormProps {
  readonly card: CardView;
  readonly figure: FigureView;
  readonly papers: CarView['papers'];
  readonly onSaved: (reply: Changed<'card.set'>) => void;
  /** Goes on without entering; null where there is nothing to skip. */
  readonly onSkip: (() => void) | null;
  readonly onClose: () => void;
}

/** A figure's row as its form: Enter saves, with nothing typed it skips, Escape leaves. */
export function FigureForm({ card, figure, papers, onSaved, onSkip, onClose }: FigureFormProps) {
  const car = card.car.id;
  const heading = useId();
  const entry = useEntry({
    key: `card.set ${car} ${isAdded(figure) ? 'own' : figure.key}`,
    start: figureDraft(card, figure),
    send: (draft) => sendFigure(draft, car, figure),
    onDone: onSaved,
  });
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    if (onSkip !== null && entry.draft.value.trim() === '') onSkip();
    else entry.submit();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onClose();
  };
  return (
    <form className={styles.form} noValidate aria-labelledby={heading} onSubmit={onSubmit} onKeyDown={onKeyDown}>
      <h3 id={heading} className={figure.own ? 'only-said' : styles.formName}>{figure.own ? tell('card.add-own') : figure.name}</h3>
      {figure.own && <TextInput {...bindText(entry, 'name')} autoFocus label={tell('figure-form.name')} autoComplete="off" maxLength={80} />}
      <ValueFields entry={entry} figure={figure} />
      <SourceField entry={entry} card={card} />
      <MoreFields>
        <Extras entry={entry} papers={papers} />
      </MoreFields>
      <p role="alert" className={entry.fault === null ? 'only-said' : styles.fault}>{entry.fault}</p>
      <div className={styles.formFoot}>
        <Button type="submit" size="compact-md" aria-disabled={entry.sending}>{tell('figure-form.save')}</Button>
        {onSkip !== null && <Button size="compact-md" variant="default" onClick={onSkip}>{tell('figure-form.skip')}</Button>}
        <Button size="compact-md" variant="default" onClick={onClose}>{tell('form.cancel')}</Button>
        {figure.entered && <Button size="compact-md" variant="subtle" onClick={() => void takeOff(car, figure, onClose)}>{tell('figure-form.remove')}</Button>}
      </div>
      <p className={styles.keys}>{tell(onSkip === null ? 'figure-form.keys-one' : 'figure-form.keys')}</p>
    </form>
  );
}

function ValueFields({ entry, figure }: { readonly entry: Entry<FigureDraft>; readonly figure: FigureView }) {
  const inWords = entry.draft.unit === '';
  const first = { autoFocus: !figure.own, autoComplete: 'off', label: tell('figure-form.value') } as const;
  if (figure.kind === 'text' && !figure.own) return <TextInput {...bindText(entry, 'value')} {...first} maxLength={200} />;
  return (
    <div className={inWords ? styles.worded : isTorque(entry.draft.unit) ? styles.torque : styles.measured}>
      <TextInput {...bindText(entry, 'value')} {...first} maxLength={200} {...(inWords ? {} : { inputMode: 'decimal' })} />
      <NativeSelect {...bindText(entry, 'unit')} label={tell('figure-form.unit')} data={figure.own || figure.kind === 'text' ? everyUnit() : unitsOf(figure.kind)} />
      {isTorque(entry.draft.unit) && <TextInput {...bindText(entry, 'thread')} label={tell('figure-form.thread')} placeholder={tell('figure-form.thread-example')} autoComplete="off" />}
    </div>
  );
}

/** Where it stands; what the card names already is offered while one types. */
function SourceField({ entry, card }: { readonly entry: Entry<FigureDraft>; readonly card: CardView }) {
  const known = useId();
  return (
    <>
      <TextInput {...bindText(entry, 'source')} list={known} label={tell('figure-form.source')} placeholder={tell('figure-form.source-example')} autoComplete="off" maxLength={120} />
      <datalist id={known}>{sourcesOf(card).map((source) => <option key={source} value={source} />)}</datalist>
    </>
  );
}

function Extras({ entry, papers }: { readonly entry: Entry<FigureDraft>; readonly papers: CarView['papers'] }) {
  const { draft } = entry;
  return (
    <>
      <TextInput {...bindText(entry, 'note')} label={tell('figure-form.note')} autoComplete="off" maxLength={300} />
      {isTorque(draft.unit) && (
        <FieldRow>
          <NativeSelect {...bindText(entry, 'strength')} label={tell('figure-form.strength')} data={[{ value: '', label: tell('strength.unsaid') }, ...choices('strength.', ['8.8', '10.9'])]} />
          <NativeSelect {...bindText(entry, 'seat')} label={tell('figure-form.seat')} data={[{ value: '', label: tell('seat.unsaid') }, ...choices('seat.', ['flat', 'conical'])]} />
        </FieldRow>
      )}
      <FieldRow>
        <NativeSelect {...bindText(entry, 'paper')} label={tell('figure-form.paper')} data={[{ value: '', label: tell('figure-form.paper-none') }, ...papers.map((paper) => ({ value: paper.id, label: paper.name }))]} />
        <FilePlace onFiles={(files) => entry.set({ files: [...files] })}>
          <FileInput
            {...entry.at('papers')}
            clearable
            clearButtonProps={{ 'aria-label': tell('figure-form.file-clear') }}
            value={draft.files[0] ?? null}
            onChange={(file) => entry.set({ files: file === null ? [] : [file] })}
            label={tell('figure-form.file')}
            placeholder={tell('figure-form.file-choose')}
            accept="application/pdf,image/jpeg,image/png,image/webp"
          />
        </FilePlace>
      </FieldRow>
    </>
  );
}

async function takeOff(car: string, { key, name }: FigureView, onClose: () => void): Promise<void> {
  const result = await change('card.clear', { car, key });
  note(result.ok ? tell('figure-form.removed', { name }) : sayFault(result.refusal), result.ok ? result.value.undo : []);
  if (result.ok) onClose();
}
