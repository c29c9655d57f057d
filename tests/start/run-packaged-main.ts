import { registerHooks } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import process from 'node:process';

// Run by the pinned Node as a program of its own: starts a packaged main program, unpacked, with a stand-in for the module `electron` that takes
// whatever it is told, and asks it what needs each of its libraries. Says on standard output what was answered, as JSON.
const [app = '', household = ''] = process.argv.slice(2);

type Handler = (event: unknown, request: unknown) => Promise<{ readonly ok: boolean; readonly value?: unknown; readonly refusal?: unknown }>;
const handlers = new Map<string, Handler>();

/** Answers anything: called, constructed, read or waited for. */
const anything: unknown = new Proxy(function () { /* never run itself */ }, {
  get: (_target, name) => (name === 'then' || name === 'prototype' ? undefined : name === Symbol.toPrimitive ? () => 1 : name === Symbol.iterator ? () => [][Symbol.iterator]() : anything),
  apply: () => anything,
  construct: () => anything as object,
});
const special = (members: Record<string, unknown>) => new Proxy(members, { get: (target, name) => target[String(name)] ?? anything });

const ready = Promise.withResolvers<void>();
const module: Readonly<Record<string, unknown>> = {
  app: special({ isPackaged: true, commandLine: { hasSwitch: () => false }, getPath: (name: string) => path.join(household, '..', name), getVersion: () => '0.0.0', getAppPath: () => app, whenReady: () => (ready.resolve(), Promise.resolve()), exit: (status: number) => process.exit(status) }),
  ipcMain: special({ handle: (channel: string, handler: Handler) => handlers.set(channel.replace(/^operation:/, ''), handler) }),
  screen: special({ getAllDisplays: () => [] }),
  dialog: special({ showErrorBox: (_title: string, text: string) => process.stderr.write(`${text}\n`) }),
};
const names = ['BrowserWindow', 'Menu', 'MenuItem', 'Notification', 'Tray', 'app', 'clipboard', 'dialog', 'ipcMain', 'nativeImage', 'nativeTheme', 'net', 'powerMonitor', 'protocol', 'screen', 'session', 'shell', 'webContents'];
Object.assign(globalThis, { standInForElectron: Object.fromEntries(names.map((name) => [name, module[name] ?? anything])) });
const source = `const all = globalThis.standInForElectron;${names.map((name) => `export const ${name} = all.${name};`).join('')}export default all;`;
registerHooks({ resolve: (place, context, next) => (place === 'electron' ? { url: `data:text/javascript,${encodeURIComponent(source)}`, shortCircuit: true } : next(place, context)) });

process.env['TRUNNION_HOUSEHOLD'] = household;
Object.assign(process, { resourcesPath: path.dirname(app) });
process.argv.splice(1, process.argv.length - 1);
await import(pathToFileURL(path.join(app, 'dist', 'main', 'main.js')).href);
await ready.promise;
while (!handlers.has('household.state')) await new Promise((resolve) => setTimeout(resolve, 20));

const answers: Record<string, unknown> = {};
async function ask(operation: string, request: unknown): Promise<Record<string, unknown>> {
  // The window that asks is the very one that was opened, as far as this stand-in can tell.
  const answer = await handlers.get(operation)?.({ sender: anything, senderFrame: { url: 'trunnion://app/', parent: null } }, request);
  answers[operation] = answer?.ok === true ? true : answer;
  return (answer?.value ?? {}) as Record<string, unknown>;
}

await ask('sample.open', {});
await ask('order.propose', {});
await ask('plan.propose', {});
await ask('calendar.write', {});
const preview = await ask('pack.preview', { car: 'pip' });
const page = await ask('pack.preview-page', { preview: preview['preview'], page: 1 });
answers['webp'] = typeof page['webp'] === 'string' && page['webp'].startsWith('UklGR');
await ask('sample.leave', {});
process.stdout.write(`${JSON.stringify(answers)}\n`);
process.exit(0);
