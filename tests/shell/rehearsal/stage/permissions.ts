import type { CDPSession } from 'playwright-core';
import type { WindowSetting } from './window-setting.ts';

/** What a page may ask for, by the name the program knows it by and the one Chromium does. */
const PERMISSIONS = { geolocation: 'geolocation', notifications: 'notifications', 'clipboard-read': 'clipboard-read', midi: 'midi', 'idle-detection': 'idle-detection', media: 'camera' } as const;

/** Sets for a page what its program grants, before it is loaded; a page that is granted the place gets one. */
export async function grantAsTold({ browser, program, window, addresses }: WindowSetting, cdp: CDPSession, address: string): Promise<void> {
  const { targetInfo } = await cdp.send('Target.getTargetInfo');
  const whole = await browser.newBrowserCDPSession();
  const origin = new URL(addresses.onStage(address)).origin;
  for (const [asked, name] of Object.entries(PERMISSIONS)) {
    const setting = (await program.ask('grants', window, asked, `${new URL(address).protocol}//${new URL(address).host}`)) === true ? 'granted' : 'denied';
    await whole.send('Browser.setPermission', { permission: { name }, setting, origin, ...(targetInfo.browserContextId === undefined ? {} : { browserContextId: targetInfo.browserContextId }) });
  }
  await cdp.send('Emulation.setGeolocationOverride', { latitude: 51, longitude: 0, accuracy: 10 });
  await whole.detach();
}
