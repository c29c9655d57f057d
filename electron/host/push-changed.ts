import type { Put } from '../../shared-core/journal/entry-kind.ts';
import type { HostContext } from './host-context.ts';

/** Tells the windows which stages and cars have changed. */
export function pushChanged(context: HostContext, puts: readonly Put[]): void {
  if (puts.length === 0) return;
  const stages = [...new Set(puts.map((change) => change.stage))].sort();
  const cars = [...new Set(puts.flatMap((change) => change.car ?? []))].sort();
  context.push({ kind: 'changed', stages, cars });
}

/** Tells the windows that anything may have changed: another household, or another program wrote. */
export function pushAllChanged(context: Pick<HostContext, 'push'>): void {
  context.push({ kind: 'changed', stages: ['fleet', 'care', 'sessions', 'parts', 'records'], cars: [] });
}
