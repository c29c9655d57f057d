import { TextInput } from '@mantine/core';
import { DateField } from '../../ui/form/date-field.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './forms.module.css';
import type { LineDraft } from './record-draft.ts';

interface RecordFindingProps {
  readonly at: number;
  readonly line: LineDraft;
  readonly place: (path: string) => FieldPlace;
  readonly onChange: (change: Partial<LineDraft>) => void;
}

/** What was found where a line was not simply done; what is to be watched is noted as seen, with the day to look again. */
export function RecordFinding({ at, line, place, onChange }: RecordFindingProps) {
  if (line.outcome === 'done' || line.outcome === 'good') return null;
  const said = { name: line.name === '' ? tell('record-line.this') : line.name };
  return (
    <div className={styles.finding} role="group" aria-label={tell('record-line.finding-of', said)}>
      <TextInput {...place(`lines.${at}.note`)} label={tell(line.outcome === 'not-done' ? 'record-line.why' : line.outcome === 'acted' ? 'record-line.acted' : 'record-line.found')} value={line.note} maxLength={500} autoComplete="off" onChange={(event) => onChange({ note: event.currentTarget.value })} />
      {line.outcome === 'watch' && <DateField {...place(`lines.${at}.recheckOn`)} label={tell('record-line.recheck')} description={tell('record-line.recheck-what')} value={line.recheckOn} onChange={(recheckOn) => onChange({ recheckOn })} />}
    </div>
  );
}
