import { useState } from 'react';
import type { RequestOf } from '../../shared-core/contract/contract.ts';
import type { Refusal } from '../../shared-core/result/result.ts';
import type { DoubtfulView } from '../../shared-core/views/due-view.ts';
import { change, type Changed } from './change.ts';
import { sayFault } from './form/say-fault.ts';
import { useWords } from './household.tsx';
import type { HouseholdWords } from './household-words.ts';
import { note } from './notices/notice-store.ts';
import { tell } from './words/tell.ts';

/** A doubtful reading as it is asked about; what is not known right after it was typed may be missing. */
export type DoubtfulReading = Pick<DoubtfulView, 'reading' | 'date' | 'value' | 'unit' | 'text' | 'repairs'> & Partial<DoubtfulView>;

/** An answer to the question what a doubtful reading was. */
export type Answer = Omit<RequestOf<'reading.settle'>, 'reading'>;

interface Settling {
  /** The sentence of what was refused. */
  readonly fault: string | null;
  /** What the old instrument last showed does not fit, and may be vouched for. */
  readonly asksWhetherSure: boolean;
  /** The old instrument was read on later days, unless that was the new one. */
  readonly asksWhoseLater: boolean;
  readonly settle: (answer: Answer) => void;
  readonly refuse: (refusal: Refusal) => void;
}

/** Gives answers to a doubtful reading, says what came of it, and keeps what was refused. */
export function useSettling(car: string, doubtful: DoubtfulReading, onSettled: (() => void) | undefined): Settling {
  const words = useWords();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const settle = async (answer: Answer) => {
    const result = await change('reading.settle', { ...answer, reading: doubtful.reading });
    if (!result.ok) return setRefusal(result.refusal);
    note(settledWords(car, answer.verdict, result.value, words), result.value.undo);
    onSettled?.();
  };
  return {
    fault: refusal === null ? null : sayFault(refusal),
    asksWhetherSure: refusal?.code === 'last-shown-doubtful',
    asksWhoseLater: refusal?.code === 'old-instrument-read-later',
    settle: (answer) => void settle(answer),
    refuse: setRefusal,
  };
}

function settledWords(car: string, verdict: Answer['verdict'], { reading, other, released }: Changed<'reading.settle'>, words: HouseholdWords): string {
  const said = ({ typed }: { readonly typed: typeof reading.typed }) => words.distance(typed.value, typed.unit);
  const settled = tell(reading.standing === 'set-aside' ? 'reading.still-in-doubt' : `reading.settled-${verdict}`, { car, value: said(reading), other: other === null ? '' : said(other) });
  return released.length === 0 ? settled : `${settled} ${tell('reading.released', { n: released.length })}`;
}
