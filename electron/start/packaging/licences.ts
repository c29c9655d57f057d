import path from 'node:path';
import { buildWhenStale } from '../build-when-stale.ts';
import { PROJECT } from '../bundle.ts';
import { WINDOW_BUILD } from '../what-is-built.ts';
import { writeLicences } from './write-licences.ts';

const say = (line: string): void => void process.stderr.write(`${line}\n`);

await buildWhenStale(PROJECT, WINDOW_BUILD, say);
const file = path.join(PROJECT, 'dist', 'licences.txt');
say(`${await writeLicences(PROJECT, path.join(PROJECT, 'dist', 'main'), file)} parts and their licences: ${file}`);
