import { expect, it } from '@jest/globals';
import { areasFor, groupsOf, homeFor, viewAt } from './navigation.ts';
import { safeReturn } from './outside/safe-return.ts';
import { views } from './registry.ts';

it('every view has its own address and someone who may open it', () => {
  expect(new Set(views.map((view) => view.path)).size).toBe(views.length);
  for (const view of views) expect(view.roles.length).toBeGreaterThan(0);
});

it('people see only areas with a page for them', () => {
  const pages = (roles: Parameters<typeof areasFor>[0]) =>
    areasFor(roles).flatMap((area) => area.pages.map((page) => page.title));
  expect(pages(['administrator'])).toEqual(expect.arrayContaining(['People', 'Shop profile']));
  expect(pages(['technician'])).not.toContain('People');
  expect(areasFor([])).toEqual([]);
});

it('a page lies under one view: the nearest, and none that only begins with the same letters', () => {
  const titleAt = (path: string) => viewAt(path)?.title;
  expect(titleAt('/desk')).toBe('Front desk');
  expect(titleAt('/desk/book-in')).toBe('Book in');
  expect(titleAt('/kits/0190')).toBe('Kit');
  expect(titleAt('/desktop')).toBeUndefined();
  const pages = areasFor(['front-desk']).flatMap((area) => area.pages);
  expect(viewAt('/kits/0190', pages)?.title).toBe('Kits');
});

it('the pages of the parts room stand in at most five groups of at most five', () => {
  const room = areasFor(['parts-room']).find(({ id }) => id === 'parts-room');
  const groups = groupsOf(room?.pages ?? []);
  expect(groups.map(({ title }) => title)).toEqual(['Pull', 'Buy', 'Receive', 'Keep', 'Books']);
  for (const { pages } of groups) expect(pages.length).toBeLessThanOrEqual(5);
  expect(groups.flatMap(({ pages }) => pages)).toHaveLength(room?.pages.length ?? 0);
  // A page about one thing opens the group of its list.
  expect([viewAt('/lots/0190')?.group, viewAt('/orders/0190')?.group]).toEqual(['Keep', 'Buy']);
});

it('an area with few pages has no groups', () => {
  const bench = areasFor(['technician']).find(({ id }) => id === 'build-bench');
  expect(groupsOf(bench?.pages ?? []).map(({ title }) => title)).toEqual(['']);
});

it('people land on the area of their role when it has a page', () => {
  const page = (area: string, role: string) => ({
    ...views[0],
    path: `/${area}`,
    area,
    roles: [role],
    inNavigation: true,
  });
  const all = [page('front-desk', 'front-desk'), page('inspection', 'inspector')] as never;
  expect(homeFor(['inspector'], all)).toBe('/inspection');
  expect(homeFor(['front-desk', 'inspector'], all)).toBe('/front-desk');
  expect(homeFor(['manager'], all)).toBeUndefined();
});

it('signing in leads back only into this dashboard', () => {
  expect(safeReturn('/find?code=1')).toBe('/find?code=1');
  for (const back of [undefined, '', 'https://example.com', '//example.com', '/\\example.com', '/sign-in?back=/']) {
    expect(safeReturn(back)).toBe('/');
  }
});
