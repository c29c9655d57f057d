import { FileInput } from '@mantine/core';
import { FilePlace } from '../file-place.tsx';
import type { FieldPlace } from './use-entry.ts';
import { tell } from '../words/tell.ts';

interface PapersFieldProps {
  readonly place: FieldPlace;
  readonly files: readonly File[];
  readonly onChange: (files: readonly File[]) => void;
}

/** Receipts, certificates and photographs to be kept with what is recorded. */
export function PapersField({ place, files, onChange }: PapersFieldProps) {
  return (
    <FilePlace many onFiles={(dropped) => onChange([...files, ...dropped])}>
      <FileInput
        {...place}
        multiple
        clearable
        clearButtonProps={{ 'aria-label': tell('record-form.papers-clear') }}
        value={[...files]}
        onChange={(chosen) => onChange(chosen)}
        label={tell('record-form.papers')}
        description={tell('record-form.papers-what')}
        placeholder={tell('record-form.papers-choose')}
        accept="application/pdf,image/jpeg,image/png,image/webp"
      />
    </FilePlace>
  );
}
