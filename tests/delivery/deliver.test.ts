import { execFileSync } from 'node:child_process';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import type { DeliverySettings } from '../../src/config/study.ts';
import type { DeliverOptions } from '../../src/delivery/deliver.ts';
import { deliver } from '../../src/delivery/deliver.ts';
import { MailError } from '../../src/delivery/mail-error.ts';
import { loopbackServer, PASSWORD, reply, USER } from './loopback-server.ts';
import { DXF, PDF, results, studyFolder } from './study-fixture.ts';

let folder: string;
beforeEach(async () => {
  folder = await studyFolder();
});

const SETTINGS: DeliverySettings = {
  to: ['One Builder <one@example.org>', 'two@example.org'],
  from: 'study@example.org',
  subject: null,
  attachmentLimit: 20e6,
};

/** Short waits in place of minutes; the count stays. */
const FAST: DeliverOptions = { waits: [0.01, 0.01, 0.01] };

function send(env: NodeJS.ProcessEnv, settings: Partial<DeliverySettings> = {}, options: DeliverOptions = FAST) {
  return deliver({ results: results(), folder }, { ...SETTINGS, ...settings }, env, options);
}

async function failure(sending: Promise<unknown>): Promise<MailError> {
  const error = await sending.then(
    () => new Error('it was sent'),
    (caught) => caught,
  );
  expect(error).toBeInstanceOf(MailError);
  expect(error.message).toContain(`lies whole in ${folder}`);
  expect(error.message).not.toContain(PASSWORD);
  return error;
}

describe('a mail that goes through', () => {
  it('carries summary, PDF and patterns over an encrypted connection', async () => {
    const server = await loopbackServer();
    const receipt = await send(server.env);
    expect(receipt).toMatchObject({ accepted: ['one@example.org', 'two@example.org'], attempts: 1, notes: [] });
    const [{ envelope, secure, parsed }] = server.mails;
    expect(secure).toBe(true);
    expect(envelope).toEqual(['one@example.org', 'two@example.org']);
    expect(parsed.subject).toBe('Trade study: Stand engine');
    for (const words of ['Build the reed engine C1.', 'No strip lives', '178', 'Invented', 'licensed practice', folder])
      expect(parsed.text).toContain(words);
    expect(parsed.headers.get('auto-submitted')).toBe('auto-generated');
    const [pdf, patterns] = parsed.attachments;
    expect(pdf.filename).toBe('stand-engine.pdf');
    expect(pdf.content.equals(PDF)).toBe(true);
    expect(patterns.filename).toBe('stand-engine-patterns.zip');
    expect(parsed.messageId).toBe(receipt.messageId);
  });

  it('packs the patterns so that an independent reader opens them', async () => {
    const server = await loopbackServer();
    await send(server.env);
    const archive = path.join(folder, 'received.zip');
    await writeFile(archive, server.mails[0].parsed.attachments[1].content);
    const script =
      'import sys,zipfile;z=zipfile.ZipFile(sys.argv[1]);print(z.testzip());print(*z.namelist());print(z.read(z.namelist()[0]).decode(),end="")';
    let out: string;
    try {
      out = execFileSync('python3', ['-c', script, archive], { encoding: 'utf8' });
    } catch (error) {
      // Without Python the bytes are still held to the format's layout by the test of zip().
      expect((error as NodeJS.ErrnoException).code).toBe('ENOENT');
      return;
    }
    expect(out).toBe(`None\npatterns/C1-shell.dxf patterns/C1-shell.svg\n${DXF}`);
  });

  it('goes over TLS from the first byte with smtps://', async () => {
    const server = await loopbackServer({ secure: true });
    await send({ ...server.env, PULSEJET_SMTP_URL: `smtps://localhost:${server.port}` });
    expect(server.mails[0].secure).toBe(true);
  });

  it('leaves out what exceeds the limit, and says so', async () => {
    const server = await loopbackServer();
    const receipt = await send(server.env, { attachmentLimit: 3000 });
    expect(receipt.attached).toEqual(['stand-engine-patterns.zip']);
    expect(server.mails[0].parsed.text).toMatch(/Note: the PDF is left out: 0\.004 MB as sent, the limit .* 0\.003 MB/);
    const nothing = await send(server.env, { attachmentLimit: 0 });
    expect(nothing.attached).toEqual([]);
    expect(nothing.notes.length).toBe(2);
  });

  it('sends the web page where no PDF was printed', async () => {
    await rm(path.join(folder, 'report.pdf'));
    const server = await loopbackServer();
    const receipt = await send(server.env);
    expect(receipt.attached).toEqual(['stand-engine.html', 'stand-engine-patterns.zip']);
    expect(server.mails[0].parsed.text).toContain('no PDF was printed');
  });

  it('goes unencrypted only by explicit wish', async () => {
    const server = await loopbackServer({ disabledCommands: ['STARTTLS'], authOptional: true });
    await send({ ...server.env, PULSEJET_SMTP_USER: '', PULSEJET_SMTP_PASSWORD: '', PULSEJET_SMTP_TLS: 'none' });
    expect(server.mails[0].secure).toBe(false);
  });
});

