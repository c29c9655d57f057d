import { NativeSelect, Table } from '@mantine/core';
import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { Paged } from './paged.tsx';
import type { PartProps } from './questions-section.tsx';
import { takeFor, type WorkText } from './table-draft.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';
import rowStyles from './rows.module.css';

const PAGE = 12;
/** What most needs a look comes first. */
const ORDER: readonly WorkText['how'][] = ['several', 'spelling', 'none', 'choice', 'name'];

/** Each text of the work once, what it is taken for, and how that was found; nothing of it is settled unseen. */
export function WorkSection({ draft, view, onChoices }: PartProps) {
  const several = new Set(view.items.map(({ car }) => car)).size > 1;
  const rank = (one: WorkText) => ORDER.indexOf(one.how) * 2 + (one.how === 'none' && one.near.length === 0 ? 1 : 0);
  const texts = [...view.items].sort((a, b) => rank(a) - rank(b));
  const carOf = (one: WorkText) => view.cars.find(({ id }) => id === one.car);
  return (
    <Section id="import-work" title={tell('import.work')} hint={tell('import.work-what')}>
      <Paged items={texts} size={PAGE} label={tell('import.work')}>
        {(shown) => (
          <Table className={`${rowStyles.table} ${rowStyles.workTable}`}>
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('import.text')}</Table.Th>
                <Table.Th scope="col">{tell('import.taken-for')}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {shown.map((one) => (
                <TextRow key={`${one.car} ${one.text}`} one={one} car={carOf(one)} named={several} onTake={(item) => onChoices(takeFor(draft.choices, one.text, item, carOf(one)?.items.map(({ id }) => id) ?? []))} />
              ))}
            </Table.Tbody>
          </Table>
        )}
      </Paged>
    </Section>
  );
}

interface TextRowProps {
  readonly one: WorkText;
  readonly car: ImportView['cars'][number] | undefined;
  /** Whether the car is said beside. */
  readonly named: boolean;
  readonly onTake: (item: string | null) => void;
}

function TextRow({ one, car, named, onTake }: TextRowProps) {
  const { text, item, how, rows, near } = one;
  const name = car?.name ?? one.car;
  const option = ({ id, name: called }: { readonly id: string; readonly name: string }) => ({ value: id, label: called });
  const others = (car?.items ?? []).filter(({ id }) => !near.some((one) => one.id === id));
  const said = how === 'none' && near.length > 0 ? tell('import-how.near', { names: near.map((one) => one.name).join(', ') }) : tell(`import-how.${how}`);
  return (
    <Table.Tr>
      <Table.Th scope="row" className={rowStyles.headCell ?? ''}>
        <span>{text}</span>
        <span className={sectionStyles.small}>{named && `${name}, `}{tell('import.rows', { n: rows })}</span>
      </Table.Th>
      <Table.Td className={rowStyles.holdsCell ?? ''}>
        <NativeSelect
          aria-label={tell('import.text-of', { text, car: name })}
          value={how === 'several' ? '?' : (item ?? '')}
          data={[
            ...(how === 'several' ? [{ value: '?', label: tell('import.unanswered') }] : []),
            { value: '', label: tell('import.own-line') },
            ...(near.length === 0 ? [] : [{ group: tell('import.perhaps'), items: near.map(option) }]),
            ...(others.length === 0 ? [] : [{ group: tell('import.items-of', { car: name }), items: others.map(option) }]),
          ]}
          onChange={(event) => event.currentTarget.value !== '?' && onTake(event.currentTarget.value === '' ? null : event.currentTarget.value)}
        />
        <span className={how === 'spelling' ? styles.look : sectionStyles.small}>{said}</span>
      </Table.Td>
    </Table.Tr>
  );
}
