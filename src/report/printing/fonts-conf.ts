/** The fontconfig file of the bundled browser. Without one it prints pages that hold no text, and reports no error. */

/** Where Linux systems keep fonts; used only for characters that our own fonts lack. */
const SYSTEM_FONT_FOLDERS = ['/usr/share/fonts', '/usr/local/share/fonts'];

/**
 * @param fontFolder absolute folder with the fonts that come with the browser
 * @param family family in that folder, set for every generic name so that paper looks alike on every machine
 * @param cacheFolder absolute folder that fontconfig may write to
 */
export function fontsConf(fontFolder: string, family: string, cacheFolder: string): string {
  const folders = [fontFolder, ...SYSTEM_FONT_FOLDERS].map((folder) => `  <dir>${xml(folder)}</dir>`);
  const aliases = ['sans-serif', 'serif', 'monospace', 'system-ui'].map(
    (generic) =>
      `  <alias binding="strong"><family>${generic}</family><prefer><family>${xml(family)}</family></prefer></alias>`,
  );
  return [
    '<?xml version="1.0"?>',
    '<!DOCTYPE fontconfig SYSTEM "fonts.dtd">',
    '<fontconfig>',
    ...folders,
    `  <cachedir>${xml(cacheFolder)}</cachedir>`,
    ...aliases,
    '</fontconfig>',
    '',
  ].join('\n');
}

function xml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
