import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Session } from '../sessions/session.ts';
import { findTask, taskKey } from '../sessions/task-ref.ts';
import { cautionsOfTask, gatherCautions, type GatheredCaution } from './caution-key.ts';
import { begunWork } from './doing.ts';
import { taskSheets } from './task-sheet.ts';

/** The cautions of all tasks of a session, each once, in the order of reading. */
export function cautionsOfSession(facts: Facts, session: Session): readonly GatheredCaution[] {
  return gatherCautions(session.tasks.flatMap((ref) => {
    const found = findTask(facts, ref);
    const car = found.ok ? facts.get(cars, found.value.car) : null;
    if (!found.ok || car === null) return [];
    const name = found.value.name ?? ref.id;
    const sheet = ref.kind === 'item' ? facts.get(taskSheets, ref.id) : null;
    return [{ key: taskKey(ref), name, cautions: cautionsOfTask(car, { ref, name, sheet }) }];
  }));
}

/** Those that nobody has read yet: all before the work is begun, later what came with a task or a changed sheet. */
export function unreadCautions(facts: Facts, session: Session): readonly GatheredCaution[] {
  const read = new Set<string>(facts.get(begunWork, session.id)?.read ?? []);
  return cautionsOfSession(facts, session).filter(({ caution }) => !read.has(caution));
}
