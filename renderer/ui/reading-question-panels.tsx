import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import type { DoubtfulView } from '../../shared-core/views/due-view.ts';
import { FieldsRead } from './form/read-fields.ts';
import { useWords } from './household.tsx';
import { unitChoices } from './household-choices.ts';
import styles from './reading-question.module.css';
import type { Answer, DoubtfulReading, useSettling } from './settle-reading.ts';
import { tell } from './words/tell.ts';

type Unit = DoubtfulReading['unit'];

interface PanelProps {
  readonly settling: ReturnType<typeof useSettling>;
}

/** The answer is read from the fields; what cannot be read is refused before anything is sent. */
function answerBy(settling: PanelProps['settling'], compose: (read: FieldsRead) => Answer): void {
  const read = new FieldsRead();
  const whole = read.whole(compose(read));
  if (whole.ok) settling.settle(whole.value);
  else settling.refuse(whole.refusal);
}

/** Another value or unit was meant. */
export function OtherValuePanel({ doubtful, settling }: PanelProps & { readonly doubtful: DoubtfulReading }) {
  const [value, setValue] = useState('');
  const [unit, setUnit] = useState<Unit>(doubtful.unit);
  return (
    <Panel submit={tell('reading.record-other')} onSubmit={() => answerBy(settling, (read) => ({ verdict: 'corrected', value: read.number('value', value), unit }))}>
      <TextInput autoFocus label={tell('reading.other-value')} value={value} inputMode="numeric" autoComplete="off" onChange={(event) => setValue(event.currentTarget.value)} />
      <UnitField label={tell('reading.unit')} unit={unit} onChange={setUnit} />
    </Panel>
  );
}

/** The accepted reading that it contradicts is the wrong one: struck out, or corrected. */
export function OtherReadingPanel({ against, settling }: PanelProps & { readonly against: NonNullable<DoubtfulView['against']> }) {
  const words = useWords();
  const [value, setValue] = useState('');
  const other = { value: words.distance(against.value, against.unit), date: words.date(against.date) };
  const answer = (read: FieldsRead): Answer => {
    const meant = read.numberOrNull('value', value);
    return { verdict: 'other-wrong', ...(meant === null ? {} : { value: meant }) };
  };
  return (
    <Panel submit={tell(value.trim() === '' ? 'reading.strike-other' : 'reading.correct-other')} onSubmit={() => answerBy(settling, answer)}>
      <TextInput autoFocus label={tell('reading.other-was', other)} description={tell('reading.other-was-what')} value={value} inputMode="numeric" autoComplete="off" rightSection={tell(`unit.${against.unit}`)} onChange={(event) => setValue(event.currentTarget.value)} />
    </Panel>
  );
}

/** It is the first reading of a new instrument. */
export function InstrumentPanel({ doubtful, settling }: PanelProps & { readonly doubtful: DoubtfulReading }) {
  const [last, setLast] = useState('');
  const [lastUnit, setLastUnit] = useState<Unit>(doubtful.unit);
  const [unit, setUnit] = useState<Unit>(doubtful.unit);
  const [sure, setSure] = useState(false);
  const [laterOfNew, setLaterOfNew] = useState(false);
  const answer = (read: FieldsRead): Answer => ({ verdict: 'replaced', unit, sure, laterOfNew, lastShown: read.distanceOrNull('lastShown', last, lastUnit) });
  return (
    <Panel submit={tell('reading.record-replaced')} onSubmit={() => answerBy(settling, answer)}>
      <TextInput autoFocus label={tell('reading.last-shown')} description={tell('reading.last-shown-what')} value={last} inputMode="numeric" autoComplete="off" onChange={(event) => setLast(event.currentTarget.value)} />
      <UnitField label={tell('reading.old-unit')} unit={lastUnit} onChange={setLastUnit} />
      <UnitField label={tell('reading.new-unit')} unit={unit} onChange={setUnit} />
      {(settling.asksWhetherSure || sure) && <Checkbox label={tell('reading.sure-last')} checked={sure} onChange={(event) => setSure(event.currentTarget.checked)} />}
      {(settling.asksWhoseLater || laterOfNew) && <Checkbox label={tell('reading.later-of-new')} checked={laterOfNew} onChange={(event) => setLaterOfNew(event.currentTarget.checked)} />}
    </Panel>
  );
}

function Panel({ submit, onSubmit, children }: { readonly submit: string; readonly onSubmit: () => void; readonly children: ReactNode }) {
  return (
    <form
      className={styles.panel}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    >
      {children}
      <Button type="submit">{submit}</Button>
    </form>
  );
}

function UnitField({ label, unit, onChange }: { readonly label: string; readonly unit: Unit; readonly onChange: (unit: Unit) => void }) {
  return <NativeSelect label={label} data={unitChoices()} value={unit} onChange={(event) => onChange(event.currentTarget.value as Unit)} />;
}
