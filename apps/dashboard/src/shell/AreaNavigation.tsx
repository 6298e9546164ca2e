import { useLinkProps, useLocation } from '@tanstack/react-router';
import { useMe } from '../api/me.ts';
import { areasFor, viewAt } from '../views/navigation.ts';

/** A link that says itself whether it is current: the router would also mark every page above the one in sight. */
function PlaceLink({ to, title, current }: { to: string; title: string; current: 'page' | 'true' | undefined }) {
  const { 'aria-current': _, ...props } = useLinkProps({ to });
  return (
    <a {...props} aria-current={current}>
      {title}
    </a>
  );
}

/** The areas open to this person, and the pages of the one they stand in. */
export function AreaNavigation() {
  const { roles } = useMe();
  const { pathname } = useLocation();
  const areas = areasFor(roles);
  const here = areas.find((area) => area.id === viewAt(pathname)?.area);
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
          {here.pages.map((each) => (
            <li key={each.path}>
              <PlaceLink to={each.path} title={each.title} current={each === page ? 'page' : undefined} />
            </li>
          ))}
        </ul>
      ) : null}
    </nav>
  );
}
