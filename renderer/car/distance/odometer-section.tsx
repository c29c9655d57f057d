import { Button, SegmentedControl, Table } from '@mantine/core';
import { useId, useState } from 'react';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { dueToday } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import { ChartLegend } from './chart-legend.tsx';
import type { Past } from './chart-scale.ts';
import styles from './distance.module.css';
import { OdometerChart } from './odometer-chart.tsx';

interface OdometerSectionProps {
  readonly view: CarView;
  readonly onRead: () => void;
}

/** How far the car has gone and is foreseen to go: drawn, and as a table; and what a reading would settle. */
export function OdometerSection({ view: { curve, due, usage, today }, onRead }: OdometerSectionProps) {
  const [past, setPast] = useState<Past>(24);
  const tableId = useId();
  const words = useWords();
  const first = curve.points[0];
  const probably = due.windows.filter((window) => window.state === 'probably-due' && !dueToday(window));
  return (
    <Section title={tell('curve.title')}>
      {first === undefined && <p className={sectionStyles.soft}>{tell('curve.none')}</p>}
      {first !== undefined && probably.length > 0 && (
        <div className={styles.ask}>
          <p>{tell('curve.probably', { names: probably.map(({ name }) => name).join(', ') })}</p>
          <Button size="compact-md" onClick={onRead}>{tell('readings.add')}</Button>
        </div>
      )}
      {first !== undefined && (
        <>
          {first.date < addMonths(today, -24) && (
            <SegmentedControl aria-label={tell('curve.past')} value={past === null ? 'all' : 'two'} onChange={(value) => setPast(value === 'all' ? null : 24)} data={[{ value: 'two', label: tell('curve.two-years') }, { value: 'all', label: tell('curve.all') }]} />
          )}
          <OdometerChart curve={curve} today={today} past={past} tableId={tableId} />
          <ChartLegend curve={curve} />
          {curve.replaced.length > 0 && <p className={sectionStyles.small}>{tell('curve.whole')}</p>}
          <ForeseenTable id={tableId} curve={curve} />
          {usage?.narrows != null && <p className={sectionStyles.small}>{tell('curve.narrows', { on: words.date(usage.narrows.on), now: words.distance(usage.narrows.now, usage.unit), then: words.distance(usage.narrows.afterReading, usage.unit) })}</p>}
        </>
      )}
    </Section>
  );
}

/** What the instrument will show on some days of the year to come. */
function ForeseenTable({ id, curve: { foreseen, unit } }: { readonly id: string; readonly curve: CarView['curve'] }) {
  const words = useWords();
  return (
    <div className={sectionStyles.tableFrame}>
      <Table id={id} className={styles.foreseen ?? ''}>
        <Table.Caption>{tell('foreseen.caption')}</Table.Caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">{tell('foreseen.on')}</Table.Th>
            {(['low', 'likely', 'high'] as const).map((edge) => <Table.Th key={edge} scope="col" className={sectionStyles.number ?? ''}>{tell(`foreseen.${edge}`)}</Table.Th>)}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {foreseen.map(({ date, low, likely, high }) => (
            <Table.Tr key={date}>
              <Table.Th scope="row" className={sectionStyles.date ?? ''}>{words.date(date)}</Table.Th>
              {[low, likely, high].map((value, at) => <Table.Td key={at} className={sectionStyles.number ?? ''}>{words.distance(value, unit)}</Table.Td>)}
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </div>
  );
}
