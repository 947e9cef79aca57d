import { readdir, readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, relative, sep } from 'node:path';

/** This computer alone: no other reaches it. */
const host = '127.0.0.1';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** Nothing from elsewhere, nothing sent anywhere, no code from text; workers start from the page's own script. */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' blob: data:",
  'worker-src blob:',
  "connect-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const headers = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
};

interface PageFile {
  readonly type: string;
  readonly content: Buffer;
}

/**
 * The files of the built page by the path that asks for each, read once: a request names one of them and leads nowhere
 * else on the disk. Links are left out, since they could.
 */
async function filesOf(folder: string): Promise<ReadonlyMap<string, PageFile>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = new Map<string, PageFile>();
  for (const entry of entries.filter((one) => one.isFile())) {
    const path = join(entry.parentPath, entry.name);
    const type = types[extname(path)] ?? 'application/octet-stream';
    files.set(`/${relative(folder, path).split(sep).join('/')}`, { type, content: await readFile(path) });
  }
  const index = files.get('/index.html');
  if (index !== undefined) files.set('/', index);
  return files;
}

function refuse(response: ServerResponse, status: number, words: string): void {
  response.writeHead(status, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' }).end(`${words}\n`);
}

/** A page elsewhere could point its own name at this computer: only requests by the address itself are answered. */
const isOurs = ({ headers: asked }: IncomingMessage, port: number) =>
  asked.host === `${host}:${port}` || asked.host === `localhost:${port}`;

function answer(
  files: ReadonlyMap<string, PageFile>,
  request: IncomingMessage,
  response: ServerResponse,
): void {
  const port = request.socket.localPort ?? 0;
  if (!isOurs(request, port)) return refuse(response, 403, 'Only this computer may ask.');
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(response, 405, 'Nothing can be sent here.');
  const file = files.get((request.url ?? '/').replace(/[?#].*$/s, ''));
  if (file === undefined) return refuse(response, 404, 'There is no such file.');
  response.writeHead(200, {
    ...headers,
    'Content-Type': file.type,
    'Content-Length': file.content.length,
  });
  response.end(request.method === 'HEAD' ? undefined : file.content);
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen({ host, port }, () => {
      server.off('error', failed);
      done((server.address() as AddressInfo).port);
    });
  });
}

export interface ServedPage {
  readonly url: string;
  close(): Promise<void>;
}

function close(server: Server): Promise<void> {
  server.closeAllConnections();
  return new Promise((done) => server.close(() => done()));
}

/**
 * Serves the built page to this computer.
 * @param folder the built page; its files as they are now, nothing else
 * @param ports tried one after the other; 0 is any free one. The same port again finds what the browser kept.
 * @throws the system's error when no port can be had
 */
export async function servePage(folder: string, ports: readonly number[]): Promise<ServedPage> {
  const files = await filesOf(folder);
  let last: unknown;
  for (const port of ports) {
    const server = createServer((request, response) => answer(files, request, response));
    try {
      return { url: `http://${host}:${await listen(server, port)}/`, close: () => close(server) };
    } catch (error) {
      last = error;
    }
  }
  throw last;
}
