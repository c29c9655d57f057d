import { Table } from '@mantine/core';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { useWords } from '../ui/household.tsx';
import { Section } from '../ui/section.tsx';
import { isWordKey, tell } from '../ui/words/tell.ts';
import sectionStyles from '../ui/section.module.css';

/** What the car cost in each year. */
export function CostsSection({ view }: { readonly view: CarView }) {
  const words = useWords();
  return (
    <Section title={tell('costs.title')}>
      {view.costs.length === 0 ? (
        <p className={sectionStyles.soft}>{tell('costs.none')}</p>
      ) : (
        <div className={sectionStyles.tableFrame}>
          <Table>
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('costs.year')}</Table.Th>
                <Table.Th scope="col" className={sectionStyles.number ?? ''}>{tell('costs.total')}</Table.Th>
                <Table.Th scope="col">{tell('costs.of')}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {view.costs.map(({ year, totalMinor, byKind }) => (
                <Table.Tr key={year}>
                  <Table.Th scope="row">{year}</Table.Th>
                  <Table.Td className={sectionStyles.number ?? ''}>{words.money(totalMinor)}</Table.Td>
                  <Table.Td className={sectionStyles.small ?? ''}>{Object.entries(byKind).filter(([, minor]) => minor !== 0).sort(([, a], [, b]) => b - a).map(([kind, minor]) => `${kindWords(kind)} ${words.money(minor)}`).join(', ')}</Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </div>
      )}
    </Section>
  );
}

function kindWords(kind: string): string {
  const key = `ledger-kind.${kind}`;
  return isWordKey(key) ? tell(key) : kind;
}
