import type { AddressInfo } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';

/** A mail server on this machine that keeps what it is given and passes nothing on. */
export class MailCatcher {
  readonly caught: ParsedMail[] = [];
  /** Addresses nobody lives at. */
  readonly unknown = new Set<string>();
  /** Called when a message is there, before the yes: whoever throws has the connection cut instead. */
  beforeYes: () => Promise<void> = async () => undefined;
  private server: SMTPServer | undefined;
  private port = 0;

  static async open(): Promise<MailCatcher> {
    const catcher = new MailCatcher();
    await catcher.up();
    return catcher;
  }

  get url(): string {
    return `smtp://127.0.0.1:${this.port}`;
  }

  /** Listens, after a time down at the same port as before. */
  async up(): Promise<void> {
    const server = new SMTPServer({
      disabledCommands: ['AUTH', 'STARTTLS'],
      onRcptTo: ({ address }, _session, done) =>
        this.unknown.has(address)
          ? done(Object.assign(new Error(`5.1.1 <${address}> nobody of that name`), { responseCode: 550 }))
          : done(),
      onData: (stream, _session, done) => {
        simpleParser(stream)
          .then(async (mail) => {
            this.caught.push(mail);
            await this.beforeYes();
            done();
          })
          .catch((error: Error) => done(Object.assign(error, { responseCode: 451 })));
      },
    });
    await new Promise<void>((resolve) => server.listen(this.port, '127.0.0.1', resolve));
    this.port = (server.server.address() as AddressInfo).port;
    this.server = server;
  }

  async down(): Promise<void> {
    const { server } = this;
    this.server = undefined;
    if (server) await new Promise<void>((resolve) => server.close(resolve));
  }
}