describe('a final refusal', () => {
  it('STARTTLS missing: nothing goes out readable', async () => {
    const server = await loopbackServer({ disabledCommands: ['STARTTLS'] });
    const error = await failure(send(server.env));
    expect(error).toMatchObject({ kind: 'encryption', temporary: false });
    expect(error.message).toContain('STARTTLS');
    expect(server.mails).toEqual([]);
    expect(server.connections()).toBe(1);
  });

  it('a certificate that nobody vouches for', async () => {
    const server = await loopbackServer();
    const error = await failure(send({ ...server.env, PULSEJET_SMTP_CA: undefined }));
    expect(error.kind).toBe('encryption');
    expect(error.message).toContain('PULSEJET_SMTP_CA');
    expect(server.connections()).toBe(1);
  });

  it('TLS spoken to a server that begins in plain text', async () => {
    const server = await loopbackServer();
    const error = await failure(send({ ...server.env, PULSEJET_SMTP_URL: `smtps://localhost:${server.port}` }));
    expect(error.kind).toBe('encryption');
    expect(error.message).toContain('smtp://');
  });

  it('wrong password, which is never shown, even if the server repeats it', async () => {
    const server = await loopbackServer();
    const error = await failure(send({ ...server.env, PULSEJET_SMTP_PASSWORD: 'wrong-secret' }));
    expect(error).toMatchObject({ kind: 'login', temporary: false });
    expect(error.message).not.toContain('wrong-secret');
    expect(server.connections()).toBe(1);
  });

  it('no login where the server wants one', async () => {
    const server = await loopbackServer();
    const error = await failure(send({ ...server.env, PULSEJET_SMTP_USER: '', PULSEJET_SMTP_PASSWORD: '' }));
    expect(error.kind).toBe('login');
    expect(error.message).toContain('PULSEJET_SMTP_USER');
  });

  it('refused sender', async () => {
    const server = await loopbackServer({
      onMailFrom: (_a, _s, callback) => callback(reply(553, '5.7.1 Not your address')),
    });
    expect((await failure(send(server.env))).kind).toBe('sender');
  });

  it('one refused recipient: the other gets the mail, once, and both are told apart', async () => {
    const server = await loopbackServer({
      onRcptTo: ({ address }, _session, callback) =>
        address.startsWith('two') ? callback(reply(550, '5.1.1 No such\x1b[31m user')) : callback(),
    });
    const error = await failure(send(server.env));
    expect(error).toMatchObject({ kind: 'recipient', delivered: ['one@example.org'] });
    expect(error.message).toContain('two@example.org');
    expect(error.message).not.toContain('\x1b');
    expect(server.mails.map((mail) => mail.envelope)).toEqual([['one@example.org']]);
  });

  it('every recipient refused', async () => {
    const server = await loopbackServer({ onRcptTo: (_a, _s, callback) => callback(reply(550, '5.1.1 No such user')) });
    const error = await failure(send(server.env));
    expect(error).toMatchObject({ kind: 'recipient', delivered: [] });
    expect(server.connections()).toBe(1);
  });

  it('a policy refusal after the data', async () => {
    const server = await loopbackServer({
      onData(stream, _session, callback) {
        stream.resume();
        stream.on('end', () => callback(reply(554, '5.7.1 Content refused')));
      },
    });
    const error = await failure(send(server.env));
    expect(error.kind).toBe('refused');
    expect(error.message).toContain('Content refused');
  });
});

