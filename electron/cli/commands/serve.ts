import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { operationNames } from '../../../shared-core/contract/contract.ts';
import { refuse } from '../../../shared-core/result/result.ts';
import { paperFinder } from '../../host/find-paper.ts';
import { sweepHandedFolders } from '../../host/handed-folders.ts';
import { stopJobs } from '../../host/running-jobs.ts';
import { serveLoopback } from '../../loopback/serve-loopback.ts';
import { untilStopped } from '../../loopback/until-stopped.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

const PAGE = process.env['TRUNNION_PAGE'] ?? fileURLToPath(new URL('../../../dist/renderer/', import.meta.url));

/** The dashboard on 127.0.0.1 for one browser, until Ctrl-C. */
export const serveCommand: Command = {
  name: 'serve',
  does: 'serves the dashboard on 127.0.0.1 until it is stopped (Ctrl-C)',
  usage: ['serve'],
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('serve takes no further words.');
    if (!existsSync(join(PAGE, 'index.html'))) return refused(refuse('page-not-built').refusal);
    sweepHandedFolders();
    const { composed, folder } = await input.host();
    const loopback = await serveLoopback({ host: composed, operations: operationNames, paper: paperFinder(composed), page: PAGE });
    const link = loopback.freshLink();
    process.stdout.write(input.json ? `${JSON.stringify({ url: link, port: loopback.port, household: folder })}\n` : `The dashboard is at ${link}\nThe link lets one browser in, once. Ctrl-C stops the program.\n`);
    await untilStopped();
    stopJobs(composed.context);
    await loopback.close();
    return stopped(input.json);
  },
};

/** With --json the one value is the address, printed when the server stood; nothing may follow it. */
function stopped(json: boolean) {
  return json ? ({ kind: 'silent' } as const) : done(null, 'Stopped; everything entered is kept.');
}
