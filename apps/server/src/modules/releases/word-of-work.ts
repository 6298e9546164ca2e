import { type OverhaulFact, overhaulFacts, recordWord } from '@hubwright/rules/record-words';
import type { ReleaseFacts, ReleaseStep } from './release-facts.ts';

/** A step that stands signed as good. */
function isShown(step: ReleaseStep): boolean {
  return step.state === 'signed' && step.signOff?.result === 'pass';
}

/** The signed steps that show each of the six facts of 14 CFR 43.2(a). */
export function factsShown(facts: ReleaseFacts): { fact: OverhaulFact; steps: ReleaseStep[] }[] {
  return overhaulFacts.map((fact) => ({
    fact,
    steps: facts.steps.filter((step) => step.fact === fact && isShown(step)),
  }));
}

/** The word the record may use, computed from signed steps and decided findings. */
export function wordOfWork(facts: ReleaseFacts) {
  const shown = factsShown(facts).flatMap(({ fact, steps }) => (steps.length > 0 ? [fact] : []));
  const replaced = facts.workOrder.findings.some(
    ({ disposition, parts }) => disposition === 'reject' || parts.length > 0,
  );
  return recordWord({ scope: facts.workOrder.scope, facts: shown, repaired: shown.includes('repaired') || replaced });
}
