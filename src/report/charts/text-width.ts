/** Width of text in the report's font without a browser: advance widths of Inter by class of character, rounded up. */
const NARROW = "ijltfrI.,:;'|!()[]- \u00a0·";
const WIDE = 'mwMW@%—';

/** Width in the units of the font size; good to a few per cent and rather too wide than too narrow. */
export function textWidth(text: string, fontSize: number): number {
  let em = 0;
  for (const c of text) {
    if (NARROW.includes(c)) em += 0.36;
    else if (WIDE.includes(c)) em += 0.92;
    else if (/[A-ZØ−+=<>×±]/.test(c)) em += 0.7;
    else if (/[0-9]/.test(c)) em += 0.65;
    else em += 0.6;
  }
  return em * fontSize;
}

/** Cuts text to a width with an ellipsis; unchanged when it fits. */
export function shorten(text: string, fontSize: number, width: number): string {
  if (textWidth(text, fontSize) <= width) return text;
  let cut = text;
  while (cut.length > 1 && textWidth(`${cut}…`, fontSize) > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}

/** Breaks text at spaces into lines no wider than `width`. */
export function wrap(text: string, fontSize: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, fontSize) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
}

export { shorten as fit };
