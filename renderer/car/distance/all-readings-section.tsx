import { Button, Table } from '@mantine/core';
import { useState } from 'react';
import { inUnit } from '../../../shared-core/units/distance.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { useWords } from '../../ui/household.tsx';
import { ReadingQuestion } from '../../ui/reading-question.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { TakeInLink } from '../take-in-link.tsx';
import sectionStyles from '../../ui/section.module.css';
import carStyles from '../car.module.css';
import type { OpenDistanceSheet } from './distance-sheet.ts';
import { ReadingRow } from './reading-row.tsx';
import styles from './distance.module.css';

interface AllReadingsSectionProps {
  readonly view: CarView;
  readonly onRead: () => void;
  readonly open: OpenDistanceSheet;
}

const SHOWN = 10;
const COLUMNS = ['date', 'value', 'source', 'standing', 'note'] as const;

/** Every reading with what became of it, those in doubt asked about, and the instruments that were replaced. */
export function AllReadingsSection({ view, onRead, open }: AllReadingsSectionProps) {
  const [all, setAll] = useState(false);
  const { readings, due, car } = view;
  const papers = new Map(view.papers.map((paper) => [paper.id, paper]));
  return (
    <Section title={tell('readings.title')} more={<TakeInLink car={car.id} />} add={{ label: tell('readings.add'), onAdd: onRead }}>
      {readings.length === 0 && <p className={sectionStyles.soft}>{tell('readings.none')}</p>}
      {due.doubtful.map((doubtful) => (
        <div key={doubtful.reading} className={carStyles.doubt}><ReadingQuestion car={car.name} doubtful={doubtful} /></div>
      ))}
      {readings.length > 0 && (
        <div className={sectionStyles.tableFrame}>
          <Table className={styles.readings ?? ''}>
            <Table.Thead>
              <Table.Tr>{COLUMNS.map((column) => <Table.Th key={column} scope="col" className={column === 'value' ? sectionStyles.number ?? '' : ''}>{tell(`readings.${column}`)}</Table.Th>)}</Table.Tr>
            </Table.Thead>
            <Table.Tbody>{(all ? readings : readings.slice(0, SHOWN)).map((reading) => <ReadingRow key={reading.id} reading={reading} paper={reading.paper === null ? undefined : papers.get(reading.paper)} />)}</Table.Tbody>
          </Table>
        </div>
      )}
      {readings.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('readings.fewer') : tell('readings.all', { n: readings.length })}</Button>}
      {view.instruments.length > 0 && <Instruments view={view} open={open} />}
    </Section>
  );
}

/** Where an instrument was replaced, latest first; what the old one last showed can be put right. */
function Instruments({ view, open }: { readonly view: CarView; readonly open: OpenDistanceSheet }) {
  const words = useWords();
  const latestFirst = [...view.instruments].sort((a, b) => (a.date < b.date ? 1 : -1));
  return (
    <>
      <h3 id="instruments">{tell('instruments.title')}</h3>
      <ul className={sectionStyles.list} aria-labelledby="instruments">
        {latestFirst.map(({ id, date, firstShown, distance, estimated, unit, note }) => (
          <li key={id} className={styles.plainRow}>
            <div className={carStyles.rowWords}>
              <p>{tell(estimated ? 'instrument.estimated' : 'instrument.replaced', { date: words.date(date), shown: words.distance(inUnit(firstShown, unit), unit), distance: words.distance(Math.round(inUnit(distance, view.car.unit)), view.car.unit) })}</p>
              {note !== '' && <p className={sectionStyles.small}>{note}</p>}
            </div>
            <Button size="compact-sm" variant="default" aria-label={tell('instruments.correct-for', { date: words.date(date) })} onClick={() => open({ kind: 'instrument', instrument: id })}>{tell('instruments.correct')}</Button>
          </li>
        ))}
      </ul>
    </>
  );
}
