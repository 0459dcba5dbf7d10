/** Finds the folder that holds this package's templates, from the sources as well as from a build beside them. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * The nearest folder above this file that holds package.json and templates/.
 * @throws {Error} when the installation is not whole.
 */
export function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    if (existsSync(join(folder, 'package.json')) && existsSync(join(folder, 'templates', 'report.hbs'))) return folder;
    const above = dirname(folder);
    if (above === folder)
      throw new Error(
        'The report templates are missing: no folder above the program holds package.json and templates/report.hbs. Install the package again.',
      );
    folder = above;
  }
}
