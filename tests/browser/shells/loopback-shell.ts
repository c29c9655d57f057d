import { launchChromium } from '../launch-chromium.ts';
import { serveHousehold } from '../serve-household.ts';
import type { Shell, ShellOptions } from './shell.ts';

/** The dashboard as the real command serves it to a browser. */
export async function loopbackShell({ household, on, context, onPage }: ShellOptions): Promise<Shell> {
  const served = await serveHousehold(household, on);
  const browser = await launchChromium();
  const page = await (await browser.newContext(context)).newPage();
  onPage(page);
  let runs = true;
  await page.goto(served.link);
  return {
    page,
    async alter(operation, change) {
      const address = `**/operations/${operation}`;
      await page.route(address, async (route) => {
        const response = await route.fetch();
        await route.fulfill({ response, json: await change(await response.json()) });
      });
      return () => page.unroute(address);
    },
    stop: async () => {
      await browser.close();
      if (runs) await served.stop();
    },
    kill: () => {
      runs = false;
      return served.kill();
    },
    pageOutlivesProgram: true,
  };
}
