import { launchStage } from '../../shell/rehearsal/launch-stage.ts';
import { rehearse } from '../../shell/rehearsal/rehearse.ts';
import type { Shell, ShellOptions } from './shell.ts';

/** The window: its real main and preload programs under Node, its page in a real Chromium (tests/shell/rehearsal). */
export async function rehearsalShell({ household, on, context, onPage }: ShellOptions): Promise<Shell> {
  const browser = await launchStage();
  const rehearsal = rehearse({ browser, args: ['--household', household, '--on', on], context, onPage });
  const page = await rehearsal.page().catch(async (error: unknown) => {
    await browser.close();
    throw error;
  });
  return {
    page,
    alter: (operation, change) => Promise.resolve(rehearsal.alter(`operation:${operation}`, change)),
    stop: async () => {
      await rehearsal.stop();
      await browser.close();
    },
    kill: rehearsal.kill,
    pageOutlivesProgram: false,
  };
}
