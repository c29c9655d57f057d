import { FieldGroup } from '../../ui/form/fields.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { NearItem } from './set-draft.ts';
import { SetLines, type PrintedDates } from './set-lines.tsx';

interface NearLinesProps {
  readonly near: readonly NearItem[];
  readonly unit: 'km' | 'mi';
  /** Keys of those that are taken all the same. */
  readonly besides: readonly string[];
  readonly onBesides: (besides: readonly string[]) => void;
  readonly printed: PrintedDates;
}

/** Asks about items that the car may have under another name: they are left out until they are ticked. */
export function NearLines({ near, unit, besides, onBesides, printed }: NearLinesProps) {
  if (near.length === 0) return null;
  const keys = near.map(({ item }) => item.key);
  const there = new Map(near.map((one) => [one.item.key, one.there]));
  return (
    <FieldGroup legend={tell('set.near', { n: near.length })} hint={tell('set.near-what', { n: near.length })}>
      <SetLines
        items={near.map(({ item }) => item)}
        unit={unit}
        omit={keys.filter((key) => !besides.includes(key))}
        onOmit={(omit) => onBesides(keys.filter((key) => !omit.includes(key)))}
        remark={({ key }) => tell('set.near-there', { name: there.get(key) ?? '' })}
        printed={printed}
      />
    </FieldGroup>
  );
}
