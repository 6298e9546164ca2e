import { connect } from 'node:net';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { LiveFeed } from '../../apps/server/src/platform/live/live-feed.ts';
import { until } from '../support/bench-simulator.ts';
import { setUp, signedIn, smallestShop } from '../support/builders.ts';
import { EventStream } from '../support/event-stream.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('live events', () => {
  let shop: ShopApp;
  let visitor: Visitor;
  let version = 1;
  /** Who listens inside the server, dashboards or not: what is short follows the writes. */
  let inside = 0;
  const streams: EventStream[] = [];
  const open = async (lastEventId?: string) => {
    const stream = await EventStream.open(shop.address, visitor.cookie, lastEventId);
    streams.push(stream);
    return stream;
  };
  const change = async () => {
    const answer = await visitor.call(peopleOperations.changeShop, smallestShop.shop, { version });
    expect(answer.status).toBe(200);
    version += 1;
  };
  const listeners = () => (shop.running.app.get(LiveFeed) as unknown as { listeners: ReadonlySet<unknown> }).listeners;
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
    inside = listeners().size;
    await setUp(shop);
    visitor = await signedIn(shop, 'first');
    // What setting up wrote has been told before anyone counts.
    const first = await open();
    await change();
    await first.until(() => first.events.length > 0);
  });
  afterAll(async () => {
    for (const stream of streams) stream.close();
    await shop.close();
  });

  it('tells 20 open dashboards of each of ten writes, in order and once', async () => {
    const twenty = await Promise.all(Array.from({ length: 20 }, () => open()));
    for (let i = 0; i < 10; i += 1) await change();
    for (const stream of twenty) await stream.until(() => stream.events.length >= 10);
    const first = twenty[0]?.events.map((event) => event.id) ?? [];
    expect(new Set(first).size).toBe(10);
    for (const stream of twenty) expect(stream.events.map((event) => event.id)).toEqual(first);
    expect(twenty[0]?.events[0]?.nouns).toEqual(['people']);
  });

  it('catches a dashboard up on what it missed while away', async () => {
    const before = await open();
    await change();
    await before.until(() => before.events.length > 0);
    const seen = before.events.at(-1)?.id ?? '';
    before.close();
    await change();
    await change();
    const after = await open(seen);
    await after.until(() => after.events.length >= 2);
    expect(after.events).toHaveLength(2);
  });

  it('tells a dashboard that was away too long to read everything anew', async () => {
    const stream = await open('12-999999');
    await stream.until(() => stream.named.includes('resync'));
  });

  it('forgets a dashboard that went away before its stream had begun', async () => {
    for (const stream of streams) stream.close();
    await until(() => listeners().size === inside);
    const { port } = new URL(shop.address);
    const request = `GET /api/live HTTP/1.1\r\nhost: 127.0.0.1:${port}\r\ncookie: ${visitor.cookie}\r\n\r\n`;
    for (let i = 0; i < 40; i += 1) {
      const socket = connect(Number(port), '127.0.0.1');
      await new Promise<void>((sent) => socket.write(request, () => sent()));
      await new Promise((soon) => setTimeout(soon, i % 8));
      socket.destroy();
    }
    // Streams that did begin have ended by now; none of those that never did may be left over.
    await (await open()).until(() => true);
    await until(() => listeners().size === inside + 1);
  });

  it('does not open for someone who is not signed in', async () => {
    const response = await fetch(`${shop.address}/api/live`);
    expect(response.status).toBe(401);
  });

  it('does not tell of a dry run or of a refused write', async () => {
    // From the last event on: the tests before wrote, and a new stream may still hear of that.
    const written = streams.flatMap(({ events }) => events.map(({ id }) => id));
    const place = (id: string) => Number(id.split('-')[1]);
    const stream = await open(written.reduce((last, id) => (place(id) > place(last) ? id : last)));
    await visitor.call(peopleOperations.changeShop, smallestShop.shop, { version, dryRun: true });
    await visitor.call(peopleOperations.changeShop, smallestShop.shop, { version: 1 });
    await change();
    await stream.until(() => stream.events.length >= 1);
    expect(stream.events).toHaveLength(1);
  });
});
