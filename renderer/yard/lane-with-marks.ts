import type { Lane } from '../../shared-core/views/yard-view.ts';
import type { YardMark } from './yard-mark.ts';

/** A car's lane with all its marks, soonest first. */
export interface LaneWithMarks {
  readonly lane: Lane;
  readonly marks: readonly YardMark[];
}
