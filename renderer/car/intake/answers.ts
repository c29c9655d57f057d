import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { NameOrder } from '../../ui/name-order.ts';

export type Intake = ReplyOf<'intake.show'>;
export type IntakeItem = Intake['now'][number];
export type Answer = NonNullable<IntakeItem['answered']>;

/** The answers in the order in which a row offers them, each with the key that gives it: the letter it begins with. */
const ANSWERS: readonly { readonly answer: Answer; readonly key: string }[] = [
  { answer: 'proven', key: 'p' },
  { answer: 'said', key: 's' },
  { answer: 'unknown', key: 'u' },
  { answer: 'never-done', key: 'n' },
  { answer: 'from-purchase', key: 'f' },
];

/** The answers that can be given about a car: what is counted from a purchase needs its day. */
export function answersFor({ keptSince }: Pick<CarView['car'], 'keptSince'>): typeof ANSWERS {
  return keptSince === null ? ANSWERS.filter(({ answer }) => answer !== 'from-purchase') : ANSWERS;
}

/** Whether an answer says that it was done, and so asks when. */
export function asksWhen(answer: Answer): answer is 'proven' | 'said' {
  return answer === 'proven' || answer === 'said';
}

/** The answer that stands: given, or taken from what the item came with; null while it is open. */
export function standing({ question, answered, knowledge }: IntakeItem): Answer | null {
  if (question !== 'settled') return null;
  if (answered !== null) return answered;
  return knowledge === 'never-done' || knowledge === 'from-purchase' ? knowledge : null;
}

/** The answer at which one comes to a row: the one that stands, else the first. */
export function firstAnswer(item: IntakeItem, car: Pick<CarView['car'], 'keptSince' | 'firstRegistered'>): Answer {
  const offered = answersFor(car).map(({ answer }) => answer);
  return offered.find((answer) => answer === standing(item)) ?? 'proven';
}

const HARM = { safety: 0, damage: 1, comfort: 2 } as const;

/** The items that are asked about, in an order that no answer changes: what harms most first, then by name. */
export function questionsOf({ now, look, wait }: Intake, byName: NameOrder): readonly IntakeItem[] {
  const asked = [...now, ...look, ...wait].filter(({ question }) => question !== 'none');
  return asked.sort((a, b) => HARM[a.harm] - HARM[b.harm] || byName(a.name, b.name) || (a.item < b.item ? -1 : 1));
}

/** The row to go to after an answer: the next open one, round to the first; null where the row stays. */
export function rowAfter(questions: readonly IntakeItem[], item: string): string | null {
  const at = questions.findIndex((one) => one.item === item);
  if (questions[at]?.question !== 'open') return null;
  const others = [...questions.slice(at + 1), ...questions.slice(0, at)];
  return others.find((one) => one.question === 'open')?.item ?? null;
}
