/** The frame of every HTML file that leaves the tool: head, style, font, script, and a policy that lets nothing out. */
import { createHash } from 'node:crypto';
import { fontFaces } from './fonts.ts';
import { cssString, escapeMarkup } from './format/escape.ts';
import { sayMissingGlyphs } from './format/missing-glyphs.ts';
import { templateText } from './templates.ts';

export type Paper = 'A4' | 'Letter';

export interface PageParts {
  title: string;
  /** Finished, escaped markup of the body. */
  body: string;
  paper: Paper;
  /** Plain text for the foot of each printed page. */
  footer: string;
  /** Paper sizes of pages at true size, mm. */
  sheets: { page: string; width: string; height: string }[];
}

/** Paper, margins and the line at the foot; page numbers are the printer's own counters. */
function pageRules(parts: PageParts): string {
  const footer = cssString(parts.footer);
  const foot = `font:400 7.5pt Inter,sans-serif;color:#444;vertical-align:top;padding-top:3mm`;
  const rules = [
    `@page{size:${parts.paper};margin:15mm 16mm 18mm;` +
      `@bottom-left{content:${footer};${foot}}` +
      `@bottom-right{content:"Page " counter(page) " of " counter(pages);${foot}}}`,
  ];
  for (const sheet of parts.sheets)
    rules.push(
      `@page ${sheet.page}{size:${sheet.width}mm ${sheet.height}mm;margin:0;@bottom-left{content:none}@bottom-right{content:none}}`,
      // A hair less than the paper, so that rounding never adds an empty page.
      `@media print{.${sheet.page}{page:${sheet.page};width:${sheet.width}mm;height:calc(${sheet.height}mm - .3mm)}` +
        `.${sheet.page} svg{width:${sheet.width}mm;height:${sheet.height}mm}}`,
    );
  return rules.join('\n');
}

export function page(parts: PageParts): string {
  const body = sayMissingGlyphs(parts.body);
  const script = templateText('sort.js').trim();
  const style = [fontFaces(body + parts.footer), templateText('report.css'), pageRules(parts)].join('\n');
  const hash = createHash('sha256').update(script).digest('base64');
  const policy = [
    "default-src 'none'",
    "style-src 'unsafe-inline'",
    'font-src data:',
    'img-src data:',
    `script-src 'sha256-${hash}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escapeMarkup(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeMarkup(sayMissingGlyphs(parts.title))}</title>
<style>
${style}
</style>
</head>
<body>
${body}
<script>${script}</script>
</body>
</html>
`;
}
