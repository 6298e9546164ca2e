import { type AuthorisationLevel, authorisationLevels } from '@hubwright/contracts/people/authorisation-levels';
import { type Process, processes } from '@hubwright/contracts/people/operations';
import { type Role, roles, roleTitles } from '@hubwright/contracts/roles';

export const processWords: Record<Process, string> = {
  'receiving-inspection': 'Receiving inspection',
  teardown: 'Teardown',
  cleaning: 'Cleaning',
  'non-destructive-test': 'Non-destructive test',
  'dimensional-inspection': 'Dimensional inspection',
  'blade-repair': 'Blade repair',
  'shot-peening': 'Shot peening',
  plating: 'Plating',
  coating: 'Coating',
  assembly: 'Assembly',
  'blade-angles': 'Blade angles',
  'leak-test': 'Leak test',
  'static-balance': 'Static balance',
  'dynamic-balance': 'Dynamic balance',
  'governor-bench': 'Governor bench',
  'stock-acceptance': 'Stock acceptance',
  'final-inspection': 'Final inspection',
  'return-to-service': 'Return to service',
  supervision: 'Supervision',
};

export const levelWords: Record<AuthorisationLevel, string> = {
  trainee: 'does the work under supervision',
  perform: 'does the work',
  inspect: 'inspects',
  approve: 'approves',
};

export const processChoices = processes.map((value) => ({ value, text: processWords[value] }));
export const levelChoices = authorisationLevels.map((value) => ({ value, text: levelWords[value] }));
export const roleChoices: { value: Role; text: string }[] = roles.map((value) => ({ value, text: roleTitles[value] }));
