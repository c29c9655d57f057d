import { NativeSelect } from '@mantine/core';
import type { ChangeEvent } from 'react';
import { choices } from '../../../ui/form/choices.ts';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { tell } from '../../../ui/words/tell.ts';

interface Bound {
  readonly id: string;
  readonly error: string | undefined;
  readonly value: string;
  readonly onChange: (event: ChangeEvent<HTMLSelectElement>) => void;
}

/** How something else wears: the program knows it of the rest. */
export function WayFields({ by, rises }: { readonly by: Bound; readonly rises: Bound }) {
  return (
    <FieldRow>
      <NativeSelect {...by} label={tell('wears.by')} data={choices('wears.by-', ['distance', 'time'])} />
      <NativeSelect {...rises} label={tell('wears.rises')} data={choices('wears.rises-', ['no', 'yes'])} />
    </FieldRow>
  );
}
