import { expect, test, vi } from 'vitest';
import { handlers } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);
const { serveContract } = await import('../../electron/host/serve-contract.ts');

test('our own bug reaches the page as a note’s number, and nothing of it more', async () => {
  const noted = vi.spyOn(console, 'error').mockReturnValue();
  const contents = { once: vi.fn(), send: vi.fn() } as never;
  const served = serveContract({ call: () => Promise.reject(new Error('at /home/pip/secret.ts:1')), onPush: () => () => undefined, close: () => Promise.resolve() }, ['yard.show']);
  served.add(contents);
  const reply = await handlers.get('operation:yard.show')?.({ sender: contents, senderFrame: { url: 'trunnion://app/', parent: null } }, {});
  expect(reply).toEqual({ ok: false, refusal: { code: 'internal', values: { ref: expect.stringMatching(/^[a-z0-9]{6}$/) as string } } });
  expect(noted).toHaveBeenCalledOnce();
  await served.close();
});
