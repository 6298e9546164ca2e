/** An amount in the currency's smallest unit. */
export interface Money {
  readonly currency: string;
  readonly minor: number;
}

/** How many digits the currency has after the point (ISO 4217 as the browser knows it). */
export function minorDigits(currency: string): number {
  return new Intl.NumberFormat('en-US', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** The amount as exact decimal text, without sign for the currency: `{USD, 123456}` → `1234.56`. */
export function moneyText({ currency, minor }: Money): string {
  const digits = minorDigits(currency);
  const sign = minor < 0 ? '-' : '';
  const all = String(Math.abs(minor)).padStart(digits + 1, '0');
  return digits === 0 ? sign + all : `${sign}${all.slice(0, -digits)}.${all.slice(-digits)}`;
}

/** The amount as people read it: `$1,234.56`. */
export function formatMoney(money: Money): string {
  const format = new Intl.NumberFormat('en-US', { style: 'currency', currency: money.currency });
  return format.format(moneyText(money) as `${number}`);
}

/** Typed text to the smallest unit, exactly; undefined when it is not an amount in this currency. */
export function parseMoney(text: string, currency: string): number | undefined {
  const digits = minorDigits(currency);
  const match = /^(-?)(\d{1,12})(?:\.(\d+))?$/.exec(text.trim().replaceAll(',', ''));
  if (!match) return undefined;
  const [, sign, whole = '', fraction = ''] = match;
  if (fraction.length > digits) return undefined;
  const minor = Number(whole + fraction.padEnd(digits, '0'));
  return sign === '-' && minor !== 0 ? -minor : minor;
}

/** What one piece costs, as people read it: at least the currency's digits, and up to the four a price may have: `$0.4125`. */
export function formatPrice(price: string, currency: string): string {
  const least = minorDigits(currency);
  const digits = { minimumFractionDigits: least, maximumFractionDigits: Math.max(4, least) };
  return new Intl.NumberFormat('en-US', { style: 'currency', currency, ...digits }).format(price as `${number}`);
}
