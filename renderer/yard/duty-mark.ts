import { daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { ObligationView } from '../../shared-core/views/due-view.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { shapeOfObligation, shapeOfRecall } from '../ui/marks/mark-shape.ts';
import { tell } from '../ui/words/tell.ts';
import type { YardMark } from './yard-mark.ts';

/** The mark of a dated duty. */
export function markOfObligation(lane: Lane, duty: ObligationView, today: LocalDate, words: HouseholdWords): YardMark {
  const shape = shapeOfObligation(duty, today);
  const late = duty.late ? tell('obligation.late-days', { n: daysBetween(duty.on, today) }) : null;
  const date = words.nearDate(duty.on, today);
  return {
    ...shape,
    ...placeOf(lane, 'obligation', duty.id),
    name: duty.name,
    rest: late === null ? tell(shape.filled ? 'mark.dated-soon' : 'mark.dated', { date }) : tell('mark.late', { late }),
    state: duty.late ? 'late' : shape.filled ? 'open' : 'ahead',
    late,
    standing: late ?? tell(shape.filled ? 'state.open' : 'state.ahead'),
    when: tell('obligation.by', { date: words.date(duty.on) }),
    why: duty.opens === null ? '' : tell('obligation.opens', { date: words.date(duty.opens) }),
    effort: [],
    work: duty.late ? [] : arrangeWords(duty.from, today, words),
    from: duty.on,
    likely: duty.on,
    to: duty.on,
  };
}

type Recall = Lane['recalls'][number];

/** The mark of a recall that is not done or due again; one that is not booked waits on today's line. */
export function markOfRecall(lane: Lane, one: Recall, today: LocalDate, words: HouseholdWords): YardMark {
  const { recall, state, late: isLate, arrangeFrom } = one;
  const shape = shapeOfRecall(one, today);
  const on = recall.nextOn ?? today;
  const kind = state === 'again' ? 'again' : state === 'booked' ? 'booked' : 'open';
  const late = isLate ? tell(`recall.${kind === 'again' ? 'again' : 'booked'}-late`, { n: daysBetween(on, today) }) : null;
  return {
    ...shape,
    ...placeOf(lane, 'recall', recall.id),
    name: tell('mark.recall', { number: recall.number }),
    rest: tell('mark.rest', { what: late ?? tell(`recall.${kind}-near`, { date: words.nearDate(on, today) }) }),
    state: isLate ? 'late' : shape.filled ? 'open' : 'ahead',
    late,
    standing: late ?? tell(`recall.${kind}`),
    when: tell(`recall.${kind}-when`, { date: words.date(on) }),
    why: recall.what,
    effort: [],
    work: isLate || state === 'open' || arrangeFrom === null ? [] : arrangeWords(arrangeFrom, today, words),
    from: on,
    likely: on,
    to: on,
  };
}

/** When to arrange it; what is to be arranged by now is drawn as soon already. */
export function arrangeWords(from: LocalDate | null, today: LocalDate, words: HouseholdWords): readonly string[] {
  return from === null || from <= today ? [] : [tell('due.arrange', { date: words.date(from) })];
}

/** Whose mark it is, and where it stands in the Car screen. */
export function placeOf<Kind extends YardMark['kind']>(lane: Pick<Lane, 'id' | 'name'>, kind: Kind, id: string): { readonly kind: Kind } & Pick<YardMark, 'id' | 'car' | 'carName' | 'href'> {
  return { kind, id: `${lane.id}/${kind}/${id}`, car: lane.id, carName: lane.name, href: `/car/${lane.id}/${kind}/${id}` };
}
