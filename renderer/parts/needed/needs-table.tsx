import { Table } from '@mantine/core';
import { Link } from 'wouter';
import type { NeedsView, StandingNeed } from '../../../shared-core/views/needs-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { PartsTable } from '../parts-table.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import { NeedStands } from './need-stands.tsx';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

interface NeedsTableProps {
  readonly needs: readonly StandingNeed[];
  readonly all: NeedsView;
  readonly open: OpenPartsSheet;
}

const FIRST = 60;

/** The needs by their day: what is needed for what, and whether it is on the shelf, on the way or still to be bought. */
export function NeedsTable({ needs, all, open }: NeedsTableProps) {
  const columns = [{ name: tell('needed.by') }, { name: tell('needed.task') }, { name: tell('needed.what') }, { name: tell('needed.stands') }];
  const missing = needs.some((one) => one.state === 'missing');
  return (
    <Section title={tell('needed.title')} more={missing ? <Link href="/parts/order">{tell('needed.to-order')}</Link> : undefined}>
      {needs.length === 0 ? (
        <p className={sectionStyles.soft}>{tell(all.tasks.some((one) => one.needs.length > 0) ? 'needed.none-now' : 'needed.none-entered')}</p>
      ) : (
        <ShownMore items={needs} first={FIRST}>
          {(shown) => <PartsTable label={tell('needed.title')} columns={columns}>{shown.map((need) => <NeedRow key={need.need} need={need} today={all.today} open={open} />)}</PartsTable>}
        </ShownMore>
      )}
    </Section>
  );
}

function NeedRow({ need, today, open }: { readonly need: StandingNeed; readonly today: string; readonly open: OpenPartsSheet }) {
  const words = useWords();
  const { gap } = need;
  return (
    <Table.Tr>
      <Table.Td>
        <span className={sectionStyles.date}>{words.nearDate(need.neededBy, today)}</span>
        {need.session !== null && <div className={sectionStyles.small}>{tell('needed.session', { date: words.nearDate(need.session.day, today) })}</div>}
        {need.session === null && need.late && <div className={tones.late}>{tell('needed.late')}</div>}
      </Table.Td>
      <Table.Td className={styles.words}><Link href={`/car/${need.car}/item/${need.item}`}>{tell('needed.task-of', { car: need.carName, item: need.itemName })}</Link></Table.Td>
      <Table.Td className={styles.words}><strong>{amountWords(need.quantity, need.unit)}</strong> {need.specificationName}</Table.Td>
      <Table.Td className={styles.words}><NeedStands need={need} today={today} /></Table.Td>
      <Table.Td>
        <div className={styles.rowActions}>
          {gap?.code === 'no-part' && <SmallButton of={need.specificationName} onPress={() => open({ kind: 'part', part: null, meets: need.specification })}>{tell('needed.enter-part')}</SmallButton>}
          {gap?.code === 'no-offer' && <SmallButton of={need.specificationName} onPress={() => open({ kind: 'offer', offer: null, part: need.metBy[0]?.part ?? null })}>{tell('needed.enter-offer')}</SmallButton>}
        </div>
      </Table.Td>
    </Table.Tr>
  );
}
