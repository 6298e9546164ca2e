export const flows = ['all', 'receipts', 'issues', 'counts', 'scrap'] as const;
export type Flow = (typeof flows)[number];

/** The address of the movements behind a number of a part. */
export function behind(asked: { part: string; partId: string; flow?: Flow; since?: string; before?: string }): string {
  return `/movements?${new URLSearchParams(asked as Record<string, string>)}`;
}
