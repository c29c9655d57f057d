import { sayDate } from '../../shared-core/result/words/say.ts';
import type { PlanAnswer } from '../../shared-core/sessions/plan-answer.ts';

/** A solved bare plan as text: what it comes to and its bound, its sessions, and what is left undone. */
export function planInstanceText(answer: PlanAnswer): string {
  return [
    `${answer.status}: ${answer.totalMinor} in minor units; nothing cheaper than ${answer.boundMinor}`,
    ...answer.sessions.map(({ day, place, tasks, minutes }) => `  ${sayDate(day)}, ${place}: ${tasks.join(', ')} (${minutes} min)`),
    ...(answer.left.length === 0 ? [] : [`  left: ${answer.left.join(', ')}`]),
  ].join('\n');
}
