/** The engine file: one engine, given in full, and the builder's circumstances, for a single evaluation. */
import { z } from 'zod';
import { VALVE_MATERIAL_IDS } from '../../shared/durability/material-ids.ts';
import type { Brief } from '../../shared/engine/brief.ts';
import type { Augmenter, Engine, Intake, Section, SectionRole } from '../../shared/engine/engine.ts';
import { briefShape, toBrief } from './brief-schema.ts';
import { choice, lineOfText, optionalQuantity, plainNumber, quantity, reject } from './fields.ts';
import { siteSchema } from './site-schema.ts';
import { shellSchema } from './space-schema.ts';

const SECTION_ROLES = [
  'intake',
  'intake-cone',
  'chamber',
  'chamber-cone',
  'tailpipe',
  'bend',
  'exit-flare',
] as const satisfies readonly SectionRole[];

/** Diameters of neighbouring sections may differ by this share before they are taken for a mistake. */
const JOINT_TOLERANCE = 0.005;

const diameter = { low: 0.002, high: 5 };

/** A cylinder has `diameter`; a cone `from` and `to`; a bend `diameter`, `angle` and `radius`, from which its length follows. */
const sectionSchema = z
  .strictObject({
    role: choice(SECTION_ROLES, 'What the section is for'),
    length: optionalQuantity('length', 'Along the centreline', { low: 1e-4, high: 50 }),
    diameter: optionalQuantity('length', 'Inside diameter of a cylinder or bend', diameter),
    from: optionalQuantity('length', 'Inside diameter at the head end of a cone', diameter),
    to: optionalQuantity('length', 'Inside diameter at the exit end of a cone', diameter),
    angle: optionalQuantity('angle', 'Angle that a bend turns'),
    radius: optionalQuantity('length', 'Centreline radius of a bend', diameter),
  })
  .transform((s, context): Section => {
    const start = s.diameter ?? s.from;
    const end = s.diameter ?? s.to;
    if (start === null || end === null || (s.diameter !== null && (s.from !== null || s.to !== null))) {
      return reject(context, 'either "diameter", or "from" and "to"', 'another set of diameters');
    }
    if (s.role === 'bend') {
      if (s.angle === null || s.radius === null || s.length !== null) {
        return reject(
          context,
          'a bend with "angle" and "radius" and no "length", which follows from them',
          'another set of dimensions',
        );
      }
      if (s.radius < start / 2) return reject(context, 'a bend radius of at least half the diameter', `${s.radius} m`);
      return {
        role: s.role,
        length: s.angle * s.radius,
        startDiameter: start,
        endDiameter: end,
        bend: { angle: s.angle, radius: s.radius },
      };
    }
    if (s.length === null) return reject(context, 'a "length"', 'none');
    if (s.angle !== null || s.radius !== null)
      return reject(context, '"angle" and "radius" in bends only', 'them in another section');
    return { role: s.role, length: s.length, startDiameter: start, endDiameter: end };
  });

const reedSchema = z
  .strictObject({
    kind: z.literal('reed'),
    petals: plainNumber('Number of petals', { low: 1, high: 1000, integer: true }),
    length: quantity('length', 'Free length of a petal', { low: 0.002, high: 1 }),
    width: quantity('length', 'Mean width of a petal over its port', { low: 0.001, high: 1 }),
    thickness: quantity('thickness', 'Strip thickness', { low: 2e-5, high: 0.005 }),
    material: choice(VALVE_MATERIAL_IDS, 'Strip material').prefault('AISI-1095'),
    'stop-lift': quantity('length', 'Lift of the tip at the stop', { low: 1e-4, high: 0.5 }),
    'port-area': quantity('area', 'Port area under one petal'),
  })
  .transform((r): Intake => {
    const { 'stop-lift': stopLift, 'port-area': portArea, ...rest } = r;
    return { ...rest, stopLift, portArea };
  });

