import { afterEach, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { BenchSimulator, until } from '../../../../../tests/support/bench-simulator.ts';
import { InstrumentStream } from './instrument-stream.ts';
import { LineSplitter } from './line-splitter.ts';
import { isInsideShop } from './private-address.ts';

describe('a bench that sends readings', () => {
  let bench: BenchSimulator;
  let stream: InstrumentStream;
  afterEach(async () => {
    stream?.end();
    await bench?.close();
  });
  const connected = async () => {
    bench = await BenchSimulator.listen();
    stream = new InstrumentStream('127.0.0.1', bench.port);
    await until(() => stream.view().state === 'connected' && bench.watchers === 1);
  };
  const channel = (name: string) => stream.view().channels.find((one) => one.channel === name);

  it('is shown with the newest reading of each channel, whatever the pieces its lines come in', async () => {
    await connected();
    bench.read('relief', [281.5, 'psi']);
    bench.send('{"at":');
    bench.send('"2026-11-26T10:00:00Z","channel":"oil","value":165,"unit":"degF"}\n');
    await until(() => channel('oil')?.value === 165);
    expect(channel('relief')).toMatchObject({ value: 281.5, unit: 'psi' });
    expect(stream.view().refused).toBe(0);
    bench.read('relief', [283, 'psi'], new Date(Date.now() + 1_000));
    await until(() => channel('relief')?.value === 283);
  });

  it('counts what is no reading and goes on', async () => {
    await connected();
    const at = '2026-11-26T10:00:00Z';
    for (const line of [
      'not json',
      '[1, 2]',
      'null',
      JSON.stringify({ at, channel: 'x', value: 'high', unit: 'psi' }),
      JSON.stringify({ at, channel: 'x', value: 1, unit: 'furlongs' }),
      JSON.stringify({ at: 'yesterday', channel: 'x', value: 1, unit: 'psi' }),
      '{"at":"2026-11-26T10:00:00Z","channel":"x","value":1e999,"unit":"psi"}',
      'x'.repeat(5_000),
    ])
      bench.send(`${line}\n`);
    bench.send(Buffer.from([0xff, 0xfe, 0x00, 0x0a]));
    await until(() => stream.view().refused === 9);
    expect(stream.view()).toMatchObject({ state: 'connected', channels: [], lastRefused: 'a line is no JSON' });
    bench.read('x', [1, 'psi']);
    await until(() => channel('x')?.value === 1);
  });

  it('takes no reading for new that is not newer, and no more channels than a bench has', async () => {
    await connected();
    const at = new Date();
    bench.read('relief', [280, 'psi'], at);
    bench.read('relief', [999, 'psi'], at);
    await until(() => stream.view().refused === 1);
    expect(channel('relief')?.value).toBe(280);
    for (let n = 0; n < 80; n += 1) bench.read(`c${n}`, [n, 'psi']);
    await until(() => stream.view().refused === 1 + 17);
    expect(stream.view().channels).toHaveLength(64);
  });

  it('survives a flood, and a line that never ends', async () => {
    await connected();
    const start = Date.now();
    const lines = Array.from({ length: 20_000 }, (_, n) =>
      JSON.stringify({ at: new Date(start + n).toISOString(), channel: 'speed', value: n, unit: 'rpm' }),
    );
    bench.send(`${lines.join('\n')}\n${'y'.repeat(3_000_000)}`);
    await until(() => channel('speed')?.value === 19_999);
    bench.send('\n');
    bench.read('after', [1, 'rpm']);
    await until(() => channel('after')?.value === 1);
    expect(stream.view()).toMatchObject({ refused: 1, lastRefused: 'a line is longer than 1,024 bytes' });
  });

  it('comes back after a cut, and says meanwhile what is wrong', async () => {
    await connected();
    const { port } = bench;
    bench.read('relief', [280, 'psi']);
    await until(() => channel('relief') !== undefined);
    bench.send('{"at":"half a li');
    bench.cut();
    await until(() => bench.connections === 2 && stream.view().state === 'connected');
    expect(stream.view().refused).toBe(0);
    await bench.close();
    await until(() => stream.view().trouble === 'nothing listens at its address');
    bench = await BenchSimulator.listen(port);
    await until(() => stream.view().state === 'connected');
    expect(stream.view().trouble).toBeNull();
  });

  it('is let go of for good', async () => {
    await connected();
    stream.end();
    await until(() => bench.watchers === 0);
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(bench.connections).toBe(1);
  });
});

describe('lines', () => {
  it('come out the same whatever pieces they are cut into', () => {
    const text = fc.array(fc.stringMatching(/^[a-z{}":, ]{0,40}$/), { maxLength: 12 });
    fc.assert(
      fc.property(text, fc.array(fc.nat(400), { maxLength: 12 }), (lines, cuts) => {
        const bytes = Buffer.from(lines.map((line) => `${line}\n`).join(''));
        const splitter = new LineSplitter();
        const at = [0, ...cuts.map((cut) => Math.min(cut, bytes.length)).sort((a, b) => a - b), bytes.length];
        const out = at.slice(1).flatMap((end, index) => splitter.push(bytes.subarray(at[index], end)));
        expect(out).toEqual(lines);
      }),
    );
  });
});

describe('an address a bench may have', () => {
  it.each([
    ['127.0.0.1', 4000, true],
    ['10.1.2.3', 1024, true],
    ['172.31.255.255', 4000, true],
    ['192.168.1.20', 65_535, true],
    ['::1', 4000, true],
    ['fd00::12', 4000, true],
    ['172.32.0.1', 4000, false],
    ['8.8.8.8', 4000, false],
    ['169.254.169.254', 4000, false],
    ['::ffff:8.8.8.8', 4000, false],
    ['fe80::1', 4000, false],
    ['0.0.0.0', 4000, false],
    ['localhost', 4000, false],
    ['bench.example.com', 4000, false],
    ['127.0.0.1', 22, false],
    ['127.1', 4000, false],
    ['0x7f000001', 4000, false],
  ])('%s port %i: %p', (host, port, isInside) => {
    expect(isInsideShop(host, port)).toBe(isInside);
  });
});
