import helmet from '@fastify/helmet';
import type { FastifyInstance, FastifyReply } from 'fastify';

/** What pages of the dashboard may do: files of this server and nothing else; no script or style inside a page. */
const pagePolicy = {
  'default-src': ["'self'"],
  'script-src': ["'self'"],
  'style-src': ["'self'"],
  'img-src': ["'self'", 'data:', 'blob:'],
  'font-src': ["'self'"],
  'connect-src': ["'self'"],
  'object-src': ["'none'"],
  'base-uri': ["'none'"],
  'frame-ancestors': ["'none'"],
  'form-action': ["'self'"],
};

/** An answer of the interface is data, a paper or a photo: opened as a page it can do nothing at all. */
const dataPolicy = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** The camera is for scanning and photos; nothing else of the device is ever asked for. */
const permissions = [
  'camera=(self)',
  ...[
    'accelerometer',
    'bluetooth',
    'display-capture',
    'geolocation',
    'gyroscope',
    'hid',
    'magnetometer',
    'microphone',
    'midi',
    'payment',
    'publickey-credentials-get',
    'serial',
    'usb',
  ].map((feature) => `${feature}=()`),
].join(', ');

/**
 * Headers of every answer (OWASP ASVS 5.0 V3.4): what pages may load, who may frame or read them, and that personal data is
 * not kept by anyone on the way.
 */
export async function registerHeaders(fastify: FastifyInstance, { secure }: { secure: boolean }): Promise<void> {
  await fastify.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: pagePolicy },
    crossOriginEmbedderPolicy: { policy: 'require-corp' },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    hsts: secure ? { maxAge: 31_536_000, includeSubDomains: true } : false,
    referrerPolicy: { policy: 'same-origin' },
  });
  fastify.addHook('onRequest', async (_request, reply) => {
    // On the raw answer, as helmet does, so that a stream which writes its own head carries it too.
    reply.raw.setHeader('permissions-policy', permissions);
  });
  fastify.addHook('onSend', async (request, reply) => {
    if (!request.url.startsWith('/api/') && !isProblem(reply)) return;
    if (!reply.hasHeader('cache-control')) reply.header('cache-control', 'no-store');
    // A stored file asks for more: a box of its own.
    if (!String(reply.getHeader('content-security-policy')).includes('sandbox'))
      reply.header('content-security-policy', dataPolicy);
  });
}

function isProblem(reply: FastifyReply): boolean {
  return /^application\/problem\+json/.test(String(reply.getHeader('content-type') ?? ''));
}
