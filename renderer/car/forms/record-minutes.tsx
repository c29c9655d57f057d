import { TextInput } from '@mantine/core';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import type { LineDraft } from './record-draft.ts';

interface RecordMinutesProps {
  readonly lines: readonly LineDraft[];
  readonly place: (path: string) => FieldPlace;
  readonly onChange: (lines: readonly LineDraft[]) => void;
}

/** How long each line took: the plan learns from it. */
export function RecordMinutes({ lines, place, onChange }: RecordMinutesProps) {
  const done = lines.map((line, at) => ({ line, at })).filter(({ line }) => line.outcome !== 'not-done' && line.name !== '');
  if (done.length === 0) return null;
  return (
    <FieldGroup legend={tell('record-form.minutes')} hint={tell('record-form.minutes-what')}>
      <FieldRow>
        {done.map(({ line, at }) => (
          <TextInput key={at} {...place(`lines.${at}.minutes`)} label={tell('record-form.minutes-of', { name: line.name })} value={line.minutes} inputMode="numeric" autoComplete="off" onChange={(event) => onChange(lines.map((one, own) => (own === at ? { ...one, minutes: event.currentTarget.value } : one)))} />
        ))}
      </FieldRow>
    </FieldGroup>
  );
}
