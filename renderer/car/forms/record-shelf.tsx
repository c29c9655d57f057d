import { Button, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { RecordEntering } from '../../../shared-core/views/record-entering-view.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './forms.module.css';
import type { LotDraft } from './record-draft.ts';

interface RecordShelfProps {
  readonly shelf: RecordEntering['shelf'];
  readonly lots: readonly LotDraft[];
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly onChange: (lots: readonly LotDraft[]) => void;
}

/** What was taken off the shelf for the work, lot by lot. */
export function RecordShelf({ shelf, lots, place, group, onChange }: RecordShelfProps) {
  if (shelf.length === 0 && lots.length === 0) return null;
  const replace = (at: number, change: Partial<LotDraft>) => onChange(lots.map((one, index) => (index === at ? { ...one, ...change } : one)));
  const free = shelf.filter((one) => !lots.some((lot) => lot.lot === one.lot.id));
  const labelOf = (id: string) => {
    const one = shelf.find((each) => each.lot.id === id);
    return one === undefined ? id : tell('record-form.lot-choice', { part: one.partName, left: amountWords(one.left, one.unit) });
  };
  return (
    <FieldGroup legend={tell('record-form.lots')} place={group}>
      {lots.map((one, at) => (
        <div key={one.lot} className={styles.own}>
          <NativeSelect label={tell('record-form.lot')} value={one.lot} onChange={(event) => replace(at, { lot: event.currentTarget.value })} data={[{ value: one.lot, label: labelOf(one.lot) }, ...free.map(({ lot }) => ({ value: lot.id, label: labelOf(lot.id) }))]} />
          <TextInput {...place(`lotsUsed.${at}.quantity`)} label={tell('record-form.lot-quantity', { unit: shelf.find((each) => each.lot.id === one.lot)?.unit ?? tell('record-form.pieces') })} value={one.quantity} inputMode="decimal" autoComplete="off" onChange={(event) => replace(at, { quantity: event.currentTarget.value })} />
          <CloseButton size="lg" className={styles.remove ?? ''} aria-label={tell('record-form.remove-lot', { part: labelOf(one.lot) })} onClick={() => onChange(lots.filter((_, index) => index !== at))} />
        </div>
      ))}
      {free[0] !== undefined && <Button className={styles.add ?? ''} variant="default" size="compact-md" onClick={() => onChange([...lots, { lot: free[0]?.lot.id ?? '', quantity: '' }])}>{tell('record-form.add-lot')}</Button>}
    </FieldGroup>
  );
}
