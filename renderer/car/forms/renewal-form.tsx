import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PapersField } from '../../ui/form/papers-field.tsx';

interface RenewalFormProps {
  readonly view: CarView;
  readonly obligation: CarView['due']['obligations'][number];
  readonly onClose: () => void;
}

interface Draft {
  readonly on: string;
  readonly lastValidDay: string;
  readonly paid: string;
  readonly reference: string;
  readonly files: readonly File[];
}

/** Records that a dated duty was met, and moves its last valid day on. */
export function RenewalForm({ view, obligation, onClose }: RenewalFormProps) {
  const words = useWords();
  const { currency, today } = view;
  const entry = useEntry({
    key: `obligation.renew ${obligation.id}`,
    start: { on: today as string, lastValidDay: '', paid: '', reference: '', files: [] } satisfies Draft as Draft,
    send: (draft) => send(draft, obligation.id, currency),
    onDone: (reply) => {
      const done = tell('renew-form.done', { name: obligation.name, date: words.date(reply.obligation.lastValidDay) });
      note(reply.daysLost === 0 ? done : `${done} ${tell('renew-form.lost', { n: reply.daysLost })}`, reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('renew-form.submit')} onCancel={onClose}>
      <FieldRow>
        <DateField {...bindDate(entry, 'on')} data-autofocus max={today} label={tell('renew-form.on')} {...(isTooEarly(obligation, entry.draft.on) && { description: tell('renew-form.early', { opens: words.date(obligation.opens ?? obligation.on), date: words.date(obligation.on) }) })} />
        <DateField {...bindDate(entry, 'lastValidDay')} label={tell('renew-form.last-valid-day')} description={tell('renew-form.last-valid-day-what')} />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'paid', 'paidMinor')} label={tell('renew-form.paid', { currency })} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'reference')} label={tell('renew-form.reference')} autoComplete="off" />
      </FieldRow>
      <PapersField place={entry.at('papers')} files={entry.draft.files} onChange={(files) => entry.set({ files })} />
    </EntryForm>
  );
}

/** A certificate in force, renewed before its day is kept. */
function isTooEarly({ opens, on: lastValidDay }: RenewalFormProps['obligation'], on: string): boolean {
  return opens !== null && on !== '' && on < opens && on <= lastValidDay;
}

async function send(draft: Draft, obligation: string, currency: string): Promise<Result<Changed<'obligation.renew'>>> {
  const read = new FieldsRead();
  const lastValidDay = read.dateOrNull('lastValidDay', draft.lastValidDay);
  const whole = read.whole({
    obligation,
    on: read.date('on', draft.on),
    paidMinor: read.moneyOrNull('paidMinor', draft.paid, currency),
    reference: textOrNull(draft.reference),
    ...(lastValidDay === null ? {} : { lastValidDay }),
  });
  if (!whole.ok) return whole;
  return withPapers(draft.files, (papers) => change('obligation.renew', { ...whole.value, papers }));
}
