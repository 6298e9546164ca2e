import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { roleTitles } from '@hubwright/contracts/roles';
import { useQueryClient } from '@tanstack/react-query';
import { useCommand } from '../api/command.ts';
import { useMe } from '../api/me.ts';
import { useNavigateTo } from '../ui/Link.tsx';
import { Menu } from '../ui/Menu.tsx';
import { chooseTheme, type Theme, useTheme } from './theme.ts';

const themes: readonly { id: Theme; text: string }[] = [
  { id: 'system', text: 'As this device' },
  { id: 'light', text: 'Light' },
  { id: 'dark', text: 'Dark' },
];

/** Who is signed in; light and dark, the keys, and the way out. */
export function PersonMenu({ onHelp }: { onHelp: () => void }) {
  const me = useMe();
  const theme = useTheme();
  const queries = useQueryClient();
  const navigate = useNavigateTo();
  const signOut = useCommand(peopleOperations.signOut);
  const lock = useCommand(accessOperations.lockSession);
  const leave = () =>
    signOut.mutate(
      { input: {} },
      {
        onSettled: () => {
          queries.clear();
          navigate('/sign-in');
        },
      },
    );
  return (
    <Menu
      label={`${me.displayName}: menu`}
      groups={[
        {
          title: `${me.displayName} · ${me.roles.map((role) => roleTitles[role]).join(', ')}`,
          actions: [
            { id: 'account', text: 'Your account', href: '/account' },
            { id: 'lock', text: 'Lock this device', onAction: () => lock.mutate({ input: {} }) },
            { id: 'keys', text: 'Keys and scanning', onAction: onHelp },
            { id: 'sign-out', text: 'Sign out', onAction: leave },
          ],
        },
        {
          title: 'Light and dark',
          actions: themes.map(({ id, text }) => ({ id, text, isOn: theme === id, onAction: () => chooseTheme(id) })),
        },
      ]}
    >
      <span className="initials">{me.initials}</span>
      <span className="person-name">{me.displayName}</span>
    </Menu>
  );
}
