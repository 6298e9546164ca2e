import { command, read } from '@hubwright/contracts/operation';
import { describe, expect, it, jest } from '@jest/globals';
import { z } from 'zod';
import { addressOf } from './address.ts';
import { newKey, requestOf } from './call.ts';
import { mayCall } from './permission.ts';
import { problemFrom, problemFromIssues, unreachable } from './problem.ts';
import { queryFor } from './query.ts';
import { StaleNouns } from './stale-nouns.ts';

const given = { noun: 'kits', summary: '', output: z.object({}) } as const;
const readKit = read({
  ...given,
  id: 'read-kit',
  path: '/api/kits/:kitId',
  access: 'signed-in',
  input: z.strictObject({ kitId: z.string(), state: z.array(z.string()).optional(), after: z.string().optional() }),
});
const closeKit = command({
  ...given,
  id: 'close-kit',
  path: '/api/kits/:kitId/close',
  access: ['technician'],
  touches: ['units'],
  versioned: true,
  input: z.strictObject({ kitId: z.string(), lines: z.array(z.strictObject({ count: z.int() })) }),
});

describe('addresses', () => {
  it('fill the path, escape what is put in it, and write the rest of a read as a query', () => {
    expect(addressOf(readKit, { kitId: 'a/b 7', state: ['open', 'short'], after: undefined })).toBe(
      '/api/kits/a%2Fb%207?state=open&state=short',
    );
    expect(addressOf(readKit, { kitId: 'k' })).toBe('/api/kits/k');
  });

  it('are never made without what the path names', () => {
    expect(() => addressOf(readKit, { kitId: '' })).toThrow('read-kit needs kitId');
  });
});

describe('requests', () => {
  it('of a command carry the key, the version seen and the body without what is in the path', () => {
    const lines = [{ count: 2 }];
    const { address, init } = requestOf(closeKit, { kitId: 'k', lines }, { key: 'key-1', version: 3, dryRun: true });
    expect(address).toBe('/api/kits/k/close');
    expect(init).toMatchObject({ method: 'POST', body: JSON.stringify({ lines }) });
    expect(init.headers).toMatchObject({
      'Idempotency-Key': 'key-1',
      'If-Match': '"3"',
      'Hubwright-Dry-Run': '1',
      'Content-Type': 'application/json',
    });
  });

  it('of a read carry neither key nor body', () => {
    const { init } = requestOf(readKit, { kitId: 'k' });
    expect(init).not.toHaveProperty('body');
    expect(init.headers).not.toHaveProperty('Idempotency-Key');
  });

  it('get a key that is a version 4 uuid (RFC 9562 §5.4), another each time', () => {
    const keys = Array.from({ length: 50 }, newKey);
    for (const key of keys) expect(z.uuidv4().safeParse(key).success).toBe(true);
    expect(new Set(keys).size).toBe(50);
  });
});

it('query keys begin with the noun, so that a write can make them stale by noun', () => {
  expect(queryFor(readKit, { kitId: 'k' }).queryKey).toEqual(['kits', 'read-kit', { kitId: 'k' }]);
});

it('roles decide what is offered', () => {
  expect(mayCall(closeKit, ['technician', 'manager'])).toBe(true);
  expect(mayCall(closeKit, ['manager'])).toBe(false);
  expect(mayCall(readKit, [])).toBe(true);
});

describe('problems', () => {
  it('keep the server’s words, pointers and extras', () => {
    const problem = problemFrom(409, {
      type: '/problems/still-used',
      title: 'Something else depends on this',
      status: 409,
      detail: 'Two kits use it',
      next: 'Move them',
      errors: [{ pointer: '/kitId', detail: 'used' }],
      holders: ['KIT-1'],
    });
    expect(problem.facts).toMatchObject({
      type: 'still-used',
      detail: 'Two kits use it',
      details: { holders: ['KIT-1'] },
    });
    expect(problem.mayRepeat).toBe(false);
  });

  it('name an answer that is none of ours by its status', () => {
    expect(problemFrom(502, '<html>').facts).toMatchObject({ type: 'unreadable', status: 502 });
    expect(problemFrom(502, undefined).mayRepeat).toBe(false);
  });

  it('may be repeated only when nothing was answered or the server was too busy to begin', () => {
    expect(unreachable().mayRepeat).toBe(true);
    expect(problemFrom(503, { type: '/problems/busy' }).mayRepeat).toBe(true);
    expect(problemFrom(429, { type: '/problems/too-many' }).mayRepeat).toBe(false);
  });

  it('found here point like the server’s (RFC 6901) and speak plainly', () => {
    const schema = z.strictObject({
      shop: z.strictObject({ 'a/b': z.string().min(1), rate: z.int(), tags: z.array(z.string()).min(1) }),
    });
    const checked = schema.safeParse({ shop: { 'a/b': '', rate: Number.NaN, tags: [] } });
    expect(checked.success).toBe(false);
    if (checked.success) return;
    expect(problemFromIssues(checked.error).facts.errors).toEqual([
      { pointer: '/shop/a~1b', detail: 'This cannot be empty' },
      { pointer: '/shop/rate', detail: 'Write a number' },
      { pointer: '/shop/tags', detail: 'Choose or write at least one' },
    ]);
  });
});

it('a burst of live events reads each noun once', () => {
  jest.useFakeTimers();
  const refresh = jest.fn();
  const stale = new StaleNouns(refresh, 100);
  stale.add(['kits', 'units']);
  stale.add(['kits']);
  expect(refresh).not.toHaveBeenCalled();
  jest.advanceTimersByTime(100);
  expect(refresh.mock.calls).toEqual([[['kits', 'units']]]);
  stale.add(['people']);
  jest.advanceTimersByTime(100);
  expect(refresh).toHaveBeenLastCalledWith(['people']);
  jest.useRealTimers();
});
