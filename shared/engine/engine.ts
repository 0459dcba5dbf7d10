/**
 * The engine: everything that the performance model must know to simulate one design.
 *
 * SI units throughout: metres, kilograms, seconds, pascals, kelvins, radians. Diameters are inside diameters.
 */

import type { SheetMaterialId, ValveMaterialId } from '../durability/material-ids.ts';
import type { FuelName } from '../gas/fuels.ts';

/** What a stretch of duct is for; the drawings, patterns and parts list go by this name. */
export type SectionRole = 'intake' | 'intake-cone' | 'chamber' | 'chamber-cone' | 'tailpipe' | 'bend' | 'exit-flare';

/** A straight cylinder, cone or bend of the duct. Equal diameters make a cylinder. */
export interface Section {
  role: SectionRole;
  /** Along the centreline, m. */
  length: number;
  /** Inside diameter at the upstream (head) end, m. */
  startDiameter: number;
  /** Inside diameter at the downstream (exit) end, m. */
  endDiameter: number;
  /** Bends only: angle turned, rad (π for a U), and centreline radius, m; length = angle · radius. */
  bend?: { angle: number; radius: number };
}

/** Flat petals or strips clamped at the root, opening against a curved stop. */
export interface ReedIntake {
  kind: 'reed';
  /** Number of petals, each over its own port. */
  petals: number;
  /** Free length from clamp to tip, m. */
  length: number;
  /** Mean width over the port, m. */
  width: number;
  /** Strip thickness, m. */
  thickness: number;
  material: ValveMaterialId;
  /** Tip lift at which the petal lies on its stop, m. */
  stopLift: number;
  /** Port area under one petal, m². */
  portArea: number;
}

/** One or several poppet valves that open into the chamber, pulled shut by a spring. */
export interface PoppetIntake {
  kind: 'poppet';
  valves: number;
  headDiameter: number;
  /** Throat diameter of the seat, m; less than headDiameter. */
  portDiameter: number;
  /** Greatest lift, at the stop, m. */
  lift: number;
  /** Moving mass of one valve without its spring: head, stem, retainer, kg. */
  mass: number;
  stemDiameter: number;
  /** Mass of one spring, kg; a third of it moves. */
  springMass: number;
  /** Spring rate, N/m, and force when shut, N. */
  springRate: number;
  preload: number;
  material: ValveMaterialId;
  stemJoint: 'one-piece' | 'welded';
  /** Axis of travel: gravity pulls a vertical valve open. */
  axis: 'horizontal' | 'vertical';
}

/** No moving part: the first section of the duct is the intake pipe, open to the air. */
export interface ValvelessIntake {
  kind: 'valveless';
  lip: 'thin' | 'flared';
  /** Which way the mouth points: aft (U-bent engine, intake thrust adds) or forward (it subtracts). */
  mouth: 'aft' | 'forward';
}

export type Intake = ReedIntake | PoppetIntake | ValvelessIntake;

/** How fuel enters. φ is fuel used against what the air taken in could burn. */
export interface Feed {
  fuel: FuelName;
  /**
   * premixed: with the air through the valves (carburettor or intake spray bar);
   * steady-injection: a constant flow into the chamber; timed-injection: a window locked to chamber suction.
   */
  mode: 'premixed' | 'steady-injection' | 'timed-injection';
  equivalenceRatio: number;
}

/** A shrouded duct behind the exit that entrains outside air. */
export interface Augmenter {
  /** Inside throat diameter, m. */
  diameter: number;
  /** Length of the duct behind the bell, m. */
  length: number;
  /** From engine exit to the bell's lip, m. */
  gap: number;
  /** Exit diameter over throat diameter; 1 is straight. */
  taper: number;
}

export interface Shell {
  material: SheetMaterialId;
  thickness: number;
}

/** The still air that the engine runs in. */
export interface Site {
  /** Pa absolute. */
  pressure: number;
  /** K. */
  temperature: number;
}

export interface Engine {
  name: string;
  /** From the valve plate (or intake mouth) to the exit, ends meeting. */
  sections: Section[];
  intake: Intake;
  feed: Feed;
  shell: Shell;
  augmenter: Augmenter | null;
  site: Site;
}
