import { Button, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { Choice } from '../household-choices.ts';
import { choices } from './choices.ts';
import { FieldGroup } from './fields.tsx';
import type { FieldPlace } from './use-entry.ts';
import { tell } from '../words/tell.ts';
import type { CostDraft, CostKind } from './cost-draft.ts';
import styles from './cost-lines.module.css';

interface CostLinesProps {
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly currency: string;
  readonly costs: readonly CostDraft[];
  readonly onChange: (costs: readonly CostDraft[]) => void;
  /** Before the paths of its fields, where costs stand within something: "cars.0.". */
  readonly at?: string;
  /** The items done, where an amount may be said to be for one of them alone. */
  readonly items?: readonly Choice[];
}

const KINDS = ['parts', 'labour', 'consumables', 'tools', 'fee', 'deposit', 'discount', 'other', 'shelf'] as const;

/** What it cost, amount by amount, as the receipt has it. */
export function CostLines({ place, group, currency, costs, onChange, at: before = '', items = [] }: CostLinesProps) {
  const replace = (at: number, change: Partial<CostDraft>) => onChange(costs.map((cost, index) => (index === at ? { ...cost, ...change } : cost)));
  return (
    <FieldGroup legend={tell('record-form.costs')} place={group}>
      {costs.map((cost, at) => (
        <div key={at} className={styles.cost}>
          <NativeSelect label={tell('record-form.cost-kind')} autoFocus value={cost.kind} onChange={(event) => replace(at, { kind: event.currentTarget.value as CostKind })} data={choices('cost.', KINDS)} />
          <TextInput {...place(`${before}costs.${at}.text`)} label={tell('record-form.cost-text')} value={cost.text} autoComplete="off" onChange={(event) => replace(at, { text: event.currentTarget.value })} />
          <TextInput {...place(`${before}costs.${at}.amountMinor`)} label={tell('record-form.cost-amount', { currency })} value={cost.amount} inputMode="decimal" autoComplete="off" onChange={(event) => replace(at, { amount: event.currentTarget.value })} />
          {items.length > 1 && <NativeSelect className={styles.for ?? ''} label={tell('record-form.cost-for')} value={items.some((one) => one.value === cost.item) ? cost.item : ''} onChange={(event) => replace(at, { item: event.currentTarget.value })} data={[{ value: '', label: tell('record-form.cost-for-all') }, ...items]} />}
          <CloseButton size="lg" className={styles.remove ?? ''} aria-label={tell('record-form.remove-cost', { n: at + 1 })} onClick={() => onChange(costs.filter((_, index) => index !== at))} />
        </div>
      ))}
      <Button className={styles.add ?? ''} variant="default" size="compact-md" onClick={() => onChange([...costs, { kind: 'parts', text: '', amount: '' }])}>{tell('record-form.add-cost')}</Button>
    </FieldGroup>
  );
}
