import { useEffect, useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { CarHeading } from './car-heading.tsx';
import { CarLeaf } from './car-leaf.tsx';
import type { CarSheet } from './car-sheet.ts';
import { CarSheets } from './car-sheets.tsx';
import { LeafStrip } from './leaf-strip.tsx';
import type { Leaf } from './leaf.ts';

interface CarBodyProps {
  readonly view: CarView;
  readonly leaf: Leaf;
  readonly place: string | null;
}

/** One car: what it is, the leaves of its file, the chosen one, and the entry that lies over it. */
export function CarBody({ view, leaf, place }: CarBodyProps) {
  const [sheet, setSheet] = useState<CarSheet | null>(null);
  useEffect(() => {
    const element = place === null ? null : document.getElementById(place);
    element?.scrollIntoView({ block: 'center' });
    element?.focus({ preventScroll: true });
  }, [place]);
  return (
    <>
      <CarHeading view={view} open={setSheet} />
      <LeafStrip car={view.car.id} chosen={leaf} />
      <CarLeaf leaf={leaf} view={view} open={setSheet} />
      <CarSheets view={view} sheet={sheet} onClose={() => setSheet(null)} />
    </>
  );
}
