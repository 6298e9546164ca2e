import { describe, expect, it } from '@jest/globals';
import { generate, verify } from 'otplib';

/** Base32 (RFC 4648) of the test seeds of RFC 6238 Appendix B: ASCII 1234567890 repeated to 20, 32 and 64 bytes. */
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';
function seed(bytes: number): string {
  const bits = [...Buffer.from('1234567890'.repeat(7).slice(0, bytes))].map((byte) =>
    byte.toString(2).padStart(8, '0'),
  );
  return (bits.join('').match(/.{1,5}/g) ?? [])
    .map((five) => letters[Number.parseInt(five.padEnd(5, '0'), 2)])
    .join('');
}

// RFC 6238 Appendix B: time in seconds, eight digits by SHA-1, SHA-256 and SHA-512.
const rows = [
  [59, '94287082', '46119246', '90693936'],
  [1_111_111_109, '07081804', '68084774', '25091201'],
  [1_111_111_111, '14050471', '67062674', '99943326'],
  [1_234_567_890, '89005924', '91819424', '93441116'],
  [2_000_000_000, '69279037', '90698825', '38618901'],
  [20_000_000_000, '65353130', '77737706', '47863826'],
] as const;

describe('one-time codes by time', () => {
  it.each(rows)('at %d seconds are those of RFC 6238 Appendix B', async (epoch, sha1, sha256, sha512) => {
    expect(await generate({ secret: seed(20), epoch, digits: 8 })).toBe(sha1);
    expect(await generate({ secret: seed(32), epoch, digits: 8, algorithm: 'sha256' })).toBe(sha256);
    expect(await generate({ secret: seed(64), epoch, digits: 8, algorithm: 'sha512' })).toBe(sha512);
    // RFC 4226 §5.3: fewer digits are the same number modulo a smaller power of ten, leading zeros kept.
    expect(await generate({ secret: seed(20), epoch })).toBe(sha1.slice(2));
  });

  it('fit in their own step and its neighbours, never two away (RFC 6238 §5.2: at most one step is recommended)', async () => {
    const code = { secret: seed(20), token: '081804', epochTolerance: 30 };
    const at = (epoch: number) => verify({ ...code, epoch }).then(({ valid }) => valid);
    const begins = 1_111_111_080;
    expect(await Promise.all([begins - 31, begins - 1, begins, begins + 29, begins + 59, begins + 60].map(at))).toEqual(
      [false, true, true, true, true, false],
    );
  });

  it('say which step they belong to, so that it can be refused a second time (RFC 6238 §5.2)', async () => {
    const code = { secret: seed(20), token: '081804', epochTolerance: 30, epoch: 1_111_111_109 };
    expect(await verify(code)).toMatchObject({ valid: true, timeStep: 0x23523ec });
    expect(await verify({ ...code, afterTimeStep: 0x23523ec })).toMatchObject({ valid: false });
  });
});
