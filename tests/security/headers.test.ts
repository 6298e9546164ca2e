import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileOperations } from '@hubwright/contracts/files/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { demoPassword } from '../support/builders.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { jpeg, sendFile } from '../support/pictures.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendRaw } from '../support/wire.ts';

/** Headers every answer carries, whatever it is (OWASP ASVS 5.0 V3.4; OWASP HTTP Headers Cheat Sheet). */
const everywhere = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
  'permissions-policy': expect.stringMatching(/^camera=\(self\), .*geolocation=\(\).*microphone=\(\)/),
  'content-security-policy': expect.stringContaining("frame-ancestors 'none'"),
};

describe('the headers of answers', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hubwright-pages-'));
    const pages = join(folder, 'dist');
    await mkdir(join(pages, 'assets'), { recursive: true });
    await mkdir(join(pages, '.git'), { recursive: true });
    await writeFile(join(pages, 'index.html'), '<!doctype html><title>Hubwright</title>');
    await writeFile(join(pages, 'theme.js'), 'void 0');
    await writeFile(join(pages, '.git/config'), 'never to be served');
    await writeFile(join(pages, 'assets/index-1a2b3c.js'), 'void 0');
    await writeFile(join(folder, 'secret.txt'), 'never to be served');
    shop = await ShopApp.open('shop', { dashboardFolder: pages });
    desk = await as(shop, 'front-desk');
  });
  afterAll(async () => {
    await shop.close();
    await rm(folder, { recursive: true, force: true });
  });
  const get = (url: string, headers: Record<string, string> = {}, method = 'GET') =>
    sendRaw(shop.address, { method, url, headers: { cookie: desk.cookie, ...headers } });

  it.each([
    ['a page', '/', 200],
    ['a page deep inside', '/work-orders/1', 200],
    ['a script', '/assets/index-1a2b3c.js', 200],
    ['data', '/api/customers', 200],
    ['the description', '/api/openapi.json', 200],
    ['nothing there', '/api/nothing', 404],
    ['another method', '/api/customers?x', 422],
  ])('are whole on %s', async (_, url, status) => {
    const answer = await get(url);
    expect(answer.status).toBe(status);
    expect(answer.headers).toMatchObject(everywhere);
    expect(answer.headers['x-powered-by'] ?? answer.headers.server).toBeUndefined();
  });

  it('allow pages only files of this server: no script, style or eval inside a page', async () => {
    const policy = String((await get('/')).headers['content-security-policy']);
    expect(policy).not.toMatch(/unsafe|http:|https:|\*/);
    for (const part of [
      "default-src 'self'",
      "script-src 'self'",
      "style-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'self'",
    ])
      expect(policy.split(';')).toContain(part);
  });

  it('make data inert when it is opened as a page', async () => {
    for (const url of ['/api/customers', '/api/nothing']) {
      const { headers } = await get(url);
      expect(headers['content-security-policy']).toMatch(/^default-src 'none'/);
    }
  });

  it('are on a paper and on a photo too, which name their type, run nothing and are kept by nobody on the way', async () => {
    const job = await Job.arrived(shop, '4791');
    await job.approved('estimate');
    const quotes = await desk.call(quoteOperations.listQuotes, { workOrderId: job.id });
    const sent = await sendFile(shop, desk, { bytes: await jpeg() });
    const condition = { workOrderId: job.id, fileId: String(sent.body.id), title: 'The box as it came' };
    const photo = await desk.call(fileOperations.addConditionPhoto, condition);
    const papers = [
      [`/api/quotes/${quotes.body.rows[0]?.id}/document`, 'application/pdf'],
      [`/api/photos/${photo.body.id}/file`, 'image/jpeg'],
      [`/api/photos/${photo.body.id}/thumbnail`, 'image/jpeg'],
    ] as const;
    for (const [url, type] of papers) {
      const answer = await get(url);
      expect([url, answer.status]).toEqual([url, 200]);
      expect(answer.headers).toMatchObject({ ...everywhere, 'content-type': type });
      expect(answer.headers['cache-control']).toMatch(/no-store|private/);
      expect(answer.headers['content-security-policy']).toMatch(/^default-src 'none'/);
    }
  });

  it('are on the live stream, which writes its own head', async () => {
    const ending = new AbortController();
    const answer = await fetch(`${shop.address}/api/live`, { headers: { cookie: desk.cookie }, signal: ending.signal });
    expect(Object.fromEntries(answer.headers)).toMatchObject({ ...everywhere, 'cache-control': 'no-store' });
    ending.abort();
  });

  it('keep personal data out of every cache, and pages fresh', async () => {
    for (const url of ['/api/session', '/api/customers', '/api/people', '/api/nothing']) {
      const { headers } = await get(url);
      expect(headers['cache-control']).toBe('no-store');
      expect(headers.etag).toBeUndefined();
    }
    expect((await get('/')).headers['cache-control']).toBe('no-cache');
    expect((await get('/theme.js')).headers['cache-control']).toBe('no-cache');
    expect((await get('/assets/index-1a2b3c.js')).headers['cache-control']).toContain('immutable');
  });

  it('let a browser keep files by their ETag, and carry the same protection on 304', async () => {
    const first = await get('/assets/index-1a2b3c.js');
    const again = await get('/assets/index-1a2b3c.js', { 'if-none-match': String(first.headers.etag) });
    expect(again.status).toBe(304);
    expect(again.headers).toMatchObject(everywhere);
    expect(again.headers['set-cookie']).toBeUndefined();
  });

  it('open nothing to other origins', async () => {
    const answer = await get('/api/customers', { origin: 'https://elsewhere.example.com' });
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    const asked = await get(
      '/api/customers',
      { origin: 'https://elsewhere.example.com', 'access-control-request-method': 'POST' },
      'OPTIONS',
    );
    expect(asked.status).toBe(405);
    expect(Object.keys(asked.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  it.each(['TRACE', 'PATCH', 'PUT', 'DELETE', 'OPTIONS', 'PROPFIND'])(
    '%s on an address that takes other methods is 405 and names them',
    async (method) => {
      const answer = await get('/api/customers', { 'x-http-method-override': 'GET' }, method);
      expect([answer.status, answer.headers.allow]).toEqual([405, 'GET, HEAD, POST']);
      expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
      expect(JSON.parse(answer.text)).toMatchObject({ type: '/problems/method-not-allowed', status: 405 });
    },
  );

  it('a header cannot turn a read into a write', async () => {
    const answer = await get('/api/session', { 'x-http-method-override': 'DELETE', 'x-method-override': 'DELETE' });
    expect(answer.status).toBe(200);
    expect((await get('/api/session')).status).toBe(200);
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/../../secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '/assets//..//..//secret.txt',
    '/assets/%00../../secret.txt',
    '/.git/config',
    '/assets/',
    '//secret.txt',
  ])('%s leads to no file outside and lists no folder', async (url) => {
    const answer = await get(url);
    expect(answer.text).not.toContain('never to be served');
    expect(answer.text).not.toContain('index-1a2b3c.js');
    expect(answer.status).toBeLessThan(500);
  });

  it.each([
    '//elsewhere.example.com',
    '//elsewhere.example.com/%2f..',
    '/\\elsewhere.example.com',
    '/sign-in?next=//elsewhere.example.com',
  ])('%s sends nobody elsewhere', async (url) => {
    const answer = await get(url);
    expect(answer.status < 300 || answer.status >= 400).toBe(true);
    expect(answer.headers.location).toBeUndefined();
  });

  it('cannot be split by line breaks from a request', async () => {
    for (const url of ['/api/customers?search=%0d%0aset-cookie:%20planted=1', '/x%0d%0aset-cookie:%20planted=1']) {
      const answer = await get(url);
      expect(answer.headers['set-cookie']).toBeUndefined();
      expect(answer.status).toBeLessThan(500);
    }
  });
});

describe('behind HTTPS', () => {
  let shop: ShopApp;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { secure: true });
  });
  afterAll(() => shop.close());

  it('the session cookie is bound to this host and to HTTPS, and browsers stay with HTTPS for a year', async () => {
    const answer = await shop
      .visitor()
      .call(
        peopleOperations.signIn,
        { signInName: 'desk', password: demoPassword },
        { headers: { 'x-forwarded-proto': 'https', 'x-forwarded-for': '192.0.2.7' } },
      );
    expect(answer.status).toBe(200);
    expect(answer.headers['set-cookie']).toMatch(
      /^__Host-hubwright=[^;]+; (?!.*Domain)(?=.*Path=\/)(?=.*Secure)(?=.*HttpOnly)(?=.*SameSite=Lax)/i,
    );
    expect(answer.headers['strict-transport-security']).toBe('max-age=31536000; includeSubDomains');
  });

  it('a cookie of the plain name, which any neighbour could set, is not read', async () => {
    const visitor = shop.visitor();
    const answer = await visitor.call(
      peopleOperations.signIn,
      { signInName: 'desk', password: demoPassword },
      { headers: { 'x-forwarded-proto': 'https' } },
    );
    expect(answer.status).toBe(200);
    visitor.cookie = visitor.cookie.replaceAll('__Host-', '');
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(401);
  });
});
