import { TextInput } from '@mantine/core';
import type { PlanningView } from '../../../shared-core/views/planning-view.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { readPlan, startPlan } from './plan-draft.ts';
import { WeekdaysField } from './weekdays.tsx';

/** How far one looks ahead, when one works at home, and what a day late counts. */
export function PlanForm({ view }: { readonly view: PlanningView }) {
  const { currency, settings, assumed } = view;
  const entry = useEntry({
    key: 'plan-settings.set',
    start: startPlan(settings, (minor) => amountText(minor, currency)),
    send: async (draft) => {
      const read = readPlan(draft, currency);
      return read.ok ? change('plan-settings.set', read.value) : read;
    },
    onDone: ({ undo }) => note(tell('plan-form.saved'), undo),
  });
  return (
    <Section title={tell('plan-form.title')} {...(assumed ? { hint: tell('planning.assumed') } : {})}>
      <EntryForm entry={entry} submit={tell('plan-form.submit')}>
        <FieldRow>
          <TextInput {...bindText(entry, 'horizonDays')} label={tell('plan-form.horizon')} description={tell('plan-form.horizon-what')} inputMode="numeric" autoComplete="off" />
          <TextInput {...bindText(entry, 'preferredMinutesADay')} label={tell('plan-form.preferred')} description={tell('plan-form.preferred-what')} inputMode="numeric" autoComplete="off" />
          <TextInput {...bindText(entry, 'unknownMinutes')} label={tell('plan-form.unknown')} description={tell('plan-form.unknown-what')} inputMode="numeric" autoComplete="off" />
        </FieldRow>
        <WeekdaysField legend={tell('plan-form.weekdays')} place={entry.at('workWeekdays')} value={entry.draft.workWeekdays} onChange={(workWeekdays) => entry.set({ workWeekdays })} />
        <FieldGroup legend={tell('plan-form.late')} hint={tell('plan-form.late-what')}>
          <FieldRow>
            <TextInput {...bindText(entry, 'safety', 'lateMinorADay.safety')} label={tell('plan-form.safety')} inputMode="decimal" autoComplete="off" />
            <TextInput {...bindText(entry, 'damage', 'lateMinorADay.damage')} label={tell('plan-form.damage')} inputMode="decimal" autoComplete="off" />
            <TextInput {...bindText(entry, 'comfort', 'lateMinorADay.comfort')} label={tell('plan-form.comfort')} inputMode="decimal" autoComplete="off" />
          </FieldRow>
        </FieldGroup>
      </EntryForm>
    </Section>
  );
}
