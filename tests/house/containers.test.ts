import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serverOperations } from '@hubwright/contracts/server/operations';
import { describe, expect, test } from '@jest/globals';
import { parse } from 'yaml';
import { readSettings } from '../../apps/server/src/settings.ts';

// No container engine runs in these tests: the two files are read and compared with what the server understands. That the
// image builds and starts has to be tried where an engine is.
const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (name: string) => readFileSync(join(root, name), 'utf8');

type Service = {
  image?: string;
  build?: string;
  environment: Record<string, string>;
  healthcheck?: { test: string[] };
  depends_on?: Record<string, { condition: string }>;
  ports?: string[];
  volumes: string[];
};
const compose = parse(read('docker-compose.yml')) as {
  services: Record<string, Service>;
  volumes: Record<string, null>;
};
const server = compose.services.server!;
const database = compose.services.database!;

/** The instructions of the last stage, which is the image, and all that copy from the source tree. */
function dockerfile() {
  const lines = read('Dockerfile')
    .replaceAll('\\\n', ' ')
    .split('\n')
    .filter((line) => line && !line.startsWith('#'))
    .map((line) => ({ instruction: line.split(' ')[0]!, rest: line.slice(line.indexOf(' ') + 1).trim() }));
  const last = lines.slice(lines.map(({ instruction }) => instruction).lastIndexOf('FROM'));
  const of = (name: string) => last.filter(({ instruction }) => instruction === name).map(({ rest }) => rest);
  const environment = Object.fromEntries(of('ENV').flatMap((rest) => rest.split(' ').map((pair) => pair.split('='))));
  return { lines, of, environment: environment as Record<string, string> };
}

/** The compose file's value with the person's own secrets filled in. */
function filledIn(environment: Record<string, string>): Record<string, string> {
  const secrets: Record<string, string> = { DATABASE_PASSWORD: 'p4ss', SESSION_SECRET: 's'.repeat(32) };
  const fill = (value: string) =>
    value.replaceAll(
      /\$\{(\w+)(?::([-?])([^}]*))?\}/g,
      (_, name, mark, rest) => secrets[name] ?? (mark === '-' ? rest : ''),
    );
  return Object.fromEntries(Object.entries(environment).map(([name, value]) => [name, fill(value)]));
}

describe('the container files (read, not run: no engine here)', () => {
  test('the image runs as another user than root, from a build that has what it copies', () => {
    const { lines, of } = dockerfile();
    expect(of('USER')).toEqual(['node']);
    const copied = lines
      .filter(({ instruction, rest }) => instruction === 'COPY' && !rest.startsWith('--from'))
      .flatMap(({ rest }) => rest.split(' ').slice(0, -1));
    expect(copied.length).toBeGreaterThan(6);
    expect(copied.filter((path) => !existsSync(join(root, path)))).toEqual([]);
    const stages = lines.filter(({ instruction }) => instruction === 'FROM').map(({ rest }) => rest.split(' AS ')[1]);
    const from = lines.map(({ rest }) => /^--from=(\w+)/.exec(rest)?.[1]).filter((name) => name !== undefined);
    expect(from.filter((name) => !stages.includes(name))).toEqual([]);
    expect(Number(/FROM node:(\d+)/.exec(read('Dockerfile'))?.[1])).toBeGreaterThanOrEqual(20);
  });

  test('the image is asked for its health at the address the server answers', () => {
    const { of, environment } = dockerfile();
    expect(of('HEALTHCHECK')[0]).toContain(`http://127.0.0.1:${environment.PORT}${serverOperations.ready.path}`);
    expect(of('EXPOSE')).toEqual([environment.PORT]);
    expect(server.ports).toEqual([`127.0.0.1:${environment.PORT}:${environment.PORT}`]);
  });

  test('the server understands the settings it is given, and reaches the database beside it', () => {
    const settings = readSettings({ ...dockerfile().environment, ...filledIn(server.environment) });
    expect(settings).toMatchObject({ host: '0.0.0.0', port: 8420, dataFolder: '/data', secure: false });
    const url = new URL(settings.ownerUrl!);
    const { POSTGRES_USER, POSTGRES_PASSWORD, POSTGRES_DB } = filledIn(database.environment);
    expect(Object.keys(compose.services)).toContain(url.hostname);
    expect([url.username, url.password, url.pathname]).toEqual([POSTGRES_USER, POSTGRES_PASSWORD, `/${POSTGRES_DB}`]);
    expect(server.volumes).toContain('files:/data');
  });

  test('the server waits for a healthy PostgreSQL of a version it works with', () => {
    expect(server.depends_on).toEqual({ database: { condition: 'service_healthy' } });
    expect(database.healthcheck?.test.join(' ')).toContain(`--dbname=${database.environment.POSTGRES_DB}`);
    expect(Number(/^postgres:(\d+)/.exec(database.image!)?.[1])).toBeGreaterThanOrEqual(15);
  });

  test('no secret stands in the files', () => {
    for (const { environment } of Object.values(compose.services)) {
      const secrets = Object.entries(environment).filter(([name]) => /PASSWORD|SECRET|DATABASE_URL/.test(name));
      expect(secrets.filter(([, value]) => !/\$\{\w+:\?/.test(value))).toEqual([]);
    }
  });
});
