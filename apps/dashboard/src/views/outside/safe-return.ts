/** Where to go after signing in: only an address of this dashboard, never another site. */
export function safeReturn(back: string | undefined): string {
  if (!back?.startsWith('/') || /^\/[/\\]/.test(back) || back.startsWith('/sign-in')) return '/';
  return back;
}
