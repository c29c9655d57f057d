import { Button, Table } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { useWords } from '../ui/household.tsx';
import { tiesByName } from '../ui/name-order.ts';
import { Section } from '../ui/section.tsx';
import { SideSheet } from '../ui/side-sheet.tsx';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import { ConfirmRun } from './confirm/confirm-run.tsx';
import { ItemRow } from './item-row.tsx';
import { SetForm } from './start/set-form.tsx';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface ItemsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** An entry of this section's own, laid over the screen. */
type Sheet = { readonly kind: 'set' } | { readonly kind: 'confirm'; readonly items: readonly string[] };

/** What is cared for on this car, soonest first: when each is due, and why. */
export function ItemsSection({ view, open }: ItemsSectionProps) {
  const { byName } = useWords();
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const byId = new Map(view.items.map((one) => [one.item.id, one]));
  const windows = tiesByName(view.due.windows, { tie: whenOf, name: ({ name }) => name, order: byName });
  const rows = windows.flatMap((window) => {
    const one = byId.get(window.item);
    return one === undefined ? [] : [{ one, window }];
  });
  const unconfirmed = rows.filter(({ one }) => !one.item.confirmed).map(({ one }) => one.item.id);
  const more = (
    <>
      {unconfirmed.length > 0 && <Button size="compact-md" variant="default" onClick={() => setSheet({ kind: 'confirm', items: unconfirmed })}>{tell('confirm.all', { n: unconfirmed.length })}</Button>}
      <Button size="compact-md" variant={rows.length === 0 ? 'filled' : 'default'} onClick={() => setSheet({ kind: 'set' })}>{tell(rows.length === 0 ? 'set.open' : 'set.open-missing')}</Button>
    </>
  );
  return (
    <Section title={tell('items.title')} more={more} add={{ label: tell('items.add'), onAdd: () => open({ kind: 'item', item: null }) }}>
      {rows.length === 0 ? <p className={sectionStyles.soft}>{tell('items.none')}</p> : (
        <div className={sectionStyles.tableFrame}>
          <Table className={styles.items ?? ''} verticalSpacing="xs">
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('items.item')}</Table.Th>
                <Table.Th scope="col">{tell('items.due')}</Table.Th>
                <Table.Th scope="col">{tell('items.done')}</Table.Th>
                <Table.Th scope="col"><span className="only-said">{tell('items.actions')}</span></Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {rows.map(({ one, window }) => <ItemRow key={window.item} one={one} window={window} open={open} onConfirm={() => setSheet({ kind: 'confirm', items: [one.item.id] })} />)}
            </Table.Tbody>
          </Table>
        </div>
      )}
      <SideSheet title={sheet?.kind === 'set' ? tell('set.title', { car: view.car.name }) : tell('confirm.title', { car: view.car.name })} opened={sheet !== null} onClose={() => setSheet(null)}>
        {sheet?.kind === 'set' && <SetForm view={view} onClose={() => setSheet(null)} />}
        {sheet?.kind === 'confirm' && <ConfirmRun view={view} items={sheet.items} onClose={() => setSheet(null)} />}
      </SideSheet>
    </Section>
  );
}

/** What items stand in order by before their names: those of one state, late by as much and likely on one day, tie. */
function whenOf({ state, lateBy, likely, earliest }: CarView['due']['windows'][number]): string {
  return [state, lateBy?.days ?? 0, likely ?? earliest ?? ''].join(' ');
}
