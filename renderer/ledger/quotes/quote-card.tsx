import { Button, Table } from '@mantine/core';
import type { QuoteView } from '../../../shared-core/views/quotes-view.ts';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import { SmallButton } from '../../ui/small-button.tsx';
import { doChange } from '../../ui/do-change.ts';
import { NumberHead } from '../costs/number-head.tsx';
import styles from '../ledger.module.css';

type Cost = NonNullable<QuoteView['groups'][number]['cost']>;

interface QuoteCardProps {
  readonly view: QuoteView;
  readonly onChange: () => void;
  readonly onRecords: () => void;
}

/** A price with both of its sides: what was asked for what, and what the same cost, or should cost, at home. */
export function QuoteCard({ view, onChange, onRecords }: QuoteCardProps) {
  const words = useWords();
  const { quote, carName, groups, unquoted, records, expected } = view;
  const number = sectionStyles.number ?? '';
  const title = tell('held-quote.title', { car: carName, by: quote.by, date: words.date(quote.on) });
  const until = quote.validUntil === null ? '' : `${tell(view.over ? 'held-quote.was-valid' : 'held-quote.valid', { date: words.date(quote.validUntil) })} `;
  const held = records.filter((one) => one.held);
  const against = expected ? tell(records.length > 0 ? 'held-quote.expected-records' : 'held-quote.expected') : tell('held-quote.against', { records: held.map((one) => `${one.title}, ${words.date(one.date)}`).join('; ') });
  return (
    <Section title={title} place={['quote', quote.id]} hint={`${until}${against}`}>
      <p><strong>{inOwnMoney(view.said.text, words)}</strong></p>
      <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={title}>
        <Table aria-label={title}>
          <Table.Thead>
            <Table.Tr>
              <Table.Th scope="col">{tell('held-quote.for')}</Table.Th>
              <NumberHead>{tell('held-quote.asked')}</NumberHead>
              <Table.Th scope="col">{tell(expected ? 'held-quote.would-do' : 'held-quote.did')}</Table.Th>
              <NumberHead>{tell(expected ? 'held-quote.would-cost' : 'held-quote.cost')}</NumberHead>
              <Table.Th scope="col">{tell('held-quote.comes-to')}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {groups.map((one, at) => (
              <Table.Tr key={at}>
                <Table.Td>{one.quoted.join(', ') || tell('held-quote.nothing-said')}</Table.Td>
                <Table.Td className={number}>{one.quotedMinor === null ? tell('held-quote.not-known') : words.money(one.quotedMinor)}</Table.Td>
                <Table.Td>{one.done.join(', ') || tell('held-quote.nothing')}</Table.Td>
                <Table.Td className={number}>{one.done.length === 0 ? '' : <CostTold cost={one.cost} />}</Table.Td>
                <Table.Td>{inOwnMoney(one.said.text, words)}</Table.Td>
              </Table.Tr>
            ))}
            {unquoted.map((one, at) => (
              <Table.Tr key={`u${at}`}>
                <Table.Td className={sectionStyles.small ?? ''}>{tell('held-quote.unquoted')}</Table.Td>
                <Table.Td />
                <Table.Td>{one.things.join(', ')}</Table.Td>
                <Table.Td className={number}><CostTold cost={one.cost} /></Table.Td>
                <Table.Td className={sectionStyles.small ?? ''}>{tell('held-quote.unquoted-what')}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </div>
      {quote.note !== '' && <p className={sectionStyles.small}>{quote.note}</p>}
      <div className={styles.bar}>
        {records.length > 0 && <Button size="compact-md" variant="default" aria-label={`${tell('held-quote.records')}: ${title}`} onClick={onRecords}>{tell('held-quote.records')}</Button>}
        <SmallButton of={title} onPress={onChange}>{tell('parts.change')}</SmallButton>
        <SmallButton of={title} onPress={() => void doChange('quote.remove', { id: quote.id }, tell('held-quote.removed'), true)}>{tell('parts.remove')}</SmallButton>
      </div>
    </Section>
  );
}

/** A cost, and what it is made of where that is more than one thing. */
function CostTold({ cost }: { readonly cost: Cost | null }) {
  const words = useWords();
  if (cost === null) return <>{tell('held-quote.not-known')}</>;
  const made = ([['partsMinor', 'held-quote.of-parts'], ['consumablesMinor', 'held-quote.of-consumables'], ['toolsMinor', 'held-quote.of-tools'], ['otherMinor', 'held-quote.of-other'], ['timeMinor', 'held-quote.of-time']] as const).filter(([field]) => cost[field] !== 0);
  return (
    <>
      {words.money(cost.totalMinor)}
      {made.length > 1 && made.map(([field, key]) => <div key={field} className={sectionStyles.small}>{tell(key, { sum: words.money(cost[field]) })}</div>)}
    </>
  );
}
