import { NativeSelect, TextInput } from '@mantine/core';
import { change } from '../ui/change.ts';
import { bindText } from '../ui/form/bind.ts';
import { EntryForm } from '../ui/form/entry-form.tsx';
import { FieldRow } from '../ui/form/fields.tsx';
import { useEntry } from '../ui/form/use-entry.ts';
import { hemisphereChoices, localeChoices, unitChoices } from '../ui/household-choices.ts';
import { useHousehold } from '../ui/household.tsx';
import { note } from '../ui/notices/notice-store.ts';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

/** The household's name and ways of writing. */
export function HouseholdSection() {
  const { name, unit, hemisphere, locale, currency } = useHousehold();
  const entry = useEntry({
    key: 'household.change',
    start: { name, unit: unit as string, hemisphere: hemisphere as string, locale },
    send: (draft) => change('household.change', { name: draft.name, unit: draft.unit as typeof unit, hemisphere: draft.hemisphere as typeof hemisphere, locale: draft.locale }),
    onDone: ({ undo }) => note(tell('settings.saved'), undo),
  });
  return (
    <Section title={tell('settings.household')}>
      <EntryForm entry={entry} submit={tell('settings.save')}>
        <TextInput {...bindText(entry, 'name')} label={tell('household.name')} autoComplete="off" />
        <FieldRow>
          <NativeSelect {...bindText(entry, 'unit')} label={tell('household.unit')} description={tell('household.unit-what')} data={unitChoices()} />
          <NativeSelect {...bindText(entry, 'hemisphere')} label={tell('household.hemisphere')} description={tell('household.hemisphere-what')} data={hemisphereChoices()} />
        </FieldRow>
        <FieldRow>
          <NativeSelect {...bindText(entry, 'locale')} label={tell('household.locale')} data={localeChoices(locale)} />
          <div>
            <p><strong>{tell('household.currency')}</strong>: {currency}</p>
            <p className={styles.soft}>{tell('household.currency-fixed')}</p>
          </div>
        </FieldRow>
      </EntryForm>
    </Section>
  );
}
