import { Table } from '@mantine/core';
import type { NeedView, OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { PartsTable } from '../parts-table.tsx';
import { ShownMore } from '../shown-more.tsx';
import { LeftOver } from './left-over.tsx';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

const FIRST = 30;

/** Every need with what meets it in this order: those that are not met first. What is then left over stands below. */
export function OrderNeeds({ proposal }: { readonly proposal: OrderView }) {
  const rank = (need: NeedView) => (need.state === 'met' ? (need.tooLateForSession ? 1 : 2) : 0);
  const needs = [...proposal.needs].sort((a, b) => rank(a) - rank(b) || (a.neededBy < b.neededBy ? -1 : a.neededBy > b.neededBy ? 1 : 0));
  return (
    <Section title={tell('order-needs.title')}>
      <ShownMore items={needs} first={FIRST}>
        {(shown) => (
          <PartsTable label={tell('order-needs.title')} columns={[{ name: tell('needed.task') }, { name: tell('needed.what') }, { name: tell('order-needs.met-by') }]} actions={false}>
            {shown.map((need) => <NeedRow key={need.need} need={need} today={proposal.today} />)}
          </PartsTable>
        )}
      </ShownMore>
      <LeftOver proposal={proposal} />
    </Section>
  );
}

function NeedRow({ need, today }: { readonly need: NeedView; readonly today: string }) {
  const words = useWords();
  const sources = need.sources.map((one) => tell(`source.${one.from}`, { amount: amountWords(one.quantity, need.unit), part: one.partName, date: words.nearDate(one.on, today) }));
  return (
    <Table.Tr>
      <Table.Td className={styles.words}>{tell('needed.task-of', { car: need.carName, item: need.itemName })}</Table.Td>
      <Table.Td className={styles.words}><strong>{amountWords(need.quantity, need.unit)}</strong> {need.specificationName}<div className={sectionStyles.small}>{tell('order-needs.by', { date: words.nearDate(need.neededBy, today) })}</div></Table.Td>
      <Table.Td className={styles.words}>
        {need.state === 'met' ? sources.join(' · ') : <span className={tones.late}>{tell(`order-needs.${need.state}`)}</span>}
        {need.tooLateForSession && need.state === 'met' && <div className={tones.late}>{tell('order-needs.too-late')}</div>}
      </Table.Td>
    </Table.Tr>
  );
}
