/** What of a study folder goes with the mail: the printed report and the patterns, as far as the size limit allows. */
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import fastGlob from 'fast-glob';
import { HTML_FILE, PATTERNS_FOLDER, PDF_FILE } from '../store/study-folder.ts';
import { MailError } from './mail-error.ts';
import { zip } from './zip.ts';

export interface Attachment {
  filename: string;
  contentType: string;
  content: Buffer;
}

export interface Attachments {
  files: Attachment[];
  /** What was left out and why, for the text of the mail. */
  notes: string[];
}

/**
 * Reads report.pdf (report.html where no PDF was printed) and packs patterns/ into one archive; takes the report first,
 * then the patterns, as long as the sum stays within `limit`.
 * @param folder study folder
 * @param slug name of the study, for the file names
 * @param limit bytes as sent, that is after the encoding of mail (4/3 of the file and a line end every 76 characters)
 * Throws MailError of kind 'files' when a file is there but cannot be read.
 */
export async function chooseAttachments(folder: string, slug: string, limit: number): Promise<Attachments> {
  const files: Attachment[] = [];
  const notes: string[] = [];
  let left = limit;
  const take = (attachment: Attachment, what: string) => {
    const size = sizeAsSent(attachment.content.length);
    if (size <= left) {
      files.push(attachment);
      left -= size;
    } else
      notes.push(`${what} is left out: ${megabytes(size)} as sent, the limit of this study is ${megabytes(limit)}`);
  };
  const pdf = await readIfThere(path.join(folder, PDF_FILE));
  if (pdf) take({ filename: `${slug}.pdf`, contentType: 'application/pdf', content: pdf }, 'the PDF');
  else {
    const html = await readIfThere(path.join(folder, HTML_FILE));
    notes.push(html ? 'no PDF was printed; the report comes as a web page' : 'no report was written');
    if (html) take({ filename: `${slug}.html`, contentType: 'text/html', content: html }, 'the web page');
  }
  const patterns = await packPatterns(folder);
  if (patterns)
    take(
      { filename: `${slug}-patterns.zip`, contentType: 'application/zip', content: patterns },
      'the archive of flat patterns',
    );
  return { files, notes };
}

/** Bytes of base64 text with its line ends (RFC 2045, 6.8). */
export function sizeAsSent(bytes: number): number {
  const encoded = 4 * Math.ceil(bytes / 3);
  return encoded + 2 * Math.ceil(encoded / 76);
}

export function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(bytes < 1e5 ? 3 : 1)} MB`;
}

async function packPatterns(folder: string): Promise<Buffer | null> {
  const root = path.join(folder, PATTERNS_FOLDER);
  const names = await fastGlob(['**/*.svg', '**/*.dxf', '**/*.pdf'], {
    cwd: root,
    onlyFiles: true,
    followSymbolicLinks: false,
  });
  if (names.length === 0) return null;
  const entries = [];
  for (const name of names.sort()) {
    const data = await readIfThere(path.join(root, name));
    if (data) entries.push({ name: `${PATTERNS_FOLDER}/${name}`, data });
  }
  return zip(entries);
}

async function readIfThere(file: string): Promise<Buffer | null> {
  try {
    return (await stat(file)).isFile() ? await readFile(file) : null;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return null;
    throw new MailError('files', `${file} cannot be read for the mail (${code})`);
  }
}
