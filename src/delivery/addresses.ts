/** Addresses and subjects that are safe to put into a mail header. */
import { MailError } from './mail-error.ts';

export interface Mailbox {
  name: string;
  address: string;
}

/** Control characters, line and paragraph separators, and marks that turn the direction of text. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;
const ATOM = "[\\p{L}\\p{N}!#$%&'*+/=?^_`{|}~-]+";
const LABEL = '[\\p{L}\\p{N}](?:[\\p{L}\\p{N}-]*[\\p{L}\\p{N}])?';
/** Dot-atom local part and host name; quoted local parts and address literals are refused. Source: RFC 5322, 3.4.1. */
const ADDRESS = new RegExp(`^${ATOM}(?:\\.${ATOM})*@${LABEL}(?:\\.${LABEL})*$`, 'u');
const NAMED = /^\s*(?:"([^"\\<>]*)"|([^"\\<>@,;:]*?))\s*<([^<>]*)>\s*$/u;

/**
 * Reads "builder@example.org" or "A Builder <builder@example.org>".
 * Throws MailError of kind 'address' for anything else: several addresses in one text, line breaks, odd characters.
 */
export function readMailbox(text: string, what: string): Mailbox {
  const refuse = (why: string) => new MailError('address', `${what}: ${shown(text)} ${why}`);
  if (UNSAFE.test(text)) throw refuse('holds a line break or another invisible character, which no address has');
  const named = NAMED.exec(text);
  const address = (named ? named[3] : text).trim();
  if (address.length > 254 || !ADDRESS.test(address))
    throw refuse('is no single mail address like builder@example.org or "A Builder <builder@example.org>"');
  return { name: (named?.[1] ?? named?.[2] ?? '').trim(), address };
}

/** Throws MailError of kind 'address' when the subject could add header lines of its own. */
export function checkSubject(subject: string): string {
  if (UNSAFE.test(subject))
    throw new MailError('address', `subject: ${shown(subject)} holds a line break or another invisible character`);
  if (subject.length > 200) throw new MailError('address', 'subject: more than 200 characters');
  return subject;
}

/** One line of plain text, whatever a configuration holds; for words that were never meant to be a header. */
export function plainLine(text: string, limit = 2000): string {
  const line = text
    .replace(/[\s\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/\p{Cf}/gu, '')
    .trim();
  return line.length > limit ? `${line.slice(0, limit - 1)}…` : line;
}

function shown(text: string): string {
  return JSON.stringify(text.length > 80 ? `${text.slice(0, 80)}…` : text);
}
