import { Button } from '@mantine/core';
import { useState } from 'react';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { Asked } from '../../ui/asked.tsx';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';
import { HeldAgainstForm } from './held-against-form.tsx';
import { QuoteCard } from './quote-card.tsx';
import { QuoteForm } from './quote-form.tsx';

type Quotes = ReplyOf<'quotes.show'>;
type Sheet = { readonly kind: 'quote' | 'records'; readonly quote: string | null } | null;

/** Prices that were named for work, each against doing the same at home. */
export function QuotesLeaf() {
  const answer = useAsk('quotes.show', {});
  return <Asked answer={answer}>{(view) => <QuotesBody view={view} />}</Asked>;
}

function QuotesBody({ view }: { readonly view: Quotes }) {
  const [sheet, setSheet] = useState<Sheet>(null);
  const chosen = view.quotes.find((one) => one.quote.id === sheet?.quote) ?? null;
  const close = () => setSheet(null);
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{tell('held-quote.what')}</p>
      <div className={styles.bar}><Button variant="default" onClick={() => setSheet({ kind: 'quote', quote: null })}>{tell('held-quote.add')}</Button></div>
      {view.quotes.length === 0 && <p>{tell('held-quote.none')}</p>}
      {view.quotes.map((one) => <QuoteCard key={one.quote.id} view={one} onChange={() => setSheet({ kind: 'quote', quote: one.quote.id })} onRecords={() => setSheet({ kind: 'records', quote: one.quote.id })} />)}
      <SideSheet title={tell(sheet?.kind === 'records' ? 'held-quote.records' : chosen === null ? 'held-quote.add' : 'held-quote.change')} opened={sheet !== null} onClose={close}>
        {sheet?.kind === 'quote' && <QuoteForm key={sheet.quote ?? ''} view={view} now={chosen?.quote ?? null} onClose={close} />}
        {sheet?.kind === 'records' && chosen !== null && <HeldAgainstForm view={chosen} onClose={close} />}
      </SideSheet>
    </div>
  );
}
