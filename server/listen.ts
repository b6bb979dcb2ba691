/** The socket: on this computer's own address alone. */
import type { Server } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { ok, type Problem, type Result, refuse } from '../engine/quantity/types.ts';
import { refusal } from './answer.ts';
import { HEADERS } from './guard.ts';

/** Not reachable from another computer. */
const LOOPBACK = '127.0.0.1';
export const USUAL_PORT = 7373;

/** Ports looked at after the first. */
const MORE = 50;

/** Listens on `first`, or on the next port that is free where it is taken. */
export async function listen(server: Server, first = USUAL_PORT): Promise<Result<number>> {
  const last = Math.min(first + MORE, 65_535);
  for (let port = first; port <= last; port++) {
    const tried = await tryPort(server, port);
    if (tried !== 'taken') return tried;
  }
  const message = `The ports from ${first} to ${last} are all taken by other programs; choose another with --port.`;
  return refuse({ code: 'out-of-domain', message, where: 'port' });
}

function tryPort(server: Server, port: number): Promise<Result<number> | 'taken'> {
  return new Promise((done, fail) => {
    const failed = (fault: NodeJS.ErrnoException) => {
      if (fault.code === 'EADDRINUSE') done('taken');
      else if (fault.code === 'EACCES') done(refuse(notAllowed(port)));
      else fail(fault);
    };
    server.once('error', failed);
    server.listen({ port, host: LOOPBACK, exclusive: true }, () => {
      server.off('error', failed);
      done(ok((server.address() as AddressInfo).port));
    });
  });
}

const notAllowed = (port: number): Problem => ({
  code: 'out-of-domain',
  message: `This system does not let you use port ${port}; choose one from 1024 to 65535.`,
  where: 'port',
});

/** For bytes that are no HTTP: there is no request to route. */
export function refuseNonsense(_fault: Error, socket: Socket): void {
  if (!socket.writable) return;
  const { headers, body } = refusal(400, 'malformed', 'This is not a request that Fettle can read.');
  const lines = Object.entries({
    ...HEADERS,
    ...headers,
    'content-length': String(body.length),
    connection: 'close',
  });
  socket.end(
    `HTTP/1.1 400 Bad Request\r\n${lines.map(([name, value]) => `${name}: ${value}\r\n`).join('')}\r\n${body}`,
  );
}