describe('a mail that is too large for the server', () => {
  it('goes without attachments, with a note', async () => {
    const server = await loopbackServer({ size: 4000 });
    const receipt = await send(server.env);
    expect(receipt.attached).toEqual([]);
    expect(server.mails.length).toBe(1);
    expect(server.mails[0].parsed.attachments).toEqual([]);
    expect(server.mails[0].parsed.text).toContain('left out: the mail server takes no mail of this size');
  });

  it('is found out as well when the server says so only at the end', async () => {
    const server = await loopbackServer({ size: 4000, hideSize: true });
    const receipt = await send(server.env);
    expect(receipt.attached).toEqual([]);
    expect(server.mails.length).toBe(1);
  });

  it('fails when even the text is too large', async () => {
    const server = await loopbackServer({ size: 100 });
    expect((await failure(send(server.env))).kind).toBe('too large');
  });

  it('is not mixed up with a full mailbox', async () => {
    const server = await loopbackServer({ onRcptTo: (_a, _s, callback) => callback(reply(552, '5.2.2 Mailbox full')) });
    expect((await failure(send(server.env))).kind).toBe('recipient');
  });
});

describe('a temporary fault', () => {
  it('421 at the door, then through', async () => {
    let calls = 0;
    const server = await loopbackServer({
      onConnect: (_session, callback) => (calls++ < 2 ? callback(reply(421, '4.3.2 Later')) : callback()),
    });
    const notes: string[] = [];
    const receipt = await send(server.env, {}, { ...FAST, onNote: (note) => notes.push(note) });
    expect(receipt.attempts).toBe(3);
    expect(server.mails.length).toBe(1);
    expect(notes.length).toBe(2);
    expect(notes[0]).toMatch(/come back later.*Trying again in 0.01 s/);
  });

  it('450 for one recipient: only that one is tried again, with the same Message-ID', async () => {
    let calls = 0;
    const server = await loopbackServer({
      onRcptTo: ({ address }, _session, callback) =>
        address.startsWith('two') && calls++ < 1 ? callback(reply(450, '4.2.0 Greylisted')) : callback(),
    });
    const receipt = await send(server.env);
    expect(receipt).toMatchObject({ accepted: ['one@example.org', 'two@example.org'], attempts: 2 });
    expect(server.mails.map((mail) => mail.envelope)).toEqual([['one@example.org'], ['two@example.org']]);
    expect(server.mails[0].parsed.messageId).toBe(server.mails[1].parsed.messageId);
  });

  it('454 at login', async () => {
    let calls = 0;
    const server = await loopbackServer({
      onAuth: (_auth, _session, callback) =>
        calls++ < 1 ? callback(reply(454, '4.7.0 Temporary failure')) : callback(null, { user: USER }),
    });
    expect((await send(server.env)).attempts).toBe(2);
  });

  it('gives up after the last wait and says that later may work', async () => {
    const server = await loopbackServer({ onMailFrom: (_a, _s, callback) => callback(reply(451, '4.3.0 Busy')) });
    const error = await failure(send(server.env));
    expect(error).toMatchObject({ kind: 'busy', temporary: true });
    expect(error.message).toContain('4 attempts');
    expect(server.connections()).toBe(4);
  });

  it('closed port', async () => {
    const probe = createServer();
    const port = await new Promise<number>((done) =>
      probe.listen(0, '127.0.0.1', () => done((probe.address() as { port: number }).port)),
    );
    await new Promise((done) => probe.close(done));
    const error = await failure(send({ PULSEJET_SMTP_URL: `smtp://localhost:${port}` }));
    expect(error).toMatchObject({ kind: 'unreachable', temporary: true });
    expect(error.message).toMatch(/ECONNREFUSED/);
  });

  it('a connection that breaks after the greeting, then through', async () => {
    let calls = 0;
    const server = await loopbackServer({
      onMailFrom(_address, session, callback) {
        if (calls++ > 0) return callback();
        for (const client of (this as unknown as { connections: Set<{ id: string; _socket: { destroy(): void } }> })
          .connections)
          if (client.id === session.id) client._socket.destroy();
      },
    });
    expect((await send(server.env)).attempts).toBe(2);
    expect(server.mails.length).toBe(1);
  });

  it('can be interrupted while it waits', async () => {
    const server = await loopbackServer({ onMailFrom: (_a, _s, callback) => callback(reply(451, '4.3.0 Busy')) });
    const stop = new AbortController();
    const options = { waits: [3600], signal: stop.signal, onNote: () => stop.abort(new Error('interrupted')) };
    await expect(send(server.env, {}, options)).rejects.toThrow();
    expect(server.connections()).toBe(1);
  });
});

describe('whatever becomes of the mail', () => {
  it('the study folder stays as it is', async () => {
    const before = await readdir(folder, { recursive: true });
    const server = await loopbackServer({ onMailFrom: (_a, _s, callback) => callback(reply(554, 'no')) });
    await failure(send(server.env));
    expect(await readdir(folder, { recursive: true })).toEqual(before);
    expect((await readFile(path.join(folder, 'report.pdf'))).equals(PDF)).toBe(true);
  });
});
