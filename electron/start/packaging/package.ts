import path from 'node:path';
import { parseArgs } from 'node:util';
import { PROJECT } from '../bundle.ts';
import { makePackage } from './make-package.ts';

const HELP = `npm run package [-- options]

  --kind KIND      one kind in place of those of the settings (dir, tar.gz, AppImage, deb; dmg; nsis); may be given again
  --electron PLACE Electron's program for this machine, unpacked or as its ZIP, in place of fetching it
  --help           this text
`;

const say = (line: string): void => void process.stderr.write(`${line}\n`);

try {
  const options = { kind: { type: 'string', multiple: true }, electron: { type: 'string' }, help: { type: 'boolean', short: 'h' } } as const;
  const { values } = parseArgs({ options, allowPositionals: false });
  if (values.help === true) process.stdout.write(HELP);
  else {
    const electronDist = values.electron === undefined ? null : path.resolve(process.env['INIT_CWD'] ?? '', values.electron);
    const made = await makePackage({ project: PROJECT, built: path.join(PROJECT, 'dist'), out: path.join(PROJECT, 'dist', 'package'), electronDist, kinds: values.kind ?? [] });
    say(`Packaged, in dist/package/made${made.length === 0 ? '' : `: ${made.map((file) => path.basename(file)).join(', ')}`}.`);
  }
} catch (error) {
  say(`Nothing was packaged to its end: ${error instanceof Error ? error.message : String(error)}`);
  // At once: what the packager has still in hand ends on its own with 0, and takes this status along.
  process.exit(1);
}
