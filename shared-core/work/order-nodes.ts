import type { JobEdge, JobGraph, JobNode } from './job-graph.ts';

const RANK: Readonly<Record<JobNode['turn'], number>> = { before: 0, drain: 1, work: 2, fill: 3, run: 4, level: 5 };

/**
 * The order of work on one car: what comes before all and whatever leads to a drain first, then work, then filling in, then what runs
 * the engine, levels last. Within work one task goes on as long as it can, and what is open is used up and closed before something
 * else is opened; all else goes by the order of the tasks.
 *
 * @example orderNodes(jobGraph(tasks)).map((node) => node.id) //=> ['open undertray', 'step oil step-1', ..., 'close undertray']
 */
export function orderNodes(graph: JobGraph): readonly JobNode[] {
  const rank = ranksOf(graph);
  const left = new Map(graph.nodes.map((node) => [node.id, node]));
  let edges = graph.edges;
  const placed: JobNode[] = [];
  while (left.size > 0) {
    const waiting = new Set(edges.filter((edge) => left.has(edge.from)).map((edge) => edge.to));
    const free = [...left.values()].filter((node) => !waiting.has(node.id));
    if (free.length === 0) {
      edges = withoutWeakest(edges, left);
      continue;
    }
    const standing = standingOf(graph, placed);
    const next = free.sort((a, b) => compare(rank, standing, a, b))[0] as JobNode;
    placed.push(next);
    left.delete(next.id);
  }
  return placed;
}

/** What leads to a drain, or to something that comes before all, is as urgent as that; all else has the rank of its own turn. */
function ranksOf({ nodes, edges }: JobGraph): ReadonlyMap<string, number> {
  const rank = new Map(nodes.map((node) => [node.id, RANK[node.turn]] as [string, number]));
  let changed = true;
  while (changed) {
    changed = false;
    for (const { from, to } of edges) {
      const urgent = rank.get(to) ?? RANK.work;
      if (urgent <= RANK.drain && urgent < (rank.get(from) ?? RANK.work)) [changed] = [true, rank.set(from, urgent)];
    }
  }
  return rank;
}

/** Tasks that contradict each other wait for each other in a ring: of the edges of such rings the weakest kind gives way. */
function withoutWeakest(edges: readonly JobEdge[], left: ReadonlyMap<string, JobNode>): readonly JobEdge[] {
  const inside = edges.filter((edge) => left.has(edge.from) && left.has(edge.to));
  const ring = new Set(inside.filter((edge) => edge.strength > 0 && reaches(inside, edge.to, edge.from)));
  if (ring.size === 0) throw new Error('Bug: the steps of a task wait for each other');
  const weakest = Math.min(...[...ring].map((edge) => edge.strength));
  return edges.filter((edge) => !ring.has(edge) || edge.strength !== weakest);
}

function reaches(edges: readonly JobEdge[], from: string, to: string): boolean {
  const seen = new Set([from]);
  for (const at of seen) for (const edge of edges) if (edge.from === at) seen.add(edge.to);
  return seen.has(to);
}

/** How far the work has come: the task that was last worked on, what is needed to go on with it, and the tasks for which something is open. */
interface Standing {
  readonly task: number | null;
  readonly neededNext: ReadonlySet<string>;
  readonly begun: ReadonlySet<number>;
  readonly tasksOf: ReadonlyMap<string, ReadonlySet<number>>;
}

function standingOf({ nodes, edges }: JobGraph, placed: readonly JobNode[]): Standing {
  const done = new Set(placed.map((node) => node.id));
  const last = placed.findLast((node) => node.access === null);
  const next = nodes.find((node) => node.access === null && node.task === last?.task && !done.has(node.id));
  const tasksOf = new Map(nodes.filter((node) => node.kind === 'open').map((node) => [node.id, tasksThrough(nodes, edges, node.id)]));
  const open = placed.filter((node) => node.kind === 'open' && !done.has(`close ${node.access ?? ''}`));
  return {
    task: last?.task ?? null,
    neededNext: new Set(edges.filter((edge) => edge.to === next?.id).map((edge) => edge.from)),
    begun: new Set(open.flatMap((node) => [...(tasksOf.get(node.id) ?? [])])),
    tasksOf,
  };
}

/** The tasks that have a step for which something must be open. */
function tasksThrough(nodes: readonly JobNode[], edges: readonly JobEdge[], open: string): ReadonlySet<number> {
  const steps = new Set(edges.filter((edge) => edge.from === open && edge.strength === 0).map((edge) => edge.to));
  return new Set(nodes.filter((node) => node.access === null && steps.has(node.id)).map((node) => node.task));
}

function compare(rank: ReadonlyMap<string, number>, standing: Standing, a: JobNode, b: JobNode): number {
  const [one, other] = [a, b].map((node) => {
    const own = rank.get(node.id) ?? RANK.work;
    return [own, own === RANK.work ? likeness(standing, node) : 0, node.task, node.at];
  });
  const at = one?.findIndex((value, index) => value !== other?.[index]) ?? -1;
  if (at >= 0) return (one?.[at] ?? 0) - (other?.[at] ?? 0);
  return a.id < b.id ? -1 : 1;
}

/** Going on with the same task, then closing what is done with, then tasks that something is open for, then the others. */
function likeness(standing: Standing, node: JobNode): number {
  if (node.access === null) return node.task === standing.task ? 0 : standing.begun.has(node.task) ? 3 : 5;
  if (node.kind === 'close') return 2;
  if (standing.neededNext.has(node.id)) return 1;
  return [...(standing.tasksOf.get(node.id) ?? [])].some((task) => standing.begun.has(task)) ? 4 : 6;
}
