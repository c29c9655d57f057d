import { Button, Table } from '@mantine/core';
import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import { groupSums, KIND_GROUPS, type KindGroup } from './kind-groups.ts';
import { NumberHead } from './number-head.tsx';
import { YearChart, type DrawnYear } from './year-chart.tsx';

interface HouseholdCostsProps {
  readonly view: LedgerView;
  readonly onCar: (car: string) => void;
}

/** All cars: what a year of each costs, and all of them by year. */
export function HouseholdCosts({ view, onCar }: HouseholdCostsProps) {
  const words = useWords();
  const number = sectionStyles.number ?? '';
  return (
    <>
      <Section title={tell('ledger.cars')} hint={tell('ledger.cars-what')}>
        {view.cars.length === 0 ? <p className={sectionStyles.soft}>{tell('ledger.no-car')}</p> : (
          <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={tell('ledger.cars')}>
            <Table aria-label={tell('ledger.cars')}>
              <Table.Thead>
                <Table.Tr>
                  <Table.Th scope="col">{tell('ledger.car')}</Table.Th>
                  <NumberHead>{tell('ledger.keep-year')}</NumberHead>
                  <NumberHead>{tell('ledger.keep-span')}</NumberHead>
                  <NumberHead>{tell('ledger.keep-far')}</NumberHead>
                  <NumberHead>{tell('ledger.in-all')}</NumberHead>
                  <NumberHead>{tell('ledger.fuel')}</NumberHead>
                </Table.Tr>
              </Table.Thead>
              <Table.Tbody>
                {view.cars.map((car) => (
                  <Table.Tr key={car.car}>
                    <Table.Th scope="row"><Button variant="subtle" size="compact-md" onClick={() => onCar(car.car)}>{car.left === null ? car.name : tell('ledger.car-left', { car: car.name })}</Button></Table.Th>
                    <Table.Td className={number}>{car.keepAYear === null ? tell('ledger.not-yet') : <strong>{words.money(car.keepAYear.minor)}</strong>}</Table.Td>
                    <Table.Td className={number}>{car.keepAYear === null ? '' : tell('ledger.span', { n: car.keepAYear.years, low: words.money(car.keepAYear.lowMinor), high: words.money(car.keepAYear.highMinor) })}</Table.Td>
                    <Table.Td className={number}>{car.keepAYear?.distance == null ? '' : words.distance(car.keepAYear.distance, car.unit)}</Table.Td>
                    <Table.Td className={number}>{words.money(car.totalMinor)}</Table.Td>
                    <Table.Td className={number}>{car.fuelMinor === 0 ? '' : words.money(car.fuelMinor)}</Table.Td>
                  </Table.Tr>
                ))}
              </Table.Tbody>
            </Table>
          </div>
        )}
      </Section>
      {view.years.length > 0 && <YearsSection view={view} />}
    </>
  );
}

function YearsSection({ view }: { readonly view: LedgerView }) {
  const words = useWords();
  const number = sectionStyles.number ?? '';
  return (
    <Section title={tell('ledger.years')} hint={tell('ledger.years-what')}>
      <YearChart years={drawnYears(view)} label={tell('ledger.chart-label-all')} />
      <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={tell('ledger.years')}>
        <Table aria-label={tell('ledger.years')}>
          <Table.Thead>
            <Table.Tr>
              <Table.Th scope="col">{tell('costs.year')}</Table.Th>
              <NumberHead>{tell('ledger.stood-before')}</NumberHead>
              <NumberHead>{tell('ledger.paid-in-year')}</NumberHead>
              <NumberHead>{tell('ledger.went-to-cars')}</NumberHead>
              <NumberHead>{tell('ledger.went-to-wishes')}</NumberHead>
              <NumberHead>{tell('ledger.went-for-nothing')}</NumberHead>
              <NumberHead>{tell('ledger.stands-after')}</NumberHead>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {view.years.map((one) => (
              <Table.Tr key={one.year}>
                <Table.Th scope="row">{one.year}</Table.Th>
                {[one.stockBeforeMinor, one.paidMinor, one.carsMinor, one.wishesMinor, one.goneMinor, one.stockAfterMinor].map((minor, at) => <Table.Td key={at} className={number}>{minor === 0 ? '' : words.money(minor)}</Table.Td>)}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </div>
    </Section>
  );
}

/** All cars together by year, without fuel. */
function drawnYears({ cars, today }: LedgerView): readonly DrawnYear[] {
  const years = new Map<number, Record<KindGroup, number>>();
  for (const one of cars.flatMap((car) => car.years)) {
    const sums = years.get(one.year) ?? { parts: 0, labour: 0, duties: 0, rest: 0 };
    for (const group of KIND_GROUPS) sums[group] += groupSums(one.byKind)[group];
    years.set(one.year, sums);
  }
  const running = Number(today.slice(0, 4));
  return [...years].sort(([a], [b]) => a - b).slice(-12).map(([year, sums]) => ({ year, sums, whole: year < running }));
}
