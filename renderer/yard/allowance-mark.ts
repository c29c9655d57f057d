import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { dueWords } from '../ui/due-words.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { shapeOfAllowance } from '../ui/marks/mark-shape.ts';
import { tell } from '../ui/words/tell.ts';
import { arrangeWords, placeOf } from './duty-mark.ts';
import type { YardMark } from './yard-mark.ts';

type Allowance = Lane['allowances'][number];

/** The mark of a distance allowance that is passed, is likely to be, or has a last day; none where nothing is to be seen to. */
export function marksOfAllowance(lane: Lane, one: Allowance, today: LocalDate, words: HouseholdWords): readonly YardMark[] {
  if (one.runsOut === null) return [];
  const state = stateOf(one, today);
  const late = state === 'late' ? lateOf(one, words) : null;
  return [{
    ...shapeOfAllowance(one, state),
    ...placeOf(lane, 'allowance', one.id),
    name: tell(one.kind === 'warranty' || one.passes.likely === null ? 'mark.ends' : 'mark.used-up', { name: one.name }),
    rest: restOf(one, state, late, today, words),
    state,
    late,
    standing: late ?? tell(state === 'probably-due' ? 'allowance.probably' : `state.${state}`),
    when: whenOf(one, state, words),
    why: one.text,
    effort: [],
    work: state === 'ahead' ? arrangeWords(one.arrangeFrom, today, words) : [],
    ...edgesOf(one),
  }];
}

function stateOf({ state, passes, arrangeFrom }: Allowance, today: LocalDate): 'late' | 'probably-due' | 'open' | 'ahead' {
  if (state === 'passed') return 'late';
  if (state === 'probably-passed') return 'probably-due';
  const soonest = passes.likely === null ? arrangeFrom : passes.earliest;
  return soonest !== null && soonest <= today ? 'open' : 'ahead';
}

/** A forecast from the day on which it may be passed; after its last day nothing passes it. */
function edgesOf({ passes, runsOut, to }: Allowance): Pick<YardMark, 'from' | 'likely' | 'to'> {
  return passes.likely === null ? { from: runsOut, likely: runsOut, to: runsOut } : { from: passes.earliest ?? passes.likely, likely: passes.likely, to: passes.latest ?? to };
}

function lateOf({ used, allowed, unit }: Allowance, words: HouseholdWords): string {
  const past = Math.round((used ?? 0) - allowed);
  return past > 0 ? tell('allowance.passed-by', { distance: words.distance(past, unit) }) : tell('allowance.passed');
}

function restOf({ passes, runsOut }: Allowance, state: YardMark['state'], late: string | null, today: LocalDate, words: HouseholdWords): string {
  if (late !== null) return tell('mark.late', { late });
  if (state === 'probably-due') return tell('mark.rest', { what: tell('allowance.probably') });
  if (passes.likely === null && runsOut !== null) return tell(state === 'open' ? 'mark.dated-soon' : 'mark.dated', { date: words.nearDate(runsOut, today) });
  return state === 'open' ? tell('mark.soon') : '';
}

function whenOf(one: Allowance, state: YardMark['state'], words: HouseholdWords): string {
  const { from: earliest, likely, to: latest } = edgesOf(one);
  if (one.state === 'passed' && likely !== null) return tell('allowance.passed-on', { date: words.month(likely) });
  const limb = one.passes.likely === null ? 'time' : 'distance';
  return dueWords({ state, earliest, likely, latest, limb }, words);
}
