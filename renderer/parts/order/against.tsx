import { Table } from '@mantine/core';
import type { OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';

/** What the order is held against: buying for each car alone, and everything from one supplier. */
export function Against({ proposal }: { readonly proposal: OrderView }) {
  const words = useWords();
  const { perCar, perSupplier, needs, totalMinor, terms } = proposal;
  const met = needs.filter((one) => one.state === 'met').length;
  const carName = (id: string) => needs.find((one) => one.car === id)?.carName ?? id;
  if (perCar.cars.length === 0 && perSupplier.length === 0) return null;
  const row = (name: string, minor: number, count: number) => (
    <Table.Tr key={name}>
      <Table.Th scope="row">{name}</Table.Th>
      <Table.Td className={sectionStyles.number}>{tell('against.met', { met: count, all: needs.length })}</Table.Td>
      <Table.Td className={sectionStyles.number}>{words.money(minor)}</Table.Td>
    </Table.Tr>
  );
  return (
    <Section title={tell('against.title')} hint={tell('against.what')}>
      <div className={sectionStyles.tableFrame}>
        <Table aria-label={tell('against.title')} verticalSpacing={4}>
          <Table.Thead>
            <Table.Tr>
              <Table.Th scope="col">{tell('against.way')}</Table.Th>
              <Table.Th scope="col" className={sectionStyles.number}>{tell('against.needs')}</Table.Th>
              <Table.Th scope="col" className={sectionStyles.number}>{tell('against.cost')}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {row(tell('against.this'), totalMinor, met)}
            {perCar.cars.length > 0 && row(tell('against.per-car'), perCar.totalMinor, perCar.met)}
            {terms.onlySupplier === null && perSupplier.map((one) => row(tell('against.supplier', { supplier: one.supplierName }), one.totalMinor, one.met))}
          </Table.Tbody>
        </Table>
      </div>
      {perCar.cars.length > 1 && <p className={sectionStyles.small}>{perCar.cars.map((one) => tell('against.car', { car: carName(one.car), amount: words.money(one.totalMinor) })).join(' · ')}</p>}
    </Section>
  );
}
