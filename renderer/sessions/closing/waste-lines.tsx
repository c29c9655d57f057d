import { Checkbox, TextInput } from '@mantine/core';
import type { ChangeEvent } from 'react';
import type { Closing } from '../../../shared-core/views/closing-schema.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { tell } from '../../ui/words/tell.ts';

interface WasteLinesProps {
  readonly wastes: Closing['wastes'];
  readonly chosen: readonly boolean[];
  readonly onChange: (chosen: readonly boolean[]) => void;
  readonly where: { readonly id: string; readonly error: string | undefined; readonly value: string; readonly onChange: (event: ChangeEvent<HTMLInputElement>) => void };
}

/** What is left over and kept until it goes to an authorised place. */
export function WasteLines({ wastes, chosen, onChange, where }: WasteLinesProps) {
  return (
    <FieldGroup legend={tell('closing.wastes')} hint={tell('closing.wastes-what')}>
      {wastes.map(({ what, name }, index) => <Checkbox key={what} label={name} checked={chosen[index] ?? false} onChange={(event) => onChange(chosen.map((one, own) => (own === index ? event.currentTarget.checked : one)))} />)}
      {chosen.includes(true) && <TextInput {...where} label={tell('closing.wastes-where')} autoComplete="off" />}
    </FieldGroup>
  );
}
