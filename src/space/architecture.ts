/** An architecture is one kind of engine: intake × augmenter × fuel feed. Each has its own design variables. */
import type { Engine, Feed } from '../../shared/engine/engine.ts';
import type { IntakeChoice } from '../config/study.ts';

export interface Architecture {
  /** Stable, e.g. "reed_plain_premixed-propane". */
  id: string;
  /** For people, e.g. "reed valves, no augmenter, premixed propane". */
  label: string;
  intake: IntakeChoice;
  augmenter: boolean;
  feed: { fuel: Feed['fuel']; mode: Feed['mode'] };
}

/** One coordinate of a design. All coordinates are numbers; a choice is the index of its option. */
export type Variable =
  | { kind: 'real'; name: string; label: string; low: number; high: number; unit: string }
  | { kind: 'integer'; name: string; label: string; low: number; high: number; unit: string }
  | { kind: 'choice'; name: string; label: string; options: string[] };

/** A design that geometry forbids, refused before it costs a simulation. */
export interface Refusal {
  refused: true;
  /** Constraint that is broken and by how much, normalised. */
  constraint: string;
  violation: number;
  sentence: string;
}

/** The design variables of one architecture and the way from coordinates to an engine. */
export interface ArchitectureSpace {
  architecture: Architecture;
  variables: Variable[];
  /** Coordinates in the order of `variables`, inside their bounds. Pure. */
  toEngine(x: readonly number[]): Engine | Refusal;
}
