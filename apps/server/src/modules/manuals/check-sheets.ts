import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import type { Pointed } from '@hubwright/contracts/problems';

interface OfModel {
  readonly bladeCount: number | null;
  /** Ids. */
  readonly applications: ReadonlySet<string>;
}

/** Angles of another model’s application, tests of more blades than there are, seals at a position nobody lists. */
export function wrongSheets({ routes, kitList }: ModelContent, model: OfModel, at: string): Pointed[] {
  const positions = new Set(kitList.map(({ position }) => position));
  return routes.flatMap(({ steps }, route) =>
    steps.flatMap(({ sheet }, step) => {
      if (sheet?.kind !== 'angles' && sheet?.kind !== 'function-test') return [];
      const pointer = `${at}/routes/${route}/steps/${step}/sheet`;
      const strange = sheet.seals.filter((seal) => !positions.has(seal));
      return [
        ...(sheet.blades === model.bladeCount
          ? []
          : [{ pointer: `${pointer}/blades`, detail: `The model has ${model.bladeCount ?? 'no'} blades` }]),
        ...strange.map((seal) => ({ pointer: `${pointer}/seals`, detail: `The kit list has no position “${seal}”` })),
        ...(sheet.kind === 'angles' ? strangeApplications(sheet, model, pointer) : []),
      ];
    }),
  );
}

function strangeApplications(
  { applications }: { readonly applications: readonly { readonly applicationId: string }[] },
  model: OfModel,
  at: string,
): Pointed[] {
  return applications.flatMap(({ applicationId }, index) =>
    model.applications.has(applicationId)
      ? []
      : [{ pointer: `${at}/applications/${index}/applicationId`, detail: 'This application is of another model' }],
  );
}
