import type { ReactNode } from 'react';
import { Menu as AriaMenu, Button, Header, MenuItem, MenuSection, MenuTrigger, Popover } from 'react-aria-components';

export interface MenuAction {
  readonly id: string;
  readonly text: string;
  readonly onAction?: () => void;
  readonly href?: string;
  readonly isDisabled?: boolean;
  /** Shown as the one that is on, for choices such as light and dark. */
  readonly isOn?: boolean;
}

/** A button that opens a list of actions, in named groups. */
export function Menu(props: {
  /** Names the list; the button is named by what it shows. */
  label: string;
  children: ReactNode;
  groups: readonly { title?: string; actions: readonly MenuAction[] }[];
}) {
  return (
    <MenuTrigger>
      <Button className="button quiet">{props.children}</Button>
      <Popover className="popover" placement="bottom end">
        <AriaMenu className="list">
          {props.groups.map((group) => (
            <MenuSection key={group.title ?? group.actions[0]?.id ?? ''} aria-label={group.title ?? props.label}>
              {group.title ? <Header className="list-head">{group.title}</Header> : null}
              {group.actions.map(({ id, text, isOn, ...action }) => (
                <MenuItem key={id} id={id} textValue={text} className="list-item" {...action}>
                  <span>{text}</span>
                  {isOn ? <span className="soft small">on</span> : null}
                </MenuItem>
              ))}
            </MenuSection>
          ))}
        </AriaMenu>
      </Popover>
    </MenuTrigger>
  );
}
