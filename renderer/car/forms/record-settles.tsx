import { Checkbox } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';

interface RecordSettlesProps {
  readonly view: CarView;
  readonly settles: readonly string[];
  readonly group: FieldPlace;
  readonly onChange: (settles: readonly string[]) => void;
}

/** What was seen before and is put right by the work. */
export function RecordSettles({ view, settles, group, onChange }: RecordSettlesProps) {
  const words = useWords();
  const open = view.observations.filter((one) => one.closedOn === null);
  if (open.length === 0) return null;
  return (
    <FieldGroup legend={tell('record-form.settles')} hint={tell('record-form.settles-what')} place={group}>
      {open.map((one) => (
        <Checkbox key={one.id} label={tell('record-form.settles-one', { text: one.text, date: words.date(one.date) })} checked={settles.includes(one.id)} onChange={(event) => onChange(event.currentTarget.checked ? [...settles, one.id] : settles.filter((id) => id !== one.id))} />
      ))}
    </FieldGroup>
  );
}
