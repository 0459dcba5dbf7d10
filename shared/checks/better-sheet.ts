/** Shared by the checks of the shell: which thicker or better sheet would clear a limit, and with what figure. */
import type { SheetAlternative } from '../durability/sheet-alternatives.ts';
import type { Facts } from './facts.ts';
import { mm } from './say.ts';

/** Offers that fit in one sentence. */
const MOST = 2;

/**
 * "1.52 mm of it gives 20 h, stainless 310 sheet 400 h", or what to do when no sheet would clear it.
 * @param figure of an alternative, in words
 */
export function betterSheet(
  facts: Facts,
  clears: (sheet: SheetAlternative) => boolean,
  figure: (sheet: SheetAlternative) => string,
): string {
  const sheets = facts.alternatives();
  // A sheet that scales where the present one does not is no cure.
  const bearable = Math.max(sheets[0].overScalingLimit, 0);
  const offers = sheets
    .filter((sheet) => !sheet.present && sheet.overScalingLimit <= bearable && clears(sheet))
    .slice(0, MOST)
    .map((sheet) => {
      const same = sheet.material === facts.engine.shell.material;
      return `${same ? `${mm(sheet.thickness)} of the same` : sheet.name} (${figure(sheet)})`;
    });
  return offers.length > 0
    ? `take ${offers.join(' or ')}`
    : 'no sheet listed clears it at this thickness, so run shorter, run leaner, or lead air over the hot part';
}
