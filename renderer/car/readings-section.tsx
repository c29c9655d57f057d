import { Button, Table } from '@mantine/core';
import { useState } from 'react';
import { inUnit } from '../../shared-core/units/distance.ts';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { useWords } from '../ui/household.tsx';
import { ReadingQuestion } from '../ui/reading-question.tsx';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface ReadingsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

const SHOWN = 6;

/** What was read, what is in doubt, and where the instrument was replaced. */
export function ReadingsSection({ view, open }: ReadingsSectionProps) {
  const words = useWords();
  const [all, setAll] = useState(false);
  const { readings, due, instruments, car } = view;
  return (
    <Section title={tell('readings.title')} add={{ label: tell('readings.add'), onAdd: () => open({ kind: 'reading' }) }}>
      {readings.length === 0 && <p className={sectionStyles.soft}>{tell('readings.none')}</p>}
      {due.doubtful.map((doubtful) => (
        <div key={doubtful.reading} className={styles.doubt}><ReadingQuestion car={car.name} doubtful={doubtful} /></div>
      ))}
      {readings.length > 0 && (
        <div className={sectionStyles.tableFrame}>
          <Table>
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('readings.date')}</Table.Th>
                <Table.Th scope="col" className={sectionStyles.number ?? ''}>{tell('readings.value')}</Table.Th>
                <Table.Th scope="col">{tell('readings.source')}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>{(all ? readings : readings.slice(0, SHOWN)).map((reading) => <ReadingRow key={reading.id} reading={reading} earlier={view.earlier.some((one) => one.id === reading.id)} />)}</Table.Tbody>
          </Table>
        </div>
      )}
      {readings.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('readings.fewer') : tell('readings.all', { n: readings.length })}</Button>}
      {instruments.map(({ id, date, firstShown, distance, estimated, unit }) => (
        <p key={id} className={sectionStyles.small}>
          {tell(estimated ? 'instrument.estimated' : 'instrument.replaced', { date: words.date(date), shown: words.distance(inUnit(firstShown, unit), unit), distance: words.distance(inUnit(distance, unit), unit) })}
        </p>
      ))}
    </Section>
  );
}

function ReadingRow({ reading, earlier }: { readonly reading: CarView['readings'][number]; readonly earlier: boolean }) {
  const words = useWords();
  const { date, typed, standing, source, note, sure } = reading;
  const accepted = standing === 'accepted';
  const remarks = [...(earlier ? [tell('earlier.keeper')] : []), tell(`source.${source}`), ...(accepted ? (sure ? [tell('readings.sure')] : []) : [tell(`readings.${standing}`)]), ...(note === '' ? [] : [note])];
  const value = words.distance(typed.value, typed.unit);
  return (
    <Table.Tr className={accepted ? '' : sectionStyles.notCounted ?? ''}>
      <Table.Td className={sectionStyles.date ?? ''}>{words.date(date)}</Table.Td>
      <Table.Td className={sectionStyles.number ?? ''}>{standing === 'dismissed' ? <s>{value}</s> : value}</Table.Td>
      <Table.Td className={sectionStyles.small ?? ''}>{remarks.join(', ')}</Table.Td>
    </Table.Tr>
  );
}
