import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto';
import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import bwip from 'bwip-js/node';
import { generateSecret, generateURI, verify } from 'otplib';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { Reads } from '../../platform/database/reads.ts';
import { OneTimeCodes } from '../../platform/http/one-time-codes.ts';
import { KeyFolder } from '../../platform/records/shop-key.ts';

/** RFC 6238 §5.2 recommends at most one step of 30 seconds for delay and drift. */
const oneStepSeconds = 30;
const recoveryCodes = 10;

/** One-time codes by time (RFC 6238: SHA-1, 30 seconds, six digits), computed by otplib; secrets are sealed at rest. */
@Injectable()
export class SecondFactors {
  constructor(
    @Inject(KeyFolder) private readonly keys: KeyFolder,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(Reads) private readonly reads: Reads,
    @Inject(OneTimeCodes) private readonly spent: OneTimeCodes,
  ) {}

  /** A new secret (160 bits) with its picture and recovery codes (80 bits each); nothing of it is kept yet. */
  make(label: { shop: string; person: string }): { secret: string; picture: string; recoveryCodes: string[] } {
    const secret = generateSecret();
    const uri = generateURI({ issuer: label.shop || 'Hubwright', label: label.person, secret });
    return { secret, picture: qrPicture(uri), recoveryCodes: Array.from({ length: recoveryCodes }, newRecoveryCode) };
  }

  /** AES-256-GCM under a key from the keys folder, which no database backup holds; bound to the person, so that rows cannot be exchanged. */
  async seal(secret: string, personId: string): Promise<string> {
    const iv = randomBytes(12);
    const cipher = createCipheriv('aes-256-gcm', await this.key(), iv).setAAD(Buffer.from(personId));
    const sealed = Buffer.concat([cipher.update(secret, 'utf8'), cipher.final()]);
    return ['1', iv, cipher.getAuthTag(), sealed]
      .map((piece) => (typeof piece === 'string' ? piece : piece.toString('base64url')))
      .join('.');
  }

  /** The time step a code belongs to, this one or a neighbour; undefined when it does not fit or the secret cannot be opened. */
  async stepOf(sealed: string, personId: string, code: string): Promise<number | undefined> {
    const secret = await this.open(sealed, personId);
    const token = plainCode(code);
    if (!secret || !/^\d{6}$/.test(token)) return undefined;
    const epoch = Math.floor(this.clock.now().getTime() / 1000);
    const result = await verify({ secret, token, epoch, epochTolerance: oneStepSeconds });
    return result.valid && 'timeStep' in result ? result.timeStep : undefined;
  }

  /**
   * Uses up a code of the person: one of the moment, or a recovery code; someone without a second factor needs none. Throws
   * `code-needed` without one, `code-refused` for one that does not fit or was used.
   */
  async use(personId: string, code: string | undefined): Promise<void> {
    const factor = await this.reads.models.secondFactor.findUnique({ where: { personId } });
    if (!factor) return;
    if (!code?.trim()) throw new Problem('code-needed', 'This account has a second factor');
    const step = await this.stepOf(factor.sealed, personId, code);
    const fits =
      step === undefined
        ? await this.spent.spendRecoveryCode(personId, recoveryHash(code))
        : await this.spent.spendStep(personId, step);
    if (!fits) throw new Problem('code-refused', 'The code does not fit, or was used before');
  }

  private async open(sealed: string, personId: string): Promise<string | undefined> {
    const [, iv, tag, text] = sealed.split('.').map((piece) => Buffer.from(piece, 'base64url'));
    if (!iv || !tag || !text) return undefined;
    try {
      const decipher = createDecipheriv('aes-256-gcm', await this.key(), iv).setAAD(Buffer.from(personId));
      decipher.setAuthTag(tag);
      return decipher.update(text, undefined, 'utf8') + decipher.final('utf8');
    } catch {
      // Another key, as after a restore without the keys folder: recovery codes still work, since only their hash is kept.
      return undefined;
    }
  }

  private key(): Promise<Buffer> {
    return this.keys.keptSecret('second-factors');
  }
}

function plainCode(code: string): string {
  return code.replaceAll(/[\s-]/g, '').toUpperCase();
}

/** Sixteen of 32 letters and digits that cannot be mistaken for each other, in groups of four: 80 bits. */
function newRecoveryCode(): string {
  const letters = 'ABCDEFGHJKMNPQRSTUVWXYZ123456789';
  const text = [...randomBytes(16)].map((byte) => letters[byte % 32]).join('');
  return (text.match(/.{4}/g) ?? []).join('-');
}

/** A recovery code is 80 random bits: one plain SHA-256 is enough where a password would need a slow hash. */
export function recoveryHash(code: string): string {
  return createHash('sha256').update(plainCode(code)).digest('hex');
}

function qrPicture(text: string): string {
  return asDataUrl(bwip.toSVG({ bcid: 'qrcode', text, scale: 4, backgroundcolor: 'FFFFFF', padding: 4 }));
}

/** A badge's code as Code 128, black on white whatever the theme, because scanners want it so. */
export function badgePicture(code: string): string {
  return asDataUrl(
    bwip.toSVG({ bcid: 'code128', text: code, scale: 2, height: 14, backgroundcolor: 'FFFFFF', padding: 6 }),
  );
}

function asDataUrl(svg: string): string {
  return `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
}
