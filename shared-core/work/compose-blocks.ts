import { accessKey, jobGraph, type JobNode, type OrderedTask } from './job-graph.ts';
import type { JobBlock, JobStep } from './job-block.ts';
import { joinSteps } from './join-steps.ts';
import { orderNodes } from './order-nodes.ts';
import type { SheetStep } from './sheet-step.ts';
import { turnOf } from './turn-of.ts';

/** Tasks in the order in which they are begun where nothing else says it: those that need the car warm first, so that it cools down only once. */
function inWorkingOrder(tasks: readonly OrderedTask[]): readonly OrderedTask[] {
  const isWarm = (task: OrderedTask) => task.steps.some((_step, at) => turnOf(task.steps, at) === 'before');
  const sorted = inNameOrder(tasks);
  return [...sorted.filter(isWarm), ...sorted.filter((task) => !isWarm(task))];
}

/** Tasks in the one order that does not depend on how they came: by name, then by key. */
export function inNameOrder<Task extends { readonly name: string; readonly key: string }>(tasks: readonly Task[]): readonly Task[] {
  return [...tasks].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
}

/**
 * The work on one car in order: each access opened once before its first use and closed once after its last, drains first, then work, fills, what runs the engine, levels last.
 * Every step of every task is in it exactly once. The order does not depend on that of the input.
 */
export function composeBlocks(tasks: readonly OrderedTask[]): readonly JobBlock[] {
  const sorted = inWorkingOrder(tasks);
  const blocks: JobBlock[] = [];
  for (const node of orderNodes(jobGraph(sorted))) {
    const next = node.access === null ? ownBlock(sorted, node) : accessBlock(sorted, node, node.access);
    const last = blocks.at(-1);
    if (last !== undefined && next.access === null && last.access === null && last.kind === next.kind && last.tasks[0] === next.tasks[0] && next.steps.length > 0) blocks[blocks.length - 1] = { ...last, steps: [...last.steps, ...next.steps] };
    else blocks.push(next);
  }
  return blocks;
}

function ownBlock(tasks: readonly OrderedTask[], node: JobNode): JobBlock {
  const task = tasks[node.task];
  const key = task?.key ?? '';
  const step = node.kind === 'task' ? undefined : task?.steps[node.at];
  return { kind: node.turn, access: null, tasks: [key], steps: step === undefined ? [] : [{ of: [{ task: key, step: step.id }], step: withoutId(step) }] };
}

function accessBlock(tasks: readonly OrderedTask[], { kind }: JobNode, access: string): JobBlock {
  const uses = tasks.filter((task) => [...task.access, ...task.steps.flatMap((step) => step.access?.name ?? [])].some((name) => accessKey(name) === access));
  const names = uses.flatMap((task) => [...task.access, ...task.steps.flatMap((step) => step.access?.name ?? [])]);
  const lists = uses.map((task) => task.steps.filter((step) => step.access?.way === kind && accessKey(step.access.name) === access).map((step): JobStep => ({ of: [{ task: task.key, step: step.id }], step: withoutId(step) })));
  return { kind: kind === 'open' ? 'open' : 'close', access: names.find((name) => accessKey(name) === access) ?? access, tasks: uses.map((task) => task.key), steps: joinSteps(lists) };
}

function withoutId({ id: _id, ...step }: SheetStep): JobStep['step'] {
  return step;
}
