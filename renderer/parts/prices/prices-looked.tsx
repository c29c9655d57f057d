import { Button } from '@mantine/core';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import type { PriceView } from '../../../shared-core/views/prices/price-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { runLong } from '../../ui/run-long.ts';
import { focusHeading } from '../../ui/screen-title.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { HowRead } from './how-read.tsx';
import { PriceRows } from './price-rows.tsx';
import type { PriceSaid } from './price-said.ts';
import type { PriceTable } from './price-table.ts';
import styles from '../parts.module.css';

interface PricesLookedProps {
  readonly table: PriceTable;
  readonly view: PartsView;
  readonly onKept: () => void;
}

const OUTCOMES = ['new-offer', 'new-price', 'seen-again', 'known', 'no-part', 'refused'] as const;

/** How a list is read, what each row comes to, and the way to keep it; nothing is stored until then. */
export function PricesLooked({ table, view, onKept }: PricesLookedProps) {
  const [said, setSaid] = useState<PriceSaid>({});
  const [fault, setFault] = useState<string | null>(null);
  const request = { ...said, base64: table.base64, text: table.text, name: table.name };
  const query = useQuery({ queryKey: ['prices.preview', table.key, said], queryFn: () => runLong('prices.preview', request), placeholderData: keepPreviousData, gcTime: 0 });
  const result = query.data;
  if (result === undefined) return <p role="status">{tell('asking')}</p>;
  if (!result.ok) return <Section title={tell('prices.read')}><p role="alert" className={styles.fault}>{sayFault(result.refusal)}</p></Section>;
  const looked = result.value;
  const keep = async () => {
    const reply = await change('prices.keep', { ...request, digest: looked.digest, outcome: looked.outcome });
    setFault(reply.ok ? null : sayFault(reply.refusal));
    if (!reply.ok) return;
    note(tell('prices.kept', { n: reply.value.stored }), reply.value.undo);
    onKept();
    focusHeading();
  };
  return (
    <>
      <HowRead looked={looked} said={said} view={view} onSaid={setSaid} />
      {looked.questions.length === 0 && (
        <Section title={tell('prices.rows')}>
          <p className={styles.lead} role="status">{countWords(looked)}</p>
          {looked.ready ? <Button onClick={() => void keep()}>{tell('prices.keep', { n: stored(looked) })}</Button> : <p className={sectionStyles.soft}>{tell('prices.nothing-new')}</p>}
          <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault}</p>
          <PriceRows rows={looked.rows} />
        </Section>
      )}
    </>
  );
}

function stored({ counts }: PriceView): number {
  return counts['new-offer'] + counts['new-price'] + counts['seen-again'];
}

function countWords({ counts }: PriceView): string {
  return OUTCOMES.flatMap((outcome) => (counts[outcome] === 0 ? [] : [tell(`prices.count-${outcome}`, { n: counts[outcome] })])).join(' · ');
}
