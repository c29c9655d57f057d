import { NativeSelect, TextInput } from '@mantine/core';
import { bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { FieldRow } from '../../ui/form/fields.tsx';
import type { Entry } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import type { RecordDraft } from './record-draft.ts';

/** Who vouches for the work and where that can be looked up, and by what data it was done. */
export function RecordVouched({ entry, names }: { readonly entry: Entry<RecordDraft>; readonly names: { readonly approvedBy: string; readonly method: string } }) {
  return (
    <>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'vouched')} label={tell('record-form.vouched')} data={[{ value: '', label: tell('record-form.vouched-none') }, ...choices('record-form.vouched-', ['stamp', 'digital'])]} />
        <TextInput {...bindText(entry, 'reference')} label={tell('record-form.reference')} autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'approvedBy')} label={tell('record-form.approved-by')} description={tell('record-form.approved-by-what')} list={names.approvedBy} autoComplete="off" />
        <TextInput {...bindText(entry, 'method')} label={tell('record-form.method')} description={tell('record-form.method-what')} list={names.method} autoComplete="off" />
      </FieldRow>
    </>
  );
}
