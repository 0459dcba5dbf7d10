/** The whole study file. Every key that may be left out has its default here, beside its type. */
import { z } from 'zod';
import { briefShape, toBrief } from './brief-schema.ts';
import { choice, lineOfText, optionalQuantity, plainNumber, quantity } from './fields.ts';
import { siteSchema } from './site-schema.ts';
import { exploreSchema, searchSchema } from './space-schema.ts';
import type { DeliverySettings, Study } from './study.ts';

const SLUG = 'a folder name of letters, digits and hyphens, at most 64 characters, for example "club-propane"';
const ADDRESS = 'a mail address, for example "crew@example.org"';

const address = z
  .string({ error: ADDRESS })
  .max(254, { error: ADDRESS })
  .regex(/^[^\s@<>,;:"()[\]\\]+@[^\s@<>,;:"()[\]\\]+$/, { error: ADDRESS });

const rankingSchema = z
  .strictObject({
    'tsfc-weight': plainNumber('Weight of low fuel consumption', { low: 0, high: 1 }).default(0.5),
    'life-weight': plainNumber('Weight of long valve life', { low: 0, high: 1 }).default(0.5),
    method: choice(['weighted', 'knee', 'life-at-bounded-tsfc'], 'How the order is made').prefault('weighted'),
    'tsfc-bound': optionalQuantity('tsfc', 'For life-at-bounded-tsfc'),
  })
  .transform((r) => ({
    tsfcWeight: r['tsfc-weight'],
    lifeWeight: r['life-weight'],
    method: r.method,
    tsfcBound: r['tsfc-bound'],
  }))
  .describe('What counts in the ranking')
  .prefault({});

const deliverSchema = z
  .strictObject({
    to: z
      .array(address, { error: 'a list of mail addresses' })
      .min(1, { error: 'at least one mail address' })
      .max(50, { error: 'at most 50 mail addresses' }),
    from: address,
    subject: lineOfText('Subject of the mail', 200).nullable().default(null),
    'attachment-limit': quantity('data', 'Size above which attachments are left out').prefault('15 MB'),
  })
  .transform(
    (d): DeliverySettings => ({
      to: d.to,
      from: d.from,
      subject: d.subject,
      attachmentLimit: Math.floor(d['attachment-limit'] / 8),
    }),
  )
  .nullable()
  .describe('Mail the report at the end of the run')
  .default(null);

export const studySchema = z
  .strictObject({
    study: z
      .string({ error: SLUG })
      .max(64, { error: SLUG })
      .regex(/^[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?$/, { error: SLUG })
      .describe('Folder name of the study'),
    title: lineOfText('Title of the report').optional(),
    question: lineOfText('The question that the study must answer', 500).default('Which engine should we build?'),
    notes: z
      .string({ error: 'text' })
      .max(5000, { error: 'at most 5000 characters of text' })
      .default('')
      .describe('Anything else for the report'),
    invented: z.boolean({ error: 'true or false' }).default(false).describe('Marks demo data as invented'),
    paper: choice(['A4', 'Letter'], 'Paper of the print').prefault('A4'),
    site: siteSchema,
    ...briefShape,
    explore: exploreSchema,
    ranking: rankingSchema,
    search: searchSchema,
    deliver: deliverSchema,
  })
  .transform(
    (file): Study => ({
      slug: file.study,
      brief: toBrief(file),
      site: file.site,
      space: file.explore,
      ranking: file.ranking,
      search: file.search,
      report: {
        title: file.title ?? `Pulsejet study ${file.study}`,
        question: file.question,
        notes: file.notes,
        paper: file.paper,
        invented: file.invented,
      },
      delivery: file.deliver,
    }),
  )
  .describe('A pulsejet design study');
