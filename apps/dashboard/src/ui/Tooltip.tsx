import type { ReactElement } from 'react';
import { Tooltip as AriaTooltip, TooltipTrigger } from 'react-aria-components';

/** A few more words on hover and focus. Never the only place something is said: gloves have no hover. */
export function Tooltip({ text, children }: { text: string; children: ReactElement }) {
  return (
    <TooltipTrigger delay={400}>
      {children}
      <AriaTooltip className="tooltip" offset={6}>
        {text}
      </AriaTooltip>
    </TooltipTrigger>
  );
}
