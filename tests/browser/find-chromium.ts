import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';

const MACHINES_OWN = '/usr/bin/chromium';
/** What makes the packaged Chromium bring its own libraries; read when the package is imported. */
const BRING_LIBRARIES = { AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' };

/** A Chromium to run tests in: its program and what its environment must hold. */
export interface FoundChromium {
  readonly from: 'machine' | 'package';
  readonly program: string;
  readonly env: Readonly<Record<string, string>>;
}

/**
 * The Chromiums that can be had here, the machine's own first, else the one inside an npm package (Linux on x64).
 * TEST_CHROMIUM=package leaves the machine's own out.
 */
export async function findChromium(): Promise<FoundChromium | null> {
  if (existsSync(MACHINES_OWN) && process.env['TEST_CHROMIUM'] !== 'package') return { from: 'machine', program: MACHINES_OWN, env: {} };
  return process.platform === 'linux' && process.arch === 'x64' ? unpackedChromium() : null;
}

/** Unpacked once for each version into a folder of its own, which takes its name only when it is whole. */
async function unpackedChromium(): Promise<FoundChromium> {
  const { version } = createRequire(import.meta.url)(manifestOfPackage()) as { version: string };
  const home = path.join(os.tmpdir(), `chromium-for-tests-${version}-${os.userInfo().uid}`);
  if (!existsSync(path.join(home, 'whole'))) await unpackInto(home);
  return {
    from: 'package',
    program: path.join(home, 'chromium'),
    env: { LD_LIBRARY_PATH: path.join(home, 'al2023', 'lib'), FONTCONFIG_PATH: path.join(home, 'fonts') },
  };
}

function manifestOfPackage(): string {
  return new URL('../../node_modules/@sparticuz/chromium/package.json', import.meta.url).pathname;
}

async function unpackInto(home: string): Promise<void> {
  const draft = `${home}.${process.pid}`;
  mkdirSync(draft, { recursive: true, mode: 0o700 });
  // The package unpacks into the folder for temporary files, under fixed names.
  const before = { TMPDIR: process.env['TMPDIR'], AWS_EXECUTION_ENV: process.env['AWS_EXECUTION_ENV'] };
  Object.assign(process.env, BRING_LIBRARIES, { TMPDIR: draft });
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    await packaged.executablePath();
  } finally {
    for (const name of Object.keys(before)) delete process.env[name];
    Object.assign(process.env, Object.fromEntries(Object.entries(before).filter(([, value]) => value !== undefined)));
  }
  writeFileSync(path.join(draft, 'fonts', 'fonts.conf'), fontsConf(home));
  writeFileSync(path.join(draft, 'whole'), '');
  takeName(draft, home);
}

/** The package looks for its fonts in places of its own; without any font at all Chromium dies at the first field it draws. */
function fontsConf(home: string): string {
  const folders = [path.join(home, 'fonts', 'fonts'), '/usr/share/fonts'].map((folder) => `<dir>${folder}</dir>`).join('');
  return `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig>${folders}<cachedir>${path.join(home, 'fonts-cache')}</cachedir></fontconfig>\n`;
}

/** Another test may have been first: then its folder stands and ours goes. */
function takeName(draft: string, home: string): void {
  try {
    renameSync(draft, home);
  } catch {
    rmSync(draft, { recursive: true });
  }
}
