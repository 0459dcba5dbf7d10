import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DeliverySettings } from '../../src/config/study.ts';
import { readMailbox } from '../../src/delivery/addresses.ts';
import { checkDelivery, deliver } from '../../src/delivery/deliver.ts';
import { MailError } from '../../src/delivery/mail-error.ts';
import { loopbackServer } from './loopback-server.ts';
import { results, studyFolder } from './study-fixture.ts';

const ENV = { PULSEJET_SMTP_URL: 'smtp://localhost' };
const GOOD: DeliverySettings = { to: ['a@example.org'], from: 'b@example.org', subject: 'Done', attachmentLimit: 0 };

function kindOf(change: Partial<DeliverySettings>): string {
  try {
    checkDelivery({ ...GOOD, ...change }, ENV);
    return 'accepted';
  } catch (error) {
    return error instanceof MailError ? error.kind : `wrong error: ${error}`;
  }
}

describe('addresses', () => {
  it('reads the two usual forms', () => {
    expect(readMailbox('builder@example.org', 'to')).toEqual({ name: '', address: 'builder@example.org' });
    expect(readMailbox('A Builder <b.u+x@sub.example.org>', 'to')).toEqual({
      name: 'A Builder',
      address: 'b.u+x@sub.example.org',
    });
    expect(readMailbox('"Builder, A" <b@localhost>', 'to').name).toBe('Builder, A');
  });

  it.each([
    'a@example.org\r\nBcc: c@example.org',
    'a@example.org\nSubject: x',
    'A\r\nBcc: c@example.org <a@example.org>',
    'a@example.org, c@example.org',
    'a@example.org; c@example.org',
    'a@example.org> RCPT TO:<c@example.org',
    '<a@example.org> <c@example.org>',
    'a b@example.org',
    'a@@example.org',
    'a@-example.org',
    'a@example..org',
    '"a\\" <c@example.org>',
    'a\u202e@example.org',
    'a\0@example.org',
    'group: a@example.org;',
    '',
    'nobody',
  ])('refuses %j', (text) => {
    expect(kindOf({ to: [text] })).toBe('address');
    expect(kindOf({ from: text })).toBe('address');
  });

  it('refuses a subject with a line break and an empty list', () => {
    expect(kindOf({ subject: 'x\r\nBcc: c@example.org' })).toBe('address');
    expect(kindOf({ subject: 'x\u2028Bcc: c@example.org' })).toBe('address');
    expect(kindOf({ to: [] })).toBe('address');
    expect(kindOf({})).toBe('accepted');
  });

  it('never lets through an address that holds white space, separators or more than one @', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 40 }),
        fc.constantFrom('', '@example.org', '<a@b.c>'),
        (text, tail) => {
          try {
            const { name, address } = readMailbox(text + tail, 'to');
            expect(address).toMatch(/^[^\s@<>,;:"\\()[\]]+@[^\s@<>,;:"\\()[\]]+$/u);
            expect(name).not.toMatch(/[\r\n\0<>"\\]/);
          } catch (error) {
            expect(error).toBeInstanceOf(MailError);
          }
        },
      ),
      { seed: 7, numRuns: 3000 },
    );
  });
});

describe('a hostile title', () => {
  it('stays one line of the subject', async () => {
    const server = await loopbackServer();
    const folder = await studyFolder();
    const title = 'Engine\r\nBcc: c@example.org\r\n\r\n<script>';
    await deliver({ results: results(title), folder }, { ...GOOD, subject: null }, server.env);
    const [{ envelope, parsed }] = server.mails;
    expect(parsed.subject).toBe('Trade study: Engine Bcc: c@example.org <script>');
    expect(parsed.bcc).toBeUndefined();
    expect(envelope).toEqual(['a@example.org']);
    expect(parsed.html).toBe(false);
  });
});
