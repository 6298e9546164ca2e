import fc from 'fast-check';
import { type Endpoint, fittingRequest } from './described.ts';

/** One request as it goes on the wire. */
export interface Sending {
  readonly method: string;
  /** Path and query, already encoded, or wrongly so on purpose. */
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly payload?: string;
  /** What is wrong with it. */
  readonly why: string;
}

interface Parts {
  readonly path: string;
  readonly query: object;
  readonly body: unknown;
}

/** What does not belong into a JSON value, as the text that goes on the wire. */
const oddValues = [
  'null',
  '[]',
  '{}',
  '-1',
  '0.5',
  '1e9',
  '1e309',
  '9007199254740993',
  'true',
  '""',
  '"  "',
  '"\\u0000"',
  '"\\ud800"',
  '"\\r\\nSet-Cookie: planted=1"',
  '"=HYPERLINK(\\"x\\")"',
  `"'; DROP TABLE people; --"`,
  '"<script>alert(1)</script>"',
  '"../../../etc/passwd"',
  '"{{7*7}}<%= 7*7 %>"',
  `"${'x'.repeat(5_000)}"`,
  `${'['.repeat(300)}${']'.repeat(300)}`,
  '[[{"a":[{}]}]]',
  '{"__proto__":{"x":1}}',
  '{"constructor":{"prototype":{"x":1}}}',
  '"2026-02-30"',
  '"99999-01-01"',
  '"NaN"',
];
const oddKeys = ['__proto__', 'constructor', 'prototype', 'toString', 'signedBy', 'roles', 'id', 'version', '', 'x'];
const oddBodies = [
  '',
  ' ',
  '{',
  '{"a":',
  '{"a":1,}',
  "{'a':1}",
  '[]',
  '[{}]',
  '"text"',
  '12',
  'null',
  'true',
  'NaN',
  '\ufeff{}',
  '{}{}',
  '\u0000',
  '<xml/>',
  'a=1&b=2',
  '['.repeat(100_000),
  `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`,
  `{"a":"${'x'.repeat(1_100_000)}"}`,
];
const oddTypes = [
  'text/plain',
  'application/xml',
  'application/x-www-form-urlencoded',
  'multipart/form-data',
  'application/json; charset=utf-16',
  'application/jsonp',
  'nothing',
  '',
];
const oddSegments = [
  'not-an-id',
  '%00',
  '..%2f..%2fetc%2fpasswd',
  '%',
  '%zz',
  '%ff%fe',
  '-',
  '0',
  'null',
  '%27%20OR%201%3D1',
  'x'.repeat(90),
  'x'.repeat(4_000),
  '%F0%9F%98%80',
  '0197c0de-0000-7000-8000-00000000000g',
];
const oddQueries = [
  'limit=1000000000',
  'limit=-1',
  'limit=1&limit=2',
  'limit[]=1',
  'limit=1e3',
  'after=%00',
  'after=%ff',
  'after=zzzz',
  'search=%25%5f%5c',
  'search=%00',
  '__proto__=1',
  'constructor=1',
  'unknown=1',
  '=',
  '&&&',
  `search=${'x'.repeat(6_000)}`,
  'on=2026-02-30',
  'workOrderId=1',
];

/** Places in a JSON value, each as the keys that lead there. */
function places(value: unknown, at: readonly string[] = []): (readonly string[])[] {
  const here = at.length > 0 ? [at] : [];
  if (typeof value !== 'object' || value === null) return here;
  return [...here, ...Object.entries(value).flatMap(([key, inner]) => places(inner, [...at, key]))];
}

const hole = 'the-hole-in-this-text';

/** JSON text of a value with other text at one place, or without that place. */
function textWith(value: unknown, place: readonly string[], text: string | undefined): string {
  const copy = structuredClone(value) as Record<string, unknown>;
  let inner = copy;
  for (const key of place.slice(0, -1)) inner = inner[key] as Record<string, unknown>;
  const last = place.at(-1) as string;
  if (text === undefined) delete inner[last];
  else inner[last] = hole;
  return JSON.stringify(copy).replace(`"${hole}"`, () => text ?? '');
}

function queryText(query: object): string {
  const text = new URLSearchParams(query as Record<string, string>).toString();
  return text === '' ? '' : `?${text}`;
}

