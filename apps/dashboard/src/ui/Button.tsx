import type { ReactNode } from 'react';
import { Button as AriaButton, type ButtonProps as AriaButtonProps, Link } from 'react-aria-components';
import { Spinner } from './Progress.tsx';

/** `next` is the one action the view asks for; at most one stands on a sheet. `stop` is for what cannot be taken back. */
export type Weight = 'plain' | 'next' | 'quiet' | 'stop';

export interface ButtonProps extends Omit<AriaButtonProps, 'children' | 'className'> {
  weight?: Weight;
  children: ReactNode;
}

export function Button({ weight = 'plain', children, ...props }: ButtonProps) {
  return (
    <AriaButton {...props} className={`button ${weight}`}>
      {props.isPending ? <Spinner label="Working" /> : null}
      {children}
    </AriaButton>
  );
}

/** A link that looks like a button: it goes somewhere or opens a file; a button does something. */
export function LinkButton(props: { href: string; weight?: Weight; children: ReactNode; target?: string }) {
  const { weight = 'plain', ...rest } = props;
  return <Link {...rest} className={`button ${weight}`} />;
}
