import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { Result } from '../../../shared-core/result/result.ts';
import type { Doing, DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { tell } from '../../ui/words/tell.ts';
import { AllTicked } from './all-ticked.tsx';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';
import { FoundPanel } from './found-panel.tsx';
import { LeftOutPanel } from './left-out-panel.tsx';
import { openStepAfter, stepBeside } from './next-step.ts';
import { PhotoButton } from './photo-button.tsx';
import { readOn, toItsTop } from './read-on.ts';
import { StepCard } from './step-card.tsx';
import { StepList } from './step-list.tsx';
import { TimeBar } from './time-bar.tsx';
import { useWorkKeys } from './use-work-keys.ts';

type Panel = 'found' | 'left-out' | null;

/** One step at a time. Where one was is found again by what is ticked, so that nothing hangs on the page. */
export function StepByStep({ doing }: { readonly doing: Doing }) {
  const [, go] = useLocation();
  const [at, setAt] = useState<string | null>(() => openStepAfter(doing, null)?.key ?? null);
  const [panel, setPanel] = useState<Panel>(null);
  const [fault, setFault] = useState<string | null>(null);
  const card = useRef<HTMLElement>(null);
  const words = useRef<HTMLDivElement>(null);
  const sending = useRef(false);
  // Ticked or left out here, though what stands may not have been asked for anew yet.
  const done = useRef(new Set<string>());
  const step = doing.steps.find((one) => one.key === at) ?? null;
  const session = doing.session.id;

  useEffect(() => {
    card.current?.focus({ preventScroll: true });
    toItsTop(card.current);
  }, [at]);

  const show = (next: DoingStep | null) => {
    setAt(next?.key ?? null);
    setPanel(null);
    setFault(null);
    // The time goes with the task in hand.
    if (next !== null && doing.running !== null && doing.running.task !== next.timeOf) void change('work.time', { session, task: next.timeOf, run: true });
  };
  const send = async (ask: () => Promise<Result<unknown>>, then: () => void) => {
    if (sending.current) return;
    sending.current = true;
    const reply = await ask();
    sending.current = false;
    setFault(reply.ok ? null : tell('doing.not-written', { why: sayFault(reply.refusal) }));
    if (reply.ok) then();
  };
  const goOn = (key: string) => {
    // What the host's answer tells by now needs no remembering: undone later, it is open again.
    for (const one of doing.steps) if (one.tick !== null) done.current.delete(one.key);
    done.current.add(key);
    show(openStepAfter(doing, key, done.current));
  };
  const tick = () => step !== null && void send(() => change('work.tick', { session, of: step.of }), () => goOn(step.key));
  const untick = () => step !== null && void send(() => change('work.untick', { session, of: step.of }), () => {
    done.current.delete(step.key);
    card.current?.focus();
  });
  const beside = (by: 1 | -1) => {
    if (step === null) return by === -1 ? show(doing.steps.at(-1) ?? null) : undefined;
    const next = stepBeside(doing, step.key, by);
    // Past the last one: to what is still open, else to the record.
    if (next !== null || by === -1) return next === null ? undefined : show(next);
    if (step.tick !== null || openStepAfter(doing, step.key, done.current) !== null) show(openStepAfter(doing, step.key, done.current));
  };
  const tickOrGoOn = () => {
    if (!readOn(words.current)) (step?.tick === null ? tick : () => beside(1))();
  };
  useWorkKeys({ onTick: tickOrGoOn, onBack: () => beside(-1), onNext: () => beside(1), held: panel !== null });

  return (
    <div className={styles.work}>
      <TimeBar doing={doing} task={step?.timeOf ?? null} />
      {fault !== null && <p role="alert" className={styles.fault}>{fault}</p>}
      {step === null ? (
        <AllTicked doing={doing} cardRef={card} onClose={() => go(`/sessions/${session}/close`)} />
      ) : (
        <StepCard key={step.key} doing={doing} step={step} cardRef={card} wordsRef={words}>
          {panel === null && (
            <div className={styles.buttons}>
              {step.tick === null ? <BigButton look="main" onPress={tick}>{tell('doing.tick')}</BigButton> : <BigButton look="main" onPress={() => beside(1)}>{tell('doing.next')}</BigButton>}
              {step.tick !== null && <BigButton onPress={untick}>{tell('doing.untick')}</BigButton>}
              <BigButton onPress={() => beside(-1)}>{tell('doing.back')}</BigButton>
              {step.tick === null && <BigButton onPress={() => beside(1)}>{tell('doing.skip')}</BigButton>}
              {step.tick === null && <BigButton onPress={() => setPanel('left-out')}>{tell('doing.leave-out')}</BigButton>}
              <BigButton onPress={() => setPanel('found')}>{tell('doing.found')}</BigButton>
              <PhotoButton doing={doing} step={step} />
            </div>
          )}
          {panel === 'found' && <FoundPanel session={session} step={step} onEnd={() => { setPanel(null); card.current?.focus(); }} />}
          {panel === 'left-out' && <LeftOutPanel session={session} step={step} onDone={() => goOn(step.key)} onEnd={() => { setPanel(null); card.current?.focus(); }} />}
        </StepCard>
      )}
      <StepList doing={doing} at={at} onGo={show} onClose={() => go(`/sessions/${session}/close`)} />
    </div>
  );
}
