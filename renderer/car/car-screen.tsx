import { Redirect } from 'wouter';
import { Asked } from '../ui/asked.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import { CarBody } from './car-body.tsx';
import { CarChoice } from './car-choice.tsx';
import type { Leaf } from './leaf.ts';
import { LeftNote } from './left-note.tsx';
import { NoCar } from './no-car.tsx';
import styles from './car.module.css';

interface CarScreenProps {
  /** The car's id, or null: the first one. */
  readonly car: string | null;
  readonly leaf: Leaf;
  /** A place on the screen to go to: 'item-oil', 'obligation-test'; null for its beginning. */
  readonly place: string | null;
}

/** Everything about one car; the others are one press away. */
export function CarScreen({ car, leaf, place }: CarScreenProps) {
  const yard = useAsk('yard.show', {});
  return (
    <div className={styles.screen}>
      <Asked answer={yard}>
        {({ lanes }) => {
          const first = lanes[0];
          // A car that left has its page too, though none is here.
          if (car === null) return first === undefined ? <NoCar /> : <Redirect to={`/car/${first.id}`} replace />;
          return (
            <>
              <CarChoice cars={lanes} chosen={car} />
              <OneCar key={car} car={car} leaf={leaf} place={place} />
            </>
          );
        }}
      </Asked>
    </div>
  );
}

const ASKING = { state: 'asking' } as const;

function OneCar({ car, leaf, place }: { readonly car: string; readonly leaf: Leaf; readonly place: string | null }) {
  const shown = useAsk('car.show', { car });
  // What stands above the leaf is asked for apart; it comes with the rest, so that nothing is pushed down.
  const above = [useAsk('intake.show', { car }), useAsk('car.left', {})];
  const answer = above.some((one) => one.state === 'asking') && shown.state === 'answered' ? ASKING : shown;
  return (
    <>
      {answer.state !== 'answered' && <ScreenTitle>{tell('car.title')}</ScreenTitle>}
      <Asked answer={answer}>{(view) => <><LeftNote car={view.car.id} /><CarBody view={view} leaf={leaf} place={place} /></>}</Asked>
    </>
  );
}
