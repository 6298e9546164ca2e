import { Problem } from '@hubwright/contracts/problems';

const nobodysNames = new Set(
  `a an all and anyone bench bay booth crew day desk everybody everyone evening floor front guest inspector inspection
  inspectors line manager mechanic mechanics night office operator parts room shared shift shop stand station tablet team
  teardown technician technicians test the user users workshop administrator admin`.split(/\s+/),
);

/** Throws `shared-account` for a name that is a place, a shift or a job: a signature must lead to one person. */
export function refuseSharedName(displayName: string): void {
  const words = displayName.toLowerCase().match(/\p{L}+/gu) ?? [];
  if (words.some((word) => !nobodysNames.has(word))) return;
  throw new Problem('shared-account', `“${displayName}” is not the name of a person`, {}, [
    { pointer: '/displayName', detail: 'Enter the person’s own name' },
  ]);
}
