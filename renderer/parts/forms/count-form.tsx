import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { LotView, PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { inUseOrder } from '../shelf/use-order.ts';

interface CountFormProps {
  readonly view: PartsView;
  readonly onClose: () => void;
}

interface Draft {
  readonly on: string;
  readonly where: string;
  readonly counted: Readonly<Record<string, string>>;
  readonly note: string;
}

/** Counts the shelf, or a place of it: what a field is left empty for was not counted. */
export function CountForm({ view, onClose }: CountFormProps) {
  const { byName } = useWords();
  const entry = useEntry({
    key: 'stock.take',
    start: { on: view.today as string, where: '', counted: {}, note: '' } satisfies Draft as Draft,
    send: (draft) => send(draft, lots),
    onDone: ({ stocktake, undo }) => {
      const other = stocktake.lines.filter((line) => line.difference !== 0).length;
      note(tell(other === 0 ? 'count.done-same' : 'count.done', { n: other }), undo);
      onClose();
    },
  });
  const places = [...new Set(view.shelf.flatMap((one) => (one.left > 0 && one.lot.where !== null ? [one.lot.where] : [])))].sort(byName);
  const lots = inUseOrder(view.shelf.filter((one) => one.left > 0 && (entry.draft.where === '' || one.lot.where === entry.draft.where)), byName);
  return (
    <EntryForm entry={entry} submit={tell('count.submit')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'where')} data-autofocus label={tell('lot.where')} data={[{ value: '', label: tell('shelf.all-places') }, ...places]} />
        <DateField {...bindDate(entry, 'on')} max={view.today} label={tell('count.on')} />
      </FieldRow>
      <FieldGroup legend={tell('count.lots')} hint={tell('count.hint')} place={entry.atGroup('lines')}>
        {lots.map((one) => (
          <TextInput
            key={one.lot.id} {...entry.at(`counted.${one.lot.id}`)} inputMode="decimal" autoComplete="off"
            label={one.partName} description={tell('count.books', { amount: amountWords(one.left, one.unit), where: one.lot.where ?? tell('shelf.no-place') })}
            value={entry.draft.counted[one.lot.id] ?? ''} onChange={(event) => entry.set({ counted: { ...entry.draft.counted, [one.lot.id]: event.currentTarget.value } })}
          />
        ))}
      </FieldGroup>
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, lots: readonly LotView[]): Promise<Result<Changed<'stock.take'>>> {
  const read = new FieldsRead();
  const lines = lots.flatMap(({ lot }) => {
    const counted = read.numberOrNull(`counted.${lot.id}`, draft.counted[lot.id] ?? '');
    return counted === null ? [] : [{ lot: lot.id, counted }];
  });
  if (lines.length === 0) read.refuse('lines', 'nothing-counted');
  const whole = read.whole({ on: read.date('on', draft.on), where: textOrNull(draft.where), lines, note: draft.note });
  if (!whole.ok) return whole;
  const reply = await change('stock.take', whole.value);
  const [list, at] = reply.ok ? [] : (reply.refusal.path ?? []);
  const line = list === 'lines' && at !== undefined ? lines[Number(at)] : undefined;
  return reply.ok || line === undefined ? reply : { ok: false, refusal: { ...reply.refusal, path: ['counted', line.lot] } };
}
