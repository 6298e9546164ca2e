/**
 * What must have been done before a required record may say "overhauled": the six facts of 14 CFR 43.2(a). Repaired means as
 * necessary: a signed step that says nothing was needed shows it as well.
 */
export const overhaulFacts = ['disassembled', 'cleaned', 'inspected', 'repaired', 'reassembled', 'tested'] as const;
export type OverhaulFact = (typeof overhaulFacts)[number];

export type RecordWord = 'inspected' | 'repaired' | 'overhauled';

/** Scopes whose agreed work is an overhaul; of a governor it has the name of the unit (common practice, no source). */
const overhaulScopes: readonly string[] = ['overhaul', 'governor'];

/**
 * The word a record may use for the work, computed from what signed steps show. "Overhauled" takes all six facts of
 * 14 CFR 43.2(a) and an overhaul as the agreed scope, of a propeller or of a governor; "repaired" takes something repaired or replaced; else "inspected".
 * "Rebuilt" (43.2(b)) is a maker's word and "zero time" no word at all: neither is ever answered.
 *
 * `repaired`: a repair was signed or a part replaced on a finding, whether or not the scope is an overhaul.
 *
 * @example recordWord({ scope: 'overhaul', facts: ['disassembled', 'cleaned', 'inspected'], repaired: false })
 * // { word: 'inspected', missing: ['repaired', 'reassembled', 'tested'], basis: 'Not overhauled: no signed step shows …' }
 */
export function recordWord(done: { scope: string; facts: readonly OverhaulFact[]; repaired: boolean }): {
  word: RecordWord;
  missing: OverhaulFact[];
  basis: string;
} {
  const missing = overhaulFacts.filter((fact) => !done.facts.includes(fact));
  const agreed = overhaulScopes.includes(done.scope);
  if (agreed && missing.length === 0) {
    return { word: 'overhauled', missing, basis: 'All six facts of 14 CFR 43.2(a) are shown by signed steps' };
  }
  const why = agreed
    ? `Not overhauled: no signed step shows ${missing.join(', ')}`
    : 'The agreed scope is not an overhaul';
  return { word: done.repaired ? 'repaired' : 'inspected', missing, basis: why };
}

/**
 * What a record of this scope may say at most, when everything is done: the word, and whether time since overhaul starts again
 * (only an overhaul restarts it; common practice, no source).
 *
 * @example mostOf('reseal') // { word: 'repaired', restartsTimeSinceOverhaul: false }
 */
export function mostOf(scope: string): { word: RecordWord; restartsTimeSinceOverhaul: boolean } {
  const { word } = recordWord({ scope, facts: overhaulFacts, repaired: true });
  return { word, restartsTimeSinceOverhaul: word === 'overhauled' };
}
