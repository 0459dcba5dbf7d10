/** What a study explores: which intakes, with or without augmenter, which fuel feeds, and the ranges of every dimension. */
import { z } from 'zod';
import { SHEET_MATERIAL_IDS, VALVE_MATERIAL_IDS } from '../../shared/durability/material-ids.ts';
import { VALVE_MATERIALS } from '../../shared/durability/valve-materials.ts';
import {
  choice,
  choices,
  lineOfText,
  numberRange,
  optionalQuantity,
  plainNumber,
  quantity,
  quantityRange,
} from './fields.ts';
import type { AugmenterRanges, GeometryRanges, PoppetRanges, ReedRanges, Space, ValvelessRanges } from './study.ts';

export const INTAKE_CHOICES = ['reed', 'poppet', 'valveless-straight', 'valveless-u'] as const;

/** Reeds are cut from strip, poppets turned from bar. */
const STRIP_IDS = VALVE_MATERIAL_IDS.filter((id) => VALVE_MATERIALS[id].form === 'strip');
const BAR_IDS = VALVE_MATERIAL_IDS.filter((id) => VALVE_MATERIALS[id].form === 'bar');

/** Defaults span what has been built from drone size down to a 50-cm engine, as ratios. */
const geometrySchema = z
  .strictObject({
    'chamber-diameter': quantityRange('length', 'Inside diameter of the chamber', { low: 0.01, high: 2 }).prefault(
      '100 to 250 mm',
    ),
    'chamber-aspect': numberRange('Chamber length over chamber diameter', { low: 0.3, high: 10 }).prefault(
      '1.2 to 2.6',
    ),
    'cone-angle': quantityRange('angle', 'Half-angle of the cone from chamber to tailpipe', {
      low: 0.0175,
      high: 1.0472,
    }).prefault('6 to 18 deg'),
    'tailpipe-ratio': numberRange('Tailpipe diameter over chamber diameter', { low: 0.1, high: 1 }).prefault(
      '0.5 to 0.75',
    ),
    'tailpipe-aspect': numberRange('Tailpipe length over tailpipe diameter', { low: 1, high: 60 }).prefault('5 to 12'),
    'exit-flare': numberRange('Exit diameter over tailpipe diameter; 1 is no flare', { low: 1, high: 2 }).prefault(
      '1 to 1.15',
    ),
  })
  .transform(
    (g): GeometryRanges => ({
      chamberDiameter: g['chamber-diameter'],
      chamberAspect: g['chamber-aspect'],
      coneAngle: g['cone-angle'],
      tailpipeRatio: g['tailpipe-ratio'],
      tailpipeAspect: g['tailpipe-aspect'],
      exitFlare: g['exit-flare'],
    }),
  )
  .describe('Shape of the duct')
  .prefault({});

const reedSchema = z
  .strictObject({
    petals: numberRange('Number of petals', { low: 2, high: 200, integer: true }).prefault('8 to 30'),
    length: quantityRange('length', 'Free length of a petal', { low: 0.003, high: 0.5 }).prefault('20 to 60 mm'),
    width: quantityRange('length', 'Mean width of a petal', { low: 0.002, high: 0.3 }).prefault('8 to 40 mm'),
    thicknesses: z
      .array(quantity('thickness', 'Strip that can be bought', { low: 2e-5, high: 0.003 }), {
        error: 'a list of thicknesses',
      })
      .min(1, { error: 'at least one thickness' })
      .max(32, { error: 'at most 32 thicknesses' })
      .prefault(['0.15 mm', '0.20 mm', '0.25 mm', '0.30 mm']),
    materials: choices(STRIP_IDS, 'Strip materials').prefault(['AISI-1095', 'AISI-301-full-hard']),
    'stop-lift': quantityRange('length', 'Lift of the tip at the stop', { low: 0.0003, high: 0.1 }).prefault(
      '3 to 12 mm',
    ),
    'port-ratio': numberRange('Total port area over tailpipe area', { low: 0.05, high: 2 }).prefault('0.35 to 0.8'),
  })
  .transform(
    (r): ReedRanges => ({
      petals: r.petals,
      length: r.length,
      width: r.width,
      thicknesses: [...new Set(r.thicknesses)].sort((a, b) => a - b),
      materials: r.materials,
      stopLift: r['stop-lift'],
      portRatio: r['port-ratio'],
    }),
  )
  .nullable()
  .describe('Reed valves; write "reed: {}" for the default ranges')
  .default(null);

