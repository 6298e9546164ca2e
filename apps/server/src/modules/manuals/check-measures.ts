import { areaOf } from '@hubwright/contracts/findings/areas';
import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import type { Pointed } from '@hubwright/contracts/problems';
import { bandFault } from '@hubwright/rules/blades';

/** Limits nobody could judge by: bands that overlap, an oversize step twice, a chart against what is not measured. */
export function wrongMeasures({ routes }: ModelContent, at: string): Pointed[] {
  return routes.flatMap(({ steps }, route) =>
    steps.flatMap(({ measures }, step) =>
      measures.flatMap((measure, index) => {
        const pointer = `${at}/routes/${route}/steps/${step}/measures/${index}`;
        const names = measures.map(({ name }) => name);
        const { byDiameter, oversizes, chart } = measure;
        const wrong: Pointed[] = [];
        const band = bandFault(byDiameter);
        if (band !== undefined)
          wrong.push({
            pointer: `${pointer}/byDiameter/${band}`,
            detail: 'This band of diameters overlaps another or runs backwards',
          });
        const twice = oversizes.findIndex(
          ({ step }, place) => oversizes.findIndex((one) => one.step === step) !== place,
        );
        if (twice >= 0)
          wrong.push({ pointer: `${pointer}/oversizes/${twice}/step`, detail: 'This oversize step is given twice' });
        if (chart && (chart.by === measure.name || !names.includes(chart.by)))
          wrong.push({ pointer: `${pointer}/chart/by`, detail: `“${chart.by}” is not another measure of this step` });
        if (names.indexOf(measure.name) !== index)
          wrong.push({ pointer: `${pointer}/name`, detail: `“${measure.name}” is measured above already` });
        return wrong;
      }),
    ),
  );
}

/** Rules of a blade set that contradict themselves or name areas no part has. */
export function wrongBladeRules({ bladeRules }: ModelContent, at: string): Pointed[] {
  const { diameters, corrosion, matchedSets } = bladeRules;
  const twice = <T>(rows: readonly T[], key: (row: T) => string) =>
    rows.flatMap((row, index) => (rows.findIndex((one) => key(one) === key(row)) === index ? [] : [index]));
  const double = (list: string, indexes: readonly number[]) =>
    indexes.map((index) => ({ pointer: `${at}/bladeRules/${list}/${index}`, detail: 'This is given above already' }));
  return [
    ...double(
      'diameters',
      twice(diameters, ({ diameter }) => String(Number(diameter))),
    ),
    ...double(
      'corrosion',
      twice(corrosion, (rule) => `${rule.partClass} ${rule.area} ${rule.class}`),
    ),
    ...double(
      'matchedSets',
      twice(matchedSets, ({ position }) => position.toLowerCase()),
    ),
    ...corrosion.flatMap(({ partClass, area }, index) =>
      areaOf(partClass, area)
        ? []
        : [{ pointer: `${at}/bladeRules/corrosion/${index}/area`, detail: `A ${partClass} has no area “${area}”` }],
    ),
  ];
}
