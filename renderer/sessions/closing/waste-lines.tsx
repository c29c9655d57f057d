import { Checkbox, TextInput } from '@mantine/core';
import type { ChangeEvent } from 'react';
import type { Closing } from '../../../shared-core/views/closing-schema.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { tell } from '../../ui/words/tell.ts';

interface WasteLinesProps {
  readonly wastes: Closing['wastes'];
  /** What the keeper changed of it. */
  readonly told: Readonly<Record<string, boolean>>;
  readonly onChange: (told: Readonly<Record<string, boolean>>) => void;
  readonly where: { readonly id: string; readonly error: string | undefined; readonly value: string; readonly onChange: (event: ChangeEvent<HTMLInputElement>) => void };
}

/** What is left over and kept until it goes to an authorised place. */
export function WasteLines({ wastes, told, onChange, where }: WasteLinesProps) {
  return (
    <FieldGroup legend={tell('closing.wastes')} hint={tell('closing.wastes-what')}>
      {wastes.map(({ what, name, kept }) => <Checkbox key={what} label={name} checked={told[what] ?? kept} onChange={(event) => onChange({ ...told, [what]: event.currentTarget.checked })} />)}
      {wastes.some(({ what, kept }) => told[what] ?? kept) && <TextInput {...where} label={tell('closing.wastes-where')} autoComplete="off" />}
    </FieldGroup>
  );
}
