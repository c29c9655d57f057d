import { Table } from '@mantine/core';
import type { ReactNode } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { dueWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './distance.module.css';

type Track = CarView['trackRecord'];

/** How good the forecasts of this car were so far: in words, and row by row where one wants to see them. */
export function TrackSection({ track: { readings, dates, unit } }: { readonly track: Track }) {
  // Where both have only the same to say, it is said once.
  if (readings.text === dates.text) return <Section title={tell('track.title')}><p className={sectionStyles.soft}>{readings.text}</p></Section>;
  return (
    <Section title={tell('track.title')}>
      <p className={sectionStyles.soft}>{tell('track.what')}</p>
      <h3>{tell('track.readings')}</h3>
      <p>{readings.text}</p>
      <Folded show={readings.rows.length > 0} label={tell('track.show-readings', { n: readings.rows.length })} caption={tell('track.readings-caption')} columns={['track.on', 'track.foreseen-on', 'track.range', 'track.read', 'track.held']}>
        {readings.rows.map((row) => <ReadingRow key={row.on} row={row} unit={unit} />)}
      </Folded>
      <h3>{tell('track.dates')}</h3>
      <p>{dates.text}</p>
      <Folded show={dates.rows.length > 0} label={tell('track.show-dates', { n: dates.rows.length })} caption={tell('track.dates-caption')} columns={['track.from', 'track.window', 'track.reached', 'track.held']}>
        {dates.rows.map((row) => <DateRow key={row.from} row={row} />)}
      </Folded>
    </Section>
  );
}

type Column = 'track.on' | 'track.foreseen-on' | 'track.range' | 'track.read' | 'track.held' | 'track.from' | 'track.window' | 'track.reached';

function Folded({ show, label, caption, columns, children }: { readonly show: boolean; readonly label: string; readonly caption: string; readonly columns: readonly Column[]; readonly children: ReactNode }) {
  if (!show) return null;
  return (
    <details className={styles.folded}>
      <summary>{label}</summary>
      <div className={sectionStyles.tableFrame}>
        <Table className={styles.readings ?? ''} aria-label={caption}>
          <Table.Thead><Table.Tr>{columns.map((column) => <Table.Th key={column} scope="col">{tell(column)}</Table.Th>)}</Table.Tr></Table.Thead>
          <Table.Tbody>{children}</Table.Tbody>
        </Table>
      </div>
    </details>
  );
}

function ReadingRow({ row, unit }: { readonly row: Track['readings']['rows'][number]; readonly unit: Track['unit'] }) {
  const words = useWords();
  return (
    <Table.Tr>
      <Table.Td className={sectionStyles.date ?? ''}>{words.date(row.on)}</Table.Td>
      <Table.Td className={sectionStyles.date ?? ''}>{words.date(row.foreseenOn)}</Table.Td>
      <Table.Td>{tell('track.low-high', { low: row.low, high: words.distance(row.high, unit) })}</Table.Td>
      <Table.Td className={sectionStyles.date ?? ''}>{words.distance(row.value, unit)}</Table.Td>
      <Table.Td>{tell(row.inside ? 'track.inside' : row.value > row.high ? 'track.above' : 'track.below')}</Table.Td>
    </Table.Tr>
  );
}

function DateRow({ row }: { readonly row: Track['dates']['rows'][number] }) {
  const words = useWords();
  const { from, earliest, likely, latest, reachedOn, inside } = row;
  return (
    <Table.Tr>
      <Table.Td className={sectionStyles.date ?? ''}>{words.date(from)}</Table.Td>
      <Table.Td>{dueWords({ state: 'ahead', earliest, likely, latest, limb: 'distance' }, words)}</Table.Td>
      <Table.Td className={sectionStyles.date ?? ''}>{reachedOn === null ? tell('track.not-yet') : words.date(reachedOn)}</Table.Td>
      <Table.Td>{tell(inside ? 'track.inside' : earliest !== null && reachedOn !== null && reachedOn < earliest ? 'track.sooner' : 'track.later')}</Table.Td>
    </Table.Tr>
  );
}
