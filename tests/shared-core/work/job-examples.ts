import fc from 'fast-check';
import type { OrderedTask } from '../../../shared-core/work/job-graph.ts';
import { newStepSchema, type NewStep, type SheetStep } from '../../../shared-core/work/sheet-step.ts';

/** A step as a test words it: 'drain: oil', '+undertray', '-undertray: screws', or plain text. */
export function step(words: string, id = words): SheetStep {
  const [head = '', ...rest] = words.split(': ');
  const way = head.startsWith('+') ? 'open' : head.startsWith('-') ? 'close' : null;
  const asked: NewStep = newStepSchema.parse({
    text: rest.length > 0 ? rest.join(': ') : head,
    ...(way === null ? {} : { access: { name: head.slice(1), way } }),
    ...(['before', 'drain', 'fill', 'run', 'level'].includes(head) ? { turn: head } : {}),
  });
  return { ...asked, id: id.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') };
}

/** A task of steps in words; those without any are a task nobody has written. */
export function task(key: string, steps: readonly string[], access: readonly string[] = []): OrderedTask {
  return { key, name: key, access, steps: steps.map((words, at) => step(words, `s${at}`)) };
}

const ACCESS = ['undertray', 'wheels off', 'car raised', 'cover'];
const TURNS = ['before', 'drain', 'work', 'fill', 'run', 'level'] as const;

/** Steps of one task: what it opens it may close later, and never opens again. */
function stepsOf(draws: readonly number[]): readonly string[] {
  const [open, closed] = [new Set<string>(), new Set<string>()];
  return draws.map((draw, at) => {
    const name = ACCESS[draw % ACCESS.length] ?? '';
    if (draw % 5 === 0 && !closed.has(name)) {
      open.add(name);
      return `+${name}: open it ${draw % 2}`;
    }
    if (draw % 5 === 1 && !closed.has(name)) {
      closed.add(name);
      return `-${name}: close it ${draw % 2}`;
    }
    return `${TURNS[(draw >> 3) % TURNS.length] ?? 'work'}: do ${at}`;
  });
}

/** Tasks of one car as chance gives them: with and without sheets, contradicting each other freely. */
export const anyTasks: fc.Arbitrary<readonly OrderedTask[]> = fc
  .array(fc.record({ draws: fc.array(fc.nat(999), { maxLength: 9 }), access: fc.uniqueArray(fc.constantFrom(...ACCESS), { maxLength: 3 }) }), { minLength: 1, maxLength: 6 })
  .map((drawn) => drawn.map(({ draws, access }, at) => task(`task ${'fbdace'[at] ?? at}`, stepsOf(draws), access)));
