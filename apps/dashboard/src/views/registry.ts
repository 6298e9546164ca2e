import type { Role } from '@hubwright/contracts/roles';
import type { ComponentType } from 'react';
import { administrationPages } from './administration/pages.ts';
import { buildBenchPages } from './build-bench/pages.ts';
import { frontDeskPages } from './front-desk/pages.ts';
import { inspectionPages } from './inspection/pages.ts';
import { managerPages } from './manager/pages.ts';
import { partsRoomPages } from './parts-room/pages.ts';

/** The parts of the shop a person can stand in, in the order they lie on the way of a unit, and whose home each is. */
export const areas = [
  { id: 'front-desk', title: 'Front desk', homeOf: 'front-desk' },
  { id: 'parts-room', title: 'Parts room', homeOf: 'parts-room' },
  { id: 'build-bench', title: 'Build bench', homeOf: 'technician' },
  { id: 'inspection', title: 'Inspection', homeOf: 'inspector' },
  { id: 'manager', title: 'Manager', homeOf: 'manager' },
  { id: 'administration', title: 'Administration', homeOf: 'administrator' },
] as const satisfies readonly { id: string; title: string; homeOf: Role }[];
export type AreaId = (typeof areas)[number]['id'];

/** One page of the dashboard. */
export interface View {
  /** Its address; `$name` for a part that varies, read with `useParams({ strict: false })`. */
  readonly path: `/${string}`;
  readonly area: AreaId;
  /** Its name in the navigation and in the window's title. */
  readonly title: string;
  /** The question it answers without a click; its heading. */
  readonly question: string;
  /** Who may open it. */
  readonly roles: readonly Role[];
  /** Which pages of its area it stands with. Areas with few pages have no groups. */
  readonly group?: string;
  /** Shown in the navigation; pages about one thing are reached from lists instead. */
  readonly inNavigation: boolean;
  /** The page writes its own `<ViewHead>`, because title or question name the one thing it is about. */
  readonly ownHead?: boolean;
  readonly component: ComponentType;
}

/** Every view there is. The first of an area that a person may open is where the area's tab leads. */
export const views: readonly View[] = [
  ...frontDeskPages,
  ...partsRoomPages,
  ...buildBenchPages,
  ...inspectionPages,
  ...managerPages,
  ...administrationPages,
];
