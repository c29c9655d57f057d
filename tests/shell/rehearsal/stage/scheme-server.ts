import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Answered } from '../program/protocol.ts';
import type { TwoWay } from '../two-way.ts';
import { addressesAt, type Addresses } from './addresses.ts';

/** Where the stage shows what the program serves under its own schemes. */
export interface SchemeServer {
  readonly addresses: Addresses;
  close(): void;
}

/** Serves on this machine what the program answers for its schemes. A plain server, as downloads go past what a page's requests pass. */
export async function serveSchemes(program: TwoWay): Promise<SchemeServer> {
  const server: Server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const addresses = addressesAt((server.address() as AddressInfo).port);
  server.on('request', (request, response) => {
    const address = addresses.asProgram(`http://${request.headers.host ?? ''}${request.url ?? ''}`);
    const headers = Object.fromEntries(Object.entries(request.headers).map(([name, value]) => [name, String(value)]));
    program.ask('answer', address, request.method ?? 'GET', headers).then(
      (raw) => {
        const answer = raw as Answered | null;
        response.writeHead(answer?.status ?? 502, answer?.headers).end(answer?.body);
      },
      () => response.destroy(),
    );
  });
  return {
    addresses,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