/** Faults of the JSON body. */
function bodyFaults({ body }: Parts): fc.Arbitrary<{ payload: string; why: string }> {
  const whole = fc.constantFrom(...oddBodies).map((payload) => ({ payload, why: 'another body' }));
  if (typeof body !== 'object' || body === null) return whole;
  const inside = places(body);
  const json = JSON.stringify(body);
  const added = fc.tuple(fc.constantFrom(...oddKeys), fc.constantFrom(...oddValues)).map(([key, value]) => ({
    payload: `{${JSON.stringify(key)}:${value}${json === '{}' ? '' : ','}${json.slice(1)}`,
    why: `added ${key}`,
  }));
  if (inside.length === 0) return fc.oneof(whole, added);
  const place = fc.constantFrom(...inside);
  return fc.oneof(
    { weight: 1, arbitrary: whole },
    { weight: 2, arbitrary: added },
    {
      weight: 6,
      arbitrary: fc
        .tuple(place, fc.constantFrom(...oddValues))
        .map(([at, value]) => ({ payload: textWith(body, at, value), why: `other value at ${at.join('/')}` })),
    },
    {
      weight: 1,
      arbitrary: place.map((at) => ({ payload: textWith(body, at, undefined), why: `no ${at.join('/')}` })),
    },
  );
}

const goodHeaders = { 'content-type': 'application/json', 'idempotency-key': 'a-key-of-the-fuzzer', 'if-match': '"1"' };

function headerFaults(parts: Parts): fc.Arbitrary<Partial<Sending> & { why: string }> {
  const payload = JSON.stringify(parts.body ?? {});
  return fc.oneof(
    fc.constantFrom(...oddTypes).map((type) => ({
      headers: { ...goodHeaders, 'content-type': type },
      payload,
      why: `sent as ${type}`,
    })),
    fc.constantFrom('', 'short', 'x'.repeat(2_000), 'spaces and "quotes"', '\u00ff'.repeat(9)).map((key) => ({
      headers: { ...goodHeaders, 'idempotency-key': key },
      payload,
      why: 'another key',
    })),
    fc.constantFrom('*', 'W/"1"', '"-1"', '1e5', 'x', '99999999999999999999').map((version) => ({
      headers: { ...goodHeaders, 'if-match': version },
      payload,
      why: `version ${version}`,
    })),
  );
}

/** Requests to one endpoint that are mistyped, misshapen, oversized or sent the wrong way. */
export function malformed(endpoint: Endpoint): fc.Arbitrary<Sending> {
  return fittingRequest(endpoint).chain((parts) => {
    const isRead = endpoint.method === 'GET';
    const url = parts.path + queryText(parts.query);
    const base = { method: endpoint.method, url, headers: goodHeaders };
    const body = JSON.stringify(parts.body ?? {});
    const rest = isRead ? {} : { payload: body };
    const bits = endpoint.path.split('/').filter((bit) => bit.startsWith('{'));
    const faults: fc.Arbitrary<Partial<Sending> & { why: string }>[] = [
      isRead
        ? fc.constantFrom(...oddQueries).map((query) => ({ url: `${parts.path}?${query}`, why: `query ${query}` }))
        : bodyFaults(parts),
      isRead ? fc.constant({ url: `${url}#x`, why: 'a fragment' }) : headerFaults(parts),
      fc.constantFrom('PATCH', 'PUT', 'DELETE', 'OPTIONS', 'TRACE', 'PROPFIND').map((method) => ({
        ...rest,
        method,
        why: `sent by ${method}`,
      })),
    ];
    if (!isRead) faults.push(bodyFaults(parts), bodyFaults(parts), bodyFaults(parts));
    if (isRead)
      faults.push(fc.constantFrom(...oddQueries).map((query) => ({ url: `${parts.path}?${query}`, why: query })));
    if (bits.length > 0)
      faults.push(
        fc.tuple(fc.constantFrom(...bits), fc.constantFrom(...oddSegments)).map(([bit, segment]) => ({
          ...rest,
          url: segmentsWith(endpoint.path, { bit, segment, path: parts.path }),
          why: `${bit} is ${segment.slice(0, 40)}`,
        })),
      );
    return fc.oneof(...faults).map((fault) => ({ ...base, ...fault }));
  });
}

function segmentsWith(template: string, put: { bit: string; segment: string; path: string }): string {
  const filled = put.path.split('/');
  return template
    .split('/')
    .map((bit, at) => (bit === put.bit ? put.segment : filled[at]))
    .join('/');
}
