import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import { latestOnly } from './latest-only.ts';

export type Tried = ReplyOf<'plan.try'>;
type Tasks = RequestOf<'plan.try'>['tasks'];

export interface Spot {
  readonly day: LocalDate;
  readonly place: string;
}

/** What is being moved: a session, some of its tasks, or tasks that stand in none. */
export interface MoveSubject {
  readonly session: string | null;
  /** Not the whole of its session. */
  readonly part: boolean;
  readonly tasks: Tasks;
  readonly from: Spot | null;
  readonly title: string;
}

/** A move that is tried and not yet kept. */
export interface TriedMove {
  readonly subject: MoveSubject;
  readonly to: Spot;
  /** What it would change; null while that is asked for, and where nothing has moved yet. */
  readonly tried: Tried | null;
  readonly refusal: Refusal | null;
  readonly keeping: boolean;
  /** Lifted by its post, which then has the focus and the keys; else by fields alone. */
  readonly by: 'post' | 'fields';
}

/** What a kept move came to. `notes`: what the keeper may not have meant, though it is kept. */
export interface KeptMove {
  readonly undo: readonly number[];
  readonly notes: readonly string[];
}

/** How the host is asked: what a move would change, and to keep it. */
export interface MoveHost {
  readonly tryOut: (subject: MoveSubject, to: Spot) => Promise<Result<Tried>>;
  readonly keep: (subject: MoveSubject, to: Spot) => Promise<Result<KeptMove>>;
}

export interface MoveStore {
  readonly now: () => TriedMove | null;
  readonly listen: (listener: () => void) => () => void;
  readonly lift: (subject: MoveSubject, to: Spot, by: TriedMove['by']) => void;
  readonly place: (to: Spot) => void;
  readonly putBack: () => void;
  /** Keeps it where it stands now; answers what it came to, or null where it was refused: then it goes on being tried. */
  readonly keep: () => Promise<KeptMove | null>;
}

/** Moves something by hand, and asks at each step what that changes. Answers to steps left behind are dropped; what is refused lets go of nothing. */
export function moveStore(host: MoveHost): MoveStore {
  let current: TriedMove | null = null;
  const listeners = new Set<() => void>();
  const put = (next: TriedMove | null) => {
    current = next;
    listeners.forEach((listener) => listener());
  };
  const line = latestOnly(({ subject, to }: Pick<TriedMove, 'subject' | 'to'>) => host.tryOut(subject, to), (_asked, reply) => {
    if (current !== null) put({ ...current, tried: reply.ok ? reply.value : null, refusal: reply.ok ? null : reply.refusal });
  });
  const tryThere = (next: TriedMove) => {
    put(next);
    if (next.subject.from !== null && sameSpot(next.subject.from, next.to)) line.forget();
    else line.want(next);
  };
  const putBack = () => {
    line.forget();
    put(null);
  };
  return {
    now: () => current,
    listen: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    lift: (subject, to, by) => tryThere({ subject, to, tried: null, refusal: null, keeping: false, by }),
    place: (to) => {
      if (current !== null && !current.keeping && !sameSpot(current.to, to)) tryThere({ ...current, to, tried: null, refusal: null });
    },
    putBack,
    keep: async () => {
      const mine = current;
      if (mine === null || mine.keeping) return null;
      put({ ...mine, keeping: true });
      const reply = await host.keep(mine.subject, mine.to);
      if (reply.ok) putBack();
      else put({ ...(current ?? mine), keeping: false, refusal: reply.refusal });
      return reply.ok ? reply.value : null;
    },
  };
}

/** Whether two spots are one. */
export function sameSpot(a: Spot, b: Spot): boolean {
  return a.day === b.day && a.place === b.place;
}
