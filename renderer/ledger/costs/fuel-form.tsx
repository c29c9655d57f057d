import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface FuelFormProps {
  readonly view: LedgerView;
  readonly car: string | null;
  readonly onClose: () => void;
}

interface Draft {
  readonly car: string;
  readonly year: string;
  readonly paid: string;
  readonly note: string;
}

/** What fuel or charging of a car cost in a year: one figure, for no more is kept of it. */
export function FuelForm({ view, car, onClose }: FuelFormProps) {
  const cars = view.cars.filter((one) => one.left === null || one.car === car);
  const entry = useEntry({
    key: `fuel.set ${car ?? ''}`,
    start: { car: car ?? cars[0]?.car ?? '', year: view.today.slice(0, 4), paid: '', note: '' } satisfies Draft as Draft,
    send: (draft) => send(draft, view.currency),
    onDone: ({ set, undo }) => {
      note(tell('ledger.fuel-done', { year: String(set.year) }), undo);
      onClose();
    },
  });
  const standing = view.fuel.filter((one) => one.car === entry.draft.car && String(one.year) === entry.draft.year.trim());
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <p>{tell('ledger.fuel-what')}</p>
      <NativeSelect {...bindText(entry, 'car')} label={tell('ledger.car')} data={cars.map((one) => ({ value: one.car, label: one.name }))} />
      <FieldRow>
        <TextInput {...bindText(entry, 'year')} label={tell('costs.year')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'paid', 'paidMinor')} data-autofocus label={tell('ledger.fuel-paid', { currency: view.currency })} inputMode="decimal" autoComplete="off" />
      </FieldRow>
      {standing.length > 0 && <p>{tell('ledger.fuel-stands')}</p>}
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, currency: string): Promise<Result<Changed<'fuel.set'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ car: draft.car, year: read.number('year', draft.year, '2026'), paidMinor: read.money('paidMinor', draft.paid, currency), note: draft.note });
  return whole.ok ? change('fuel.set', whole.value) : whole;
}
