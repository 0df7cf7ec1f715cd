import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { extname, join, normalize } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

/** A static host on this machine that a test can break. */
export interface Host {
  /** Address of the site, below a path of its own: `http://127.0.0.1:41234/shop/guides/`. */
  readonly address: string;
  /** What it serves, and how it fails. */
  readonly serve: {
    folder: string;
    /** Files that come from another folder: a deployment that is half done. */
    mixed: ReadonlyMap<string, string>;
    /** Requests that are still answered; after them every connection breaks. */
    left: number;
  };
  /** What was asked for, by path from the site's root. */
  readonly asked: string[];
  readonly stop: () => Promise<void>;
}

/** Starts it on any free port of the loopback interface. */
export async function startHost(folder: string): Promise<Host> {
  const base = '/shop/guides/';
  const serve: Host['serve'] = { folder, mixed: new Map(), left: Number.POSITIVE_INFINITY };
  const asked: string[] = [];
  const sockets = new Set<Socket>();
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://127.0.0.1').pathname);
    const file =
      normalize(path.slice(base.length)) === '.' ? 'index.html' : normalize(path.slice(base.length));
    asked.push(file);
    serve.left -= 1;
    if (serve.left < 0) {
      request.socket.destroy();
      return;
    }
    const bytes = path.startsWith(base)
      ? await readFile(join(serve.mixed.get(file) ?? serve.folder, file)).catch(() => null)
      : null;
    response.writeHead(bytes ? 200 : 404, { 'content-type': types[extname(file)] ?? 'text/plain' });
    response.end(bytes ?? 'not here');
  });
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${base}`,
    serve,
    asked,
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        for (const socket of sockets) socket.destroy();
      }),
  };
}
