import { NativeSelect } from '@mantine/core';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import type { PriceView } from '../../../shared-core/views/prices/price-view.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { PriceSaid } from './price-said.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

interface HowReadProps {
  readonly looked: PriceView;
  readonly said: PriceSaid;
  readonly view: PartsView;
  readonly onSaid: (said: PriceSaid) => void;
}

const COLUMNS = ['supplier', 'number', 'name', 'pack', 'price', 'date'] as const;

/** Which column holds what, whose prices they are and how dates are written, as it was found out; each can be chosen, and what is open is asked. */
export function HowRead({ looked, said, view, onSaid }: HowReadProps) {
  const { byName } = useWords();
  const heads = looked.heads.map(({ column, head, first }) => ({ value: String(column), label: tell('prices.column', { n: column, head: head ?? first.filter((cell) => cell !== '').join(', ') }) }));
  const order = looked.questions.find((one) => one.answer === 'dateOrder');
  return (
    <Section title={tell('prices.read')}>
      {looked.questions.map((one) => <p key={one.text} role="status" className={tones.soon}><strong>{one.text}</strong></p>)}
      <div className={styles.bar}>
        {COLUMNS.map((column) => (
          <NativeSelect
            key={column} label={tell(`prices.column-${column}`)} value={looked.columns[column]?.toString() ?? ''}
            onChange={(event) => onSaid({ ...said, columns: { ...said.columns, [column]: event.currentTarget.value === '' ? null : Number(event.currentTarget.value) } })}
            data={[{ value: '', label: tell('prices.no-column') }, ...heads]}
          />
        ))}
      </div>
      <div className={styles.bar}>
        <NativeSelect label={tell('prices.whose')} value={said.supplier ?? ''} onChange={(event) => onSaid({ ...said, supplier: event.currentTarget.value === '' ? null : event.currentTarget.value })} data={[{ value: '', label: tell('prices.whose-rows') }, ...[...view.suppliers].sort((a, b) => byName(a.name, b.name)).map((one) => ({ value: one.id, label: one.name }))]} />
        {(order !== undefined || said.dateOrder != null) && <NativeSelect label={tell('prices.dates')} value={said.dateOrder ?? ''} onChange={(event) => onSaid({ ...said, dateOrder: event.currentTarget.value === '' ? null : (event.currentTarget.value as 'dmy') })} data={[{ value: '', label: tell('prices.dates-open') }, ...(['dmy', 'mdy', 'ymd'] as const).map((value) => ({ value, label: tell(`prices.dates-${value}`) }))]} />}
        <NativeSelect label={tell('prices.header')} value={String(looked.hasHeader)} onChange={(event) => onSaid({ ...said, columns: {}, hasHeader: event.currentTarget.value === 'true' })} data={[{ value: 'true', label: tell('prices.header-yes') }, { value: 'false', label: tell('prices.header-no') }]} />
        <NativeSelect label={tell('prices.mark')} value={said.decimalMark ?? ''} onChange={(event) => onSaid({ ...said, decimalMark: event.currentTarget.value === '' ? null : (event.currentTarget.value as '.') })} data={[{ value: '', label: tell('prices.mark-found') }, { value: '.', label: tell('prices.mark-point') }, { value: ',', label: tell('prices.mark-comma') }]} />
      </div>
    </Section>
  );
}
