import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { localDate, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { composeHost, type ComposedHost } from '../host/compose-host.ts';
import { realWorld } from '../host/real-world.ts';
import { checkNode } from '../store/open-store.ts';
import { sampleIsOpen } from '../host/sample-folder.ts';

/** The household as a command sees it: the contract with its types, and the host beneath. */
export interface CommandHost {
  readonly composed: ComposedHost;
  readonly folder: string;
  call<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Result<ReplyOf<Name>>>;
  callAny(name: string, request: unknown): Promise<Result<unknown>>;
  close(): Promise<void>;
}

/** How the household is chosen on the command line. */
export interface HouseholdChoice {
  readonly household: string | undefined;
  readonly sample: boolean;
  readonly on: string | undefined;
  /** It is only looked at: a folder that is not there is refused and not made. */
  readonly looks: boolean;
}

/** The program's own data folder, where a household stands unless another is named. */
export function ownFolder(environment: NodeJS.ProcessEnv = process.env): string {
  const named = environment['TRUNNION_HOUSEHOLD'];
  if (named !== undefined && named !== '') return resolve(named);
  if (process.platform === 'win32') return join(environment['APPDATA'] ?? join(homedir(), 'AppData', 'Roaming'), 'Trunnion', 'household');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Trunnion', 'household');
  return join(environment['XDG_DATA_HOME'] ?? join(homedir(), '.local', 'share'), 'trunnion', 'household');
}

/** Opens the household that was chosen: a folder, the program's own, or a throw-away copy of the sample. */
export async function openCommandHost(choice: HouseholdChoice): Promise<Result<CommandHost>> {
  const on = choice.on === undefined ? null : localDate(choice.on);
  if (on?.ok === false) return on;
  if (choice.sample) return openSampleCopy(on?.value ?? null);
  const folder = resolve(choice.household ?? ownFolder());
  const node = checkNode();
  if (!node.ok) return node;
  if (choice.looks && isNotThere(folder) && !sampleIsOpen(folder)) return refuse('household-not-started');
  return openFolder(folder, on?.value ?? null, () => {});
}

/** A folder that could be made and is not there; what stands in its way is said when it is opened. */
function isNotThere(folder: string): boolean {
  if (existsSync(folder)) return false;
  const above = dirname(folder);
  return existsSync(above) ? statSync(above).isDirectory() : isNotThere(above);
}

async function openSampleCopy(on: LocalDate | null): Promise<Result<CommandHost>> {
  const folder = mkdtempSync(join(tmpdir(), 'trunnion-sample-'));
  const host = openFolder(join(folder, 'household'), on, () => rmSync(folder, { recursive: true, force: true }));
  if (!host.ok) {
    rmSync(folder, { recursive: true, force: true });
    return host;
  }
  const opened = await host.value.call('sample.open', {});
  if (opened.ok) return host;
  await host.value.close();
  return opened;
}

function openFolder(folder: string, on: LocalDate | null, afterwards: () => void): Result<CommandHost> {
  const composed = composeHost(folder, realWorld(on));
  if (!composed.ok) return composed;
  const host = composed.value;
  return ok({
    composed: host,
    get folder() {
      return host.context.household().folder;
    },
    call: (name, request) => host.call(name, request) as never,
    callAny: (name, request) => host.call(name, request),
    close: async () => {
      await host.close();
      afterwards();
    },
  });
}
