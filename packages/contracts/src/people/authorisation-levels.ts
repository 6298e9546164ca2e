import { z } from 'zod';

/** What a person may hold: a trainee does the work under supervision only; no step asks for that level. The others are `levels`. */
export const authorisationLevels = ['trainee', 'perform', 'inspect', 'approve'] as const;
export const authorisationLevelSchema = z.enum(authorisationLevels).meta({ id: 'AuthorisationLevel' });
export type AuthorisationLevel = (typeof authorisationLevels)[number];
