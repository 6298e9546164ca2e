import { randomBytes, randomUUID } from 'node:crypto';
import { parseArgs } from 'node:util';
import { Problem } from '@hubwright/contracts/problems';
import { createApp } from '../app.ts';
import { letAdministratorIn } from '../modules/people/let-administrator-in.command.ts';
import { serverActor } from '../platform/command/actor.ts';
import { joinEmbeddedPostgres } from '../platform/embedded-postgres/start.ts';
import { filesOf, keysOf, readSettings } from '../settings.ts';

// `npm run let-in -- <sign-in name> --because "<why>"`: a first password for an administrator who lost their own or the second
// factor while nobody else can help. It goes on record; the second factor and every session end.
const { values, positionals } = parseArgs({ allowPositionals: true, options: { because: { type: 'string' } } });
const [signInName] = positionals;
if (!signInName || !values.because?.trim()) {
  console.error('Say who and why: npm run let-in -- <sign-in name> --because "<why>"');
  process.exit(2);
}
const settings = readSettings(process.env);
const embedded = settings.ownerUrl ? undefined : await joinEmbeddedPostgres(settings.dataFolder);
/** 100 bits, without letters that look like digits, in groups that can be read aloud. */
const letters = [...randomBytes(20)].map((byte) => 'abcdefghijkmnpqrstuvwxyz23456789'.charAt(byte % 32)).join('');
const password = letters.match(/.{5}/g)?.join('-') ?? '';
const server = await createApp({
  databaseUrl: settings.ownerUrl ?? embedded?.url ?? '',
  filesFolder: filesOf(settings),
  keysFolder: keysOf(settings),
  sessionSecret: randomUUID(),
  logLevels: ['error'],
  clockSetBack: settings.clockSetBack,
});
try {
  const input = { signInName, password, reason: values.because.trim() };
  await server.runner.run(letAdministratorIn, { input, actor: serverActor, key: randomUUID() });
  console.log(`First password of ${signInName}, for 72 hours: ${password}`);
  console.log('Signing in with it leads to the choice of an own one. This is on record, without the password.');
} catch (error) {
  if (!(error instanceof Problem)) throw error;
  console.error(`Nothing was changed. ${error.detail}`);
  process.exitCode = 1;
} finally {
  await server.close();
  await embedded?.stop();
}
