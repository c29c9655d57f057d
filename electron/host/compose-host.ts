import { contract, type OperationName } from '../../shared-core/contract/contract.ts';
import type { Host } from '../../shared-core/contract/host.ts';
import type { Push } from '../../shared-core/contract/push.ts';
import type { Ask, Do, HostServed } from '../../shared-core/journal/operation.ts';
import { must } from '../../shared-core/result/assert.ts';
import { parseRequest } from '../../shared-core/result/parse-request.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { paperDesk } from '../papers/paper-desk.ts';
import { failure } from './failure.ts';
import { momentOf, type HostContext, type World } from './host-context.ts';
import { databaseFile, openHouseholdFolder, type HouseholdFolder } from './household-folder.ts';
import { returnToPlace } from './return-to-place.ts';
import { runChange } from './run-change.ts';
import { sampleFolder, sampleIsOpen } from './sample-folder.ts';
import { keepPapers, type KeptPaper } from './serve/keep-paper.ts';
import { servedOperations } from './served-operations.ts';
import { speakAsHousehold } from './speak-as-household.ts';
import { watchOtherWriters } from './watch-other-writers.ts';

type AnyOperation = Ask | Do | HostServed;

const DISTRUSTED: ReadonlySet<string> = new Set(['store-damaged', 'disk-fails']);

/** A host with what only this process may use beside the contract. */
export interface ComposedHost extends Host {
  readonly context: HostContext;
  /** Keeps papers as 'paper.keep' does, many at a time and from bytes that never become text. */
  keepPapers(files: readonly { readonly name: string; readonly bytes: Uint8Array }[]): Promise<Result<readonly Result<KeptPaper>[]>>;
}

/**
 * Opens a household's folder and serves the contract over it. Where the sample was left open, the sample is opened.
 *
 * @example const host = composeHost('/home/me/cars', realWorld()); if (host.ok) await host.value.call('due.show', {});
 */
export function composeHost(folder: string, world: World): Result<ComposedHost> {
  const opened = openHouseholdFolder(sampleIsOpen(folder) ? sampleFolder(folder) : folder);
  return opened.ok ? ok(hostOver(folder, opened.value, world)) : opened;
}

function hostOver(home: string, opened: HouseholdFolder, world: World): ComposedHost {
  let current = opened;
  const listeners = new Set<(push: Push) => void>();
  const context: HostContext = {
    world,
    home,
    household: () => current,
    isSample: () => current.folder !== home,
    swap: (folder) => {
      const next = openHouseholdFolder(folder);
      if (!next.ok) return next;
      current.store.close();
      current = next.value;
      return ok(null);
    },
    distrust: () => {
      current = { ...current, place: null };
    },
    compose: composeHost,
    push: (push) => listeners.forEach((listener) => tell(listener, push)),
    papers: paperDesk(),
  };
  const stopWatching = watchOtherWriters(context);
  return {
    context,
    call: (name, request) => callOperation(context, name, request),
    keepPapers: (files) => inPlace(context, 'paper.keep', true, async () => ok(await keepPapers(context, files))),
    onPush: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    close: async () => {
      stopWatching();
      current.store.close();
      await context.papers.close();
    },
  };
}

/** What was written is written: a listener that fails must not make it look as if it had not been. */
function tell(listener: (push: Push) => void, push: Push): void {
  try {
    listener(push);
  } catch (error) {
    console.error('a listener failed:', error);
  }
}

async function callOperation(context: HostContext, name: string, request: unknown): Promise<Result<unknown>> {
  if (!Object.hasOwn(contract, name)) return refuse('unknown-operation', { operation: name.slice(0, 60) });
  const operation: AnyOperation = contract[name as OperationName];
  const parsed = parseRequest(operation.request, request);
  if (!parsed.ok) return parsed;
  const reply = await inPlace(context, name, operation.kind !== 'ask', () => run(context, name, operation, parsed.value));
  return reply.ok ? ok(checkedReply(operation, reply.value)) : reply;
}

/** Does work on the household's folder while it stands in its place; what goes wrong in it is told as a failure. */
async function inPlace<Value>(context: HostContext, name: string, changes: boolean, work: () => Result<Value> | Promise<Result<Value>>): Promise<Result<Value>> {
  try {
    const there = returnToPlace(context);
    if (!there.ok && name !== 'sample.leave') return there;
    speakAsHousehold(context.household().facts);
    const reply = await work();
    if (!reply.ok) return reply;
    const stillThere = changes ? returnToPlace(context) : ok(null);
    // Another household may be open now, or the same one with another locale.
    if (changes) speakAsHousehold(context.household().facts);
    return stillThere.ok ? reply : stillThere;
  } catch (error) {
    return failedOn(context, name, error);
  }
}

function run(context: HostContext, name: string, operation: AnyOperation, request: unknown): Result<unknown> | Promise<Result<unknown>> {
  if ('host' in operation) return must(servedOperations[name as keyof typeof servedOperations], `server of ${name}`)(context, request as never);
  if (operation.kind === 'do') return runChange(context, operation, request);
  const { facts, store } = context.household();
  return store.transaction(() => operation.answer(facts, request, momentOf(context.world))).deferred();
}

/** A database that failed once may hold what it read wrongly in its memory, long after the disk has come right. */
function failedOn(context: HostContext, name: string, error: unknown): Result<never> {
  const failed = failure(error, name, databaseFile(context.household().folder));
  if (!failed.ok && DISTRUSTED.has(failed.refusal.code)) context.distrust();
  return failed;
}

/** The reply as its schema has it, with the undo token of a change. */
function checkedReply(operation: AnyOperation, reply: unknown): unknown {
  const parsed = operation.reply.parse(reply) as object;
  if (operation.kind !== 'do') return parsed;
  return { ...parsed, undo: (reply as { readonly undo?: readonly number[] }).undo ?? [] };
}
