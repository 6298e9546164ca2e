import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  randomBytes,
  sign,
  verify,
} from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { canonicalJson } from '@hubwright/rules/chain';

/** How a public key enters the record. `previous` is the key it takes over from. */
export interface KeyStatement {
  readonly kind: 'shop-key';
  readonly id: string;
  /** The 32 bytes of the Ed25519 public key, base64. */
  readonly publicKey: string;
  readonly at: string;
  readonly previous?: string;
}
/** A key as the table and every export hold it: the statement's canonical text, signed by itself and by the key before. */
export interface KeyRow {
  readonly id: string;
  readonly statement: string;
  readonly signature: string;
  readonly previousSignature: string | null;
}
/** A key that can sign. */
export interface ShopKey {
  readonly id: string;
  readonly privateKey: KeyObject;
}

/** SubjectPublicKeyInfo of Ed25519 is this prefix and the 32 bytes of the key (RFC 8410 §4). */
const spkiPrefix = Buffer.from('302a300506032b6570032100', 'hex');

/** A name people can compare: the first 32 hex digits of the SHA-256 of the public key. */
export function keyId(publicKey: string): string {
  return createHash('sha256').update(Buffer.from(publicKey, 'base64')).digest('hex').slice(0, 32);
}

export function makeKey(): ShopKey & { publicKey: string } {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519');
  const raw = publicKey.export({ format: 'der', type: 'spki' }).subarray(spkiPrefix.length).toString('base64');
  return { id: keyId(raw), privateKey, publicKey: raw };
}

/** Ed25519 (RFC 8032) over the UTF-8 bytes of a text; base64. */
export function signText({ privateKey }: Pick<ShopKey, 'privateKey'>, text: string): string {
  return sign(null, Buffer.from(text, 'utf8'), privateKey).toString('base64');
}

/** False for anything that is not a signature of this text by this key, malformed ones included. */
export function signatureHolds(publicKey: string, text: string, signature: string): boolean {
  const raw = Buffer.from(publicKey, 'base64');
  if (raw.length !== 32) return false;
  const key = createPublicKey({ key: Buffer.concat([spkiPrefix, raw]), format: 'der', type: 'spki' });
  const bytes = Buffer.from(signature, 'base64');
  // Decoding overlooks what is no base64: the same signature written another way is not what was kept.
  if (bytes.toString('base64') !== signature) return false;
  return verify(null, Buffer.from(text, 'utf8'), key, bytes);
}

/** Introduces a new key, signed by itself and, when it takes over, by the key before. */
export function introduce(made: ShopKey & { publicKey: string }, at: string, previous?: ShopKey): KeyRow {
  const statement: KeyStatement = {
    kind: 'shop-key',
    id: made.id,
    publicKey: made.publicKey,
    at,
    ...(previous ? { previous: previous.id } : {}),
  };
  const text = canonicalJson(statement);
  return {
    id: made.id,
    statement: text,
    signature: signText(made, text),
    previousSignature: previous ? signText(previous, text) : null,
  };
}

/** The private keys of this shop: a folder that only the server's account may read, never in the database. */
export class KeyFolder {
  constructor(private readonly folder: string) {}

  async keep({ id, privateKey }: ShopKey): Promise<void> {
    await mkdir(this.folder, { recursive: true, mode: 0o700 });
    await writeFile(this.path(id), privateKey.export({ format: 'pem', type: 'pkcs8' }), { mode: 0o600, flag: 'wx' });
  }

  /** Undefined when the file is not here, as after a restore without the keys. */
  async find(id: string): Promise<ShopKey | undefined> {
    const pem = await readFile(this.path(id), 'utf8').catch(() => undefined);
    return pem ? { id, privateKey: createPrivateKey(pem) } : undefined;
  }

  /** 32 random bytes kept under a name, made when first asked for. */
  async keptSecret(name: string): Promise<Buffer> {
    const path = join(this.folder, `${name}.key`);
    await mkdir(this.folder, { recursive: true, mode: 0o700 });
    await writeFile(path, randomBytes(32), { mode: 0o600, flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
    const secret = await readFile(path);
    if (secret.length !== 32) throw new Error(`${name}.key is not the 32 bytes that were kept.`);
    return secret;
  }

  private path(id: string): string {
    if (!/^[0-9a-f]{32}$/.test(id)) throw new Error('A key is named by 32 hex digits.');
    return join(this.folder, `${id}.pem`);
  }
}
