import type { WordKey } from '../../ui/words/tell.ts';

/** One thing of the program to be looked at: where it is, and what is said of it. */
export interface TourStep {
  readonly title: WordKey;
  readonly text: WordKey;
  /** Finds it on the yard. */
  readonly at: string;
}

/** A look around in five steps, all of them on the yard. */
export const TOUR_STEPS: readonly TourStep[] = [
  { title: 'tour.lanes', text: 'tour.lanes-what', at: '[data-tour=lanes]' },
  { title: 'tour.marks', text: 'tour.marks-what', at: '[data-lane] [data-mark]' },
  { title: 'tour.reading', text: 'tour.reading-what', at: '[data-tour=reading]' },
  { title: 'tour.plan', text: 'tour.plan-what', at: '[data-tour=plan]' },
  { title: 'tour.screens', text: 'tour.screens-what', at: '[data-tour=rail]' },
];
