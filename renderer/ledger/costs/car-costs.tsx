import { Table } from '@mantine/core';
import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import { groupSums, KIND_GROUPS } from './kind-groups.ts';
import { NumberHead } from './number-head.tsx';
import { YearChart } from './year-chart.tsx';

type CarView = LedgerView['cars'][number];

/** A car's years: drawn, and as numbers with their distance. */
export function CarCosts({ view, car }: { readonly view: LedgerView; readonly car: CarView }) {
  const words = useWords();
  const years = [...car.years].reverse().slice(-12).map((one) => ({ year: one.year, sums: groupSums(one.byKind), whole: one.whole }));
  const [time, fuel] = [car.years.some((one) => one.minutes > 0), car.years.some((one) => one.fuelMinor > 0)];
  const number = sectionStyles.number ?? '';
  return (
    <Section title={tell('ledger.car-years', { car: car.name })} hint={keepWords(car, words)}>
      <YearChart years={years} label={tell('ledger.chart-label', { car: car.name })} />
      <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={tell('ledger.car-years', { car: car.name })}>
        <Table aria-label={tell('ledger.car-years', { car: car.name })}>
          <Table.Thead>
            <Table.Tr>
              <Table.Th scope="col">{tell('costs.year')}</Table.Th>
              <NumberHead>{tell('costs.total')}</NumberHead>
              {KIND_GROUPS.map((group) => <NumberHead key={group}>{tell(`ledger-group.${group}`)}</NumberHead>)}
              <NumberHead>{tell('ledger.distance')}</NumberHead>
              <NumberHead>{tell('ledger.per-thousand', { unit: tell(`unit.${car.unit}`) })}</NumberHead>
              {time && <NumberHead>{tell('ledger.own-time')}</NumberHead>}
              {fuel && <NumberHead>{tell('ledger.fuel')}</NumberHead>}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {car.years.map((one) => {
              const sums = groupSums(one.byKind);
              return (
                <Table.Tr key={one.year}>
                  <Table.Th scope="row">{one.whole ? one.year : tell('ledger.part-year', { year: String(one.year) })}</Table.Th>
                  <Table.Td className={number}><strong>{words.money(one.totalMinor)}</strong></Table.Td>
                  {KIND_GROUPS.map((group) => <Table.Td key={group} className={number}>{sums[group] === 0 ? '' : words.money(sums[group])}</Table.Td>)}
                  <Table.Td className={number}>{one.distance === null ? '' : words.distance(one.distance.value, car.unit)}</Table.Td>
                  <Table.Td className={number}>{one.perThousandMinor === null ? '' : words.money(one.perThousandMinor)}</Table.Td>
                  {time && <Table.Td className={number}>{timeWords(one, words)}</Table.Td>}
                  {fuel && <Table.Td className={number}>{one.fuelMinor === 0 ? '' : words.money(one.fuelMinor)}</Table.Td>}
                </Table.Tr>
              );
            })}
            <Table.Tr>
              <Table.Th scope="row">{tell('ledger.in-all')}</Table.Th>
              <Table.Td className={number}><strong>{words.money(car.totalMinor)}</strong></Table.Td>
              {KIND_GROUPS.map((group) => <Table.Td key={group} className={number}>{words.money(groupSums(car.byKind)[group])}</Table.Td>)}
              <Table.Td /><Table.Td />
              {time && <Table.Td />}
              {fuel && <Table.Td className={number}>{words.money(car.fuelMinor)}</Table.Td>}
            </Table.Tr>
          </Table.Tbody>
        </Table>
      </div>
      <p className={sectionStyles.small}>{[tell('ledger.distance-what'), ...(time ? [tell(view.settings.ownHourMinor === 0 ? 'ledger.time-counts-nothing' : 'ledger.time-counts', { rate: words.money(view.settings.ownHourMinor) })] : []), ...(fuel ? [tell('ledger.fuel-apart')] : [])].join(' ')}</p>
    </Section>
  );
}

function keepWords(car: CarView, words: ReturnType<typeof useWords>): string {
  const { keepAYear } = car;
  if (keepAYear === null) return tell('ledger.no-whole-year');
  const { minor, years, lowMinor, highMinor, distance } = keepAYear;
  const of = distance === null ? '' : ` ${tell('ledger.keep-distance', { distance: words.distance(distance, car.unit) })}`;
  return `${tell('ledger.keep', { n: years, sum: words.money(minor), low: words.money(lowMinor), high: words.money(highMinor) })}${of} ${tell('ledger.keep-on', { sum: words.money(minor) })}`;
}

function timeWords({ minutes, timeMinor }: CarView['years'][number], words: ReturnType<typeof useWords>): string {
  if (minutes === 0) return '';
  const time = tell('ledger.hours', { hours: Math.floor(minutes / 60), minutes: String(minutes % 60).padStart(2, '0') });
  return timeMinor === 0 ? time : `${time}, ${words.money(timeMinor)}`;
}
