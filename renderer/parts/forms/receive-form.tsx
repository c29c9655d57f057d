import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { focusHeading } from '../../ui/screen-title.tsx';
import { tell } from '../../ui/words/tell.ts';
import { atReceivedField, readReceived, receiveStart, type ReceiveDraft, type ReceivedDraft } from './receive-draft.ts';

interface ReceiveFormProps {
  readonly view: PartsView;
  readonly order: PlacedOrderView;
  readonly onClose: () => void;
}

/** Longer than the sheet needs to give the focus back where it came from. */
const GIVEN_BACK_MS = 50;

/** Takes in what came of an order: all of it, or less, wrong or damaged; and what is said not to come any more. */
export function ReceiveForm({ view, order, onClose }: ReceiveFormProps) {
  const entry = useEntry({
    key: `order.receive ${order.order.id} ${order.deliveries.length}`,
    start: receiveStart(order, view.today),
    send: (draft) => send(draft, order.order.id),
    onDone: ({ delivery, lots, undo }) => {
      const short = delivery.lines.some((line) => line.found === 'not-coming' || (line.found !== 'good' && !line.again));
      note(tell(short ? 'receive.done-short' : 'receive.done', { n: lots.length }), undo);
      onClose();
      // The sheet gives the focus back first, to a button that goes once all has come.
      setTimeout(() => focusHeading({ preventScroll: true }), GIVEN_BACK_MS);
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('receive.submit')} onCancel={onClose}>
      <p>{tell('receive.what')}</p>
      <DateField {...bindDate(entry, 'on')} data-autofocus max={view.today} label={tell('receive.on')} />
      {entry.draft.lines.map((line, at) => {
        const known = order.lines.find((one) => one.line.id === line.line);
        return known === undefined ? null : <LineFields key={line.line} entry={entry} line={line} at={at} name={tell('receive.line', { part: known.partName, n: known.open })} />;
      })}
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />
      <MoreFields><Textarea {...bindText(entry, 'note')} label={tell('parts.note')} rows={2} /></MoreFields>
    </EntryForm>
  );
}

function LineFields({ entry, line, at, name }: { readonly entry: Entry<ReceiveDraft>; readonly line: ReceivedDraft; readonly at: number; readonly name: string }) {
  const set = (next: Partial<ReceivedDraft>) => entry.set({ lines: entry.draft.lines.map((one, index) => (index === at ? { ...one, ...next } : one)) });
  const packs = (field: 'good' | 'aside' | 'notComing', label: string) => (
    <TextInput {...entry.at(`lines.${at}.${field}`)} label={label} value={line[field]} onChange={(event) => set({ [field]: event.currentTarget.value })} inputMode="numeric" autoComplete="off" />
  );
  return (
    <FieldGroup legend={name}>
      <FieldRow>
        {packs('good', tell('receive.good'))}
        {packs('aside', tell('receive.aside'))}
        {packs('notComing', tell('receive.not-coming'))}
      </FieldRow>
      {line.aside.trim() !== '' && (
        <FieldRow>
          <NativeSelect label={tell('receive.aside-as')} value={line.asideAs} onChange={(event) => set({ asideAs: event.currentTarget.value })} data={choices('receive.as-', ['wrong', 'damaged'])} />
          <Checkbox label={tell('receive.again')} checked={line.again} onChange={(event) => set({ again: event.currentTarget.checked })} />
        </FieldRow>
      )}
      <FieldRow>
        <TextInput {...entry.at(`lines.${at}.where`)} label={tell('lot.where')} value={line.where} onChange={(event) => set({ where: event.currentTarget.value })} autoComplete="off" />
        <DateField {...entry.at(`lines.${at}.expires`)} label={tell('lot.expires')} value={line.expires} onChange={(expires) => set({ expires })} />
      </FieldRow>
    </FieldGroup>
  );
}

async function send(draft: ReceiveDraft, order: string): Promise<Result<Changed<'order.receive'>>> {
  const read = readReceived(draft);
  if (!read.ok) return read;
  const { on, rows } = read.value;
  const reply = await withPapers(draft.files, (papers) => change('order.receive', { order, on, lines: rows.map(({ row }) => row), papers, note: draft.note }));
  return reply.ok ? reply : { ok: false, refusal: atReceivedField(reply.refusal, rows) };
}
