import { taskKey } from '../sessions/task-ref.ts';
import type { Booking, BookingRound, WantedLine } from './booking.ts';
import { isOver } from './booking-state.ts';

/** As many rounds as are kept beside the last. */
export const MOST_ROUNDS = 60;

/** What was asked for a session and is over, the oldest first: here or of another garage. */
export function roundsOver(booking: Booking | null): readonly BookingRound[] {
  if (booking === null) return [];
  const { id: _id, earlier = [], ...last } = booking;
  return isOver(booking) ? [...earlier, last] : earlier;
}

/** What a booking that begins after others keeps of them. */
export function afterRounds(rounds: readonly BookingRound[]): Pick<Booking, 'earlier'> {
  return rounds.length === 0 ? {} : { earlier: [...rounds] };
}

/** The booking as it was before its last round began; null where that was the first. */
export function withoutLastRound({ id, earlier = [] }: Booking): Booking | null {
  const last = earlier.at(-1);
  return last === undefined ? null : { ...last, id, ...afterRounds(earlier.slice(0, -1)) };
}

/** The lines asked for of which nobody has said that they were done. @example undoneLines({ wanted: [belt], cameBack: null }) //=> [belt] */
export function undoneLines({ wanted, cameBack }: Pick<BookingRound, 'wanted' | 'cameBack'>): WantedLine[] {
  return wanted.filter((line) => cameBack?.lines.some((one) => one.wanted === line.id && one.as === 'done') !== true);
}

/** The tasks that a garage has done for a session, by what came back: there is no need to ask another time. */
export function doneByGarage(booking: Booking | null): ReadonlySet<string> {
  const rounds = booking === null ? [] : [...(booking.earlier ?? []), booking];
  return new Set(rounds.flatMap((round) => {
    const undone = undoneLines(round);
    return round.wanted.flatMap((line) => (line.task === null || undone.includes(line) ? [] : [taskKey(line.task)]));
  }));
}
