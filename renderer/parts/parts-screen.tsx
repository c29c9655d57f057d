import { useState } from 'react';
import type { PartsView } from '../../shared-core/views/parts-view-schema.ts';
import { Asked } from '../ui/asked.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import { NeededLeaf } from './needed/needed-leaf.tsx';
import { OffersLeaf } from './offers/offers-leaf.tsx';
import { OrderLeaf } from './order/order-leaf.tsx';
import type { PartsPlace } from './parts-leaf.ts';
import { PartsStrip } from './parts-strip.tsx';
import type { OpenPartsSheet, PartsSheet } from './parts-sheet.ts';
import { PartsSheets } from './parts-sheets.tsx';
import { PlacedLeaf } from './placed/placed-leaf.tsx';
import { PricesLeaf } from './prices/prices-leaf.tsx';
import { ShelfLeaf } from './shelf/shelf-leaf.tsx';
import { ToolsLeaf } from './tools/tools-leaf.tsx';
import styles from './parts.module.css';

/** What is needed, ordered, on the shelf and on offer for all cars, and the tools; one leaf of it at a time. */
export function PartsScreen({ leaf }: { readonly leaf: PartsPlace }) {
  const answer = useAsk('parts.show', {});
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('parts.title')}</ScreenTitle>
      <PartsStrip chosen={leaf === 'prices' ? 'offers' : leaf} />
      <Asked answer={answer}>{(view) => <PartsBody view={view} leaf={leaf} />}</Asked>
    </div>
  );
}

function PartsBody({ view, leaf }: { readonly view: PartsView; readonly leaf: PartsPlace }) {
  const [sheet, setSheet] = useState<PartsSheet | null>(null);
  return (
    <>
      <ChosenLeaf view={view} leaf={leaf} open={setSheet} />
      <PartsSheets view={view} sheet={sheet} onClose={() => setSheet(null)} />
    </>
  );
}

function ChosenLeaf({ view, leaf, open }: { readonly view: PartsView; readonly leaf: PartsPlace; readonly open: OpenPartsSheet }) {
  switch (leaf) {
    case 'needed':
      return <NeededLeaf view={view} open={open} />;
    case 'order':
      return <OrderLeaf view={view} open={open} />;
    case 'placed':
      return <PlacedLeaf view={view} open={open} />;
    case 'shelf':
      return <ShelfLeaf view={view} open={open} />;
    case 'tools':
      return <ToolsLeaf view={view} open={open} />;
    case 'offers':
      return <OffersLeaf view={view} open={open} />;
    case 'prices':
      return <PricesLeaf view={view} />;
  }
}
