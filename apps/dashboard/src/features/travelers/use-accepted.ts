import { RuleError } from '@hubwright/rules/errors';
import { type Acceptance, acceptance, type GuardBandMethod } from '@hubwright/rules/measurement';
import { useQuery } from '@tanstack/react-query';
import { useMe } from '../../api/me.ts';
import { instrumentsQuery, type Measure, type Step } from './traveler.ts';

type Doubt = { uncertainty: string; unit: string } | null;

/** A measure with the limits its reading is accepted by, and the accuracy ratio that stands beside the entry. */
export type AcceptedMeasure = Measure & { readonly ratio?: number | null; readonly isNarrowed?: boolean };

function acceptedOf(measure: Measure, doubt: Doubt, method: GuardBandMethod): Acceptance | 'too-coarse' {
  try {
    return acceptance(measure, doubt, method);
  } catch (error) {
    if (error instanceof RuleError) return 'too-coarse';
    throw error;
  }
}

/** The instrument chosen for a step, and how the shop allows for its doubt. */
function useInstrument({ instrumentKind: kind }: Step, instrumentId: string | null) {
  const { guardBand } = useMe().shop;
  const rows = useQuery({ ...instrumentsQuery(kind ?? 'caliper'), enabled: kind !== null }).data?.rows ?? [];
  return { guardBand, chosen: rows.find(({ id }) => id === instrumentId) };
}

/** What is known of the instrument chosen: sheets narrow their limits by it where the shop asks for a guard band. */
export function useDoubt(step: Step, instrumentId: string | null): { doubt: Doubt; method: GuardBandMethod } {
  const { guardBand, chosen } = useInstrument(step, instrumentId);
  return { doubt: chosen ? doubtOf(chosen) : null, method: guardBand };
}

function doubtOf({ uncertainty, unit }: { uncertainty: string | null; unit: string | null }): Doubt {
  return uncertainty !== null && unit !== null ? { uncertainty, unit } : null;
}

/**
 * The step as readings with the chosen instrument are accepted: by the manual's limits or, where the shop asks for a guard band, inside
 * them. `note` says what to know about the instrument; empty while none is chosen.
 */
export function useAccepted(step: Step, instrumentId: string | null): { step: Step; note: string } {
  const { guardBand, chosen } = useInstrument(step, instrumentId);
  if (!chosen || (step.measures.length === 0 && step.sheet === null)) return { step, note: '' };
  const { tag } = chosen;
  const doubt = doubtOf(chosen);
  const all = step.measures.map((measure) => ({ measure, accepted: acceptedOf(measure, doubt, guardBand) }));
  const coarse = all.flatMap(({ measure, accepted }) => (accepted === 'too-coarse' ? [measure.name] : []));
  const measures = all.map(({ measure, accepted }): AcceptedMeasure => {
    if (accepted === 'too-coarse') return measure;
    const { low, high, ratio, isNarrowed } = accepted;
    const decimals = measure.decimals + (isNarrowed ? 1 : 0);
    return { ...measure, low, high, decimals, ratio, isNarrowed };
  });
  return { step: { ...step, measures }, note: noteOf({ tag, doubt, coarse, guardBand }, measures) };
}

function noteOf(
  of: { tag: string; doubt: Doubt; coarse: readonly string[]; guardBand: GuardBandMethod },
  measures: readonly AcceptedMeasure[],
): string {
  if (!of.doubt) {
    const then = of.guardBand === 'none' ? '' : ' The shop accepts no reading without it.';
    return `The uncertainty of ${of.tag} is not on record.${then}`;
  }
  if (of.coarse.length > 0) return `${of.tag} is too coarse for ${of.coarse.join(', ')}: measure with a finer one.`;
  const ratios = measures.flatMap(({ ratio, name }) => (ratio ? [{ ratio, name }] : []));
  const least = ratios.toSorted((a, b) => a.ratio - b.ratio)[0];
  const said = `${of.tag} is known to ± ${of.doubt.uncertainty} ${of.doubt.unit}`;
  return least ? `${said}; least accuracy ratio ${least.ratio.toFixed(1)} : 1, at ${least.name}.` : `${said}.`;
}
