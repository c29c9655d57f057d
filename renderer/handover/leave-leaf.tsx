import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import { change } from '../ui/change.ts';
import { Asked } from '../ui/asked.tsx';
import { sayFault } from '../ui/form/say-fault.ts';
import { useWords } from '../ui/household.tsx';
import { note } from '../ui/notices/notice-store.ts';
import { Section } from '../ui/section.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './handover.module.css';
import { LeaveForm } from './leave-form.tsx';
import { LeavingList } from './leaving-list.tsx';

/** A car leaves: what is to be seen to, and the cars that left before, each with its way back. */
export function LeaveLeaf({ car }: { readonly car: string | null }) {
  const yard = useAsk('yard.show', {});
  const left = useAsk('car.left', {});
  const [chosen, setChosen] = useState(car ?? '');
  return (
    <>
      <Asked answer={yard}>
        {({ lanes }) => {
          // None is chosen by itself: what is pressed twice must not send off a second car.
          const leaving = lanes.find((one) => one.id === chosen);
          if (lanes.length === 0) return <p>{tell('handover.no-car-here')}</p>;
          return (
            <>
              <NativeSelect className={styles.wide} label={tell('handover.which-leaves')} value={leaving?.id ?? ''} onChange={(event) => setChosen(event.currentTarget.value)} data={[{ value: '', label: tell('handover.choose-car') }, ...lanes.map(({ id, name }) => ({ value: id, label: name }))]} />
              {leaving !== undefined && <Leaving key={leaving.id} car={leaving.id} />}
            </>
          );
        }}
      </Asked>
      <Asked answer={left}>{({ cars }) => <CarsThatLeft cars={cars} />}</Asked>
    </>
  );
}

function Leaving({ car }: { readonly car: string }) {
  const [answer, shown] = [useAsk('car.leaving', { car }), useAsk('car.show', { car })];
  return (
    <div className={styles.sides}>
      <Asked answer={shown}>{(view) => <Section title={tell('handover.leave-title', { car: view.car.name })} hint={tell('handover.leave-what')}><div className={styles.full}><LeaveForm view={view} /></div></Section>}</Asked>
      <Asked answer={answer}>{(view) => <Section title={tell('handover.see-to')}><LeavingList view={view} /></Section>}</Asked>
    </div>
  );
}

function CarsThatLeft({ cars }: { readonly cars: ReplyOf<'car.left'>['cars'] }) {
  const words = useWords();
  const back = async (id: string, name: string) => {
    const result = await change('car.keep', { car: id });
    note(result.ok ? tell('handover.is-back', { car: name }) : sayFault(result.refusal), result.ok ? result.value.undo : []);
  };
  return (
    <Section title={tell('handover.left-title')}>
      {cars.length === 0 && <p>{tell('handover.left-none')}</p>}
      <ul className={styles.left}>
        {cars.map(({ car, departure: { how, on, priceMinor, buyer } }) => (
          <li key={car.id}>
            <p>
              <Link href={`/car/${car.id}`}>{car.name}</Link>: {tell(`handover.left-${how}`, { date: words.date(on) })}
              {buyer === null ? '' : ` ${tell('handover.left-to', { buyer })}`}{priceMinor === null ? '' : ` ${tell('handover.left-for', { price: words.money(priceMinor) })}`}
            </p>
            <div className={styles.buttons}>
              <Link href={`/handover/write/${car.id}`} aria-label={tell('handover.its-pack-of', { car: car.name })}>{tell('handover.its-pack')}</Link>
              <Button size="compact-md" variant="default" aria-label={tell('handover.take-back-of', { car: car.name })} onClick={() => void back(car.id, car.name)}>{tell('handover.take-back')}</Button>
            </div>
            <StillOpen car={car.id} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** What is still to be cancelled or returned after a car has left. */
function StillOpen({ car }: { readonly car: string }) {
  const answer = useAsk('car.leaving', { car });
  return answer.state === 'answered' ? <LeavingList view={answer.value} /> : null;
}
