import { z } from 'zod';

/** What a person is here for. A person may hold several roles. */
export const roles = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator'] as const;
export const roleSchema = z.enum(roles).meta({ id: 'Role' });
export type Role = (typeof roles)[number];

/** The word for a role on screens. */
export const roleTitles: Record<Role, string> = {
  'front-desk': 'Front desk',
  'parts-room': 'Parts room',
  technician: 'Technician',
  inspector: 'Inspector',
  manager: 'Manager',
  administrator: 'Administrator',
};
