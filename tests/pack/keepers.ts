import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RequestOf } from '../../shared-core/contract/contract.ts';
import { historyPartSchema, type HistoryPart } from '../../shared-core/handover/history-part.ts';
import { must } from '../../shared-core/result/assert.ts';
import { openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { unzipped } from './unzipped.ts';

/** A started household on a day, in a currency. */
export async function keeper(on: string, currency = 'GBP'): Promise<TestHost> {
  const host = openTestHost({ on });
  await host.must('household.start', { name: 'Household', currency });
  return host;
}

/** The next keeper, who has taken in a pack, and the car as it is called there. */
export async function nextKeeper(pack: string, on: string, currency = 'GBP'): Promise<{ readonly host: TestHost; readonly car: string; readonly notes: readonly string[] }> {
  const host = await keeper(on, currency);
  const { car, notes } = await host.must('pack.take-in', { pack });
  return { host, car: car.id, notes };
}

/** Writes the pack of a household's only car that is here. */
export async function handedOver(host: TestHost, more: Partial<RequestOf<'pack.write'>> = {}): Promise<string> {
  const car = must((await host.must('due.show', {})).cars[0], 'car');
  return (await host.must('pack.write', { car: car.id, out: temporaryFolder(), ...more })).path;
}

/** What a program reads of a pack, and its tables. */
export function readPack(path: string): { readonly history: HistoryPart; readonly said: string; readonly costs: string; readonly folder: string } {
  const folder = unzipped(path, temporaryFolder());
  const text = readFileSync(join(folder, 'data/history.json'), 'utf8');
  const history = historyPartSchema.parse(JSON.parse(text));
  return { history, said: JSON.stringify(history.document), costs: readFileSync(join(folder, 'data/tables/costs.csv'), 'utf8'), folder };
}
