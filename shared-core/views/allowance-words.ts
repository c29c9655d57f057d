import type { LocalDate } from '../calendar/local-date.ts';
import type { AllowanceUse } from '../care/allowance-use.ts';
import type { DistanceAllowance } from '../care/distance-allowance.ts';
import type { DueSpan } from '../fleet/odometer-forecast.ts';
import { hasWords, say } from '../result/words/say.ts';
import { METRES_IN } from '../units/distance.ts';
import { sayWindow } from './say-window.ts';

/**
 * How an allowance stands as a sentence; what is foreseen no finer than the forecast allows.
 *
 * @example sayAllowance(insurance, use, today) //=> 'As the car is used now, the 6000 mi allowed will be passed about May 2027, before ...'
 */
export function sayAllowance(allowance: DistanceAllowance, use: AllowanceUse, today: LocalDate): string {
  const { value: allowed, unit } = allowance.distance;
  const over = use.overAtEnd === null ? null : roughly(Math.abs(use.overAtEnd) / METRES_IN[unit]);
  const state = `${use.state}${mayBePassed(use, today) ? '-already' : isEndless(use) ? '-endless' : ''}`;
  const ownWords = `${allowance.kind}-${state}`;
  return say({ key: hasWords(ownWords) ? ownWords : `allowance-${state}`, values: { allowed, unit, from: use.from, to: use.to, when: sayWhen(use.passes), over } });
}

/** What may be passed only with more use than now, but by today. */
function mayBePassed({ state, passes }: AllowanceUse, today: LocalDate): boolean {
  return state === 'may-pass' && passes.earliest !== null && passes.earliest <= today;
}

/** What has a last day is said with it. */
function isEndless({ state, to }: AllowanceUse): boolean {
  return to === null && (state === 'will-pass' || state === 'may-pass' || state === 'within');
}

function sayWhen(passes: DueSpan<LocalDate>): string {
  const when = sayWindow({ ...passes, limb: 'distance' });
  return when.startsWith('week') ? `in the ${when}` : when;
}

/** A forecast distance, by tens, from 2000 on by hundreds, from 20 000 on by thousands (ours, no source). @example roughly(838) //=> 840 */
export function roughly(distance: number): number {
  const step = Math.max(10, 10 ** Math.floor(Math.log10(Math.max(1, distance)) - 1.3));
  return Math.round(distance / step) * step;
}
