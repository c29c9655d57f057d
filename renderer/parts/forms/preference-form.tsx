import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { SpecificationView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { doChange } from '../../ui/do-change.ts';

interface PreferenceFormProps {
  readonly one: SpecificationView;
  readonly currency: string;
  readonly onClose: () => void;
}

interface Draft {
  readonly part: string;
  readonly most: string;
}

/** States which of the parts that meet a specification one would rather have, and how much more it may cost. */
export function PreferenceForm({ one, currency, onClose }: PreferenceFormProps) {
  const { specification, metBy, preference } = one;
  const entry = useEntry({
    key: `part-preference.set ${specification.id}`,
    start: { part: preference?.parts[0] ?? metBy[0]?.part ?? '', most: preference?.mostMoreMinor == null ? '' : amountText(preference.mostMoreMinor, currency) } satisfies Draft as Draft,
    send: (draft) => send(draft, one, currency),
    onDone: ({ undo }) => {
      note(tell('preference.done', { specification: specification.name }), undo);
      onClose();
    },
  });
  const remove = () => {
    onClose();
    void doChange('part-preference.remove', { id: specification.id }, tell('preference.removed', { specification: specification.name }), true);
  };
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'part', 'parts')} data-autofocus label={tell('preference.part')} data={metBy.map((part) => ({ value: part.part, label: part.name }))} />
      <TextInput {...bindText(entry, 'most', 'mostMoreMinor')} label={tell('preference.most', { currency })} description={tell('preference.most-what')} inputMode="decimal" autoComplete="off" />
      {preference !== null && <div><Button variant="default" size="compact-md" onClick={remove}>{tell('preference.remove')}</Button></div>}
    </EntryForm>
  );
}

async function send(draft: Draft, { specification, preference }: SpecificationView, currency: string): Promise<Result<Changed<'part-preference.set'>>> {
  const read = new FieldsRead();
  const rest = (preference?.parts ?? []).filter((id) => id !== draft.part);
  const whole = read.whole({ id: specification.id, parts: [draft.part, ...rest], mostMoreMinor: read.moneyOrNull('mostMoreMinor', draft.most, currency) });
  return whole.ok ? change('part-preference.set', whole.value) : whole;
}
