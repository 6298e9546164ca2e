import type { Reply, Sent } from '@hubwright/contracts/operation';
import type { Process, peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import { minorDigits, moneyText, parseMoney } from '../../format/money.ts';

export type ShopInput = Sent<typeof peopleOperations.changeShop>;
type Shop = Reply<typeof peopleOperations.shop>;

/** The shop profile as it stands in the form: amounts as typed, ratings one a line. */
export interface ShopDraft {
  name: string;
  certificateNumber: string;
  authority: string;
  ratings: string;
  approval: string;
  caution: string;
  zone: string;
  currency: string;
  units: 'inch' | 'metric';
  labourRate: string;
  evaluationFee: string;
  taxPercent: string;
  taxRounding: 'line' | 'total';
  quoteValidDays: string;
  inspectOwnWork: Process[];
  namesPersonCertificate: boolean;
  secondFactorRoles: Role[];
  lockAfterMinutes: string;
  badgeSwitchHours: string;
  guardBand: ShopInput['guardBand'];
  slowAfterMonths: string;
  deadAfterMonths: string;
}

/** A new shop's form: only what can be known from this device is filled in. */
export function emptyShop(zone: string): ShopDraft {
  return {
    name: '',
    certificateNumber: '',
    authority: '',
    ratings: '',
    approval: '',
    caution: '',
    zone,
    currency: '',
    units: 'inch',
    labourRate: '',
    evaluationFee: '',
    taxPercent: '0',
    taxRounding: 'total',
    quoteValidDays: '30',
    inspectOwnWork: [],
    namesPersonCertificate: false,
    secondFactorRoles: ['administrator'],
    lockAfterMinutes: '10',
    badgeSwitchHours: '12',
    guardBand: 'none',
    slowAfterMonths: '12',
    deadAfterMonths: '24',
  };
}

export function draftOf(shop: Shop): ShopDraft {
  const { recordStatements, labourRateMinor, evaluationFeeMinor, quoteValidDays, ratings, version: _, ...same } = shop;
  return {
    ...same,
    ...recordStatements,
    ratings: ratings.join('\n'),
    labourRate: moneyText({ currency: shop.currency, minor: labourRateMinor }),
    evaluationFee: moneyText({ currency: shop.currency, minor: evaluationFeeMinor }),
    quoteValidDays: String(quoteValidDays),
    lockAfterMinutes: String(shop.lockAfterMinutes),
    badgeSwitchHours: String(shop.badgeSwitchHours),
    slowAfterMonths: String(shop.slowAfterMonths),
    deadAfterMonths: String(shop.deadAfterMonths),
  };
}

/** Text that is not an amount becomes NaN, which the schema refuses at the right field. */
function minorOf(text: string, currency: string): number {
  return /^[A-Z]{3}$/.test(currency) ? (parseMoney(text, currency) ?? Number.NaN) : Number.NaN;
}

function wholeNumber(text: string): number {
  return text.trim() === '' ? Number.NaN : Number(text);
}

export function shopInput(draft: ShopDraft): ShopInput {
  const { approval, caution, ratings, labourRate, evaluationFee, quoteValidDays, ...same } = draft;
  return {
    ...same,
    ratings: ratings
      .split('\n')
      .map((rating) => rating.trim())
      .filter((rating) => rating !== ''),
    recordStatements: { approval, caution },
    labourRateMinor: minorOf(labourRate, draft.currency),
    evaluationFeeMinor: minorOf(evaluationFee, draft.currency),
    quoteValidDays: wholeNumber(quoteValidDays),
    lockAfterMinutes: wholeNumber(draft.lockAfterMinutes),
    badgeSwitchHours: wholeNumber(draft.badgeSwitchHours),
    slowAfterMonths: wholeNumber(draft.slowAfterMonths),
    deadAfterMonths: wholeNumber(draft.deadAfterMonths),
  };
}

/** How many decimals amounts take in the chosen currency; two until one is chosen. */
export function amountDecimals(currency: string): number {
  return /^[A-Z]{3}$/.test(currency) ? minorDigits(currency) : 2;
}

export interface ShopFieldsProps {
  draft: ShopDraft;
  onChange: (changes: Partial<ShopDraft>) => void;
  /** Where the profile stands in the command's input: `shop/` in set-up, nothing when changing it. */
  at: '' | 'shop/';
}
