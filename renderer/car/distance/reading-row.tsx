import { Table } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { useWords } from '../../ui/household.tsx';
import { PaperLink } from '../../ui/paper-link.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import carStyles from '../car.module.css';

interface ReadingRowProps {
  readonly reading: CarView['readings'][number];
  readonly paper: CarView['papers'][number] | undefined;
}

/** A reading as it was typed, where it comes from, what became of it, and its paper. */
export function ReadingRow({ reading, paper }: ReadingRowProps) {
  const words = useWords();
  const { date, typed, standing, source, note } = reading;
  const value = words.distance(typed.value, typed.unit);
  return (
    <Table.Tr className={standing === 'accepted' ? '' : sectionStyles.notCounted ?? ''}>
      <Table.Td className={sectionStyles.date ?? ''}>{words.date(date)}</Table.Td>
      <Table.Td className={sectionStyles.number ?? ''}>{standing === 'dismissed' ? <s>{value}</s> : value}</Table.Td>
      <Table.Td>{tell(`source.${source}`)}</Table.Td>
      <Table.Td>{standingWords(reading)}</Table.Td>
      <Table.Td className={carStyles.rowWords ?? ''}>
        {note}
        {paper !== undefined && <>{note !== '' && <br />}<PaperLink paper={paper.id} text={paper.name} /></>}
      </Table.Td>
    </Table.Tr>
  );
}

function standingWords({ standing, sure }: ReadingRowProps['reading']): string {
  if (standing === 'accepted') return tell(sure ? 'readings.counts-sure' : 'readings.counts');
  return tell(`readings.${standing}`);
}
