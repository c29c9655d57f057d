import { Button, Checkbox, CloseButton, TextInput } from '@mantine/core';
import { amountText } from '../../../shared-core/units/money.ts';
import type { BookingView, QuoteView } from '../../../shared-core/views/booking-view-schema.ts';
import { change } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PaperField } from '../../ui/form/paper-field.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './booking.module.css';

interface QuoteFormProps {
  readonly view: BookingView;
  readonly quote: QuoteView | null;
  readonly onClose: () => void;
}

interface Line {
  readonly text: string;
  readonly amount: string;
  readonly covers: readonly string[];
}

/** Enters a price line by line: each amount is for all the lines that are ticked with it. */
export function QuoteForm({ view, quote, onClose }: QuoteFormProps) {
  const { currency, today, session } = view;
  const shown = (minor: number | null) => (minor === null ? '' : amountText(minor, currency));
  const wanted = view.booking?.wanted ?? [];
  const entry = useEntry({
    key: `booking.quote ${session.id} ${quote?.id ?? ''}`,
    start: {
      by: quote?.by ?? '', on: (quote?.on ?? today) as string, validUntil: (quote?.validUntil ?? '') as string, total: shown(quote?.totalMinor ?? null), note: quote?.note ?? '', file: null as File | null,
      lines: (quote?.lines ?? []).length > 0 ? (quote?.lines ?? []).map((one): Line => ({ text: one.text, amount: shown(one.amountMinor), covers: one.covers })) : [{ text: '', amount: '', covers: [] }] as readonly Line[],
    },
    send: async (draft) => {
      const read = new FieldsRead();
      const meant = draft.lines.filter((one) => one.text.trim() !== '' || one.amount.trim() !== '' || one.covers.length > 0);
      const lines = meant.map((one, at) => ({ text: one.text.trim() === '' ? wanted.filter((line) => one.covers.includes(line.id)).map((line) => line.text).join(', ').slice(0, 200) : one.text, covers: [...one.covers], amountMinor: read.moneyOrNull(`quote.lines.${at}.amountMinor`, one.amount, currency) }));
      const on = read.date('quote.on', draft.on) ?? today;
      const whole = read.whole({ session: session.id, quote: { ...(quote === null ? {} : { id: quote.id }), by: textOrNull(draft.by), on, validUntil: read.dateOrNull('quote.validUntil', draft.validUntil), lines, totalMinor: read.moneyOrNull('quote.totalMinor', draft.total, currency), note: draft.note } });
      if (!whole.ok) return whole;
      return withPapers(draft.file === null ? [] : [draft.file], ([paper]) => change('booking.quote', { ...whole.value, quote: { ...whole.value.quote, paper: paper ?? quote?.paper ?? null } }));
    },
    onDone: ({ undo }) => {
      note(tell('quotes.saved'), undo);
      onClose();
    },
  });
  const { lines } = entry.draft;
  const put = (at: number, changed: Partial<Line>) => entry.set({ lines: lines.map((one, index) => (index === at ? { ...one, ...changed } : one)) });
  return (
    <EntryForm entry={entry} submit={tell('quotes.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'by', 'quote.by')} data-autofocus label={tell('quotes.by')} autoComplete="off" />
      <FieldRow>
        <DateField {...bindDate(entry, 'on', 'quote.on')} max={today} label={tell('quotes.on')} />
        <DateField {...bindDate(entry, 'validUntil', 'quote.validUntil')} label={tell('quotes.valid')} />
      </FieldRow>
      {lines.map((line, at) => (
        <FieldGroup key={at} legend={tell('quotes.line', { n: at + 1 })} place={entry.atGroup(`quote.lines.${at}`, `quote.lines.${at}.covers`)}>
          <div className={styles.line}>
            <TextInput {...entry.at(`quote.lines.${at}.text`)} label={tell('quotes.line-text', { n: at + 1 })} value={line.text} onChange={(event) => put(at, { text: event.currentTarget.value })} autoComplete="off" />
            {lines.length > 1 && <CloseButton aria-label={tell('booking.line-out', { n: at + 1, what: tell('quotes.title') })} onClick={() => entry.set({ lines: lines.filter((_, index) => index !== at) })} />}
          </div>
          <TextInput {...entry.at(`quote.lines.${at}.amountMinor`)} label={tell('quotes.line-amount', { n: at + 1, currency })} value={line.amount} onChange={(event) => put(at, { amount: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
          <div className={styles.covers} role="group" aria-label={tell('quotes.line-covers', { n: at + 1 })}>
            {wanted.map((one) => <Checkbox key={one.id} label={one.text} checked={line.covers.includes(one.id)} onChange={(event) => put(at, { covers: event.currentTarget.checked ? [...line.covers, one.id] : line.covers.filter((id) => id !== one.id) })} />)}
          </div>
        </FieldGroup>
      ))}
      <Button variant="default" size="compact-md" onClick={() => entry.set({ lines: [...lines, { text: '', amount: '', covers: [] }] })}>{tell('booking.add', { what: tell('quotes.title') })}</Button>
      <TextInput {...bindText(entry, 'total', 'quote.totalMinor')} label={tell('quotes.total', { currency })} inputMode="decimal" autoComplete="off" />
      <PaperField place={entry.at('papers')} label={tell('quotes.paper')} file={entry.draft.file} kept={quote?.paper ?? null} onChange={(file) => entry.set({ file })} />
      <TextInput {...bindText(entry, 'note', 'quote.note')} label={tell('back.note')} autoComplete="off" />
    </EntryForm>
  );
}
