/**
 * Reads the Handlebars templates of the package and sets a view in them.
 *
 * Every value is escaped; finished markup (charts, drawings) comes as `Markup` objects, so that no template needs an
 * unescaped tag. A field that a template names and a view lacks is an error, never a silent blank.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Handlebars from 'handlebars';
import { packageFolder } from './package-folder.ts';

/** Templates that can be set as a whole; the rest are their parts. */
export type TemplateName = 'report' | 'comparison' | 'patterns';

const COMPILE_OPTIONS = { strict: true, preventIndent: true, noEscape: false, knownHelpersOnly: true };

let loaded: Map<TemplateName, (view: object) => string> | null = null;

function load(): Map<TemplateName, (view: object) => string> {
  const folder = join(packageFolder(), 'templates');
  const handlebars = Handlebars.create();
  for (const file of readdirSync(join(folder, 'parts')).sort())
    if (file.endsWith('.hbs'))
      handlebars.registerPartial(
        file.slice(0, -4),
        handlebars.compile(readFileSync(join(folder, 'parts', file), 'utf8'), COMPILE_OPTIONS),
      );
  const whole = (name: TemplateName) =>
    handlebars.compile<object>(readFileSync(join(folder, `${name}.hbs`), 'utf8'), COMPILE_OPTIONS);
  return new Map<TemplateName, (view: object) => string>([
    ['report', whole('report')],
    ['comparison', whole('comparison')],
    ['patterns', whole('patterns')],
  ]);
}

/** Sets a view in a template. */
export function setTemplate(name: TemplateName, view: object): string {
  loaded ??= load();
  return loaded.get(name)!(view);
}

/** The text of a file in templates/, such as the style sheet. */
export function templateText(name: string): string {
  return readFileSync(join(packageFolder(), 'templates', name), 'utf8');
}
