import type { Frame, Page, Request, Route } from 'playwright-core';
import type { WindowSetting } from './window-setting.ts';

/** Answers one request of the page as the program says; nothing at all goes out to the network. */
export async function answerRoute({ program, window, notes, addresses }: WindowSetting, page: Page, loading: { readonly byProgram: boolean }, route: Route): Promise<void> {
  const request = route.request();
  const address = addresses.asProgram(request.url());
  if (request.isNavigationRequest() && !loading.byProgram) {
    const isMainFrame = frameOf(request) === page.mainFrame();
    const events = isMainFrame ? ['will-frame-navigate', 'will-navigate'] : ['will-frame-navigate'];
    if (!(await program.ask('may-navigate', window, events, { url: address, isMainFrame }))) return route.abort('aborted');
  }
  if (!(await program.ask('lets', address, request.method(), request.resourceType()))) return route.abort('blockedbyclient');
  if (address !== request.url()) return route.continue();
  notes.outside.push(address);
  return route.abort('internetdisconnected');
}

/** The frame that a request is for; null for one that is not there yet. */
function frameOf(request: Request): Frame | null {
  try {
    return request.frame();
  } catch {
    return null;
  }
}
