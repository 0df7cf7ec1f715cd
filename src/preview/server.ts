import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { answerBench, type BenchReply } from './bench/answer.ts';
import type { PictureBench } from './bench/bench.ts';
import { benchStyle } from './bench/bench-style.ts';
import { followed, listOfPages, unmade } from './pages.ts';
import { panelStyle } from './panel-style.ts';
import { benchFolder, hostedFile } from './paths.ts';
import type { News, SiteUnderPen } from './site-under-pen.ts';

/** Only programs on this machine reach it. */
const loopback = '127.0.0.1';

/** A preview that is served. */
interface PreviewServer {
  readonly port: number;
  /** Tells every page that is open what there is to tell of it. */
  readonly tell: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A page that is open, and how it is told. */
interface Listener {
  readonly page: string;
  readonly response: ServerResponse;
}

/**
 * Serves a site on the loopback address alone. Nothing is read from disk by what a browser asks for: an address
 * names a file that was made, or nothing. Throws what the system refuses, such as a port in use.
 *
 * @param scripts the browser's parts
 * @param port 0 for any that is free
 */
export async function servePreview(
  site: SiteUnderPen,
  bench: PictureBench,
  scripts: { readonly follow: string; readonly bench: string },
  port: number,
): Promise<PreviewServer> {
  const listeners = new Set<Listener>();
  const own = new Map([
    [hostedFile('follow.js'), scripts.follow],
    [hostedFile('panel.css'), panelStyle],
    [hostedFile('bench.js'), scripts.bench],
    [hostedFile('bench.css'), benchStyle],
    // A device keeps what a worker gave it; a page under the pen must never be an old one.
    ['/assets/offline.js', ''],
  ]);
  const server = createServer((request, response) => {
    answer(request, response).catch((error: unknown) => {
      send(response, 500, 'text/plain', error instanceof Error ? error.message : String(error));
    });
  });
  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const url = addressOf(request, portOf(server));
    if (typeof url === 'number') return send(response, url, 'text/plain', refusals[url] ?? '');
    if (url.pathname === hostedFile('news')) return listen(url.searchParams.get('page') ?? '', response);
    if (url.pathname.startsWith(benchFolder)) {
      const { status, type, body }: BenchReply = await answerBench(request, url, bench);
      return send(response, status, type, body);
    }
    const ours = own.get(url.pathname);
    if (ours !== undefined) return send(response, 200, typeOf(url.pathname), ours);
    if (url.pathname === '/') return send(response, 200, 'text/html', listOfPages(site.pages()));
    const path = pathOf(url);
    const bytes = path === null ? null : await site.file(path);
    if (path?.endsWith('.html')) {
      const news = await site.news(path);
      if (bytes) return send(response, 200, 'text/html', followed(Buffer.from(bytes).toString(), path, news));
      if (news.told !== '') return send(response, 200, 'text/html', unmade(path, news));
    }
    if (path === null || !bytes) return send(response, 404, 'text/plain', 'the site has nothing there');
    send(response, 200, typeOf(path), bytes);
  };
  const listen = async (page: string, response: ServerResponse): Promise<void> => {
    response.writeHead(200, { ...headers, 'Content-Type': 'text/event-stream' });
    const listener = { page, response };
    listeners.add(listener);
    response.on('close', () => listeners.delete(listener));
    write(response, await site.news(page));
  };
  await listening(server, port);
  return {
    port: portOf(server),
    tell: async () => {
      for (const { page, response } of listeners) write(response, await site.news(page));
    },
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}

function write(response: ServerResponse, news: News): void {
  response.write(`data: ${JSON.stringify(news)}\n\n`);
}

function listening(server: Server, port: number): Promise<void> {
  return new Promise((ready, refused) => {
    server.once('error', refused);
    server.listen(port, loopback, () => ready());
  });
}

function portOf(server: Server): number {
  const address: AddressInfo | string | null = server.address();
  return typeof address === 'object' && address ? address.port : 0;
}

const headers = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
} as const;

const refusals: { readonly [status: number]: string } = {
  400: 'this is no address',
  403: 'only the pages of this preview may write',
  405: 'a preview is only read',
  421: 'a preview answers only under localhost, so that no other site can read it through a name of its own',
};

/** The address that a request asks for, or the status that refuses it. */
function addressOf({ method, url, headers: { host, origin } }: IncomingMessage, port: number): URL | number {
  const address = URL.parse(url ?? '', `http://${loopback}:${port}`);
  const writes = method === 'POST' && address?.pathname.startsWith(benchFolder);
  if (method !== 'GET' && method !== 'HEAD' && !writes) return 405;
  if (!['127.0.0.1', 'localhost'].some((name) => host === `${name}:${port}`)) return 421;
  // A page of another site can send here, though it cannot read the answer; the browser says where it comes from.
  if (writes && origin !== `http://${host}`) return 403;
  return address ?? 400;
}

/** The path from the site's root; `null` for what is none. A folder stands for its first page. */
function pathOf({ pathname }: URL): string | null {
  try {
    const path = decodeURIComponent(pathname).slice(1);
    return path.endsWith('/') ? `${path}index.html` : path;
  } catch {
    return null;
  }
}

const types: { readonly [ending: string]: string } = {
  html: 'text/html',
  css: 'text/css',
  js: 'text/javascript',
  json: 'application/json',
  svg: 'image/svg+xml',
  png: 'image/png',
  jpg: 'image/jpeg',
  webp: 'image/webp',
  pdf: 'application/pdf',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv',
  webmanifest: 'application/manifest+json',
};

function typeOf(path: string): string {
  return types[/\.([a-z]+)$/.exec(path)?.[1] ?? ''] ?? 'application/octet-stream';
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  if (response.headersSent) {
    response.end();
    return;
  }
  const textual = /^(?:text|application\/(?:json|manifest))|svg/.test(type) ? '; charset=utf-8' : '';
  response.writeHead(status, { ...headers, 'Content-Type': `${type}${textual}` });
  response.end(body);
}
