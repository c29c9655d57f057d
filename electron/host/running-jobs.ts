import type { StopSignal } from '../../shared-core/integer-program/solver.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { stopSwitch, type StopSwitch } from '../solver/stop-switch.ts';
import type { HostContext } from './host-context.ts';

/** Work under way under a name: it tells how far it is, and can be stopped. */
export interface RunningJob {
  readonly stop: StopSignal;
  /** Tells the windows; `total` is null where nobody knows how much there is to do. */
  progress(done: number, total: number | null): void;
  /** Tells the windows that it is over, and frees its name. */
  end(done: boolean): void;
}

/** Jobs by name, for each host. */
const running = new WeakMap<HostContext, Map<string, StopSwitch>>();

/** Begins work under a name; without one it is told of to nobody, and runs to its end. A name at work already is refused. */
export function beginJob(context: HostContext, name: string | null): Result<RunningJob> {
  const stop = stopSwitch();
  if (name === null) return ok({ stop, progress: () => undefined, end: () => undefined });
  const jobs = running.get(context) ?? new Map<string, StopSwitch>();
  running.set(context, jobs);
  if (jobs.has(name)) return refuse('job-running', { job: name }, ['job']);
  jobs.set(name, stop);
  return ok({
    stop,
    progress: (done, total) => context.push({ kind: 'job-progress', job: name, done, total }),
    end: (done) => {
      jobs.delete(name);
      context.push({ kind: 'job-ended', job: name, ok: done });
    },
  });
}

/** Asks the work under a name to stop; whether there was any. */
export function stopJob(context: HostContext, name: string): boolean {
  const job = running.get(context)?.get(name);
  job?.throw();
  return job !== undefined;
}

/** Asks all work under way to stop: the program is ending. */
export function stopJobs(context: HostContext): void {
  running.get(context)?.forEach((job) => job.throw());
}
