import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { localDate, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { composeHost, type ComposedHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';

/** A date of a test; an impossible one fails the test. */
export function day(text: string): LocalDate {
  const date = localDate(text);
  if (!date.ok) throw new Error(`not a date: ${text}`);
  return date.value;
}

/** A host over a real file, with the contract's types. */
export interface TestHost {
  readonly composed: ComposedHost;
  readonly folder: string;
  call<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Result<ReplyOf<Name>>>;
  /** The reply, where a refusal would fail the test. */
  must<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>>;
}

const cleanUp: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const clean of cleanUp.splice(0)) await clean();
});

/** A folder that is gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'trunnion-test-'));
  cleanUp.push(() => Promise.resolve(rmSync(folder, { recursive: true, force: true })));
  return folder;
}

/** Opens a host over an empty folder (or the one given), on a fixed day: its clock stands at nine of that morning and goes on from there. */
export function openTestHost(options: { readonly on?: string; readonly folder?: string } = {}): TestHost {
  const folder = options.folder ?? join(temporaryFolder(), 'household');
  const on = day(options.on ?? '2026-11-25');
  const [nine, opened] = [Date.parse(`${on}T09:00:00.000Z`), Date.now()];
  const composed = composeHost(folder, { ...realWorld(on), now: () => new Date(nine + Date.now() - opened).toISOString() });
  if (!composed.ok) throw new Error(`refused: ${composed.refusal.code}`);
  cleanUp.unshift(() => composed.value.close());
  const call: TestHost['call'] = (name, request) => composed.value.call(name, request) as never;
  return {
    composed: composed.value,
    folder,
    call,
    must: async (name, request) => {
      const reply = await call(name, request);
      if (!reply.ok) throw new Error(`refused ${name}: ${JSON.stringify(reply.refusal)}`);
      return reply.value;
    },
  };
}

/** A started household with one car of miles and two readings. */
export async function openHouseholdWithPip(options: { readonly on?: string } = {}): Promise<TestHost> {
  const host = openTestHost(options);
  await host.must('household.start', { name: 'Test household', unit: 'mi' });
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-25'), keptSince: day('2022-11-25') });
  await host.must('reading.record', { id: 'r1', car: 'pip', value: 9000, date: day('2024-01-10') });
  await host.must('reading.record', { id: 'r2', car: 'pip', value: 18_000, date: day('2025-01-10') });
  return host;
}
