import { RuleError } from '../errors/index.ts';

// ISO 4217 (list one): currencies whose smallest unit is not a hundredth. From memory, compared with the runtime's own data in a test.
const WITHOUT_DECIMALS = new Set('BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' '));
const WITH_THREE = new Set('BHD IQD JOD KWD LYD OMR TND'.split(' '));

/** How many decimal digits the smallest unit has. Any three capital letters are taken for a currency. */
export function minorDigits(currency: string): 0 | 2 | 3 {
  if (typeof currency !== 'string' || !/^[A-Z]{3}$/.test(currency))
    throw new RuleError('unknown-currency', 'A currency is three capital letters, such as USD.', 'currency');
  if (WITHOUT_DECIMALS.has(currency)) return 0;
  return WITH_THREE.has(currency) ? 3 : 2;
}
