import { TextInput } from '@mantine/core';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';

/** After how many days a price seen may no longer hold. */
export function StaleAfter({ view }: { readonly view: PartsView }) {
  const entry = useEntry({
    key: 'parts-settings.set',
    start: { days: String(view.settings.staleAfterDays) },
    send: async ({ days }) => {
      const read = new FieldsRead();
      const whole = read.whole({ staleAfterDays: read.number('staleAfterDays', days, '180') });
      return whole.ok ? change('parts-settings.set', whole.value) : whole;
    },
    onDone: ({ undo }) => note(tell('stale-after.done'), undo),
  });
  return (
    <Section title={tell('stale-after.title')}>
      <EntryForm entry={entry} submit={tell('parts.save')}>
        <TextInput {...bindText(entry, 'days', 'staleAfterDays')} label={tell('stale-after.days')} inputMode="numeric" autoComplete="off" />
      </EntryForm>
    </Section>
  );
}
