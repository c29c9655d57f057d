import { Checkbox, Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { atReturnedField, lotsOfOrder, readReturned, returnStart, type ReturnDraft } from './return-draft.ts';

interface SendBackFormProps {
  readonly view: PartsView;
  readonly order: PlacedOrderView;
  readonly onClose: () => void;
}

/** Sends something of an order back: goods, or old parts and empties for their deposit; what of it stood on the shelf leaves it. Or claims the money for what never comes. */
export function SendBackForm({ view, order, onClose }: SendBackFormProps) {
  const { currency } = view;
  const words = useWords();
  const lots = lotsOfOrder(view, order);
  const entry = useEntry({
    key: `order.return ${order.order.id} ${order.returns.length}`,
    start: returnStart(view.today),
    send: (draft) => send(draft, view, order),
    onDone: ({ return: back, undo }) => {
      note(tell('return.done', { amount: words.money(back.refundExpectedMinor) }), undo);
      onClose();
    },
  });
  const counts = (map: 'goods' | 'deposits' | 'claims' | 'lots', id: string, path: string, label: string, first = false) => (
    <TextInput key={path} {...entry.at(path)} {...(first ? { 'data-autofocus': true } : {})} label={label} value={entry.draft[map][id] ?? ''} onChange={(event) => { const text = event.currentTarget.value; entry.set({ [map]: { ...entry.draft[map], [id]: text } }); }} inputMode="decimal" autoComplete="off" />
  );
  const goods = order.lines.filter((one) => one.goodsToReturn > 0);
  const deposits = order.lines.filter((one) => one.depositsOpen > 0);
  const claims = order.lines.filter((one) => one.claimable > 0);
  return (
    <EntryForm entry={entry} submit={tell('return.submit')} onCancel={onClose}>
      <FieldGroup legend={tell('return.lines')} hint={tell('return.lines-what')} place={entry.atGroup('lines')}>
        {goods.map((one, at) => counts('goods', one.line.id, `goods.${one.line.id}`, tell('return.goods', { part: one.partName, n: one.goodsToReturn }), at === 0))}
        {deposits.map((one) => counts('deposits', one.line.id, `deposits.${one.line.id}`, tell('return.deposit', { part: one.partName, n: one.depositsOpen })))}
        {claims.map((one) => counts('claims', one.line.id, `claims.${one.line.id}`, tell('return.claim', { part: one.partName, n: one.claimable })))}
      </FieldGroup>
      {lots.length > 0 && (
        <FieldGroup legend={tell('return.lots')} hint={tell('return.lots-what')} place={entry.atGroup('lots')}>
          {lots.map((one) => counts('lots', one.lot.id, `lots.${one.lot.id}`, tell('return.lot', { part: one.partName, amount: amountWords(one.left, one.unit) })))}
        </FieldGroup>
      )}
      <FieldRow>
        <DateField {...bindDate(entry, 'on')} max={view.today} label={tell('return.on')} />
        <TextInput {...bindText(entry, 'refund', 'refundExpectedMinor')} label={tell('return.refund', { currency })} description={tell('return.refund-what')} inputMode="decimal" autoComplete="off" />
      </FieldRow>
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />
      <Checkbox {...bindTick(entry, 'sure')} label={tell('return.sure')} />
      <Textarea {...bindText(entry, 'note')} label={tell('parts.note')} rows={2} />
    </EntryForm>
  );
}

async function send(draft: ReturnDraft, view: PartsView, order: PlacedOrderView): Promise<Result<Changed<'order.return'>>> {
  const read = readReturned(draft, view, order);
  if (!read.ok) return read;
  const reply = await withPapers(draft.files, (papers) => change('order.return', { ...read.value, papers }));
  return reply.ok ? reply : { ok: false, refusal: atReturnedField(reply.refusal, read.value) };
}