const poppetSchema = z
  .strictObject({
    kind: z.literal('poppet'),
    valves: plainNumber('Number of valves', { low: 1, high: 200, integer: true }),
    'head-diameter': quantity('length', 'Of the head', diameter),
    'port-diameter': quantity('length', 'Throat of the seat', diameter),
    lift: quantity('length', 'Greatest lift, at the stop', { low: 1e-4, high: 0.5 }),
    mass: quantity('mass', 'Head, stem and retainer of one valve', { low: 1e-5, high: 100 }),
    'stem-diameter': quantity('length', 'Of the stem', { low: 5e-4, high: 0.1 }),
    'spring-mass': quantity('mass', 'Of one spring', { low: 1e-6, high: 100 }),
    'spring-rate': quantity('stiffness', 'Of one spring'),
    preload: quantity('force', 'Of the spring when the valve is shut', { low: 0, high: 1e5, positive: false }),
    material: choice(VALVE_MATERIAL_IDS, 'Valve material').prefault('valve-steel-21-4N'),
    'stem-joint': choice(['one-piece', 'welded'], 'How the stem meets the head').prefault('one-piece'),
    axis: choice(['horizontal', 'vertical'], 'Axis of travel').prefault('horizontal'),
  })
  .transform((p, context): Intake => {
    if (p['port-diameter'] >= p['head-diameter'])
      return reject(context, 'a port smaller than the head', 'a port as wide as the head or wider');
    if (p['stem-diameter'] >= p['port-diameter'])
      return reject(context, 'a stem thinner than the port', 'a stem as wide as the port or wider');
    return {
      kind: p.kind,
      valves: p.valves,
      headDiameter: p['head-diameter'],
      portDiameter: p['port-diameter'],
      lift: p.lift,
      mass: p.mass,
      stemDiameter: p['stem-diameter'],
      springMass: p['spring-mass'],
      springRate: p['spring-rate'],
      preload: p.preload,
      material: p.material,
      stemJoint: p['stem-joint'],
      axis: p.axis,
    };
  });

const valvelessSchema = z
  .strictObject({
    kind: z.literal('valveless'),
    lip: choice(['thin', 'flared'], 'Lip of the intake mouth').prefault('flared'),
    mouth: choice(['aft', 'forward'], 'Which way the intake mouth points'),
  })
  .transform((v): Intake => v);

const intakeSchema = z.discriminatedUnion('kind', [reedSchema, poppetSchema, valvelessSchema], {
  error: 'a kind of intake: reed, poppet or valveless',
});

const augmenterSchema = z
  .strictObject({
    diameter: quantity('length', 'Inside throat diameter', diameter),
    length: quantity('length', 'Behind the bell'),
    gap: quantity('length', 'From engine exit to the lip of the bell', { low: 0, high: 10, positive: false }),
    taper: plainNumber('Exit diameter over throat diameter; 1 is straight', { low: 0.8, high: 2 }).default(1),
  })
  .transform((a): Augmenter => a);

export const engineFileSchema = z
  .strictObject({
    engine: lineOfText('Name of the engine', 100),
    notes: z
      .string({ error: 'text' })
      .max(5000, { error: 'at most 5000 characters of text' })
      .default('')
      .describe('Anything worth knowing'),
    invented: z.boolean({ error: 'true or false' }).default(false).describe('Marks demo data as invented'),
    sections: z
      .array(sectionSchema, { error: 'a list of sections from the head to the exit' })
      .min(1, { error: 'at least one section' })
      .max(64, { error: 'at most 64 sections' }),
    intake: intakeSchema,
    feed: z.strictObject({
      fuel: choice(['propane', 'petrol'], 'Fuel'),
      mode: choice(['premixed', 'steady-injection', 'timed-injection'], 'How the fuel enters'),
      'equivalence-ratio': plainNumber('Fuel used over what the air can burn', { low: 0.1, high: 5 }).default(1),
    }),
    shell: shellSchema.prefault({ material: '304', thickness: '18 gauge' }),
    augmenter: augmenterSchema.nullable().default(null),
    site: siteSchema,
    ...briefShape,
  })
  .transform((file): { engine: Engine; brief: Brief } => ({
    engine: {
      name: file.engine,
      sections: file.sections,
      intake: file.intake,
      feed: { fuel: file.feed.fuel, mode: file.feed.mode, equivalenceRatio: file.feed['equivalence-ratio'] },
      shell: file.shell,
      augmenter: file.augmenter,
      site: file.site,
    },
    brief: toBrief(file),
  }))
  .superRefine(({ engine }, context) => {
    engine.sections.forEach((section, index) => {
      const before = engine.sections[index - 1];
      if (before === undefined || Math.abs(section.startDiameter / before.endDiameter - 1) <= JOINT_TOLERANCE) return;
      context.addIssue({
        code: 'custom',
        path: ['sections', index],
        message: `a section that begins with the diameter at which the one before ends, ${round(before.endDiameter)} m`,
        params: { found: `${round(section.startDiameter)} m` },
      });
    });
  })
  .describe('One pulsejet engine for a single evaluation');

function round(value: number): number {
  return Number(value.toPrecision(6));
}
