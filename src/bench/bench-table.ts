/** A table of measured figures in Markdown: one row a figure, one column a way to run it, medians and spread over repeats. */
import { median } from 'd3-array';

export class Table {
  readonly #title: string;
  readonly #columns: readonly string[];
  readonly #rows = new Map<string, number[][]>();

  /** `columns` empty: one column without a name of its own. */
  constructor(title: string, columns: readonly string[] = []) {
    this.#title = title;
    this.#columns = columns;
  }

  /** One repeat's figures of one column, counted from 0. A figure that is seen for the first time begins a row. */
  add(figures: Record<string, number>, column = 0): void {
    for (const [name, value] of Object.entries(figures)) {
      const row = this.#rows.get(name) ?? Array.from({ length: Math.max(1, this.#columns.length) }, () => []);
      row[column].push(value);
      this.#rows.set(name, row);
    }
  }

  lines(): string[] {
    const columns = this.#columns.length === 0 ? ['median (lowest–highest)'] : this.#columns;
    const title = this.#columns.length === 0 ? this.#title : `${this.#title}: median (lowest–highest)`;
    return [
      `| ${title} | ${columns.join(' | ')} |`,
      `|---|${columns.map(() => '---|').join('')}`,
      ...[...this.#rows].map(([name, row]) => `| ${name} | ${row.map(spread).join(' | ')} |`),
    ];
  }
}

function spread(values: readonly number[]): string {
  if (values.length === 0) return '–';
  const middle = digits(median(values) ?? Number.NaN);
  return values.length === 1 ? middle : `${middle} (${digits(Math.min(...values))}–${digits(Math.max(...values))})`;
}

function digits(value: number): string {
  const size = Math.abs(value);
  return value.toFixed(size >= 100 ? 0 : size >= 10 ? 1 : 2);
}
