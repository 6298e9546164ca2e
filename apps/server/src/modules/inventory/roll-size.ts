import type { LabelForm } from '@hubwright/contracts/inventory/label-forms';

/** How large the labels of a roll are; nothing for a sheet. */
export function rollSize(form: LabelForm): { widthMillimetres: number; heightMillimetres: number } | undefined {
  const [, width, height] = /^roll-(\d+)x(\d+)$/.exec(form) ?? [];
  return width && height ? { widthMillimetres: Number(width), heightMillimetres: Number(height) } : undefined;
}
