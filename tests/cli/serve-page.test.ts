import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedPage, servePage } from '../../src/cli/serve-page.js';
import { temporaryFolder } from './gatelight.js';

const outside = temporaryFolder();
const folder = join(outside, 'page');
let page: ServedPage;
let port: number;

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** A request as it is written, without a client's own tidying of paths. */
function ask(path: string, { host = `127.0.0.1:${port}`, method = 'GET' } = {}): Promise<Answer> {
  return new Promise((done, failed) => {
    request({ host: '127.0.0.1', port, path, method, headers: { host } }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (text: string) => (body += text));
      response.on('end', () => done({ status: response.statusCode ?? 0, headers: response.headers, body }));
    })
      .on('error', failed)
      .end();
  });
}

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<!doctype html>');
  writeFileSync(join(folder, 'assets', 'table.js'), '"use strict";');
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  mkdirSync(join(outside, 'other'));
  writeFileSync(join(outside, 'other', 'secret.txt'), 'secret');
  symlinkSync(join(outside, 'secret.txt'), join(folder, 'link.txt'));
  symlinkSync(join(outside, 'other'), join(folder, 'linked'));
  page = await servePage(folder, [0]);
  port = Number(new URL(page.url).port);
});
afterAll(() => page.close());

describe('servePage', () => {
  it('gives the built page and its files', async () => {
    expect(await ask('/')).toMatchObject({ status: 200, body: '<!doctype html>' });
    const script = await ask('/assets/table.js?v=1');
    expect(script).toMatchObject({ status: 200, body: '"use strict";' });
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(await ask('/', { method: 'HEAD' })).toMatchObject({ status: 200, body: '' });
  });

  it('gives nothing outside the built folder', async () => {
    const ways = [
      '/../secret.txt',
      '/assets/../../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/assets/..%5c..%5csecret.txt',
      '//../secret.txt',
      join(outside, 'secret.txt'),
      `file://${join(outside, 'secret.txt')}`,
      '/link.txt',
      '/linked/secret.txt',
      '/assets',
      '/%00',
      '/__proto__',
    ];
    for (const way of ways) expect((await ask(way)).status, way).toBe(404);
  });

  it('answers only to its own name, so that no page elsewhere can point a name of its own here', async () => {
    expect((await ask('/', { host: `localhost:${port}` })).status).toBe(200);
    for (const host of ['films.example', `films.example:${port}`, '127.0.0.1', `127.0.0.1:${port + 1}`])
      expect((await ask('/', { host })).status, host).toBe(403);
  });

  it('takes nothing in', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
      expect((await ask('/', { method })).status, method).toBe(405);
  });

  it('forbids the page everything that is not its own, in every answer', async () => {
    for (const answer of [await ask('/'), await ask('/missing'), await ask('/', { host: 'films.example' })]) {
      const policy = String(answer.headers['content-security-policy']).split('; ');
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("connect-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy.join()).not.toMatch(/unsafe|https?:|\*/);
      expect(answer.headers['x-content-type-options']).toBe('nosniff');
    }
  });

  it('listens on 127.0.0.1 and on no other address of this computer', async () => {
    const other = await new Promise<string>((done) => {
      const socket = connect(port, '127.0.0.2', () => done('connected'));
      socket
        .on('error', ({ code }: NodeJS.ErrnoException) => done(String(code)))
        .setTimeout(2000, () => done('no answer'));
    });
    expect(other).not.toBe('connected');
  });

  it('takes the next port where one is taken, and says so where none is left', async () => {
    const next = await servePage(folder, [port, 0]);
    expect(new URL(next.url).port).not.toBe(String(port));
    await next.close();
    await expect(servePage(folder, [port])).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});
