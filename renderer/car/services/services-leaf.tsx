import type { CarView } from '../../../shared-core/views/car-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import type { OpenSheet } from '../car-sheet.ts';
import { ServicesBody } from './services-body.tsx';

interface ServicesLeafProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** The car's services line by line: who did which and when, and what nobody has done. */
export function ServicesLeaf({ view, open }: ServicesLeafProps) {
  const answer = useAsk('coverage.show', { car: view.car.id });
  return <Asked answer={answer}>{(all) => <ServicesBody view={view} all={all} open={open} />}</Asked>;
}
