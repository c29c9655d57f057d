import { Button, Table } from '@mantine/core';
import type { DistanceUnit } from '../../../shared-core/units/distance.ts';
import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { valueText } from './value-words.ts';
import type { OpenWear } from './wear-sheet.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './wear.module.css';

type Point = WearSeriesView['points'][number];

interface PointListProps {
  readonly series: WearSeriesView;
  readonly unit: DistanceUnit;
  readonly open: OpenWear;
}

/** Every measurement of a series, newest first: how it counts, and what can be done about it. */
export function PointList({ series, unit, open }: PointListProps) {
  return (
    <div className={sectionStyles.tableFrame}>
      <Table className={styles.table ?? ''}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">{tell('points.date')}</Table.Th>
            <Table.Th scope="col" className={sectionStyles.number ?? ''}>{tell('points.value')}</Table.Th>
            <Table.Th scope="col" className={sectionStyles.number ?? ''}>{tell('points.odometer')}</Table.Th>
            <Table.Th scope="col">{tell('points.remarks')}</Table.Th>
            <Table.Th scope="col"><span className="only-said">{tell('items.actions')}</span></Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>{[...series.points].reverse().map((point) => <PointRow key={point.measurement.id} point={point} unit={unit} open={open} />)}</Table.Tbody>
      </Table>
    </div>
  );
}

interface PointRowProps {
  readonly point: Point;
  readonly unit: DistanceUnit;
  readonly open: OpenWear;
}

function PointRow({ point, unit, open }: PointRowProps) {
  const words = useWords();
  const { measurement, part, distance, estimated } = point;
  const said = { value: valueText(measurement.typed), date: words.date(measurement.date) };
  const far = distance === null ? '' : words.distance(distance, unit);
  return (
    <Table.Tr className={part === 'counts' ? '' : sectionStyles.notCounted ?? ''}>
      <Table.Td className={sectionStyles.date ?? ''}>{said.date}</Table.Td>
      <Table.Td className={sectionStyles.number ?? ''}>{part === 'dismissed' ? <s>{said.value}</s> : said.value}</Table.Td>
      <Table.Td className={sectionStyles.number ?? ''}>{far === '' ? '' : estimated ? tell('points.about', { distance: far }) : far}</Table.Td>
      <Table.Td className={sectionStyles.small ?? ''}>{remarksOf(point).join(', ')}</Table.Td>
      <Table.Td>
        <div className={styles.rowActions}>
          <Button size="compact-sm" variant="subtle" aria-label={tell('points.correct-of', said)} onClick={() => open({ kind: 'correct', measurement: measurement.id })}>{tell('points.correct')}</Button>
          <Button size="compact-sm" variant="subtle" aria-label={tell(measurement.dismissed ? 'points.count-of' : 'points.strike-of', said)} onClick={() => void dismiss(measurement, said)}>
            {tell(measurement.dismissed ? 'points.count' : 'points.strike')}
          </Button>
        </div>
      </Table.Td>
    </Table.Tr>
  );
}

function remarksOf({ measurement, part, distance, estimated }: Point): string[] {
  const { place, fresh, gauge, source, note: remark } = measurement;
  const parts = [tell(`part.${part}`)];
  if (fresh) parts.push(tell('points.new-part'));
  if (distance !== null && estimated) parts.push(tell('points.worked-out'));
  if (measurement.wheel !== null && place !== null) parts.push(tell(`measured-place.${place}`));
  if (source !== 'keeper') parts.push(tell(`source.${source}`));
  return [...parts, ...(gauge === null ? [] : [gauge]), ...(remark === '' ? [] : [remark])];
}

/** Found wrong, or counted after all: said at once, and undone with one press. */
async function dismiss({ id, dismissed }: Point['measurement'], said: { readonly value: string; readonly date: string }): Promise<void> {
  const result = await change('measurement.correct', { id, dismissed: !dismissed });
  if (result.ok) note(tell(dismissed ? 'points.counted' : 'points.struck', said), result.value.undo);
  else note(sayFault(result.refusal));
}
