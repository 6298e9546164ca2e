import { useLinkProps, useLocation } from '@tanstack/react-router';
import { useMe } from '../api/me.ts';
import { areasFor, groupsOf, type PageGroup, viewAt } from '../views/navigation.ts';
import type { View } from '../views/registry.ts';

/** A link that says itself whether it is current: the router would also mark every page above the one in sight. */
function PlaceLink(props: { to: string; title: string; current?: 'page' | 'true' | undefined; tip?: string }) {
  const { 'aria-current': _, ...link } = useLinkProps({ to: props.to });
  return (
    <a {...link} aria-current={props.current} title={props.tip}>
      {props.title}
    </a>
  );
}

function PageItems({ pages, current }: { pages: readonly View[]; current: View | undefined }) {
  return pages.map(({ path, title }) => (
    <li key={path}>
      <PlaceLink to={path} title={title} current={path === current?.path ? 'page' : undefined} />
    </li>
  ));
}

/** A group stands open while one of its pages is in sight; else it is one link to its first page that says what else is there. */
function Group({ group, isOpen, current }: { group: PageGroup; isOpen: boolean; current: View | undefined }) {
  const { title, pages } = group;
  const [first] = pages;
  if (!isOpen || !first)
    return (
      <li>
        <PlaceLink to={first?.path ?? '/'} title={title} tip={pages.map((page) => page.title).join(', ')} />
      </li>
    );
  return (
    <li className="page-group" data-here>
      <span aria-hidden="true">{title}</span>
      <ul aria-label={title}>
        <PageItems pages={pages} current={current} />
      </ul>
    </li>
  );
}

/** The areas open to this person, and the pages of the one they stand in. */
export function AreaNavigation() {
  const { roles } = useMe();
  const { pathname } = useLocation();
  const areas = areasFor(roles);
  const view = viewAt(pathname);
  const here = areas.find((area) => area.id === view?.area);
  const page = here ? viewAt(pathname, here.pages) : undefined;
  return (
    <nav aria-label="Areas of the shop" className="area-nav">
      <ul className="area-tabs">
        {areas.map((area) => (
          <li key={area.id} {...(area === here ? { 'data-here': true } : {})}>
            <PlaceLink
              to={area.pages[0]?.path ?? '/'}
              title={area.title}
              current={area === here ? 'true' : undefined}
            />
          </li>
        ))}
      </ul>
      {here && here.pages.length > 1 ? (
        <ul className="page-links" aria-label={`Pages of ${here.title}`}>
          {groupsOf(here.pages).map((group) =>
            group.title === '' ? (
              <PageItems key="" pages={group.pages} current={page} />
            ) : (
              <Group key={group.title} group={group} isOpen={group.title === view?.group} current={page} />
            ),
          )}
        </ul>
      ) : null}
    </nav>
  );
}
