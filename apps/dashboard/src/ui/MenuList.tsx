import type { RefObject } from 'react';
import { Menu as AriaMenu, Header, MenuItem, MenuSection, Popover } from 'react-aria-components';

export interface MenuAction {
  readonly id: string;
  readonly text: string;
  readonly onAction?: () => void;
  readonly href?: string;
  readonly isDisabled?: boolean;
  /** Shown as the one that is on, for choices such as light and dark. */
  readonly isOn?: boolean;
}

export interface MenuGroup {
  readonly title?: string;
  readonly actions: readonly MenuAction[];
}

/** The opened list of a `Menu`, at its button. */
export default function MenuList(props: {
  label: string;
  groups: readonly MenuGroup[];
  trigger: RefObject<HTMLButtonElement | null>;
  close: () => void;
}) {
  return (
    <Popover
      className="popover"
      aria-label={props.label}
      placement="bottom end"
      triggerRef={props.trigger}
      isOpen
      onOpenChange={(isOpen) => (isOpen ? undefined : props.close())}
    >
      <AriaMenu className="list" aria-label={props.label} autoFocus="first" onClose={props.close}>
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
  );
}
