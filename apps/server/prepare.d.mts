export const root: string;
export function checkNode(): void;
export function ensureInstalled(): boolean;
export function ensureBuilt(): void;
export function ensureGenerated(): void;
