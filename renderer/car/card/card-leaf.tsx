import type { CarView } from '../../../shared-core/views/car-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { CardBody } from './card-body.tsx';

/** The car's own figures, each with where it stands. */
export function CardLeaf({ view }: { readonly view: CarView }) {
  const answer = useAsk('card.show', { car: view.car.id });
  return <Asked answer={answer}>{(card) => <CardBody card={card} papers={view.papers} />}</Asked>;
}
