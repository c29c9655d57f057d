import type { SheetStep, Turn } from './sheet-step.ts';
import { turnOf } from './turn-of.ts';

/** A task of one car as it is put in order: its steps, and what must be opened up for it. */
export interface OrderedTask {
  readonly key: string;
  readonly name: string;
  /** What the item says must be opened up to reach it, in that order. */
  readonly access: readonly string[];
  /** Empty where nobody has written how it is done. */
  readonly steps: readonly SheetStep[];
}

/** One thing to be put in order: an access opened or closed by all tasks together, a step of a task, or a whole task without steps. */
export interface JobNode {
  readonly id: string;
  readonly kind: 'open' | 'close' | 'step' | 'task';
  readonly access: string | null;
  /** Place of its task among all; of an access that of the first task that uses it. */
  readonly task: number;
  readonly at: number;
  readonly turn: Turn;
}

/**
 * `to` comes after `from`. What must not be broken has strength 0; where tasks of a car contradict each other, 1 gives way first
 * (in which order two accesses are opened or closed), then 2 (a step after something was closed), then 3 (a step before something is opened).
 */
export interface JobEdge {
  readonly from: string;
  readonly to: string;
  readonly strength: 0 | 1 | 2 | 3;
}

export interface JobGraph {
  readonly nodes: readonly JobNode[];
  readonly edges: readonly JobEdge[];
}

/** One access under whatever spelling. @example accessKey(' Wheels off') //=> 'wheels off' */
export function accessKey(name: string): string {
  return name.trim().normalize('NFC').toLowerCase();
}

/** What is to be done on a car, and what must come before what. The tasks stand in their final order already. */
export function jobGraph(tasks: readonly OrderedTask[]): JobGraph {
  const nodes = new Map<string, JobNode>();
  const edges: JobEdge[] = [];
  for (const [index, task] of tasks.entries()) {
    const chain = chainOf(task, index);
    for (const node of chain) if (!nodes.has(node.id)) nodes.set(node.id, node);
    edges.push(...chainEdges(chain), ...accessEdges(chain));
  }
  return { nodes: [...nodes.values()], edges };
}

/** A task's own line of nodes: what it does not say itself is opened before all its steps and closed before the engine runs or levels are read. */
function chainOf(task: OrderedTask, index: number): readonly JobNode[] {
  const own = task.steps.length === 0 ? [node('task', null, index, 0, 'work', `task ${task.key}`)] : collapsed(task.steps.map((step, at) => stepNode(task, step, index, at)));
  const used = [...new Set([...task.access.map(accessKey), ...own.flatMap((one) => one.access ?? [])])];
  const says = (kind: JobNode['kind'], access: string) => own.some((one) => one.kind === kind && one.access === access);
  const opened = used.filter((access) => !says('open', access)).map((access) => openNode(access, index));
  const closed = used.filter((access) => !says('close', access)).reverse().map((access) => closeNode(access, index));
  const last = own.findLastIndex((one) => one.kind !== 'step' || (one.turn !== 'run' && one.turn !== 'level')) + 1;
  return [...opened, ...own.slice(0, last), ...closed, ...own.slice(last)];
}

function stepNode(task: OrderedTask, step: SheetStep, index: number, at: number): JobNode {
  if (step.access === null) return node('step', null, index, at, turnOf(task.steps, at), `step ${task.key} ${step.id}`);
  return step.access.way === 'open' ? openNode(accessKey(step.access.name), index) : closeNode(accessKey(step.access.name), index);
}

/** Several steps that open one thing are one node; it stands where the last of them stands when it opens, where the first does when it closes. */
function collapsed(chain: readonly JobNode[]): readonly JobNode[] {
  return chain.filter((one, at) => {
    if (one.kind === 'open') return chain.findLastIndex((other) => other.id === one.id) === at;
    return chain.findIndex((other) => other.id === one.id) === at;
  });
}

function chainEdges(chain: readonly JobNode[]): JobEdge[] {
  const between = chain.slice(1).map((to, at): JobEdge => ({ from: chain[at]?.id ?? '', to: to.id, strength: strengthOf(chain[at]?.kind ?? 'step', to.kind) }));
  const own = chain.filter((one) => one.access === null);
  return [...between, ...own.slice(1).map((to, at): JobEdge => ({ from: own[at]?.id ?? '', to: to.id, strength: 0 }))];
}

function strengthOf(from: JobNode['kind'], to: JobNode['kind']): JobEdge['strength'] {
  const isAccess = (kind: JobNode['kind']) => kind === 'open' || kind === 'close';
  if (isAccess(from) && isAccess(to)) return 1;
  if (from === 'close') return 2;
  return to === 'open' ? 3 : 0;
}

/** A step stands between the opening and the closing of what its task has open then; nothing is closed that was not opened. */
function accessEdges(chain: readonly JobNode[]): JobEdge[] {
  return chain.filter((one) => one.kind === 'open').flatMap((open): JobEdge[] => {
    const [from, to] = [chain.indexOf(open), chain.findIndex((one) => one.kind === 'close' && one.access === open.access)];
    const close = chain[to]?.id ?? '';
    const within = chain.slice(from + 1, to).filter((one) => one.access === null);
    return [{ from: open.id, to: close, strength: 0 }, ...within.flatMap((one): JobEdge[] => [{ from: open.id, to: one.id, strength: 0 }, { from: one.id, to: close, strength: 0 }])];
  });
}

const openNode = (access: string, index: number) => node('open', access, index, 0, 'work', `open ${access}`);
const closeNode = (access: string, index: number) => node('close', access, index, 0, 'work', `close ${access}`);

function node(kind: JobNode['kind'], access: string | null, task: number, at: number, turn: Turn, id: string): JobNode {
  return { id, kind, access, task, at, turn };
}
