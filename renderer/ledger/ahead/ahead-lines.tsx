import { Table } from '@mantine/core';
import { Fragment } from 'react';
import type { BudgetView } from '../../../shared-core/views/budget-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import { NumberHead } from '../costs/number-head.tsx';

/** What is planned, month by month, on its likely day: the lines add up to what each month says. */
export function AheadLines({ view }: { readonly view: BudgetView }) {
  const words = useWords();
  const months = view.months.map((month, at) => ({ month, lines: view.lines.filter((line) => line.month === at) })).filter(({ lines }) => lines.length > 0);
  const number = sectionStyles.number ?? '';
  return (
    <Section title={tell('ahead.lines')} hint={tell('ahead.lines-what')}>
      {months.length === 0 ? <p className={sectionStyles.soft}>{tell('ahead.no-lines')}</p> : (
        <div className={sectionStyles.tableFrame} tabIndex={0} role="group" aria-label={tell('ahead.lines')}>
          <Table aria-label={tell('ahead.lines')}>
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('ledger.day')}</Table.Th>
                <Table.Th scope="col">{tell('ledger.car')}</Table.Th>
                <Table.Th scope="col">{tell('ledger.what')}</Table.Th>
                <NumberHead>{tell('ledger.amount')}</NumberHead>
                <Table.Th scope="col">{tell('ahead.why')}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {months.map(({ month, lines }) => (
                <Fragment key={month.from}>
                  <Table.Tr>
                    <Table.Th scope="rowgroup" colSpan={3}>{words.month(month.from)}</Table.Th>
                    <Table.Th className={number}>{words.money(month.plannedMinor)}</Table.Th>
                    <Table.Td />
                  </Table.Tr>
                  {lines.map((line, at) => (
                    <Table.Tr key={`${line.key} ${at}`}>
                      <Table.Td className={sectionStyles.date ?? ''}>{words.date(line.on)}</Table.Td>
                      <Table.Td>{line.carName ?? ''}</Table.Td>
                      <Table.Td>{line.name}</Table.Td>
                      <Table.Td className={number}>{words.money(line.amountMinor)}</Table.Td>
                      <Table.Td className={sectionStyles.small ?? ''}>{inOwnMoney(line.why.text, words)}</Table.Td>
                    </Table.Tr>
                  ))}
                </Fragment>
              ))}
            </Table.Tbody>
          </Table>
        </div>
      )}
    </Section>
  );
}
