import type { ServerResponse } from 'node:http';
import type { Host } from '../../shared-core/contract/host.ts';
import { COMMON_HEADERS, NOTHING_POLICY } from './page-policy.ts';

/** What may wait for a page that does not read, in bytes, before it is dropped; it connects again by itself. */
const MOST_WAITING = 1_000_000;

/** The pages that listen to what the host tells by itself. */
export interface PushStreams {
  open(response: ServerResponse): void;
  close(): void;
}

/** Server-sent events: one message for each push, and a heartbeat by which either side learns that the other has gone. */
export function pushStreams(host: Host, heartbeatMs: number): PushStreams {
  const open = new Set<ServerResponse>();
  const send = (text: string) => {
    for (const response of open) if (response.writableLength > MOST_WAITING) response.destroy(); else response.write(text);
  };
  const stopHearing = host.onPush((push) => send(`data: ${JSON.stringify(push)}\n\n`));
  const heartbeat = setInterval(() => send(': here\n\n'), heartbeatMs);
  return {
    open(response) {
      response.writeHead(200, { ...COMMON_HEADERS, 'content-security-policy': NOTHING_POLICY, 'content-type': 'text/event-stream; charset=utf-8' });
      response.write('retry: 1000\n\n');
      open.add(response);
      response.on('close', () => open.delete(response));
    },
    close() {
      stopHearing();
      clearInterval(heartbeat);
      for (const response of open) response.end();
    },
  };
}
