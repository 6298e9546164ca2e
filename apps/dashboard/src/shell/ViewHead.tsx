import type { ReactNode } from 'react';
import { useShop } from '../format/shop-context.tsx';

/** The window's title, the page's name, and its question as heading; `children` stand at the right: the page's one action. */
export function ViewHead({ title, question, children }: { title: string; question: string; children?: ReactNode }) {
  const shop = useShop();
  return (
    <div className="view-head">
      <title>{`${title} · ${shop.name}`}</title>
      <div>
        <p className="soft small">{title}</p>
        <h1 tabIndex={-1}>{question}</h1>
      </div>
      {children}
    </div>
  );
}
