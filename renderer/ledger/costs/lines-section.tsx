import { Button, NativeSelect, Table } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { LedgerLine } from '../../../shared-core/views/ledger-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { useWords } from '../../ui/household.tsx';
import { saveText } from '../../ui/save-text.ts';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { useAsk } from '../../ui/use-ask.ts';
import { isWordKey, tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';
import { NumberHead } from './number-head.tsx';

interface LinesSectionProps {
  readonly car: string | null;
  readonly years: readonly number[];
}

/** How many lines are shown before one asks for more. */
const A_PAGE = 25;

/** The lines behind the sums, of a year or of all; the whole of them as a table to be saved. */
export function LinesSection({ car, years }: LinesSectionProps) {
  const [year, setYear] = useState('');
  const [shown, setShown] = useState(A_PAGE);
  const answer = useAsk('ledger.lines', { car, year: year === '' ? null : Number(year) }, { hold: true });
  const words = useWords();
  return (
    <Section title={tell('ledger.lines')}>
      <Asked answer={answer}>
        {({ lines, totalMinor, csv }) => (
          <>
            <div className={styles.bar}>
              <NativeSelect label={tell('ledger.lines-year')} value={year} onChange={(event) => { setYear(event.currentTarget.value); setShown(A_PAGE); }} data={[{ value: '', label: tell('ledger.all-years') }, ...years.map((one) => ({ value: String(one), label: String(one) }))]} />
              {lines.length > 0 && <Button variant="default" onClick={() => saveText(`ledger${year === '' ? '' : `-${year}`}.csv`, csv, 'text/csv')}>{tell('ledger.save-csv')}</Button>}
              <p>{tell('ledger.lines-sum', { n: lines.length, sum: words.money(totalMinor) })}</p>
            </div>
            {lines.length > 0 && <LinesTable lines={lines.slice(0, shown)} withCar={car === null} />}
            {lines.length > shown && <Button variant="default" size="compact-md" onClick={() => setShown(shown + 100)}>{tell('ledger.more-lines', { n: lines.length - shown })}</Button>}
          </>
        )}
      </Asked>
    </Section>
  );
}

function LinesTable({ lines, withCar }: { readonly lines: readonly LedgerLine[]; readonly withCar: boolean }) {
  const words = useWords();
  return (
    <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={tell('ledger.lines')}>
      <Table aria-label={tell('ledger.lines')}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">{tell('ledger.day')}</Table.Th>
            {withCar && <Table.Th scope="col">{tell('ledger.car')}</Table.Th>}
            <Table.Th scope="col">{tell('ledger.what')}</Table.Th>
            <Table.Th scope="col">{tell('ledger.kind')}</Table.Th>
            <NumberHead>{tell('ledger.amount')}</NumberHead>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {lines.map((one, at) => (
            <Table.Tr key={at}>
              <Table.Td className={sectionStyles.date ?? ''}>{words.date(one.on)}</Table.Td>
              {withCar && <Table.Td>{one.carName ?? one.wishName ?? ''}</Table.Td>}
              <Table.Td>{one.source.kind === 'record' && one.car !== null ? <Link href={`/car/${one.car}/record/${one.source.id}`}>{one.text}</Link> : one.text}</Table.Td>
              <Table.Td>{kindWords(one.kind)}</Table.Td>
              <Table.Td className={sectionStyles.number ?? ''}>{words.money(one.minor)}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </div>
  );
}

function kindWords(kind: string): string {
  const key = `ledger-kind.${kind}`;
  return isWordKey(key) ? tell(key) : kind;
}
