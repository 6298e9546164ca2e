import { Problem } from '@hubwright/contracts/problems';
import { addMonths, cureExpiry } from '@hubwright/rules/dates';

/** First day of no use of what arrives today; undefined for parts that do not age. Refuses what cannot be or is too old. */
export function expiryOnReceipt(
  part: { number: string; shelfLifeMonths: number | null },
  cureDate: string | undefined,
  today: string,
): string | undefined {
  if (part.shelfLifeMonths === null) return undefined;
  if (!cureDate)
    throw wrong(`${part.number} has a shelf life: enter the cure date from the package`, 'Enter the cure date');
  if (firstDayOf(cureDate) > today)
    throw wrong(`A cure date of ${cureDate} lies in the future`, 'The cure date lies in the future');
  const expires = cureExpiry(cureDate, { months: part.shelfLifeMonths });
  if (expires > today) return expires;
  throw new Problem('lot-expired', `Cured ${cureDate}, this expired on ${expires}`, { expiresOn: expires }, [
    { pointer: '/cureDate', detail: `Expired on ${expires}` },
  ]);
}

/** The first day a cure date can mean: the day itself, or the first of its quarter, half a year before the next one is over. */
function firstDayOf(cureDate: string): string {
  return /Q/i.test(cureDate) ? addMonths(cureExpiry(cureDate, { quarters: 1 }), -6) : cureDate;
}

function wrong(detail: string, field: string): Problem {
  return new Problem('cure-date-wrong', detail, {}, [{ pointer: '/cureDate', detail: field }]);
}
