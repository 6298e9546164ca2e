import { useEffect, useState } from 'react';
import { ageWords, dateIn, dueWords, formatDate, formatInstant } from './dates.ts';
import { formatMoney, formatPrice } from './money.ts';
import { formatHours, formatWhole } from './numbers.ts';
import { useShop } from './shop-context.tsx';

/** A number and its unit, never broken apart over two lines. */
export function Quantity({ amount, unit }: { amount: number | string; unit: string }) {
  return (
    <span className="quantity">
      {typeof amount === 'number' ? formatWhole(amount) : amount}
      <span className="unit">{unit}</span>
    </span>
  );
}

/** Hours from tenths; unknown is a word and takes no unit. */
export function Hours({ tenths }: { tenths: number | 'unknown' }) {
  if (tenths === 'unknown') return <span className="quantity">unknown</span>;
  return <Quantity amount={formatHours(tenths)} unit="h" />;
}

/** An amount in the shop's currency unless another is named. */
export function Amount({ minor, currency }: { minor: number; currency?: string }) {
  const shop = useShop();
  return <span className="quantity">{formatMoney({ minor, currency: currency ?? shop.currency })}</span>;
}

/** What one piece costs, in the shop's currency unless another is named. */
export function Price({ each, currency }: { each: string; currency?: string }) {
  const shop = useShop();
  return <span className="quantity">{formatPrice(each, currency ?? shop.currency)}</span>;
}

/** A calendar date. */
export function DateText({ date }: { date: string }) {
  return (
    <time dateTime={date} className="quantity">
      {formatDate(date)}
    </time>
  );
}

/** A calendar date and how far off it is from today in the shop's zone. */
export function DueText({ date }: { date: string }) {
  const { zone } = useShop();
  return (
    <>
      <DateText date={date} /> <span className="soft">({dueWords(date, dateIn(zone, new Date()))})</span>
    </>
  );
}

/** An instant in the shop's zone. */
export function InstantText({ instant }: { instant: string }) {
  const { zone } = useShop();
  return (
    <time dateTime={instant} className="quantity">
      {formatInstant(instant, zone)}
    </time>
  );
}

/** The device’s time in milliseconds, counted on while the page stands. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 15_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

/** Whole minutes until an instant, negative once it is over. */
export function useMinutesUntil(instant: string): number {
  return Math.floor((Date.parse(instant) - useNow()) / 60_000);
}

/** How long ago, kept true while the page stays open; the exact time in a title. */
export function AgeText({ instant }: { instant: string }) {
  const { zone } = useShop();
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const timer = setInterval(() => setNow(new Date()), 30_000);
    return () => clearInterval(timer);
  }, []);
  return (
    <time dateTime={instant} title={formatInstant(instant, zone)} className="quantity">
      {ageWords(instant, now)}
    </time>
  );
}
