import { execFileSync } from 'node:child_process';
import { chmodSync, readdirSync, rmSync, statfsSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { storeRefusal } from '../../electron/store/store-refusal.ts';
import type { Result } from '../../shared-core/result/result.ts';

// Meets one fault of a disk in a process of its own, and prints as JSON what came of each step. The disk is a folder given by the test.
const [scenario = '', disk = ''] = process.argv.slice(2);
const household = join(disk, 'household');
const filler = join(disk, 'filler');
const came: Record<string, unknown> = {};

/** 'done', or the code of the refusal. */
function codeOf(reply: Result<unknown>): string {
  return reply.ok ? 'done' : reply.refusal.code;
}

function open() {
  const host = composeHost(household, realWorld());
  if (!host.ok) throw new Error(host.refusal.code);
  return host.value;
}

/** Opens and closes again; answers how that went. */
async function opening(folder = household): Promise<string> {
  const host = composeHost(folder, realWorld());
  if (host.ok) await host.value.close();
  return codeOf(host);
}

type Opened = ReturnType<typeof open>;

async function start(host: Opened): Promise<void> {
  for (const [operation, request] of [['household.start', {}], ['car.add', { id: 'pip', name: 'Pip' }]] as const) {
    if (!(await host.call(operation, request)).ok) throw new Error(operation);
  }
}

const paper = (letter: string, bytes: number) => ({ name: `paper ${letter}`, base64: Buffer.alloc(bytes, letter).toString('base64') });

/** Fills the disk, all but some bytes. */
function fill(leave: number): void {
  writeFileSync(filler, '');
  const { bfree, bsize } = statfsSync(disk);
  writeFileSync(filler, Buffer.alloc(Math.max(0, bfree * bsize - leave)));
}

function unfinished(): readonly string[] {
  return readdirSync(disk, { recursive: true, encoding: 'utf8' }).filter((name) => /\.part$|unfinished|backups\/./.test(name));
}

async function examined(host: Opened): Promise<unknown> {
  const reply = (await host.call('household.examine', {})) as Result<{ entries: number; papers: number; faults: unknown[] }>;
  return reply.ok ? { entries: reply.value.entries, papers: reply.value.papers, faults: reply.value.faults } : codeOf(reply);
}

/** Keeps on changing until it is refused; answers how often it went and why it ended. */
async function changeUntilRefused(host: Opened): Promise<{ went: number; code: string }> {
  for (let went = 0; went < 2000; went += 1) {
    const reply = await host.call('car.change', { id: 'pip', description: `change ${went} ${'x'.repeat(60)}` });
    if (!reply.ok) return { went, code: codeOf(reply) };
  }
  return { went: 2000, code: 'never' };
}

const scenarios: Record<string, () => Promise<void>> = {
  'full while open': async () => {
    const host = open();
    await start(host);
    fill(400_000);
    came['changes'] = await changeUntilRefused(host);
    came['paper'] = codeOf(await host.call('paper.keep', paper('p', 200_000)));
    came['backup'] = codeOf(await host.call('backup.make', {}));
    came['sample'] = codeOf(await host.call('sample.open', {}));
    came['read'] = codeOf(await host.call('due.show', {}));
    came['unfinished'] = unfinished();
    came['examined'] = await examined(host);
    rmSync(filler);
    came['afterwards'] = [codeOf(await host.call('car.change', { id: 'pip', name: 'Pipkin' })), codeOf(await host.call('paper.keep', paper('p', 200_000))), codeOf(await host.call('backup.make', {}))];
    came['examined afterwards'] = await examined(host);
    await host.close();
  },
  'full at the start': async () => {
    const left: Record<string, string> = {};
    for (const kilobytes of [0, 4, 8, 12, 16, 24, 36, 48, 64, 96]) {
      fill(kilobytes * 1024);
      left[String(kilobytes)] = await opening();
      truncateSync(filler, 0);
      left[`${kilobytes}, with room again`] = await opening();
      rmSync(household, { recursive: true, force: true });
    }
    came['opening'] = left;
  },
  'full at the next start': async () => {
    const host = open();
    await start(host);
    await host.close();
    const codes: string[] = [];
    for (const kilobytes of [0, 16, 40]) {
      fill(kilobytes * 1024);
      codes.push(await opening());
    }
    came['opening'] = codes;
    rmSync(filler);
    came['examined afterwards'] = await examined(open());
  },
  'read-only': async () => {
    const host = open();
    await start(host);
    await host.close();
    execFileSync('mount', ['-o', 'remount,ro', disk]);
    came['opening'] = await opening();
    came['opening anew'] = await opening(join(disk, 'another'));
    execFileSync('mount', ['-o', 'remount,rw', disk]);
    came['examined afterwards'] = await examined(open());
  },
  'not permitted': async () => {
    // A process that may do everything is told by no permission; where the tests run as one, this one gives its powers up.
    if (process.getuid?.() === 0) {
      process.setgid?.(65_534);
      process.setuid?.(65_534);
    }
    const host = open();
    await start(host);
    chmodSync(join(household, 'papers'), 0o500);
    chmodSync(join(household, 'backups'), 0o500);
    came['paper'] = codeOf(await host.call('paper.keep', paper('p', 2000)));
    came['backup'] = codeOf(await host.call('backup.make', {}));
    came['examined'] = await examined(host);
    chmodSync(join(household, 'papers'), 0o700);
    came['paper afterwards'] = codeOf(await host.call('paper.keep', paper('p', 2000)));
    await host.close();
    chmodSync(join(household, 'household.sqlite'), 0o400);
    came['opening a file not to be written'] = await opening();
    chmodSync(join(household, 'household.sqlite'), 0o000);
    came['opening a file not to be read'] = await opening();
    chmodSync(join(household, 'household.sqlite'), 0o600);
    chmodSync(disk, 0o500);
    came['opening anew'] = await opening(join(disk, 'another'));
    chmodSync(disk, 0o700);
    const unopened = Object.assign(new Error('unable to open database file'), { code: 'SQLITE_CANTOPEN' });
    chmodSync(household, 0o500);
    came['unopened'] = [codeOf(storeRefusal(unopened, join(household, 'household.sqlite'))), codeOf(storeRefusal(unopened, join(disk, 'nowhere', 'household.sqlite')))];
    chmodSync(household, 0o700);
    came['unopened otherwise'] = codeOf(storeRefusal(unopened, join(household, 'household.sqlite')));
    came['examined afterwards'] = await examined(open());
  },
  'files may not grow': async () => {
    const host = open();
    await start(host);
    came['changes'] = await changeUntilRefused(host);
    came['paper'] = codeOf(await host.call('paper.keep', paper('p', 2_000_000)));
    came['read'] = codeOf(await host.call('due.show', {}));
    came['unfinished'] = unfinished();
    came['examined'] = await examined(host);
  },
};

await scenarios[scenario]?.();
process.stdout.write(JSON.stringify(came));
process.exit();
