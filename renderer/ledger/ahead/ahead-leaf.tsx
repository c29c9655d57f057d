import { Checkbox, NativeSelect, Table } from '@mantine/core';
import { useState } from 'react';
import type { BudgetView } from '../../../shared-core/views/budget-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { useCars } from '../../ui/use-cars.ts';
import { NumberHead } from '../costs/number-head.tsx';
import styles from '../ledger.module.css';
import { AheadLines } from './ahead-lines.tsx';
import { BandChart } from './band-chart.tsx';

const MONTHS = ['12', '24', '36'] as const;

/** What the cars are likely to cost in the months ahead, with how far it may lie off. */
export function AheadLeaf() {
  const cars = useCars();
  const [car, setCar] = useState('');
  const [months, setMonths] = useState<string>('24');
  const [wishes, setWishes] = useState(false);
  const answer = useAsk('budget.show', { months: Number(months), car: car === '' ? null : car, wishes }, { hold: true });
  return (
    <div className={styles.leaf}>
      <div className={styles.bar}>
        <NativeSelect label={tell('ledger.of')} value={car} onChange={(event) => setCar(event.currentTarget.value)} data={[{ value: '', label: tell('ledger.all-cars') }, ...cars]} />
        <NativeSelect label={tell('ahead.months')} value={months} onChange={(event) => setMonths(event.currentTarget.value)} data={MONTHS.map((n) => ({ value: n, label: tell('ahead.n-months', { n: Number(n) }) }))} />
        <Checkbox className={styles.tick ?? ''} label={tell('ahead.with-wishes')} checked={wishes} onChange={(event) => setWishes(event.currentTarget.checked)} />
      </div>
      <Asked answer={answer}>{(view) => <Ahead view={view} />}</Asked>
    </div>
  );
}

function Ahead({ view }: { readonly view: BudgetView }) {
  const words = useWords();
  const periods = view.quarters.map((one) => ({ name: tell('ahead.from-to', { from: words.nearDate(one.from, one.to), to: words.date(one.to) }), ...one }));
  return (
    <>
      <p className={styles.lead}>{inOwnMoney(view.summary.text, words)}{view.wishes !== null && ` ${wishWords(view.wishes, words)}`}</p>
      <Section title={tell('ahead.quarters')} hint={tell('ahead.quarters-what')}>
        <BandChart bands={view.quarters.map((one, at) => ({ ...one, name: periods.length > 9 && at % 2 === 1 ? '' : words.month(one.from) }))} label={tell('ahead.chart')} />
        <BandTable label={tell('ahead.quarters')} first={tell('ahead.period')} rows={[...periods.map((one) => ({ ...one, key: one.from })), { key: 'all', name: tell('ahead.all'), ...view.total }]} />
      </Section>
      <div className={styles.sides}>
        {view.car === null && view.cars.length > 1 && (
          <Section title={tell('ahead.by-car')}><BandTable label={tell('ahead.by-car')} first={tell('ledger.car')} rows={view.cars.map((one) => ({ ...one, key: one.car ?? '', name: one.name ?? tell('ahead.no-car') }))} /></Section>
        )}
        <Section title={tell('ahead.by-kind')}><BandTable label={tell('ahead.by-kind')} first={tell('ledger.kind')} rows={view.kinds.map((one) => ({ ...one, key: one.kind, name: tell(`ahead-kind.${one.kind}`) }))} /></Section>
      </div>
      <AheadLines view={view} />
      {view.drivers.length > 0 && (
        <Section title={tell('ahead.drivers')} hint={tell('ahead.drivers-what')}>
          <ul className={styles.notes}>{view.drivers.map((one) => <li key={one.key}>{tell('ahead.driver', { name: one.carName === null ? one.name : `${one.carName}, ${one.name}`, sum: words.money(one.expectedMinor), share: Math.round(one.share * 100) })}</li>)}</ul>
        </Section>
      )}
      {view.missing.length > 0 && (
        <Section title={tell('ahead.missing')} hint={tell('ahead.missing-what', { n: view.missing.length })}>
          <ul className={styles.notes}>{view.missing.map((one) => <li key={`${one.key} ${one.why}`}>{tell('ahead.missing-one', { car: one.carName, name: one.name, why: one.said.text })}</li>)}</ul>
        </Section>
      )}
      {view.notes.length > 0 && <Section title={tell('ahead.notes')}><ul className={styles.notes}>{view.notes.map((note) => <li key={note.text}>{inOwnMoney(note.text, words)}</li>)}</ul></Section>}
    </>
  );
}

function wishWords({ without, added }: NonNullable<BudgetView['wishes']>, words: ReturnType<typeof useWords>): string {
  if (added.length === 0) return tell('ahead.no-wishes');
  return tell('ahead.without', { low: words.money(without.lowMinor), likely: words.money(without.likelyMinor), high: words.money(without.highMinor), wishes: added.map((one) => one.name).join(', ') });
}

interface BandRow {
  readonly key: string;
  readonly name: string;
  readonly lowMinor: number;
  readonly likelyMinor: number;
  readonly highMinor: number;
  readonly expectedMinor: number;
}

/** Bands as numbers. */
function BandTable({ label, first, rows }: { readonly label: string; readonly first: string; readonly rows: readonly BandRow[] }) {
  const words = useWords();
  const number = sectionStyles.number ?? '';
  return (
    <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={label}>
      <Table aria-label={label}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">{first}</Table.Th>
            <NumberHead>{tell('ahead.low')}</NumberHead>
            <NumberHead>{tell('ahead.likely')}</NumberHead>
            <NumberHead>{tell('ahead.high')}</NumberHead>
            <NumberHead>{tell('ahead.expected')}</NumberHead>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {rows.map((one) => (
            <Table.Tr key={one.key}>
              <Table.Th scope="row">{one.name}</Table.Th>
              <Table.Td className={number}>{words.money(one.lowMinor)}</Table.Td>
              <Table.Td className={number}><strong>{words.money(one.likelyMinor)}</strong></Table.Td>
              <Table.Td className={number}>{words.money(one.highMinor)}</Table.Td>
              <Table.Td className={number}>{words.money(one.expectedMinor)}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </div>
  );
}
