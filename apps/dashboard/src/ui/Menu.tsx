import { lazy, type ReactNode, Suspense, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { MenuGroup } from './MenuList.tsx';

const loadList = () => import('./MenuList.tsx');
const MenuList = lazy(loadList);

/**
 * A button that opens a list of actions, in named groups. The list comes when a pointer or the focus reaches the button:
 * every page shows the button and few open it.
 */
export function Menu(props: {
  /** Names the list; the button is named by what it shows. */
  label: string;
  children: ReactNode;
  groups: readonly MenuGroup[];
}) {
  const trigger = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button
        ref={trigger}
        className="button quiet"
        aria-haspopup="menu"
        aria-expanded={isOpen}
        onHoverStart={loadList}
        onFocus={loadList}
        onPress={() => setOpen(!isOpen)}
        onKeyDown={(event) => (event.key === 'ArrowDown' ? setOpen(true) : event.continuePropagation())}
      >
        {props.children}
      </Button>
      {isOpen ? (
        <Suspense fallback={null}>
          <MenuList label={props.label} groups={props.groups} trigger={trigger} close={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
