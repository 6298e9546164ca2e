import type { Likelihood } from '@hubwright/contracts/kits/allocation-operations';
import type { ServingOrder } from '@hubwright/rules/shortage';
import type { Ask } from './ask.ts';

export interface Policy {
  readonly order: ServingOrder;
  readonly likelihood: Likelihood;
  readonly version: number;
  readonly since: Date | null;
  readonly by: string;
  readonly reason: string;
}

/** Until somebody has decided. The percents are common practice, no source: every shop has its own. */
const untilChanged: Policy = {
  order: 'need-date',
  likelihood: {
    noPriceYet: 90,
    estimateOut: 80,
    quoteOut: 85,
    oldAfterDays: 14,
    estimateOld: 50,
    quoteOld: 60,
    silent: 25,
  },
  version: 0,
  since: null,
  by: '',
  reason: '',
};

const policySql = `
  SELECT a.serving_order AS "order", a.likelihood, a.version, a.at AS since, p.display_name AS by, a.reason
  FROM allocation_policies a JOIN people p ON p.id = a.person_id ORDER BY a.version DESC LIMIT 1`;

/** The rule in force. */
export async function currentPolicy(ask: Ask): Promise<Policy> {
  return (await ask<Policy>(policySql, []))[0] ?? untilChanged;
}