const poppetSchema = z
  .strictObject({
    valves: numberRange('Number of valves', { low: 1, high: 64, integer: true }).prefault('1 to 19'),
    'port-ratio': numberRange('Total port area over tailpipe area', { low: 0.05, high: 2 }).prefault('0.35 to 0.8'),
    'lift-ratio': numberRange('Lift over head diameter', { low: 0.02, high: 0.5 }).prefault('0.1 to 0.3'),
    'spring-frequency': quantityRange('frequency', 'Natural frequency of valve and spring', {
      low: 1,
      high: 5000,
    }).prefault('30 to 250 Hz'),
    'head-thickness': quantityRange('length', 'Thickness of the head', { low: 0.0003, high: 0.03 }).prefault(
      '1 to 4 mm',
    ),
    materials: choices(BAR_IDS, 'Bar materials').prefault(['Ti-6Al-4V', 'valve-steel-21-4N']),
    'stem-joints': choices(['one-piece', 'welded'], 'How the stem meets the head').prefault(['one-piece']),
  })
  .transform(
    (p): PoppetRanges => ({
      valves: p.valves,
      portRatio: p['port-ratio'],
      liftRatio: p['lift-ratio'],
      springFrequency: p['spring-frequency'],
      headThickness: p['head-thickness'],
      materials: p.materials,
      stemJoints: p['stem-joints'],
    }),
  )
  .nullable()
  .describe('Poppet valves; write "poppet: {}" for the default ranges')
  .default(null);

const valvelessSchema = z
  .strictObject({
    'intake-ratio': numberRange('Intake pipe diameter over tailpipe diameter', { low: 0.1, high: 1.5 }).prefault(
      '0.6 to 1',
    ),
    'intake-aspect': numberRange('Intake pipe length over its diameter', { low: 0.5, high: 20 }).prefault('2 to 5'),
    lips: choices(['thin', 'flared'], 'Lip of the intake').prefault(['flared']),
    'chamber-aspect': numberRange('Chamber length over diameter, instead of the common range', { low: 0.3, high: 10 })
      .nullable()
      .default(null),
    'tailpipe-ratio': numberRange('Tailpipe over chamber diameter, instead of the common range', { low: 0.1, high: 1 })
      .nullable()
      .default(null),
    'tailpipe-aspect': numberRange('Tailpipe length over diameter, instead of the common range', { low: 1, high: 60 })
      .nullable()
      .default(null),
    'equivalence-ratio': numberRange('φ, instead of the common range', { low: 0.3, high: 2 }).nullable().default(null),
  })
  .transform(
    (v): ValvelessRanges => ({
      intakeRatio: v['intake-ratio'],
      intakeAspect: v['intake-aspect'],
      lips: v.lips,
      chamberAspect: v['chamber-aspect'],
      tailpipeRatio: v['tailpipe-ratio'],
      tailpipeAspect: v['tailpipe-aspect'],
      equivalenceRatio: v['equivalence-ratio'],
    }),
  )
  .nullable()
  .describe('Valveless intakes; write "valveless: {}" for the default ranges')
  .default(null);

/** Defaults round the published optimum for pulsejet drivers, D = 2.46 d and L ≈ 10 d (NASA/TM-2006-214224). */
const augmenterSchema = z
  .strictObject({
    'diameter-ratio': numberRange('Augmenter diameter over engine exit diameter', { low: 1.05, high: 6 }).prefault(
      '1.8 to 3',
    ),
    aspect: numberRange('Length over augmenter diameter', { low: 0.5, high: 12 }).prefault('2 to 5'),
    'gap-ratio': numberRange('Gap over engine exit diameter', { low: 0, high: 5 }).prefault('0.5 to 2'),
    taper: numberRange('Exit diameter over throat diameter; 1 is straight', { low: 1, high: 1.6 }).prefault(
      '1 to 1.25',
    ),
  })
  .transform(
    (a): AugmenterRanges => ({
      diameterRatio: a['diameter-ratio'],
      aspect: a.aspect,
      gapRatio: a['gap-ratio'],
      taper: a.taper,
    }),
  )
  .describe('Augmenter ranges, used when "augmenter" holds "with"')
  .prefault({});

