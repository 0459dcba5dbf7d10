/**
 * The study in canonical form: what a configuration file says after reading, unit conversion, checking and defaults.
 * SI units throughout. Saved beside the results, so that a study explains itself.
 */
import type { ValveMaterialId } from '../../shared/durability/material-ids.ts';
import type { Brief } from '../../shared/engine/brief.ts';
import type { Feed, Shell, Site } from '../../shared/engine/engine.ts';

export type IntakeChoice = 'reed' | 'poppet' | 'valveless-straight' | 'valveless-u';

/** Inclusive range; low = high fixes the value. */
export interface Range {
  low: number;
  high: number;
}

/** Geometry common to all architectures, as ranges; ratios keep the corners of the space buildable. */
export interface GeometryRanges {
  chamberDiameter: Range;
  /** Chamber length over chamber diameter. */
  chamberAspect: Range;
  /** Cone half-angle, rad. */
  coneAngle: Range;
  /** Tailpipe diameter over chamber diameter. */
  tailpipeRatio: Range;
  /** Tailpipe length over tailpipe diameter. */
  tailpipeAspect: Range;
  /** Exit diameter over tailpipe diameter; 1 is no flare. */
  exitFlare: Range;
}

export interface ReedRanges {
  petals: Range;
  length: Range;
  width: Range;
  thicknesses: number[];
  materials: ValveMaterialId[];
  stopLift: Range;
  /** Total port area over tailpipe area. */
  portRatio: Range;
}

export interface PoppetRanges {
  valves: Range;
  /** Total port area over tailpipe area. */
  portRatio: Range;
  /** Lift over head diameter. */
  liftRatio: Range;
  /** Natural frequency wished for, Hz; sets the spring. */
  springFrequency: Range;
  /** Head thickness, m; with the stem it sets the mass. */
  headThickness: Range;
  materials: ValveMaterialId[];
  stemJoints: ('one-piece' | 'welded')[];
}

export interface ValvelessRanges {
  /** Intake pipe diameter over tailpipe diameter. */
  intakeRatio: Range;
  /** Intake pipe length over its diameter. */
  intakeAspect: Range;
  lips: ('thin' | 'flared')[];
  /** Instead of the common ranges, where given: valveless engines want other proportions and richer mixtures. */
  chamberAspect: Range | null;
  tailpipeRatio: Range | null;
  tailpipeAspect: Range | null;
  equivalenceRatio: Range | null;
}

export interface AugmenterRanges {
  /** Augmenter diameter over engine exit diameter. */
  diameterRatio: Range;
  /** Length over augmenter diameter. */
  aspect: Range;
  /** Gap over engine exit diameter. */
  gapRatio: Range;
  taper: Range;
}

export interface Space {
  intakes: IntakeChoice[];
  augmenter: ('without' | 'with')[];
  feeds: { fuel: Feed['fuel']; mode: Feed['mode'] }[];
  equivalenceRatio: Range;
  shells: Shell[];
  geometry: GeometryRanges;
  reed: ReedRanges | null;
  poppet: PoppetRanges | null;
  valveless: ValvelessRanges | null;
  augmenterRanges: AugmenterRanges | null;
}

export interface RankingWishes {
  /** Weight of TSFC against valve life, 0 to 1 each. */
  tsfcWeight: number;
  lifeWeight: number;
  /** How the order is made: weighted score, knee of the front first, or best life with TSFC below a bound. */
  method: 'weighted' | 'knee' | 'life-at-bounded-tsfc';
  /** kg/(N s), for the last method. */
  tsfcBound: number | null;
}

export interface SearchSettings {
  evaluations: number;
  /** Members of each architecture's population. */
  population: number;
  seed: string;
  /** Stop after this many generations without hypervolume gain. */
  stallGenerations: number;
  /** s; null: no limit. */
  timeLimit: number | null;
  finalists: number;
  /** Draws over constants and tolerances for each finalist. */
  draws: number;
}

export interface ReportSettings {
  title: string;
  /** The question of the study, in the user's words. */
  question: string;
  notes: string;
  paper: 'A4' | 'Letter';
  /** Marks demo data as invented. */
  invented: boolean;
}

export interface DeliverySettings {
  to: string[];
  from: string;
  subject: string | null;
  /** Bytes above which attachments are left out with a note. */
  attachmentLimit: number;
}

export interface Study {
  /** Folder name of the study: letters, digits and hyphens. */
  slug: string;
  brief: Brief;
  site: Site;
  space: Space;
  ranking: RankingWishes;
  search: SearchSettings;
  report: ReportSettings;
  delivery: DeliverySettings | null;
}
