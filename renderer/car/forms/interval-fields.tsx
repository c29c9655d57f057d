import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { bindText, bindTick } from '../../ui/form/bind.ts';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import type { Entry } from '../../ui/form/use-entry.ts';
import { unitChoices } from '../../ui/household-choices.ts';
import { tell } from '../../ui/words/tell.ts';
import type { IntervalDraft } from './interval-draft.ts';

/** Months, a distance or both; the first time may be another. */
export function IntervalFields<Draft extends IntervalDraft>({ entry: whole }: { readonly entry: Entry<Draft> }) {
  // A form with more fields than these takes a change of these as well.
  const entry = whole as unknown as Entry<IntervalDraft>;
  return (
    <FieldGroup legend={tell('item-form.interval')} hint={tell('item-form.interval-what')} place={entry.atGroup('interval', 'interval.first', 'interval.repeat')}>
      <FieldRow>
        <TextInput {...bindText(entry, 'months', 'interval.repeat.months')} label={tell('item-form.months')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'distance', 'interval.repeat.distance')} label={tell('item-form.distance')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'firstDiffers')} label={tell('item-form.first-differs')} />
      {entry.draft.firstDiffers && (
        <FieldRow>
          <TextInput {...bindText(entry, 'firstMonths', 'interval.first.months')} label={tell('item-form.first-months')} inputMode="numeric" autoComplete="off" />
          <TextInput {...bindText(entry, 'firstDistance', 'interval.first.distance')} label={tell('item-form.first-distance')} inputMode="numeric" autoComplete="off" />
        </FieldRow>
      )}
    </FieldGroup>
  );
}
