import { SessionsOf } from '../../features/people/sessions.tsx';

export function SessionsPage() {
  return (
    <section className="sheet stack" aria-label="Sessions">
      <SessionsOf />
    </section>
  );
}