const feedSchema = z.strictObject({
  fuel: choice(['propane', 'petrol'], 'Fuel'),
  mode: choice(['premixed', 'steady-injection', 'timed-injection'], 'How the fuel enters'),
});

export const shellSchema = z.strictObject({
  material: choice(SHEET_MATERIAL_IDS, 'Sheet material of the shell'),
  thickness: quantity('thickness', 'Sheet thickness of the shell'),
});

export const exploreSchema = z
  .strictObject({
    intakes: choices(INTAKE_CHOICES, 'Intakes to compare'),
    augmenter: choices(['without', 'with'], 'With an augmenter, without, or both').prefault(['without']),
    feeds: z
      .array(feedSchema, { error: 'a list of feeds, for example [{fuel: propane, mode: premixed}]' })
      .min(1, { error: 'at least one feed' })
      .max(12, { error: 'at most 12 feeds' }),
    'equivalence-ratio': numberRange('Fuel used over what the air can burn', { low: 0.2, high: 3 }).prefault(
      '0.8 to 1.2',
    ),
    shells: z
      .array(shellSchema, { error: 'a list of shells' })
      .min(1, { error: 'at least one shell' })
      .max(32, { error: 'at most 32 shells' })
      .prefault([{ material: '304', thickness: '18 gauge' }]),
    geometry: geometrySchema,
    reed: reedSchema,
    poppet: poppetSchema,
    valveless: valvelessSchema,
    'augmenter-ranges': augmenterSchema,
  })
  .transform(
    (e): Space => ({
      intakes: e.intakes,
      augmenter: e.augmenter,
      feeds: e.feeds.filter(
        (feed, i) => e.feeds.findIndex((other) => other.fuel === feed.fuel && other.mode === feed.mode) === i,
      ),
      equivalenceRatio: e['equivalence-ratio'],
      shells: e.shells,
      geometry: e.geometry,
      reed: e.intakes.includes('reed') ? e.reed : null,
      poppet: e.intakes.includes('poppet') ? e.poppet : null,
      valveless: e.intakes.some((intake) => intake.startsWith('valveless')) ? e.valveless : null,
      augmenterRanges: e.augmenter.includes('with') ? e['augmenter-ranges'] : null,
    }),
  )
  .describe('What to explore');

export const searchSchema = z
  .strictObject({
    evaluations: plainNumber('Designs to simulate', { low: 1, high: 1e8, integer: true }).default(2000),
    population: plainNumber('Members of the population of each architecture', {
      low: 4,
      high: 10000,
      integer: true,
    }).default(32),
    seed: z
      .union([lineOfText('Any word or number', 100), z.number()], { error: 'a word or a number' })
      .transform(String)
      .prefault('1'),
    'stall-generations': plainNumber('Stop after this many generations without gain', {
      low: 1,
      high: 1e6,
      integer: true,
    }).default(40),
    'time-limit': optionalQuantity('time', 'Greatest duration'),
    finalists: plainNumber('Designs that are looked at closely', { low: 1, high: 100, integer: true }).default(8),
    draws: plainNumber('Draws over constants and tolerances for each finalist', {
      low: 4,
      high: 10000,
      integer: true,
    }).default(64),
  })
  .transform((s) => ({
    evaluations: s.evaluations,
    population: s.population,
    seed: s.seed,
    stallGenerations: s['stall-generations'],
    timeLimit: s['time-limit'],
    finalists: s.finalists,
    draws: s.draws,
  }))
  .describe('Budget and seed of the search')
  .prefault({});
