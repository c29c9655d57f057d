import { FileInput } from '@mantine/core';
import { FilePlace } from '../file-place.tsx';
import { PaperLink } from '../paper-link.tsx';
import { tell } from '../words/tell.ts';
import type { FieldPlace } from './use-entry.ts';

interface PaperFieldProps {
  readonly place: FieldPlace;
  readonly label: string;
  readonly file: File | null;
  /** The paper that stands there already; another one takes its place. */
  readonly kept: string | null;
  readonly onChange: (file: File | null) => void;
}

/** The one paper that something stands on. */
export function PaperField({ place, label, file, kept, onChange }: PaperFieldProps) {
  return (
    <FilePlace onFiles={([dropped = null]) => onChange(dropped)}>
      <FileInput
        {...place}
        clearable
        clearButtonProps={{ 'aria-label': tell('record-form.papers-clear') }}
        value={file}
        onChange={onChange}
        label={label}
        description={tell('record-form.papers-what')}
        placeholder={tell(kept === null ? 'record-form.papers-choose' : 'paper-field.other')}
        accept="application/pdf,image/jpeg,image/png,image/webp"
      />
      {kept !== null && <PaperLink paper={kept} text={tell('paper-field.kept')} />}
    </FilePlace>
  );
}
