/** The design variables of one architecture, gathered part by part, and the reading of coordinates by name. */
import type { Engine } from '../../shared/engine/engine.ts';
import type { Range } from '../config/study.ts';
import type { Variable } from './architecture.ts';

/** Says one coordinate in words, with the dimension of the engine that follows from it. */
export type Wording = (value: number, engine: Engine | null) => string;

/** Variables in order; ranges of one value and choices of one option are fixed and take no coordinate. */
export class Coordinates {
  readonly variables: Variable[] = [];
  private readonly wordings: Wording[] = [];
  private readonly fixed = new Map<string, number>();

  real(name: string, label: string, range: Range, unit: string, wording: Wording): void {
    if (range.low === range.high) this.fixed.set(name, range.low);
    else this.add({ kind: 'real', name, label, low: range.low, high: range.high, unit }, wording);
  }

  integer(name: string, label: string, range: Range): void {
    if (range.low === range.high) this.fixed.set(name, range.low);
    else
      this.add({ kind: 'integer', name, label, low: range.low, high: range.high, unit: '' }, (value) => String(value));
  }

  choice(name: string, label: string, options: string[]): void {
    if (options.length === 1) this.fixed.set(name, 0);
    else this.add({ kind: 'choice', name, label, options }, (value) => options[value]);
  }

  private add(variable: Variable, wording: Wording): void {
    this.variables.push(variable);
    this.wordings.push(wording);
  }

  /**
   * Coordinates → values by name.
   * @throws RangeError when the number of coordinates is wrong, or one lies outside its bounds or is not whole where it must be.
   */
  read(x: readonly number[]): Values {
    if (x.length !== this.variables.length) {
      throw new RangeError(`${this.variables.length} coordinates were expected, found ${x.length}`);
    }
    const values = new Map(this.fixed);
    this.variables.forEach((variable, index) => {
      const low = variable.kind === 'choice' ? 0 : variable.low;
      const high = variable.kind === 'choice' ? variable.options.length - 1 : variable.high;
      // Bounds met by arithmetic may be missed by a rounding error.
      const slack = variable.kind === 'real' ? 1e-9 * (high - low) : 0;
      const value = Math.min(high, Math.max(low, x[index]));
      if (!(Math.abs(value - x[index]) <= slack) || (variable.kind !== 'real' && !Number.isInteger(value))) {
        throw new RangeError(
          `${variable.name}: a ${variable.kind} from ${low} to ${high} was expected, found ${value}`,
        );
      }
      values.set(variable.name, value);
    });
    return (name) => {
      const value = values.get(name);
      if (value === undefined) throw new RangeError(`there is no design variable "${name}" in this architecture`);
      return value;
    };
  }

  /** Every coordinate in words. */
  describe(x: readonly number[], engine: Engine | null): { name: string; label: string; value: string }[] {
    return this.variables.map(({ name, label }, index) => ({
      name,
      label,
      value: this.wordings[index](x[index], engine),
    }));
  }
}

/** Looks a value up by the name of its variable; choices are the index of the option. */
export type Values = (name: string) => number;
