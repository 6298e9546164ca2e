import { Inject, Injectable } from '@nestjs/common';
import { Attempts } from '../../platform/http/attempts.ts';

/** Wrong passwords: ten lock the account, and ten from one address lock the address, for 15 minutes. Five wrong PINs lock the PIN. */
@Injectable()
export class SignInAttempts {
  constructor(@Inject(Attempts) private readonly attempts: Attempts) {}

  /** Counts before the password is looked at, so that parallel guesses cannot slip past. Throws `sign-in-locked`. */
  async count(signInName: string, address?: string): Promise<void> {
    await this.attempts.count(accountKey(signInName), { account: true });
    if (address) await this.countAddress(address);
  }

  async countAddress(address: string): Promise<void> {
    await this.attempts.count(addressKey(address), { address });
  }

  /** After a right password the account starts anew, and the address gets its try back. */
  async forget(signInName: string, address?: string): Promise<void> {
    await this.attempts.forget(accountKey(signInName));
    if (address) await this.giveAddressBack(address);
  }

  async giveAddressBack(address: string): Promise<void> {
    await this.attempts.giveBack(addressKey(address));
  }

  /** A right password whose code is still to come was no wrong try; wrong codes before it stay counted. */
  async giveBack(signInName: string, address: string): Promise<void> {
    await this.attempts.giveBack(accountKey(signInName));
    await this.giveAddressBack(address);
  }

  /** Throws `pin-locked` after five wrong PINs. */
  async countPin(personId: string): Promise<void> {
    await this.attempts.countPin(pinKey(personId));
  }

  /** After a right PIN, and after a full sign-in, which also frees a locked one. */
  async forgetPin(personId: string): Promise<void> {
    await this.attempts.forget(pinKey(personId));
  }
}

export function accountKey(signInName: string): string {
  return `account:${signInName.toLowerCase().slice(0, 80)}`;
}

export function addressKey(address: string): string {
  return `address:${address}`;
}

function pinKey(personId: string): string {
  return `pin:${personId}`;
}
