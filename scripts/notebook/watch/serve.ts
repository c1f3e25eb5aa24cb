import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Trouble } from '../troubles.ts';
import { SHELL, SHELL_POLICY } from './shell-page.ts';

/** What a watched notebook stands at. */
export interface WatchState {
  /** counts the pages drawn */
  version: number;
  /** `my-page.html`; null before the first page */
  file: string | null;
  title: string;
  /** what is going on, a sentence */
  line: string;
  troubles: readonly Trouble[];
}

export interface Served {
  port: number;
  /** tell all open windows */
  show(state: WatchState, html?: string): void;
  close(): Promise<void>;
}

const HOST = '127.0.0.1';
const HEADERS = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/**
 * Serve one page on the loopback address, and nothing else: no file is read by its address. A request that names another host than
 * this one comes from a foreign page whose name was pointed here, and is refused.
 *
 * @param port  0: any that is free
 * @throws      the system's error where the port is taken
 */
export async function serve(port: number): Promise<Served> {
  let state: WatchState = { version: 0, file: null, title: '', line: 'The season is being read.', troubles: [] };
  let page = '';
  const open = new Set<ServerResponse>();
  const own = () => {
    const { port: at } = server.address() as AddressInfo;
    return [`${HOST}:${at}`, `localhost:${at}`];
  };
  const send = (to: ServerResponse) => to.write(`data: ${JSON.stringify(state)}\n\n`);

  const answer = (request: IncomingMessage, response: ServerResponse) => {
    const reply = (status: number, text: string, headers: Record<string, string> = {}) => {
      response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8', ...headers });
      response.end(request.method === 'HEAD' ? undefined : text);
    };
    if (!own().includes(request.headers.host ?? '')) return reply(421, `This is ${own()[0]}.\n`);
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return reply(405, 'Only reading.\n', { Allow: 'GET, HEAD' });
    const path = (request.url ?? '/').split('?')[0];
    const html = { 'Content-Type': 'text/html; charset=utf-8' };
    if (path === '/') return reply(200, SHELL, { ...html, 'Content-Security-Policy': SHELL_POLICY });
    if (path === '/changes') {
      response.writeHead(200, { ...HEADERS, 'Content-Type': 'text/event-stream' });
      if (request.method === 'HEAD') return response.end();
      open.add(response);
      request.once('close', () => open.delete(response));
      return send(response);
    }
    // The page's own policy stands in its head.
    if (state.file !== null && path === `/${state.file}`)
      return reply(200, page, { ...html, 'Content-Security-Policy': "frame-ancestors 'self'" });
    return reply(404, 'There is one page here: /\n');
  };

  const server: Server = createServer(answer);
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(port, HOST, () => {
      server.off('error', fail);
      done();
    });
  });
  return {
    port: (server.address() as AddressInfo).port,
    show(next, html) {
      state = next;
      if (html !== undefined) page = html;
      for (const response of open) send(response);
    },
    close: () =>
      new Promise((done) => {
        for (const response of open) response.end();
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}
