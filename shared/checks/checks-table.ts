/** The table of all checks with their sources, as Markdown, for the documentation. */
import { CHECK_GROUPS } from './registry.ts';

export function checksTable(): string {
  const rows = CHECK_GROUPS.flatMap((group) =>
    group.rules.map(
      (rule) =>
        `| ${group.title} | \`${rule.id}\` | ${rule.title} | ${rule.binding ? 'yes' : 'no'} | ${rule.source.replaceAll('|', '\\|')} |`,
    ),
  );
  return ['| Group | Check | What it asks | Binding | Source |', '|---|---|---|---|---|', ...rows, ''].join('\n');
}
