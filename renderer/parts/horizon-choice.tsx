import { NativeSelect } from '@mantine/core';
import { tell } from '../ui/words/tell.ts';
import { setTerms, useOrdering } from './order/ordering.ts';

const DAYS = [14, 30, 60, 90, 180, 365];

/** How far ahead is looked; the same for what is needed and for the order. */
export function HorizonChoice() {
  const { terms } = useOrdering();
  return (
    <NativeSelect
      label={tell('parts.horizon')}
      value={String(terms.horizonDays)}
      onChange={(event) => setTerms({ horizonDays: Number(event.currentTarget.value) })}
      data={DAYS.map((days) => ({ value: String(days), label: tell('parts.horizon-days', { n: days }) }))}
    />
  );
}
