import type { CarView } from '../../shared-core/views/car-view.ts';
import type { OpenSheet } from './car-sheet.ts';
import { CardLeaf } from './card/card-leaf.tsx';
import { CareLeaf } from './care-leaf.tsx';
import { DistanceLeaf } from './distance/distance-leaf.tsx';
import { IntakeLeaf } from './intake/intake-leaf.tsx';
import type { Leaf } from './leaf.ts';
import { ServicesLeaf } from './services/services-leaf.tsx';
import { WearLeaf } from './wear/wear-leaf.tsx';

interface CarLeafProps {
  readonly leaf: Leaf;
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** The chosen leaf of a car's file. A leaf with entries of its own lays them over the screen itself. */
export function CarLeaf({ leaf, view, open }: CarLeafProps) {
  switch (leaf) {
    case 'care':
      return <CareLeaf view={view} open={open} />;
    case 'intake':
      return <IntakeLeaf view={view} open={open} />;
    case 'services':
      return <ServicesLeaf view={view} open={open} />;
    case 'card':
      return <CardLeaf view={view} />;
    case 'distance':
      return <DistanceLeaf view={view} open={open} />;
    case 'wear':
      return <WearLeaf view={view} />;
  }
}
