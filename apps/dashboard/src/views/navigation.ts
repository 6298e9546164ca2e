import { type Role, roles as roleOrder } from '@hubwright/contracts/roles';
import { type AreaId, areas, type View, views } from './registry.ts';

export interface AreaLink {
  readonly id: AreaId;
  readonly title: string;
  readonly pages: readonly View[];
}

function isOpenTo(view: View, roles: readonly Role[]): boolean {
  return view.roles.some((role) => roles.includes(role));
}

/** The areas someone with these roles can open, each with its pages; an area without pages is not shown. */
export function areasFor(roles: readonly Role[], all: readonly View[] = views): readonly AreaLink[] {
  return areas
    .map(({ id, title }) => ({
      id,
      title,
      pages: all.filter((view) => view.area === id && view.inNavigation && isOpenTo(view, roles)),
    }))
    .filter((area) => area.pages.length > 0);
}

export interface PageGroup {
  /** Empty where the area has no groups. */
  readonly title: string;
  readonly pages: readonly View[];
}

/** The pages of an area by the group they stand in, groups in the order of their first page. */
export function groupsOf(pages: readonly View[]): readonly PageGroup[] {
  const titles = [...new Set(pages.map(({ group = '' }) => group))];
  return titles.map((title) => ({ title, pages: pages.filter(({ group = '' }) => group === title) }));
}

function isAtOrUnder(pathname: string, page: string): boolean {
  return pathname === page || pathname.startsWith(`${page}/`);
}

/** The view whose address the path has or lies under; the longest one, so that `/desk/book-in` is not also `/desk`. */
export function viewAt(pathname: string, among: readonly View[] = views): View | undefined {
  return among
    .filter((view) => isAtOrUnder(pathname, view.path.replace(/\/\$.*$/, '')))
    .toSorted((a, b) => b.path.length - a.path.length)[0];
}

/** Where someone lands: the view of their first role (in the shop's order) that has one, else any page open to them. */
export function homeFor(roles: readonly Role[], all: readonly View[] = views): string | undefined {
  const open = areasFor(roles, all);
  const own = roleOrder
    .filter((role) => roles.includes(role))
    .flatMap((role) => areas.filter((area) => area.homeOf === role))
    .flatMap((area) => open.filter((link) => link.id === area.id));
  return (own[0] ?? open[0])?.pages[0]?.path;
}
