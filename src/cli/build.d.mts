export const ROOT: string;
export function entryFile(entry: string): string;
export function modelVersion(): Promise<string>;
export function buildEntry(entry: string): Promise<string>;
