import { useLocation } from '@tanstack/react-router';
import { useMe } from '../features/people/me.ts';
import { Link } from '../ui/Link.tsx';
import { areasFor } from '../views/navigation.ts';
import { views } from '../views/registry.ts';

/** The area the address lies in, by the longest registered start of the path. */
function areaAt(path: string) {
  return views.find((view) => path.startsWith(view.path.replace(/\/\$.*$/, '')))?.area;
}

/** The areas open to this person, and the pages of the one they stand in. */
export function AreaNavigation() {
  const { roles } = useMe();
  const { pathname } = useLocation();
  const areas = areasFor(roles);
  const here = areas.find((area) => area.id === areaAt(pathname));
  return (
    <nav aria-label="Areas of the shop" className="area-nav">
      <ul className="area-tabs">
        {areas.map((area) => (
          <li key={area.id} {...(area === here ? { 'data-here': true } : {})}>
            <Link href={area.pages[0]?.path ?? '/'}>{area.title}</Link>
          </li>
        ))}
      </ul>
      {here && here.pages.length > 1 ? (
        <ul className="page-links" aria-label={`Pages of ${here.title}`}>
          {here.pages.map((page) => (
            <li key={page.path}>
              <Link href={page.path}>{page.title}</Link>
            </li>
          ))}
        </ul>
      ) : null}
    </nav>
  );
}
