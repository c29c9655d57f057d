import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** What marks the place of the fuses in Electron's program, then the version of the wire, how many there are, and each: all as Electron ships them. */
const SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const AS_SHIPPED = '101100010';

/**
 * Lays out a stand-in for Electron's distribution as it lies unpacked on Linux: a program that cannot run, with the wire of fuses in it, and the
 * files beside it that a packager looks for. It shows what the packager does with a distribution; nothing of it is Electron's.
 */
export function layOutElectron(folder: string): void {
  for (const place of ['locales', 'resources']) mkdirSync(path.join(folder, place), { recursive: true });
  const wire = Buffer.concat([Buffer.from(SENTINEL), Buffer.from([1, AS_SHIPPED.length]), Buffer.from(AS_SHIPPED)]);
  const program = path.join(folder, 'electron');
  writeFileSync(program, Buffer.concat([Buffer.from('#!/bin/sh\nexit 70\n'), Buffer.alloc(4096), wire, Buffer.alloc(4096)]));
  chmodSync(program, 0o755);
  for (const file of ['chrome_crashpad_handler', 'chrome-sandbox']) writeFileSync(path.join(folder, file), '', { mode: 0o755 });
  for (const file of ['icudtl.dat', 'resources.pak', 'v8_context_snapshot.bin', 'libffmpeg.so', 'LICENSE', 'LICENSES.chromium.html', 'version']) writeFileSync(path.join(folder, file), `stand-in for ${file}\n`);
  for (const language of ['en-GB', 'en-US', 'de', 'fr']) writeFileSync(path.join(folder, 'locales', `${language}.pak`), '');
}

/** Lays out a stand-in for the packager's own 7-Zip, which it would fetch: gzip under that name, for the one way it is asked here. */
export function layOutGzip(file: string): string {
  writeFileSync(file, '#!/bin/sh\nfor word; do out=$tar; tar=$word; done\ncase "$out" in *.tar.gz) exec gzip -n -6 <"$tar" >"$out";; *) echo "not asked for: $*" >&2; exit 2;; esac\n', { mode: 0o755 });
  return file;
}

/** Lays out a stand-in for `fpm`, which makes a `deb`: it notes in a file, word by word, what it was asked for. */
export function layOutFpm(file: string, notes: string): string {
  writeFileSync(file, `#!/bin/sh\nprintf '%s\\n' "$@" >'${notes}'\nfor word; do [ "$before" = --package ] && echo stand-in >"$word"; before=$word; done\nexit 0\n`, { mode: 0o755 });
  return file;
}

/** Lays out stand-ins for the tools that make an AppImage: what is put into one is copied into a folder. */
export function layOutAppImageTools(folder: string, copy: string): string {
  for (const place of ['runtimes', 'lib/x64']) mkdirSync(path.join(folder, place), { recursive: true });
  writeFileSync(path.join(folder, 'mksquashfs'), `#!/bin/sh\ncp -a "$1" '${copy}' && echo stand-in >"$2"\n`, { mode: 0o755 });
  writeFileSync(path.join(folder, 'desktop-file-validate'), '#!/bin/sh\nexit 0\n', { mode: 0o755 });
  writeFileSync(path.join(folder, 'runtimes', 'runtime-x64'), 'stand-in');
  return folder;
}
