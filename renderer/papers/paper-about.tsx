import { Textarea, TextInput } from '@mantine/core';
import type { PaperView } from '../../shared-core/views/papers-view.ts';
import { change } from '../ui/change.ts';
import { bindDate, bindText } from '../ui/form/bind.ts';
import { DateField } from '../ui/form/date-field.tsx';
import { EntryForm } from '../ui/form/entry-form.tsx';
import { FieldsRead, textOrNull } from '../ui/form/read-fields.ts';
import { useEntry } from '../ui/form/use-entry.ts';
import { useWords } from '../ui/household.tsx';
import { note } from '../ui/notices/notice-store.ts';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './papers.module.css';

/** What the keeper says of a paper, and what its file and its camera say. */
export function PaperAbout({ view }: { readonly view: PaperView }) {
  const { paper, fileName, taken, today } = view;
  const words = useWords();
  const entry = useEntry({
    key: `paper.describe ${paper.id}`,
    start: { name: paper.name === fileName ? '' : paper.name, day: paper.dayFrom === 'keeper' ? (paper.day ?? '') : '', note: view.note },
    send: async (draft) => {
      const read = new FieldsRead();
      const whole = read.whole({ day: read.dateOrNull('day', draft.day) });
      return whole.ok ? change('paper.describe', { paper: paper.id, name: textOrNull(draft.name), note: draft.note, ...whole.value }) : whole;
    },
    onDone: ({ undo }) => note(tell('paper.saved'), undo),
  });
  return (
    <Section title={tell('paper.about')}>
      <p className={styles.small}>{tell('paper.file', { name: fileName, kb: Math.ceil(paper.bytes / 1000), date: words.date(paper.keptOn) })}</p>
      {taken !== null && <p className={styles.small}>{takenWords(taken, words.date)}</p>}
      <EntryForm entry={entry} submit={tell('paper.save')}>
        <TextInput {...bindText(entry, 'name')} label={tell('paper.name')} placeholder={fileName} autoComplete="off" />
        <DateField {...bindDate(entry, 'day')} label={tell('paper.day')} max={today} />
        <Textarea {...bindText(entry, 'note')} label={tell('paper.note')} rows={2} />
      </EntryForm>
    </Section>
  );
}

function takenWords({ day, time, offset, source }: NonNullable<PaperView['taken']>, date: (day: string) => string): string {
  if (source === 'gps') return tell('paper.taken-gps', { date: date(day), time });
  return tell('paper.taken', { date: date(day), time, offset: offset === null ? '' : tell('paper.taken-offset', { offset }) });
}
