import { Button } from '@mantine/core';
import { useEffect, useEffectEvent, useId } from 'react';
import { useLocation } from 'wouter';
import { must } from '../../../shared-core/result/assert.ts';
import { focusHeading } from '../../ui/screen-title.tsx';
import { showTour, useTour } from '../../ui/tour-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { TOUR_STEPS } from './tour-steps.ts';
import styles from './tour.module.css';

/** The look around: a card that says one thing at a time and rings it, in nobody's way. It ends by one press, by Escape, or by going elsewhere. */
export function Tour() {
  const step = useTour();
  const [location] = useLocation();
  useEffect(() => {
    if (location !== '/') showTour(null);
  }, [location]);
  return step === null || location !== '/' ? null : <TourCard at={step} />;
}

function TourCard({ at }: { readonly at: number }) {
  const id = useId();
  const step = must(TOUR_STEPS[at], 'step of the tour');
  const last = at === TOUR_STEPS.length - 1;
  const end = () => {
    showTour(null);
    focusHeading({ preventScroll: true });
  };
  useRing(step.at);
  useEscape(end);
  return (
    <section className={styles.card} aria-labelledby={id}>
      <div aria-live="polite" className={styles.said}>
        <h2 id={id}>{tell(step.title)}</h2>
        <p>{tell(step.text)}</p>
      </div>
      <div className={styles.buttons}>
        <Button autoFocus onClick={() => (last ? end() : showTour(at + 1))}>{tell(last ? 'tour.end' : 'tour.next')}</Button>
        {at > 0 && <Button variant="default" onClick={() => showTour(at - 1)}>{tell('tour.back')}</Button>}
        {!last && <Button variant="subtle" onClick={end}>{tell('tour.skip')}</Button>}
        <span className={styles.count}>{tell('tour.count', { at: at + 1, of: TOUR_STEPS.length })}</span>
      </div>
    </section>
  );
}

/** Escape leaves it from wherever the focus is, unless something else stands over the screen. */
function useEscape(end: () => void): void {
  const press = useEffectEvent(({ key, defaultPrevented }: KeyboardEvent) => key === 'Escape' && !defaultPrevented && document.querySelector('[role=dialog]') === null && end());
  useEffect(() => {
    const listen = (event: KeyboardEvent) => press(event);
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, []);
}

/** Rings what is spoken of as soon as it is there, and brings it into sight. */
function useRing(where: string): void {
  useEffect(() => {
    let ringed: HTMLElement | null = null;
    const ring = (): boolean => {
      ringed = document.querySelector<HTMLElement>(where);
      ringed?.setAttribute('data-toured', '');
      ringed?.scrollIntoView({ block: 'nearest' });
      return ringed !== null;
    };
    const coming = new MutationObserver(() => ring() && coming.disconnect());
    if (!ring()) coming.observe(document.body, { childList: true, subtree: true });
    return () => {
      coming.disconnect();
      ringed?.removeAttribute('data-toured');
    };
  }, [where]);
}
