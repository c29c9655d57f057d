import { Table } from '@mantine/core';
import type { OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from '../parts.module.css';

/** What the whole order costs, and what of it falls on each car: together it is the sum, to the last minor unit. Deposits stand beside it. */
export function OrderCost({ proposal }: { readonly proposal: OrderView }) {
  const words = useWords();
  const { goodsMinor, deliveryMinor, depositsMinor, shares } = proposal;
  const row = (name: string, minor: number, total = false) => (
    <Table.Tr key={name} className={total ? (styles.total ?? '') : ''}>
      <Table.Th scope="row">{name}</Table.Th>
      <Table.Td className={sectionStyles.number}>{words.money(minor)}</Table.Td>
    </Table.Tr>
  );
  return (
    <Section title={tell('cost.title')}>
      <Table aria-label={tell('cost.title')} verticalSpacing={4}>
        <Table.Tbody>
          {row(tell('sum.goods'), goodsMinor)}
          {row(tell('sum.delivery'), deliveryMinor)}
          {row(tell('sum.together'), goodsMinor + deliveryMinor, true)}
          {depositsMinor > 0 && row(tell('sum.deposits'), depositsMinor)}
        </Table.Tbody>
      </Table>
      {shares.length > 0 && (
        <>
          <h3>{tell('cost.shares')}</h3>
          <Table aria-label={tell('cost.shares')} verticalSpacing={4}>
            <Table.Tbody>{shares.map(({ carName, minor }) => row(carName ?? tell('order-cost.shelf'), minor))}</Table.Tbody>
          </Table>
        </>
      )}
    </Section>
  );
}
