/** Many files beside the report, told in one line. */
import { count } from '../format/number.ts';

/** "24 files beside this report: 12 DXF, 12 SVG in patterns/". */
export function filesTitle(files: readonly { name: string }[]): string {
  const kinds = new Map<string, number>();
  const folders = new Set<string>();
  for (const { name } of files) {
    const kind = name.slice(name.lastIndexOf('.') + 1).toUpperCase();
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    folders.add(name.slice(0, name.lastIndexOf('/') + 1));
  }
  const what = [...kinds].map(([kind, n]) => `${n} ${kind}`).join(', ');
  const where = [...folders].filter((folder) => folder !== '').join(', ');
  return `${count(files.length, 'file')} beside this report: ${what}${where === '' ? '' : ` in ${where}`}`;
}
