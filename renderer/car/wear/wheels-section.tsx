import { Button } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { WheelView } from '../../../shared-core/views/wheel-view.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { tyreWords } from './age-words.ts';
import type { OpenWear } from './wear-sheet.ts';
import { WheelPlan } from './wheel-plan.tsx';
import { inPlace } from './wheels-in-place.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './wear.module.css';

interface WheelsSectionProps {
  readonly view: CarView;
  readonly open: OpenWear;
}

/** Where each wheel is, how old its tyre is, and where it was before. */
export function WheelsSection({ view, open }: WheelsSectionProps) {
  const wheels = inPlace(view.wheels, useWords().byName);
  const more = wheels.length > 0 && <Button size="compact-md" variant="default" onClick={() => open({ kind: 'move' })}>{tell('wheels.move')}</Button>;
  return (
    <Section title={tell('wheels.title')} more={more} add={{ label: tell('wheels.add'), onAdd: () => open({ kind: 'wheel', wheel: null }) }}>
      {wheels.length === 0 ? (
        <p className={sectionStyles.soft}>{tell('wheels.none')}</p>
      ) : (
        <>
          <WheelPlan wheels={wheels} measured={view.measured} />
          <ul className={sectionStyles.list}>{wheels.map((one) => <WheelRow key={one.wheel.id} one={one} open={open} />)}</ul>
        </>
      )}
    </Section>
  );
}

function WheelRow({ one, open }: { readonly one: WheelView; readonly open: OpenWear }) {
  const words = useWords();
  const { wheel, place, since, moves } = one;
  const where = tell(`measured-place.${place}`);
  return (
    <li className={styles.wheel}>
      <div className={styles.words}>
        <h3>{wheel.name}</h3>
        <p>{since === null ? where : tell('wheels.since', { place: where, date: words.date(since) })}</p>
        <p className={sectionStyles.small}>{[wheel.size, tyreWords(one)].filter((part) => part !== null).join(' · ')}</p>
        {wheel.note !== '' && <p className={sectionStyles.small}>{wheel.note}</p>}
        {moves.length > 1 && (
          <details>
            <summary>{tell('wheels.moves', { n: moves.length })}<span className="only-said">{tell('wheels.moves-of', { name: wheel.name })}</span></summary>
            <ol className={styles.moves}>
              {[...moves].reverse().map((move) => <li key={move.date}>{tell('wheels.moved-on', { date: words.date(move.date), place: tell(`measured-place.${move.place}`) })}</li>)}
            </ol>
          </details>
        )}
      </div>
      <Button size="compact-sm" variant="subtle" aria-label={tell('wheels.change-of', { name: wheel.name })} onClick={() => open({ kind: 'wheel', wheel: wheel.id })}>{tell('wheels.change')}</Button>
    </li>
  );
}
