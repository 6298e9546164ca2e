import type { askThrough } from '../kits/public.ts';

export interface Assumption {
  readonly recommendedPercent: number | null;
  readonly version: number;
  readonly since: Date | null;
  readonly by: string;
  readonly reason: string;
}

const assumptionSql = `
  SELECT a.recommended_percent AS "recommendedPercent", a.version, a.at AS since, p.display_name AS by, a.reason
  FROM arrival_assumptions a JOIN people p ON p.id = a.person_id ORDER BY a.version DESC LIMIT 1`;

/** What the shop assumes of units whose interval is only recommended: nothing until somebody says. */
export async function assumptionInForce(ask: ReturnType<typeof askThrough>): Promise<Assumption> {
  const [row] = await ask<Assumption>(assumptionSql, []);
  return row ?? { recommendedPercent: null, version: 0, since: null, by: '', reason: '' };
}
