/** A place things come from: how much it holds, a whole number. */
export interface FlowSource {
  readonly holds: number;
}

/** A place things go to: how much it wants, a whole number, and the sources (by number, counted from 0) it may take from. */
export interface FlowSink {
  readonly wants: number;
  readonly from: readonly number[];
}

/** How much goes from a source to a sink. */
export interface FlowShare {
  readonly source: number;
  readonly sink: number;
  readonly amount: number;
}

/**
 * Shares what the sources hold among the sinks in whole numbers, each sink getting all it wants; null where that cannot be done.
 * Earlier sources are emptied before later ones are touched, as far as the rest allows.
 *
 * Source: maximum flow by augmenting paths (Ford and Fulkerson), from memory; whole capacities give whole flows.
 * @example shareFlow([{ holds: 5 }], [{ wants: 4, from: [0] }]) //=> [{ source: 0, sink: 0, amount: 4 }]
 */
export function shareFlow(sources: readonly FlowSource[], sinks: readonly FlowSink[]): readonly FlowShare[] | null {
  const state = emptyFlow(sources, sinks);
  sources.forEach((_source, at) => {
    while (pushFrom(state, at));
  });
  if (state.wanting.some((still) => still > 0)) return null;
  return sharesOf(state);
}

interface FlowState {
  readonly holding: number[];
  readonly wanting: number[];
  /** For each source, the sinks that may take from it. */
  readonly to: readonly (readonly number[])[];
  /** For each sink, what it now takes from each source. */
  readonly taken: readonly Map<number, number>[];
}

function emptyFlow(sources: readonly FlowSource[], sinks: readonly FlowSink[]): FlowState {
  const to: number[][] = sources.map(() => []);
  sinks.forEach((sink, at) => {
    for (const source of new Set(sink.from)) to[source]?.push(at);
  });
  return {
    holding: sources.map((source) => source.holds),
    wanting: sinks.map((sink) => sink.wants),
    to,
    taken: sinks.map(() => new Map<number, number>()),
  };
}

/** Sends as much as possible along one shortest path from a source to a sink that still wants; false where there is no path. */
function pushFrom(state: FlowState, first: number): boolean {
  if ((state.holding[first] ?? 0) === 0) return false;
  const path = shortestPath(state, first);
  if (path === null) return false;
  const end = path.at(-1)?.sink ?? 0;
  const amount = path.reduce(
    (least, step, i) => (i === 0 ? least : Math.min(least, state.taken[path[i - 1]?.sink ?? 0]?.get(step.source) ?? 0)),
    Math.min(state.holding[first] ?? 0, state.wanting[end] ?? 0),
  );
  path.forEach((step, i) => {
    change(state, step.sink, step.source, amount);
    if (i > 0) change(state, path[i - 1]?.sink ?? 0, step.source, -amount);
  });
  state.holding[first] = (state.holding[first] ?? 0) - amount;
  state.wanting[end] = (state.wanting[end] ?? 0) - amount;
  return true;
}

/** One step of a path: this source gives more to this sink; from the second step on, by taking it from the sink before. */
interface Step {
  readonly source: number;
  readonly sink: number;
}

function shortestPath(state: FlowState, first: number): readonly Step[] | null {
  const cameBy = new Map<number, { readonly step: Step; readonly before: number | null }>();
  const queue: { readonly source: number; readonly before: number | null }[] = [{ source: first, before: null }];
  const seen = new Set([first]);
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    for (const sink of state.to[at.source] ?? []) {
      if (cameBy.has(sink)) continue;
      cameBy.set(sink, { step: { source: at.source, sink }, before: at.before });
      if ((state.wanting[sink] ?? 0) > 0) return pathTo(cameBy, sink);
      for (const [source, amount] of state.taken[sink] ?? []) {
        if (amount === 0 || seen.has(source)) continue;
        seen.add(source);
        queue.push({ source, before: sink });
      }
    }
  }
  return null;
}

function pathTo(cameBy: ReadonlyMap<number, { readonly step: Step; readonly before: number | null }>, sink: number): readonly Step[] {
  const steps: Step[] = [];
  for (let at = cameBy.get(sink); at !== undefined; at = at.before === null ? undefined : cameBy.get(at.before)) steps.unshift(at.step);
  return steps;
}

function change(state: FlowState, sink: number, source: number, by: number): void {
  const taken = state.taken[sink];
  taken?.set(source, (taken.get(source) ?? 0) + by);
}

function sharesOf(state: FlowState): readonly FlowShare[] {
  return state.taken.flatMap((taken, sink) =>
    [...taken]
      .filter(([, amount]) => amount > 0)
      .sort(([a], [b]) => a - b)
      .map(([source, amount]) => ({ source, sink, amount })),
  );
}
