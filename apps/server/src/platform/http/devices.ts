import { createHash, randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CLOCK, type Clock } from '../command/clock.ts';
import { Database } from '../database/client.ts';

const fourHundredDays = 400 * 24 * 60 * 60;

/** Where people signed in fully not long ago: a device is known by a random cookie, of which only the hash is kept. */
@Injectable()
export class Devices {
  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** After password and second factor: badge and PIN do here for a while. */
  async remember(request: FastifyRequest, reply: FastifyReply, personId: string): Promise<void> {
    const name = cookieName(request);
    const token = request.cookies[name] ?? randomBytes(32).toString('base64url');
    const { secure } = request.session.cookie;
    const options = { path: '/', httpOnly: true, sameSite: 'lax', secure: secure === true } as const;
    reply.setCookie(name, token, { ...options, maxAge: fourHundredDays });
    const row = { deviceHash: hashOf(token), personId };
    const signedInAt = this.clock.now();
    await this.database.prisma.deviceSignIn.upsert({
      where: { deviceHash_personId: row },
      create: { ...row, signedInAt },
      update: { signedInAt },
    });
  }

  /** Milliseconds since this person's last full sign-in on this device; undefined when there was none. */
  async sinceFullSignIn(request: FastifyRequest, personId: string): Promise<number | undefined> {
    const token = request.cookies[cookieName(request)];
    if (!token) return undefined;
    const row = await this.database.prisma.deviceSignIn.findUnique({
      where: { deviceHash_personId: { deviceHash: hashOf(token), personId } },
    });
    return row ? this.clock.now().getTime() - row.signedInAt.getTime() : undefined;
  }
}

function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/** The __Host- prefix needs HTTPS; a plain name only on loopback. */
function cookieName(request: FastifyRequest): string {
  return request.session.cookie.secure === true ? '__Host-hubwright-device' : 'hubwright-device';
}

const systems: readonly [RegExp, string][] = [
  [/iPad/, 'iPad'],
  [/iPhone/, 'iPhone'],
  [/Android(?!.*Mobile)/, 'Android tablet'],
  [/Android/, 'Android phone'],
  [/CrOS/, 'Chromebook'],
  [/Windows/, 'Windows'],
  [/Macintosh/, 'Mac'],
  [/Linux/, 'Linux'],
];
const browsers: readonly [RegExp, string][] = [
  [/Edg\//, 'Edge'],
  [/Firefox\//, 'Firefox'],
  [/Chrom(e|ium)\//, 'Chrome'],
  [/Safari\//, 'Safari'],
];

/** Browser and system in words, for people to recognise their own device by; what a browser says of itself proves nothing. */
export function deviceWords(userAgent: string | undefined): string {
  const named = (list: readonly [RegExp, string][]) => list.find(([pattern]) => pattern.test(userAgent ?? ''))?.[1];
  const browser = named(browsers);
  const system = named(systems);
  if (browser && system) return `${browser} on ${system}`;
  return browser ?? system ?? 'a program';
}
