import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { isFirstTest, OBLIGATION_KINDS, obligationDraft, sendObligation, type ObligationDraft, type ObligationEntered } from './obligation-draft.ts';

interface ObligationFormProps {
  readonly view: CarView;
  /** The obligation to change, or null: a new one. */
  readonly now: ObligationEntered | null;
  readonly onClose: () => void;
}

/** A dated duty of the car. */
export function ObligationForm({ view, now, onClose }: ObligationFormProps) {
  const { car, currency } = view;
  const entry = useEntry({
    key: now === null ? `obligation.add ${car.id}` : `obligation.change ${now.id}`,
    start: obligationDraft(now, currency),
    send: (draft) => sendObligation(draft, now, car.id, currency),
    onDone: ({ obligation, undo }) => {
      const name = obligation.name ?? tell(`kind.${obligation.kind}`);
      note(tell(now === null ? 'obligation-form.added' : 'obligation-form.changed', { name }), undo);
      onClose();
    },
  });
  const mayBeFirst = now === null && entry.draft.kind === 'roadworthiness-test' && car.firstRegistered !== null && !view.obligations.some((one) => one.kind === 'roadworthiness-test');
  return (
    <EntryForm entry={entry} submit={tell(now === null ? 'obligation-form.submit' : 'obligation-form.save')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'kind')} data-autofocus label={tell('obligation-form.kind')} data={choices('kind.', OBLIGATION_KINDS)} />
      {!isFirstTest(entry.draft) && <TextInput {...bindText(entry, 'name')} label={tell('obligation-form.name')} autoComplete="off" />}
      {mayBeFirst && <NativeSelect {...bindText(entry, 'first', 'years')} label={tell('obligation-form.first')} data={firstChoices()} />}
      <DayFields entry={entry} />
      <Checkbox {...bindTick(entry, 'keepsDate')} label={tell('obligation-form.keeps-date')} />
      <FieldRow>
        <TextInput {...bindText(entry, 'noticeDays')} label={tell('obligation-form.notice')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'price')} label={tell('obligation-form.price', { currency })} inputMode="decimal" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}

const firstChoices = () => [
  { value: 'given', label: tell('obligation-form.first-given') },
  ...[3, 4].map((n) => ({ value: String(n), label: tell('obligation-form.first-years', { n }) })),
];

function DayFields({ entry }: { readonly entry: Entry<ObligationDraft> }) {
  return (
    <FieldRow>
      {!isFirstTest(entry.draft) && <DateField {...bindDate(entry, 'lastValidDay')} label={tell('obligation-form.last-valid-day')} />}
      <TextInput {...bindText(entry, 'months')} label={tell('obligation-form.months')} description={tell('obligation-form.months-what')} inputMode="numeric" autoComplete="off" />
    </FieldRow>
  );
}
