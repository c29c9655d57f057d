import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

type Supplier = PartsView['suppliers'][number];

interface SupplierFormProps {
  readonly view: PartsView;
  /** Who stands, or null: a new one. */
  readonly now: Supplier | null;
  readonly onClose: () => void;
}

interface Draft {
  readonly name: string;
  readonly delivery: string;
  readonly freeFrom: string;
  readonly minimum: string;
  readonly leadDays: string;
}

/** States a supplier and the terms of delivery. */
export function SupplierForm({ view: { currency }, now, onClose }: SupplierFormProps) {
  const money = (minor: number) => (minor === 0 ? '' : amountText(minor, currency));
  const entry = useEntry({
    key: `supplier.set ${now?.id ?? ''}`,
    start: { name: now?.name ?? '', delivery: money(now?.deliveryMinor ?? 0), freeFrom: now?.freeFromMinor == null ? '' : amountText(now.freeFromMinor, currency), minimum: money(now?.minimumMinor ?? 0), leadDays: now?.leadDays.toString() ?? '3' } satisfies Draft as Draft,
    send: (draft) => send(draft, now, currency),
    onDone: ({ set, undo }) => {
      note(tell('supplier-form.done', { supplier: set.name }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('supplier-form.name')} autoComplete="off" />
        <TextInput {...bindText(entry, 'leadDays')} label={tell('supplier-form.lead')} description={tell('supplier-form.lead-what')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'delivery', 'deliveryMinor')} label={tell('supplier-form.delivery', { currency })} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'freeFrom', 'freeFromMinor')} label={tell('supplier-form.free-from', { currency })} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'minimum', 'minimumMinor')} label={tell('supplier-form.minimum', { currency })} inputMode="decimal" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}

async function send(draft: Draft, now: Supplier | null, currency: string): Promise<Result<Changed<'supplier.set'>>> {
  const read = new FieldsRead();
  const whole = read.whole({
    ...(now === null ? {} : { id: now.id }), name: draft.name, leadDays: read.number('leadDays', draft.leadDays, '3'),
    deliveryMinor: read.moneyOrNull('deliveryMinor', draft.delivery, currency) ?? 0, freeFromMinor: read.moneyOrNull('freeFromMinor', draft.freeFrom, currency), minimumMinor: read.moneyOrNull('minimumMinor', draft.minimum, currency) ?? 0,
  });
  return whole.ok ? change('supplier.set', whole.value) : whole;
}
